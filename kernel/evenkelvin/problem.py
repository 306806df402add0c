"""The one exception for input that cannot be used."""

from __future__ import annotations

from evenkelvin.said import Said


class Problem(Exception):
    """Says what is wrong, where, and what to do about it.

    Parameters
    ----------
    field
        Path of the field at fault in the request, such as ``"reading.x"``; empty when the
        request as a whole is at fault.
    message
        One sentence for the person who typed it, a :class:`~evenkelvin.said.Said`.
    line
        Line number, counted from 1, when the input came from a file.
    choices
        What may have been meant, each as it would be typed.
    """

    def __init__(
        self,
        field: str,
        message: Said,
        line: int | None = None,
        choices: tuple[str, ...] = (),
    ) -> None:
        super().__init__(message)
        self.field = field
        self.message = message
        self.line = line
        self.choices = choices

    def as_dict(self) -> dict[str, object]:
        """Return the plain form that the desk answers with."""
        plain: dict[str, object] = {"field": self.field, "message": self.message}
        if self.line is not None:
            plain["line"] = self.line
        if self.choices:
            plain["choices"] = list(self.choices)
        return plain

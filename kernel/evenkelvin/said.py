"""A sentence that remembers what it was made of, so that it can be said in another language.

The kernel speaks English. A :class:`Said` is its plain English text and keeps beside it the form,
with a named place for each value, and the values. Whoever speaks another language looks up the
form and fills the places anew: people's own words stay as they typed them, and numbers get the
decimal sign of that language. Python, the command line and JSON see plain text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from numbers import Real
from typing import Any

_PLACE = re.compile(r"\{(\w+)(?::([^{}]*))?\}")


class Figure(str):
    """A number already put as English writes it, such as ``1,500`` or ``+0.0012``."""


#: What may stand in a place: words of the kernel, a number, or people's own words.
Value = str | float


class Said(str):
    """A text for people, made by filling the named places of a form.

    Parameters
    ----------
    form
        The English, with places such as ``{name}`` or ``{stops:.1f}``. It is written out where it
        is used, never put together, so that every form can be found and translated.
        A ``{Name}`` with a capital begins a sentence: the kernel's own words in it do too.
    values
        What stands in the places: another ``Said``; a number, written by the place's own format
        specification; a :class:`Figure`; any other text is people's own words or a name.
    """

    _form: str
    values: Mapping[str, Value]

    def __new__(cls, form: str, /, **values: Value) -> Said:
        """Fill the places."""
        opened = {
            name: _opening(value) if name[0].isupper() else value for name, value in values.items()
        }
        said = super().__new__(cls, form.format_map(opened))
        said._form = form
        said.values = values
        return said

    def __getnewargs_ex__(self) -> tuple[tuple[str], dict[str, Value]]:
        """Be copied with form and values."""
        return (self._form,), dict(self.values)

    @property
    def form(self) -> str:
        """The form with bare places: how numbers are written belongs to the values."""
        return _form_and_formats(self._form)[0]

    def plain(self) -> dict[str, Any]:
        """Return ``{"said": form, "with": values}`` as plain data, numbers as ``{"number"}``."""
        form, formats = _form_and_formats(self._form)
        if not self.values:
            return {"said": form}
        values = {name: _plain_value(self.values[name], spec) for name, spec in formats.items()}
        return {"said": form, "with": values}


def _opening(value: Value) -> Value:
    return value[:1].upper() + value[1:] if isinstance(value, Said) else value


@lru_cache(maxsize=2000)
def _form_and_formats(form: str) -> tuple[str, dict[str, str]]:
    return _PLACE.sub(r"{\1}", form), dict(_PLACE.findall(form))


def _plain_value(value: Value, spec: str) -> Any:
    if isinstance(value, Said):
        return value.plain()
    if isinstance(value, (Figure, Real)):
        return {"number": format(value, spec)}
    return value


def joined(parts: Iterable[Value], between: str = ", ") -> Said:
    """Return the parts one after the other; ``between`` must hold no words."""
    values = {f"part{index}": part for index, part in enumerate(parts)}
    return Said(between.join(f"{{{name}}}" for name in values), **values)


def listed(parts: Iterable[Value]) -> Said:
    """Return the parts as a list in a sentence: a, b and c."""
    every = list(parts)
    if len(every) < 2:
        return joined(every)
    return Said("{most} and {last}", most=joined(every[:-1]), last=every[-1])


def chosen(parts: Iterable[Value]) -> Said:
    """Return the parts as a choice in a sentence: a, b or c."""
    every = list(parts)
    if len(every) < 2:
        return joined(every)
    return Said("{most} or {last}", most=joined(every[:-1]), last=every[-1])


def counted(n: int, one: str, many: str, /, **values: Value) -> Said:
    """Return the form that fits the number ``{n}``: ``one`` for 1, ``many`` for any other."""
    return Said(one if n == 1 else many, n=n, **values)


def with_forms(answer: Any) -> Any:
    """Return an answer with :meth:`Said.plain` in place of each ``Said``.

    A group that has a field ``said`` of its own becomes ``{"said": null, "plain": group}``.
    """
    if isinstance(answer, Said):
        return answer.plain()
    if isinstance(answer, dict):
        plain = {key: with_forms(value) for key, value in answer.items()}
        # What people wrote may have a field of that name too.
        return {"said": None, "plain": plain} if "said" in plain else plain
    if isinstance(answer, (list, tuple)):
        return [with_forms(value) for value in answer]
    return answer

"""Books of earlier versions, brought up to the present one."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from evenkelvin.book.entries import VERSION, Plain
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: What to do about a file that is not a book.
HINT = Said("Open the file that Evenkelvin exported, or export it again where it came from.")
#: What brings a book of an earlier version to the next one, by the earlier version's number.
MIGRATIONS: dict[int, Callable[[Plain], Plain]] = {
    # Version 1 had no gels of its own; every book of it is one of version 2.
    1: lambda plain: plain,
}


def migrate(
    plain: Plain,
    version: int = VERSION,
    steps: Mapping[int, Callable[[Plain], Plain]] | None = None,
) -> Plain:
    """Bring a book of an earlier version up to ``version``, one step after the other.

    Raises
    ------
    Problem
        When it says no version, or comes from a newer Evenkelvin.
    """
    table = MIGRATIONS if steps is None else steps
    found = plain.get("version")
    if isinstance(found, bool) or not isinstance(found, int):
        raise Problem("version", Said("This book does not say its version. {hint}", hint=HINT))
    if found > version:
        raise Problem(
            "version",
            Said(
                "This book has version {found}, written by a newer Evenkelvin; this one reads "
                "up to version {version}. Update the app, then open it again.",
                found=found,
                version=version,
            ),
        )
    for step in range(found, version):
        if step not in table:
            raise Problem(
                "version",
                Said(
                    "Version {found} of the book was never in use. {hint}", found=found, hint=HINT
                ),
            )
        plain = {**table[step](plain), "version": step + 1}
    return plain

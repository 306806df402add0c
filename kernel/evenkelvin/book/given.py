"""The book that a question brings, or the part of it that is wanted."""

from __future__ import annotations

from evenkelvin.book.entries import Book, merge
from evenkelvin.book.file import read_book
from evenkelvin.book.meaning import find, part_of, things
from evenkelvin.book.selected import LEAVABLE, copy_without, hang_cards
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.shapes import Checked, Choice, Group, Many, Text

#: A book, the part of it that is meant, and what is left out of that part or goes along.
PART: Group = {
    "book": Checked(), "of": Text(), "without": Many(Choice(tuple(LEAVABLE))), "kits": Many(Text()),
    "only": Choice(("hang",)),
}  # fmt: skip


def book_field(fields: Fields, name: str = "book") -> Book:
    """Return the book in a field, given as its file's text or as plain data."""
    raw = fields.raw(name)
    if raw is None:
        raise Problem(
            fields.at(name), Said("There is no book here: open one, or keep a reading first.")
        )
    return read_book(raw, fields.at(name))


def chosen_part(fields: Fields) -> Book:
    """Return the book, or the part of it that the field ``of`` names; ``without`` what is left out.

    Kits that the field ``kits`` names by their ids go along with a part; ``only`` "hang" leaves
    nothing but its hang cards.

    Raises
    ------
    Problem
        When something is to be left out of a whole book, which is a backup.
    """
    book = book_field(fields)
    left_out = fields.texts("without")
    for index, name in enumerate(left_out):
        if name not in LEAVABLE:
            raise Problem(
                fields.at(f"without.{index}"),
                Said(
                    "“{name}” cannot be left out. Known are: {known}.",
                    name=name[:24],
                    known=", ".join(LEAVABLE),
                ),
            )
    if not fields.given("of"):
        if left_out:
            raise Problem(
                fields.at("of"),
                Said("Things can be left out only when a part of the book is shared."),
            )
        return book
    part = part_of(book.entries, fields.text("of", longest=64))
    if fields.given("only"):
        fields.choice("only", ("hang",))
        return hang_cards(part.entries)
    if fields.given("kits"):
        every = things(book.entries)
        kits = [find(every, id_, ("kit",)) for id_ in fields.texts("kits")]
        part = merge(part.entries, (head for kit in kits for head in kit.heads))
    return copy_without(part.entries, left_out) if left_out else part

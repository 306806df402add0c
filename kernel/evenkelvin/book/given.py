"""The book that a question brings, or the part of it that is wanted."""

from __future__ import annotations

from evenkelvin.book.entries import Book
from evenkelvin.book.file import read_book
from evenkelvin.book.meaning import part_of
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.said import Said


def book_field(fields: Fields, name: str = "book") -> Book:
    """Return the book in a field, given as its file's text or as plain data."""
    raw = fields.raw(name)
    if raw is None:
        raise Problem(
            fields.at(name), Said("There is no book here: open one, or keep a reading first.")
        )
    return read_book(raw, fields.at(name))


def chosen_part(fields: Fields) -> Book:
    """Return the book, or the part of it that the field ``of`` names."""
    book = book_field(fields)
    return part_of(book.entries, fields.text("of", longest=64)) if fields.given("of") else book

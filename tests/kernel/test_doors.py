"""Any file at any door is recognised for what it is, or refused by its own kind."""

from __future__ import annotations

import base64
import json

import pytest

import complete_book
from evenkelvin.desk import answer
from evenkelvin.interchange.kinds import HEAD

BOOK = {"format": "evenkelvin-book", "version": 2, "entries": complete_book.entries()}
TEXT = answer({"ask": "book_check", "book": BOOK, "give": "text"})["text"]
LINK = answer({"ask": "book_link", "book": BOOK})["link"]
PARTS = answer({"ask": "book_parts", "book": BOOK})["parts"]
SPECTRUM = {"name": "key", "wavelengths_nm": list(range(380, 781, 5)), "values": [1.0] * 81}
WRITTEN = {
    style: answer({"ask": "write", "format": style, "spectra": [SPECTRUM]})["files"][0]["text"]
    for style in ("csv", "tm27")
}


def door(raw: bytes | str) -> tuple[str, str]:
    head = raw[:HEAD]
    body = (
        {"text": head}
        if isinstance(head, str)
        else {"bytes_base64": base64.b64encode(head).decode()}
    )
    found = answer({"ask": "recognise", **body})
    return found["door"], found["message"] or ""


@pytest.mark.parametrize("written", [
    (TEXT, "book"), (json.dumps(BOOK, indent=1), "book"), (TEXT[: len(TEXT) // 3], "book"),
    (LINK, "link"), (f"https://app.invalid/here/#copy={LINK}", "link"), (PARTS[0], "codes"),
    (answer({"ask": "book_csv", "book": BOOK})["text"], "light"),
    (WRITTEN["csv"], "light"), (WRITTEN["tm27"], "light"), ("x y\n0.3 0.3\n", "light"),
])  # fmt: skip
def test_what_the_app_writes_is_sent_to_the_door_that_reads_it(written: tuple[str, str]) -> None:
    text, wanted = written
    assert door(text)[0] == wanted
    assert door(text.encode())[0] == wanted
    assert door(b"\xef\xbb\xbf" + text.encode())[0] == wanted


@pytest.mark.parametrize(("raw", "words"), [
    (b"\xff\xd8\xff\xe0\x00\x10JFIF", "picture"), (b"\x89PNG\r\n\x1a\n", "picture"),
    (b"RIFF\x00\x00\x00\x00WEBPVP8 ", "picture"), (b"\x00\x00\x00\x18ftypheic", "picture"),
    (b"<svg xmlns='x'/>", "picture"), (b"\x00\x00\x00\x18ftypisom", "film"),
    (b"%PDF-1.7", "PDF"), (b"PK\x03\x04", "workbook"), (b"\x1f\x8b\x08", "compressed"),
    (b"{\\rtf1", "formatted"), (b"<!DOCTYPE html><html>", "web page"),
    (b"\r\n<HTML lang=de>", "web page"), (b"", "empty"), (b" \n\t", "empty"),
])  # fmt: skip
def test_what_is_none_of_them_is_refused_by_its_own_kind(raw: bytes, words: str) -> None:
    found, message = door(raw)
    assert found == "none"
    assert words in message
    # The readers say the same, whoever asks them.
    text = base64.b64encode(raw).decode()
    read = answer({"ask": "import", "bytes_base64": text})
    assert (read["spectra"], words in read["problems"][0]["message"]) == ([], True)


@pytest.mark.parametrize("text", [TEXT, TEXT[: len(TEXT) // 3], LINK, PARTS[0]])
def test_a_book_is_never_read_as_spectra(text: str) -> None:
    found = answer({"ask": "import", "text": text})
    assert (found["spectra"], found.get("readings", [])) == ([], [])
    assert "book" in found["problems"][0]["message"]


def test_an_empty_and_a_huge_file_are_told_without_names_of_fields() -> None:
    for body in ({"text": ""}, {"bytes_base64": ""}, {}):
        (problem,) = answer({"ask": "import", **body})["problems"]
        assert problem["message"] == "This file is empty; choose another."
    huge = answer({"ask": "import", "bytes_base64": "A" * 8_000_000})["problem"]["message"]
    assert huge == "The file has 6.0 MB; at most 4 MB are read."

"""A book inside the fragment of a URL, and the same as a numbered series for QR codes.

A link's text is a scheme letter, eight characters of check, and a body in base64url without
padding (RFC 4648, 5):

- ``z``: the canonical JSON of the book, compressed by raw deflate (RFC 1951) with
  :data:`WORDS` as the text that came before it (a preset dictionary),
- ``d``: the same without a dictionary, and
- ``j``: the JSON as it is; links that were written until November 2026 have these.

The check is the start of the SHA-256 of the JSON, in base64url. One code of a series is
``p3.7.CHECK.CHUNK``: the third of seven, the check of the whole, a piece of the link's text. What
leads up to the text (an address, a ``#``, a route) is the app's and is skipped when reading.

Nothing of a link is taken over before all of it was checked.
"""

from __future__ import annotations

import base64
import binascii
import re
import zlib
from collections.abc import Iterable
from dataclasses import dataclass
from hashlib import sha256

from evenkelvin.book.canonical import canonical
from evenkelvin.book.entries import FORMAT, VERSION, Book
from evenkelvin.book.file import parse_json, read_book
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: Limits: characters of a link, of the JSON that it holds, codes of a series.
LONGEST_LINK = 2_000_000
LONGEST_JSON = 16_000_000
MOST_PARTS = 99
#: Characters of one code: with an address before them they make a QR code of version 22, error
#: correction L, 105 modules wide (ISO/IEC 18004), 3 px each on the narrowest phone; a camera asks
#: for no less (common practice, no source).
PART_SIZE = 900
#: Characters beyond which messengers are known to cut an address (common practice, no source).
SAFE_LINK = 8_000

#: What books say, the commonest last. Links hold what is left when this is known, so it never
#: changes: another text would need another scheme.
WORDS = (
    '"flash","hmi","fluorescent","plasma","sodium","tungsten","daylight","led rgb","led",'
    '"cooler_mired":"as_through":["like":"as":"found"},"white"},minus green plus green CTB CTO '
    'ND 1/8 1/4 1/2 3/4 full key fill back window practical "spectrum":{"values":[0.'
    '],"wavelengths_nm":[380,385,390,395,400,"exposure_lx_s":"illuminance_fc":"note":"",'
    '"place":"","dialled":"","dimmer":"","who":"","gel_ids":["pickup_of":"hero":"role":"'
    'practical"{"entries":[{"after":[],"at":"2026-11-26T20:00:00.000+00:00","data":{"name":"'
    'production"},"id":"","of":"","parent":null,"thing":"production"},{"after":[],"at":"'
    '2026-11-26T20:00:00.000+01:00","data":{"mains_hz":"50","name":"location"},"id":"","of":"",'
    '"parent":"","thing":"location"},{"after":["","at":"2026-11-26T20:00:00.000+00:00","data":{'
    '"key":"","name":"Setup 1","plan":{"at":"2026-11-26T20:00:00.000+00:00","at_least_stops":0,'
    '"exact":true,"out":[],"pieces":0,"reached":{"by":"balance","kit":null,"stock":[],'
    '"tolerance":"normal","whites":{}},"stops_lost":0,"white":{"cct_K":"5600","duv":"0"},'
    '"words":""},"target":{"cct_K":"5600","duv":"0"}},"id":"","of":"","parent":"","thing":"setup'
    '"},{"after":["","at":"2026-11-26T20:00:00.000+00:00","data":{"lamp":"unknown","meant":{'
    '"warmer_mired":"60"},"name":"key","order":1,"planned":{"dial":null,"does":"gel","from":"",'
    '"gels":["1/4 CTO"],"lands":{"cct_K":5600,"duv":0.00,"x":0.3,"y":0.3},"steps":1.,'
    '"stops_lost":0.,"verdict":"holds","words":"hang leave as it is"}},"id":"","of":"",'
    '"parent":"","thing":"light"},{"after":[],"at":"2026-11-26T20:00:00.000+00:00","data":{'
    '"illuminance_lx":"100","lamp":"tungsten","pack":["1/4 CTO"],"stage":"re-checked","gelled",'
    '"stage":"bare","target":{"cct_K":"5600","duv":"0"},"x":"0.3","y":"0.3"},"id":"","of":"",'
    '"parent":"","thing":"reading"},'
).encode("ascii")

_CHECK_LENGTH = 8
#: Characters before the link's own in a code of a series.
_MARK_LENGTH = len("p99.99.") + _CHECK_LENGTH + 1
_PART = re.compile(r"p([1-9][0-9]?)\.([1-9][0-9]?)\.([A-Za-z0-9_-]{8})\.([A-Za-z0-9_-]+)")
_AGAIN = Said("Ask for it again, or for the file.")


@dataclass(frozen=True)
class Series:
    """What was read of a numbered series: all codes in order once ``missing`` is empty."""

    total: int
    have: tuple[int, ...]
    missing: tuple[int, ...]
    link: str | None


def _encode(raw: bytes) -> str:
    return base64.urlsafe_b64encode(raw).decode("ascii").rstrip("=")


def _check(raw: bytes) -> str:
    return _encode(sha256(raw).digest())[:_CHECK_LENGTH]


def make_link(book: Book) -> str:
    """Return the link's text that holds a book.

    Raises
    ------
    Problem
        When the book is too large for a link.
    """
    raw = canonical({"format": FORMAT, "version": VERSION, "entries": list(book.entries)}).encode()
    squeezer = zlib.compressobj(9, zlib.DEFLATED, -15, zdict=WORDS)
    squeezed = squeezer.compress(raw) + squeezer.flush()
    link = "z" + _check(raw) + _encode(squeezed)
    if len(link) > LONGEST_LINK or len(raw) > LONGEST_JSON:
        raise Problem(
            "book",
            Said(
                "This is too large for a link ({count} characters; at most {longest_link}). "
                "Share one setup, or the file.",
                count=len(link),
                longest_link=LONGEST_LINK,
            ),
        )
    return link


def _bare(text: str) -> str:
    """The link's own text, without the address before it and the line breaks of a messenger."""
    if len(text) > LONGEST_LINK + 10_000:
        raise Problem(
            "link",
            Said(
                "The link is longer than {longest_link} characters. {again}",
                longest_link=LONGEST_LINK,
                again=_AGAIN,
            ),
        )
    text = "".join(text.split())
    return text[max(map(text.rfind, "#/?=&")) + 1 :]


def open_link(text: str) -> Book:
    """Return the book inside a link, whole and checked.

    Raises
    ------
    Problem
        When the link is cut, changed, too large or no link of ours; nothing is then taken over.
    """
    link = _bare(text)
    if not link:
        raise Problem("link", Said("There is no link here: paste the whole address."))
    if _PART.fullmatch(link):
        raise Problem("link", Said("This is one code of a series: scan the others too."))
    scheme, check, body = link[0], link[1 : 1 + _CHECK_LENGTH], link[1 + _CHECK_LENGTH :]
    foreign = re.search(r"[^A-Za-z0-9_-]", link)
    if scheme not in "zdj" or foreign or not body:
        shown = foreign[0] if foreign else link[:12]
        raise Problem(
            "link",
            Said(
                "This is not a link of Evenkelvin (at “{shown}”). {again}",
                shown=shown,
                again=_AGAIN,
            ),
        )
    cut = Problem(
        "link", Said("The link ends too early: it was cut on the way. {again}", again=_AGAIN)
    )
    if len(body) % 4 == 1:
        raise cut
    try:
        raw = base64.urlsafe_b64decode(body + "=" * (-len(body) % 4))
        if scheme != "j":
            raw = _inflate(raw, WORDS if scheme == "z" else b"", cut)
    except (binascii.Error, zlib.error):
        raise Problem(
            "link", Said("The link was changed on the way. {again}", again=_AGAIN)
        ) from None
    if _check(raw) != check:
        raise Problem("link", Said("The link was cut or changed on the way. {again}", again=_AGAIN))
    try:
        plain = parse_json(raw.decode("utf-8"), "link", LONGEST_JSON)
    except UnicodeDecodeError:
        raise Problem("link", Said("The link does not hold text. {again}", again=_AGAIN)) from None
    return read_book(plain, "link")


def _inflate(raw: bytes, before: bytes, cut: Problem) -> bytes:
    # The bound comes before the memory: a small link must not unfold to gigabytes.
    inflater = zlib.decompressobj(-15, zdict=before)
    plain = inflater.decompress(raw, LONGEST_JSON + 1)
    if len(plain) > LONGEST_JSON:
        raise Problem(
            "link",
            Said(
                "The link unfolds to more than {longest_json} characters. {again}",
                longest_json=LONGEST_JSON,
                again=_AGAIN,
            ),
        )
    if not inflater.eof:
        raise cut
    if inflater.unused_data:
        raise Problem(
            "link", Said("Something was added to the link on the way. {again}", again=_AGAIN)
        )
    return plain


def codes_for(characters: int, size: int = PART_SIZE) -> int:
    """Return how many codes of at most ``size`` characters a link of so many takes."""
    return 1 if characters <= size else -(-characters // (size - _MARK_LENGTH))


def split_link(link: str, size: int = PART_SIZE) -> list[str]:
    """Return the codes of a numbered series, each of at most ``size`` characters.

    Raises
    ------
    Problem
        When more than 99 codes would be needed.
    """
    check = link[1 : 1 + _CHECK_LENGTH]
    chunk = size - _MARK_LENGTH
    total = -(-len(link) // chunk)
    if total > MOST_PARTS:
        raise Problem(
            "book",
            Said(
                "This would take {total} codes; at most {most_parts} make a series. Share one "
                "setup, or the file.",
                total=total,
                most_parts=MOST_PARTS,
            ),
        )
    return [
        f"p{index + 1}.{total}.{check}.{link[index * chunk : (index + 1) * chunk]}"
        for index in range(total)
    ]


def join_parts(texts: Iterable[str]) -> Series:
    """Return what a series holds so far, in whatever order and however often it was scanned.

    Raises
    ------
    Problem
        Naming the code (``parts.2``) that is no code, belongs to another series, or contradicts
        one that was read before.
    """
    chunks: dict[int, str] = {}
    whole: tuple[int, str] | None = None
    for place, text in enumerate(texts):
        where = f"parts.{place}"
        found = _PART.fullmatch(_bare(text))
        if found is None:
            raise Problem(
                where, Said("This is not a code of a series of Evenkelvin: scan it again.")
            )
        index, total, check, chunk = int(found[1]), int(found[2]), found[3], found[4]
        if index > total:
            raise Problem(
                where,
                Said(
                    "This code says it is number {index} of {total}: scan it again.",
                    index=index,
                    total=total,
                ),
            )
        if whole is None:
            whole = (total, check)
        if whole != (total, check):
            raise Problem(
                where, Said("This code belongs to another series: scan one series at a time.")
            )
        if chunks.setdefault(index, chunk) != chunk:
            raise Problem(
                where, Said("Code {index} was read twice and differs: scan it again.", index=index)
            )
    if whole is None:
        raise Problem("parts", Said("No code was scanned yet."))
    total = whole[0]
    missing = tuple(index for index in range(1, total + 1) if index not in chunks)
    link = None if missing else "".join(chunks[index] for index in range(1, total + 1))
    return Series(total, tuple(sorted(chunks)), missing, link)

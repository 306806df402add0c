"""XML as a small tree, read by expat with declarations refused and everything bounded."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NoReturn
from xml.parsers import expat

from evenkelvin.problem import Problem
from evenkelvin.said import Said

MAX_DEPTH = 32
MAX_ELEMENTS = 100_000


@dataclass
class Node:
    """An element: its name and attributes without prefixes, its own text, its line."""

    name: str
    attributes: dict[str, str]
    line: int
    children: list[Node] = field(default_factory=list)
    parts: list[str] = field(default_factory=list)

    @property
    def text(self) -> str:
        """Return the text directly inside, without white space around it."""
        return "".join(self.parts).strip()

    def all(self, name: str) -> Iterator[Node]:
        """Yield every element of that name below this one, in order."""
        for child in self.children:
            if child.name == name:
                yield child
            yield from child.all(name)

    def first(self, name: str) -> Node | None:
        """Return the first element of that name below this one."""
        return next(self.all(name), None)

    def text_of(self, name: str) -> str:
        """Return the text of the first element of that name, or an empty text."""
        found = self.first(name)
        return found.text if found else ""


def _local(name: str) -> str:
    return name.rpartition(":")[2]


def parse(text: str) -> Node:
    """Return the root of an XML document.

    A document type and with it any entity of its own is refused, so that nothing can expand or
    be fetched. The text is already decoded: what its XML declaration says is skipped.

    Raises
    ------
    Problem
        With the line, when the text is not well-formed, declares a document type, or is deeper
        than :data:`MAX_DEPTH` or larger than :data:`MAX_ELEMENTS`.
    """
    parser = expat.ParserCreate("utf-8")
    parser.buffer_text = True
    root = Node("", {}, 0)
    path = [root]
    count = 0

    def refuse(*_: object) -> NoReturn:
        raise Problem(
            "",
            Said("The XML declares a document type or entities, which are not read for safety."),
            parser.CurrentLineNumber,
        )

    def start(name: str, attributes: dict[str, str]) -> None:
        nonlocal count
        count += 1
        line = parser.CurrentLineNumber
        if len(path) > MAX_DEPTH:
            raise Problem(
                "",
                Said("The XML is nested deeper than {max_depth} levels.", max_depth=MAX_DEPTH),
                line,
            )
        if count > MAX_ELEMENTS:
            raise Problem(
                "",
                Said("The XML has more than {max_elements} elements.", max_elements=MAX_ELEMENTS),
                line,
            )
        plain = {_local(key): value for key, value in attributes.items()}
        node = Node(_local(name), plain, line)
        path[-1].children.append(node)
        path.append(node)

    def end(_: str) -> None:
        path.pop()

    def inside(data: str) -> None:
        path[-1].parts.append(data)

    parser.StartDoctypeDeclHandler = refuse
    parser.EntityDeclHandler = refuse
    parser.ExternalEntityRefHandler = refuse
    parser.StartElementHandler = start
    parser.EndElementHandler = end
    parser.CharacterDataHandler = inside
    parser.SetParamEntityParsing(expat.XML_PARAM_ENTITY_PARSING_NEVER)
    try:
        parser.Parse(_without_declaration(text).encode("utf-8", errors="replace"), True)
    except expat.ExpatError as error:
        raise Problem(
            "",
            Said(
                "The XML is broken: {messages}. It may have been cut short; save or send it again.",
                messages=expat.errors.messages[error.code],
            ),
            error.lineno,
        ) from None
    return root.children[0]


def _without_declaration(text: str) -> str:
    """Return the text with its XML declaration blanked, its lines kept."""
    text = text.lstrip()
    if text.startswith("<?xml") and (end := text.find("?>")) > 0:
        lines = text.count("\n", 0, end)
        return "\n" * lines + text[end + 2 :]
    return text

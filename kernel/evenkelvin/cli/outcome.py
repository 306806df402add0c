"""What a command gives back, and what is to be said beside it."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from evenkelvin.asking import ask
from evenkelvin.said import Said

#: Reads a file by its name, "-" meaning standard input; raises OSError.
Read = Callable[[str], bytes]
Plain = dict[str, Any]

#: Exit code of a command that was done, though not with all that it was given.
LEFT_OUT = 3


@dataclass
class Outcome:
    """What a command gives: text for standard output, files to write, and the exit code.

    ``notes`` are for standard error: what was left out, and what was taken where a file leaves it
    open.
    """

    text: str = ""
    files: dict[str, str] = field(default_factory=dict)
    code: int = 0
    notes: list[str] = field(default_factory=list)


@dataclass
class Noted:
    """What is to be said of the files that a command read."""

    notes: list[str] = field(default_factory=list)
    left_out: bool = False

    def add(self, name: str, found: Plain) -> None:
        """Note what the desk said of one file beside what it holds."""
        where = "" if name == "-" else f"{name}: "
        for problem in found["problems"]:
            self.left_out = True
            line = f"line {problem['line']}: " if problem.get("line") is not None else ""
            self.notes.append(f"{where}{line}{problem['message']}")
        for question in found["questions"]:
            options = ", ".join(question["options"])
            self.notes.append(
                f"{where}{question['message']} Taken: {question['taken']}. "
                f"Say it with --choose {question['field']}=CHOICE, of {options}."
            )


def told(text: str) -> Said:
    """Return a sentence of the command line, which speaks English only."""
    return Said("{text}", text=text)


def given(**fields: Any) -> Plain:
    """Return the fields that were given at all."""
    return {name: value for name, value in fields.items() if value not in (None, "", [])}


def asked(question: str, /, **fields: Any) -> Plain:
    """Return the desk's answer as plain data; raises Problem where there is none."""
    return ask(question, **fields)


def shown(found: Plain, text: str, as_json: bool) -> Outcome:
    """Return the whole answer as JSON, or the text made of it with its warnings below."""
    if as_json:
        return Outcome(json.dumps(found, indent=2, ensure_ascii=False))
    notes = [*found.get("warnings", []), *found.get("cautions", [])]
    return Outcome(warned(text, *notes))


def warned(text: str, *warnings: str) -> str:
    """Return a text with a line for each warning."""
    return "\n".join([text, *(f"Note: {words}" for words in warnings)])

"""Read and check the fields of a request, each complaint naming the field."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from typing import Any

from evenkelvin.field_names import example, field_name, runs_to_thousands
from evenkelvin.problem import Problem
from evenkelvin.said import Figure, Said, Value, joined

_NUMBER = re.compile(r"[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?")

#: What may be thousands or a decimal comma: 1,500.
_DOUBTFUL = re.compile(r"[+-]?([1-9]\d{0,2}),(\d{3})")


def parse_number(raw: object, path: str, label: Value | None = None) -> float:
    """Return a finite number from what was typed or sent.

    Text may use a decimal point or a decimal comma, and a true minus sign. Thousands
    separators are refused rather than guessed: where numbers run to thousands, a comma before
    three digits can be either, and the complaint offers both readings.

    Raises
    ------
    Problem
        When ``raw`` is not one finite number.
    """
    field = path.rpartition(".")[2]
    name = label or field_name(field)
    if isinstance(raw, bool) or not isinstance(raw, (int, float, str)):
        raise Problem(
            path, Said("{Name} must be a number, not {kind}.", Name=name, kind=_kind(raw))
        )
    if isinstance(raw, str):
        text = raw.strip().replace("−", "-")
        if not _NUMBER.fullmatch(text):
            shown = raw.strip()[:24]
            raise Problem(
                path,
                Said(
                    "{Name}: “{typed}” is not a number. Type digits, such as {example}.",
                    Name=name,
                    typed=shown,
                    example=example(field),
                ),
            )
        if runs_to_thousands(field) and (doubtful := _DOUBTFUL.fullmatch(text)):
            thousands = "".join(doubtful.groups())
            decimal = f"{float(text.replace(',', '.')):.3f}"
            raise Problem(
                path,
                Said(
                    "{Name}: “{typed}” can be read in two ways. Type {thousands} or {decimal}.",
                    Name=name,
                    typed=text,
                    thousands=Figure(thousands),
                    decimal=Figure(decimal),
                ),
                choices=(thousands, decimal),
            )
        raw = float(text.replace(",", "."))
    try:
        value = float(raw)
    except OverflowError:
        value = math.inf
    if not math.isfinite(value):
        raise Problem(path, Said("{Name} must be a finite number.", Name=name))
    return value


def decimals(raw: object) -> int | None:
    """Return how many decimals were given, or None when an exponent hides it."""
    text = raw.strip() if isinstance(raw, str) else repr(raw)
    if "e" in text.lower():
        return None
    return len(re.split(r"[.,]", text, maxsplit=1)[1]) if re.search(r"[.,]", text) else 0


def _kind(raw: object) -> Said:
    if raw is None:
        return Said("nothing")
    if isinstance(raw, bool):
        return Said("true or false")
    if isinstance(raw, str):
        return Said("text")
    if isinstance(raw, (int, float)):
        return Said("a number")
    return Said("a list") if isinstance(raw, (list, tuple)) else Said("a group of values")


def _bounds(low: float | None, high: float | None) -> Said:
    if high is None:
        return Said("{low:g} or more", low=low or 0.0)
    if low is None:
        return Said("{high:g} or less", high=high)
    return Said("between {low:g} and {high:g}", low=low, high=high)


class Fields:
    """A group of named fields, with the path that leads to it.

    An absent field, ``null`` and an empty text all mean 'not given': a form sends its empty
    boxes as they are.

    Raises
    ------
    Problem
        By every method, when a field is missing, unknown or of the wrong kind.
    """

    def __init__(self, raw: object, path: str = "") -> None:
        if not isinstance(raw, Mapping):
            where = field_name(path.rpartition(".")[2]) if path else Said("the question")
            raise Problem(
                path,
                Said(
                    "{Name} must be values with their names, not {kind}.",
                    Name=where,
                    kind=_kind(raw),
                ),
            )
        self.path = path
        self._raw: Mapping[str, Any] = raw

    def at(self, name: str | int) -> str:
        """Return the path of a field of this group."""
        return f"{self.path}.{name}" if self.path else str(name)

    def given(self, name: str) -> bool:
        """Tell whether a field holds anything."""
        raw = self._raw.get(name)
        return raw is not None and not (isinstance(raw, str) and not raw.strip())

    def raw(self, name: str) -> Any:
        """Return a field as it was sent, or None."""
        return self._raw.get(name) if self.given(name) else None

    def without(self, *names: str) -> Fields:
        """Return the group without some of its fields, which another reads."""
        kept = {name: value for name, value in self._raw.items() if name not in names}
        return Fields(kept, self.path)

    def along(self, more: Mapping[str, Any]) -> Fields:
        """Return the group with some more fields."""
        return Fields({**self._raw, **more}, self.path)

    def refuse_unknown(self, *known: str) -> None:
        """Refuse any field whose name is not among ``known``."""
        for name in self._raw:
            if name not in known:
                raise Problem(
                    self.at(str(name)[:40]),
                    Said(
                        "“{name}” is not a field here. Known are: {known}.",
                        name=str(name)[:40],
                        known=joined(sorted(known)),
                    ),
                )

    def _require(self, name: str) -> Any:
        if not self.given(name):
            raise Problem(self.at(name), Said("{Name} is missing.", Name=field_name(name)))
        return self._raw[name]

    def number(
        self,
        name: str,
        default: float | None = None,
        low: float | None = None,
        high: float | None = None,
        label: Value | None = None,
    ) -> float:
        """Return a number, bounds included; ``default`` stands in where it is not given."""
        if default is not None and not self.given(name):
            return default
        shown = label or field_name(name)
        value = parse_number(self._require(name), self.at(name), shown)
        if (low is not None and value < low) or (high is not None and value > high):
            raise Problem(
                self.at(name),
                Said(
                    "{Name} is {value:g}; it must be {bounds}.",
                    Name=shown,
                    value=value,
                    bounds=_bounds(low, high),
                ),
            )
        return value

    def whole(self, name: str, default: int, low: int, high: int) -> int:
        """Return a whole number within bounds."""
        value = self.number(name, float(default), low, high)
        if value != int(value):
            raise Problem(
                self.at(name),
                Said(
                    "{Name} must be a whole number, not {value:g}.",
                    Name=field_name(name),
                    value=value,
                ),
            )
        return int(value)

    def numbers(self, name: str) -> list[float]:
        """Return a list of finite numbers."""
        return [self._nth_number(name, index, item) for index, item in enumerate(self.items(name))]

    def _nth_number(self, name: str, index: int, item: Any) -> float:
        path = f"{self.at(name)}.{index}"
        try:
            return parse_number(item, path, name)
        except Problem:
            # Words for a complaint only: a spectrum has hundreds of numbers.
            which = Said("{name}, number {n}", name=field_name(name), n=index + 1)
            return parse_number(item, path, which)

    def text(self, name: str, default: str | None = None, longest: int = 2000) -> str:
        """Return a text of at most ``longest`` characters."""
        if default is not None and not self.given(name):
            return default
        raw = self._require(name)
        if not isinstance(raw, str):
            raise Problem(
                self.at(name),
                Said("{Name} must be text, not {kind}.", Name=field_name(name), kind=_kind(raw)),
            )
        if len(raw) > longest:
            raise Problem(
                self.at(name),
                Said(
                    "{Name} has {count} characters; at most {most} fit.",
                    Name=field_name(name),
                    count=len(raw),
                    most=longest,
                ),
            )
        return raw

    def choice(self, name: str, known: Sequence[str], default: str | None = None) -> str:
        """Return one of the ``known`` words."""
        word = self.text(name, default)
        if word not in known:
            raise Problem(
                self.at(name),
                Said(
                    "{Name} “{word}” is not known. Choose: {known}.",
                    Name=field_name(name),
                    word=word[:40],
                    known=joined(known),
                ),
            )
        return word

    def items(self, name: str, most: int = 100_000) -> list[Any]:
        """Return a list as it was sent; absent means empty."""
        raw = self._raw.get(name)
        if raw is None:
            return []
        if not isinstance(raw, (list, tuple)):
            raise Problem(
                self.at(name),
                Said("{Name} must be a list, not {kind}.", Name=field_name(name), kind=_kind(raw)),
            )
        if len(raw) > most:
            raise Problem(
                self.at(name),
                Said(
                    "{Name} has {count} entries; at most {most} fit.",
                    Name=field_name(name),
                    count=len(raw),
                    most=most,
                ),
            )
        return list(raw)

    def texts(self, name: str) -> list[str]:
        """Return a list of texts; absent means empty."""
        words = self.items(name)
        for index, word in enumerate(words):
            if not isinstance(word, str):
                raise Problem(
                    f"{self.at(name)}.{index}",
                    Said("{Name} must hold names only.", Name=field_name(name)),
                )
        return words

    def group(self, name: str) -> Fields:
        """Return a field that is itself a group."""
        return Fields(self._require(name), self.at(name))

    def groups(self, name: str, most: int = 1000) -> list[Fields]:
        """Return a list of groups."""
        return [
            Fields(item, f"{self.at(name)}.{index}")
            for index, item in enumerate(self.items(name, most))
        ]

"""What hangs, by names that tell gels apart: one name may mean several measured gels of a book."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from evenkelvin.book.canonical import canonical
from evenkelvin.book.meaning import Thing

Found = Mapping[str, Mapping[str, Thing]]
#: A gel as data names it, and which measured gel of the book that is, by its curve.
Use = tuple[str, str | None]


def _curve(gel: Thing) -> str:
    data = gel.present["data"]
    return canonical([data.get("wavelengths_nm"), data.get("transmittance")])


def _full_name(name: str, gel: Thing) -> str:
    """A name with who measured the gel and when: 'amber (best boy, 2026-11-25 19:42)'."""
    who, at = gel.present.get("who"), str(gel.present["at"])
    return f"{name} ({', '.join(filter(None, [who, f'{at[:10]} {at[11:16]}']))})"


@dataclass(frozen=True)
class GelNames:
    """The measured gels of a book, and which curves each name stands for where this is used."""

    found: Found
    #: Names to tell apart even where they mean one gel here: elsewhere they mean others.
    told_apart: frozenset[str] = frozenset()
    meant: dict[str, set[str | None]] = field(default_factory=dict)

    @property
    def several(self) -> list[str]:
        """The names that mean several gels, sorted."""
        here = {name for name, curves in self.meant.items() if len(curves) > 1}
        return sorted(here | self.told_apart)

    def _uses(self, names: Any, ids: Any) -> list[tuple[Use, Thing | None]]:
        known = ids if isinstance(ids, list) else []
        uses: list[tuple[Use, Thing | None]] = []
        for place, raw in enumerate(names or ()):
            id_ = known[place] if place < len(known) else None
            gel = self.found["gel"].get(str(id_)) if id_ else None
            name = "" if raw is None else str(raw)
            uses.append(((name, _curve(gel) if gel else None), gel))
        return uses

    def _is_several(self, name: str) -> bool:
        return name in self.told_apart or len(self.meant.get(name, ())) > 1

    def learn(self, rows: Iterable[tuple[Any, Any]]) -> None:
        """Take note of what hangs: names of gels, and the ids of those that were measured."""
        for names, ids in rows:
            for (name, curve), _ in self._uses(names, ids):
                self.meant.setdefault(name, set()).add(curve)

    def called(self, names: Any, ids: Any) -> tuple[str, ...]:
        """Return names that tell gels apart: as they are, unless one means several gels."""
        return tuple(
            _full_name(name, gel) if gel is not None and self._is_several(name) else name
            for (name, _), gel in self._uses(names, ids)
        )

    def measured(self, names: Any, ids: Any) -> tuple[str, ...]:
        """Return what :meth:`called` does, of the measured gels only."""
        called = self.called(names, ids)
        uses = self._uses(names, ids)
        return tuple(name for name, (_, gel) in zip(called, uses, strict=True) if gel is not None)

"""Answers as lines of text."""

from __future__ import annotations

from collections.abc import Sequence

from evenkelvin.cli.outcome import Plain


def table(rows: Sequence[Sequence[str]]) -> str:
    """Return rows of cells, the first being the heading, as columns of text."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    )


def white(found: Plain) -> list[str]:
    """Return a white's CCT and Duv as cells."""
    kelvin = f"{found['cct_K']:.0f} K" if found["cct_K"] is not None else "no CCT"
    # Adding zero turns a rounded −0 into 0.
    return [kelvin, f"{round(found['duv'], 4) + 0.0:+.4f}"]

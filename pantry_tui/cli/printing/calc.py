"""Batch arithmetic, one figure a line, its formula and its source under it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.core.text import clean

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.calc.answer import Answer, Line


def answer(found: Answer) -> list[str]:
    """The answer first, then what stands beside it, then what to mind."""
    lines = list(_figure(found.first, ""))
    for one in found.also:
        lines += _figure(one, "  ")
    lines += [f"note: {clean(one)}" for one in found.notes]
    return lines + [f"care: {clean(one)}" for one in found.cautions]


def _figure(line: Line, indent: str) -> list[str]:
    found = [f"{indent}{clean(line.what)}: {clean(line.shown)}"]
    if line.formula:
        found.append(f"{indent}  by: {clean(line.formula)}")
    if line.source:
        found.append(f"{indent}  source: {clean(line.source)}")
    return found

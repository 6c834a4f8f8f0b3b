"""Batch arithmetic at hand in every room: type a sum, read its answer with formula and source."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import TypeLine, given
from pantry_tui.app.screens.page import Page
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.calc import ALSO, KINDS, reckon
from pantry_tui.services.batchwork.calc.answer import Answer, Line
from pantry_tui.services.batchwork.methods import Way, methods, told

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

TITLE = f"Reckon: {', '.join(KINDS)}."
EXAMPLE = "brine 500 g water 3 %"


def ask(host: Host) -> None:
    """Ask for a sum and show its answer; a sum that cannot be read stays to be mended."""
    found: list[Answer] = []

    def accept(typed: str) -> None:
        kind, rest = _split(typed)
        p = host.pantry
        found.append(reckon(load_tables(), kind, rest, p.altitude_ft, p.people, p.units))

    def answered(typed: str) -> None:
        host.push_screen(Page(text(typed, found[-1])))

    host.push_screen(TypeLine(TITLE, EXAMPLE, accept=accept), given(answered))


def ask_methods(host: Host) -> None:
    """Ask of what there is too much, and show the ways to keep it."""
    found: list[Way] = []

    def accept(typed: str) -> None:
        p = host.pantry
        found[:] = methods(load_tables(), typed, p, p.altitude_ft)

    def answered(typed: str) -> None:
        lines = [typed, ""]
        for way in found:
            lines += [*told(way), ""]
        host.push_screen(Page("\n".join(lines)))

    title = "Of what is there too much? A food, and how much of it by weight or by the bushel."
    host.push_screen(TypeLine(title, "9 lb beets", accept=accept), given(answered))


def _split(typed: str) -> tuple[str, str]:
    """The sum meant and the rest of the line; two words may name it ("dry salt")."""
    words = typed.split()
    both = " ".join(words[:2]).casefold()
    count = 2 if both in ALSO else 1
    return " ".join(words[:count]), " ".join(words[count:])


def text(typed: str, found: Answer) -> str:
    """The page: the answer on top, then what stands beside it, then what to mind."""
    lines = [typed, "", *_figure(found.first), ""]
    for one in found.also:
        lines += _figure(one)
    lines += ["", *found.notes, *(f"Care: {one}" for one in found.cautions)]
    return "\n".join(lines)


def _figure(line: Line) -> list[str]:
    under = "; ".join(part for part in (line.formula, line.source) if part)
    said = f"{line.shown}  {line.what}"
    return [said, f"  {under}"] if under else [said]

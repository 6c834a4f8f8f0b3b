"""Using what the plan of the week takes: as much as it says stands in the question."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import ask_line
from pantry_tui.app.screens.meant import about
from pantry_tui.app.widgets.line import Line
from pantry_tui.core.amounts import amount_of
from pantry_tui.core.text import singular
from pantry_tui.errors import BadInput
from pantry_tui.services.rows import Done, Take
from pantry_tui.services.stock import act
from pantry_tui.services.stock.rows import DueRow

if TYPE_CHECKING:
    from pantry_tui.app.screens.acting import Acting


def offered(take: Take | None, row: DueRow) -> str:
    """What the plan takes of a row, as it is typed: `1.25 lb`, `4`; at most all that is left. ""
    where it takes none of it, or whole containers."""
    if take is None or not take.amount:
        return ""
    much = amount_of(take.amount)
    if singular(much.unit or "pieces") == singular(row.left.unit) and much.number > row.left.amount:
        return "all"
    # A bare half would be half of what is left.
    return take.amount if much.unit or much.number.denominator == 1 else f"{take.amount} pieces"


def ask_several(acting: Acting, line: Line, take: Take) -> None:
    """The plan takes several containers of the line: all are used, unless fewer are said."""

    def drawn(typed: str) -> Done:
        refs = take.containers[: count_in(typed, take.count)]
        # What was shown of a row holds until the first of it is taken.
        first, *rest = [replace(line, ref=ref) for ref in refs]
        return acting.do([first, *(replace(one, row=None) for one in rest)], act.use)

    title = f"How many of the {take.count}? ({about([line])})"
    ask_line(acting.screen, title, "1", drawn, value=str(take.count))


def count_in(typed: str, most: int) -> int:
    """("2", 3) -> 2. Raises BadInput."""
    if not typed.isdecimal() or not 1 <= int(typed) <= most:
        raise BadInput(f"write how many, 1 to {most}.")
    return int(typed)

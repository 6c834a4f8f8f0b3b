"""What acting on lines says and reads: which containers, of what a question is, how many."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import wraps
from typing import Any

from pantry_tui.app.format import clip
from pantry_tui.app.widgets.line import Key, Line, stands_for
from pantry_tui.core.vessels import Vessel, vessel_of
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import repack
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import act
from pantry_tui.services.stock.rows import DueRow

#: How it is written who sits at the table when, in each of its forms.
WHO_EATS = (
    "Who eats when? Write 6 from 24 dec to 2 jan (so many in all), 8 guests on sunday (beside "
    "you), away 24 dec to 27 dec, or usual on friday."
)


@wraps(act.ready)
def all_ready(p: Pantry, ref: str, **more: Any) -> Done:
    return act.ready(p, ref.partition("/")[0], **more)


@wraps(repack.ready_into)
def into(p: Pantry, ref: str, **more: Any) -> Done:
    return repack.ready_into(p, ref.partition("/")[0], **more)


def said_line(typed: str) -> dict[str, Any]:
    return {"line": typed} if typed else {}


def refs_of(lines: Sequence[Line], number: int) -> list[str]:
    """The containers that are meant: one of each line, or `number` of the only one.

    Raises Refused when fewer are there.
    """
    row = lines[0].row
    if number == 1 or len(lines) > 1 or row is None:
        return [line.ref for line in lines]
    if number > row.count:
        raise Refused(f"Only {row.count} of {row.code} {row.food} stand here in this state.")
    return list(row.container_ids[:number])


def pieces_of(row: DueRow | None) -> int:
    """How many pieces lie there that are taken one by one: eggs, heads of cabbage; 0 of anything
    else."""
    if row is None or row.left.unit != "pieces" or row.left.amount < 2:
        return 0
    eggs = row.food.endswith("eggs") and "hard" not in row.food
    loose = vessel_of(row.method, row.size, "", whole=eggs) is Vessel.PIECES
    return int(row.left.amount) if loose else 0


def told_of(line: Line | None, ref: str) -> Line | None:
    """The line that a sign is told of: that of `ref`, where a lid code was typed, else the line of
    the cursor. What was put up and is gone from here, as a jar that was given away, has none of its
    own and is told of all the same."""
    if not ref:
        return line
    if line is None or not stands_for(line, ref):
        return Line(Key(), (), ref)
    return replace(line, ref=ref) if "/" in ref else line


def about(lines: Sequence[Line]) -> str:
    """What a question is about: `7C/4 strawberry jam`, or `3 marked lines`."""
    if len(lines) != 1:
        return f"{len(lines)} marked lines"
    return clip(f"{lines[0].ref} {lines[0].row.food if lines[0].row else ''}", 40).strip()


def counted(typed: str) -> tuple[int, str]:
    """("3 Aunt Sunniva") -> 3 and whom; (1, "Aunt Sunniva") where no number leads."""
    found = re.match(r"(\d{1,3})\s+(?:to\s+)?(?=\S)", typed)
    return (max(1, int(found[1])), typed[found.end() :]) if found else (1, typed)

"""Signs of spoilage, and where all of a batch is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.core.dates import say
from pantry_tui.core.text import clean

if TYPE_CHECKING:
    from pantry_tui.services.rows import Kept, SignAnswer, SignRow


def sign(said: SignAnswer) -> list[str]:
    """The verdict first, then what to do with it and where it must go."""
    lines = [f"{said.code}, {said.sign}: {said.verdict}."]
    lines += [f"do: {step}" for step in said.do]
    lines += [f"disposal: {step}" for step in said.disposal]
    lines += [f"why: {clean(one)}" for one in said.reasons]
    return lines + [f"source: {one}" for one in said.sources]


def signs(rows: Sequence[SignRow]) -> list[str]:
    """One sign a line."""
    return [
        f"{'/'.join(row.methods)} ({row.seal}): {row.sign}: {row.verdict}. {row.means}"
        for row in rows
    ] or ["No sign is tabled for that method."]


def recall(rows: Sequence[Kept]) -> list[str]:
    """One container a line."""
    lines = []
    for row in rows:
        when = f" on {say(row.ended)}" if row.ended else ""
        to = f" to {clean(row.to)}" if row.to else ""
        where = f" in {clean(row.place)}" if row.place else ""
        seen = f"; seen: {', '.join(row.signs)}" if row.signs else ""
        lines.append(f"{row.container}: {row.state}{where}{to}{when}{seen}")
    return lines

"""What an import brought."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from pantry_tui.core.text import clean
from pantry_tui.services.output.jsonable import plain
from pantry_tui.services.safekeeping.transfer import Merged


def data(found: Merged) -> dict[str, Any]:
    """Also `bad` and `asks`, as every import answers; a log has neither."""
    return {**plain(found), "bad": [], "asks": []}


def merged(found: Merged, only_said: bool) -> list[str]:
    """How much came, what both logs say differently, what to write on lids anew."""
    return [clean(line) for line in _lines(found, "would come" if only_said else "came")]


def _lines(found: Merged, came: str) -> Iterator[str]:
    many = f"{found.rows:,} event{'s' if found.rows != 1 else ''}"
    yield f"{many} {came}; batches put up among them: {found.batches:,}."
    if found.replaced:
        yield "They are the whole log: nothing was done here before."
    elif found.already:
        yield f"{found.already:,} were here already."
    yield from found.conflicts
    if found.relabel:
        yield "Write these lids anew (until then the old code asks which is meant):"
    for one in found.relabel:
        yield f"- {one.was} -> {one.code}: {one.containers} of {one.food}"

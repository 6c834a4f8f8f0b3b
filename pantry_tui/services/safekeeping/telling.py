"""What a restore or an import did, or would do, in sentences."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from pantry_tui.core.text import agreed, clean, counted

if TYPE_CHECKING:
    from pantry_tui.services.safekeeping.backup import Restored
    from pantry_tui.services.safekeeping.transfer import Merged

#: So many lost events are told one by one.
_TOLD = 12


def restored(found: Restored, only_said: bool) -> list[str]:
    """What is lost, what comes back, where the replaced file is."""
    would = "would have" if only_said else "has"
    said = [f"The store {found.path} {would} {events(found.events)}."]
    if found.back:
        said.append(f"{events(found.back)} that it did not have {_come(found.back)} back.")
    said += _lost(found)
    said += _lids(found, only_said)
    if found.kept:
        said.append(f"The file that was replaced is kept: {found.kept}")
    return [clean(line) for line in said]


def events(number: int) -> str:
    return counted(number, "events")


def _come(number: int) -> str:
    return "come" if number != 1 else "comes"


def _lost(found: Restored) -> Iterator[str]:
    if not found.lost:
        yield "Nothing that can be read in the present file is lost."
        return
    yield f"{events(len(found.lost))} booked since {'are' if len(found.lost) != 1 else 'is'} lost:"
    for one in found.lost[-_TOLD:]:
        yield f"- {one.says}"
    if len(found.lost) > _TOLD:
        yield f"- and {len(found.lost) - _TOLD:,} before that"


def _lids(found: Restored, only_said: bool) -> Iterator[str]:
    """Jars stand there that the store does not know: no other ever gets what is on their lids."""
    if not found.lids:
        return
    shown, more = found.lids[:_TOLD], len(found.lids) - _TOLD
    which = ", ".join((*shown, *([f"{more:,} more"] if more > 0 else [])))
    are = "would no longer be" if only_said else "are no longer"
    yield (
        f"These codes stand on lids and {are} in the store: {which}. Put up again what stands "
        "there, and write the new code on its lid; no code is given twice."
    )


def merged(found: Merged, only_said: bool) -> list[str]:
    """How much came, what both logs say differently, what to write on lids anew."""
    return [clean(line) for line in _lines(found, "would come" if only_said else "came")]


def _lines(found: Merged, came: str) -> Iterator[str]:
    yield f"{events(found.rows)} {came}; batches put up among them: {found.batches:,}."
    if found.replaced:
        yield "They are the whole log: nothing was done here before."
    elif found.already:
        yield f"{found.already:,} {agreed(found.already, 'was', 'were')} here already."
    yield from found.conflicts
    if found.relabel:
        yield "Write these lids anew (until then the old code asks which is meant):"
    for one in found.relabel:
        yield f"- {one.was} -> {one.code}: {one.containers} of {one.food}"

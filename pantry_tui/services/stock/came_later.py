"""What came into a place after a power cut, as the records have it: a shelf that is written down
on the evening after a cut was there in the night, and its day says that it was not."""

from __future__ import annotations

from pantry_tui.core.model import DAY_MIN, EVER, Cut, Place
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.lines import inside

#: How soon after a cut what is written down may have stood there already; a choice of this
#: program.
_SOON_MIN = 7 * DAY_MIN


def came_later(p: Pantry, place: Place, cut: Cut) -> str:
    """One sentence that names what was put up there while the power was off, or within a week
    after, and so is not judged by all of the cut; "" where there is none."""
    within, start, end = inside(p, place.id), cut.start.first, cut.end.last
    found = {
        p.stock.batches[one.batch].code
        for one in p.stock.containers.values()
        if one.here
        and one.turns[0].place in within
        and (end if cut.start == EVER else start) < one.turns[0].when.first <= end + _SOON_MIN
    }
    if not found:
        return ""
    codes = ", ".join(sorted(found))
    return (
        f"Not judged by all of it, because the record says that it was put up later: {codes}. If "
        "any of it stood there before, book nothing yet: put its day right first, or take it back "
        "and say its hour (`putup --at`), and ask again."
    )

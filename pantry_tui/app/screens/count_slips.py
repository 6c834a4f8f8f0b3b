"""More is counted than was ever put up: most often a slip of a digit, so it is asked about."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from pantry_tui.app.format import clip
from pantry_tui.app.screens.ask import Choose
from pantry_tui.core.text import agreed
from pantry_tui.services.rows import Difference

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

MEND, IT_IS_SO = "back to the count, to mend it", "it is so: book them as found"
#: So many of them are named.
FEW = 4


def ask_slips(
    host: Host, found: Sequence[Difference], book: Callable[[], None], back: Callable[[], None]
) -> None:
    """Whether the count is so: it is booked then, and at once where there is nothing to ask."""
    slips = [one for one in found if one.ever is not None]
    if not slips:
        book()
        return
    named = "; ".join(
        f"{one.seen} of {one.code} {clip(one.food, 30)} are counted, and {one.ever} "
        f"{agreed(one.ever or 0, 'was', 'were')} ever put up"
        for one in slips[:FEW]
    )
    rest = f"; {len(slips) - FEW} more" if len(slips) > FEW else ""
    question = Choose(f"{named}{rest}. Is that so?", (MEND, IT_IS_SO), sure=True)
    host.push_screen(question, lambda got: book() if got == IT_IS_SO else back())

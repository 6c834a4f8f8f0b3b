"""What is moved into a freezer: does it go in fresh, to be frozen there now?"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from pantry_tui.app.host import Host, saw
from pantry_tui.app.screens.ask import Choose, given
from pantry_tui.app.screens.meant import about, refs_of
from pantry_tui.app.widgets.line import Line
from pantry_tui.services.stock import freezing

if TYPE_CHECKING:
    from pantry_tui.services.rows import Done

FRESH = "yes: it is frozen food from today on, with a lid code of its own"
AS_IT_IS = "no: it is frozen already, or only stands there: its days stay"


def ask_fresh(
    host: Host,
    lines: Sequence[Line],
    to: str,
    number: int,
    move: Callable[[], None],
    freeze: Callable[[Callable[[], Done]], None],
) -> None:
    """Asked where a move alone would leave it open, since that makes nothing later; then it is
    moved, or what freezes it is done."""
    p, shown = host.pantry, saw(lines[0].row, freezing.freeze)

    def answered(how: str) -> None:
        if how == FRESH:
            freeze(lambda: freezing.freeze(p, refs_of(lines, number), to, **shown))
        else:
            move()

    if not any(freezing.may_freeze(p, line.ref, to) for line in lines):
        move()
        return
    title = f"Does it go in fresh, to be frozen there now? ({about(lines)})"
    host.push_screen(Choose(title, (FRESH, AS_IT_IS)), given(answered))

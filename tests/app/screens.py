"""What the tests ask of a list on the screen."""

from __future__ import annotations

from collections.abc import Sequence

from textual.pilot import Pilot

from pantry_tui.app.widgets.line import Line
from pantry_tui.app.widgets.linelist import LineList


def table(pilot: Pilot[None]) -> LineList:
    """The list of the screen that is shown."""
    return pilot.app.screen.query_one(LineList)


def all_lines(pilot: Pilot[None]) -> Sequence[Line]:
    """Every line of it, as no screen ever asks for them."""
    source = table(pilot).source
    return source.lines(0, source.total)


def painted(pilot: Pilot[None]) -> str:
    """What stands on the screen, as text."""
    return "\n".join(
        "".join(segment.text for segment in strip)
        for strip in pilot.app.screen._compositor.render_strips()
    )

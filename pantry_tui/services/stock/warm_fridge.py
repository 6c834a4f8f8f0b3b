"""What is opened goes into a refrigerator: said before it is, where that was read as too warm."""

from __future__ import annotations

from pantry_tui.core.dates import say
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.weather import too_warm
from pantry_tui.core.model import Turn
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import Climate, State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.drawing import opened_in
from pantry_tui.services.stock.pick import containers_named


def said_before(p: Pantry, ref: str) -> str:
    """ "The fridge, in which it goes, measured 52 F on ...", where what is good shut would not be
    once it is open; "" where nothing stands against opening it."""
    one = containers_named(p, ref)[0]
    if one.state is not State.SEALED or one.vessel is not Vessel.CLOSED:
        return ""
    place = p.places.get(opened_in(p, one, None) or one.place)
    if place is None or place.climate is not Climate.FRIDGE or place.reading is None:
        return ""
    if not too_warm(place.climate, place.reading.temp_f) or not p.judge(one).usable:
        return ""
    after = p.judge_as(one, Turn(p.clock.now, "", place.id, State.OPEN))
    if after.verdict not in UNFIT and after.verdict is not Verdict.UNKNOWN:
        return ""
    read_on = say(place.reading.when.day)
    return (
        f"Opened it goes into {p.place_paths()[place.id]}, which measured "
        f"{place.reading.temp_f:g} F on {read_on}: it would be {after.verdict.said} there. Read "
        "the place again first, if it is cold by now."
    )

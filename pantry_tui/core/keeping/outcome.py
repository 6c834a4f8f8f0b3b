"""What power cuts do to a container, by the published table (core.safety.outage)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.keeping.power import Struck, struck
from pantry_tui.core.keeping.reckoning import HOT_F, HOT_MIN, WARM_MIN, Reckoning, Warm, packed
from pantry_tui.core.keeping.weather import COLD_F
from pantry_tui.core.model import Place, When
from pantry_tui.core.safety.outage import (
    STRICTNESS,
    Action,
    Cut,
    OutageRule,
    Triage,
    after_cut,
    hold_hours,
    perishes,
)


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one blackout did: `day` is the earliest day on which it may have met the container,
    `triage` the worst answer of the table, `said` the sentence."""

    day: date
    triage: Triage
    said: str


def after_cuts(reckoning: Reckoning, places: Mapping[str, Place], now: When) -> list[Outcome]:
    """The outcome of every blackout that met the container; what is only charged to the two hours
    is added to the warm minutes of the reckoning."""
    found = []
    for one in struck(reckoning.spans, places, now):
        rows = reckoning.book.cuts()
        states = sorted({state for span in one.here for state in reckoning.states(span)})
        food = packed(reckoning.batch.food, reckoning.batch, all(span.opened for span in one.here))
        method = reckoning.batch.method
        if any(perishes(food, method, state, one.climate, rows) for state in states):
            reckoning.warm += _charges(one)
        if one.late and one.stayed <= _allowed(one):
            continue
        answers = [
            after_cut(food, method, state, cut, rows) for state in states for cut in _known(one)
        ]
        worst = max(answers, key=_strictness)
        if worst.action != Action.KEEP:
            found.append(Outcome(one.day, worst, _sentence(one, worst)))
    return found


def _strictness(triage: Triage) -> tuple[int, int]:
    """What nobody knows stands between what may be used and what must go."""
    known = triage.action in tuple(Action)
    return STRICTNESS.index(Action(triage.action)) if known else 2, 0


def _allowed(one: Struck) -> int:
    return HOT_MIN if _hottest(one) > HOT_F else WARM_MIN


def _hottest(one: Struck) -> float:
    return max((piece.cut.max_temp_f or 0.0 for piece in one.blackout.pieces), default=0.0)


def _known(one: Struck) -> list[Cut]:
    """What is known of it, in the words of the table: all its hours, the emptiest it was said to
    be, and each of the warmest readings and looks at the ice."""
    hours = one.minutes / 60
    full = all(piece.cut.full is True for piece in one.blackout.pieces)
    seen = dict.fromkeys((piece.cut.max_temp_f, piece.cut.ice) for piece in one.blackout.pieces)
    return [Cut(one.climate, hours, full, warmest, ice) for warmest, ice in seen]


def _charges(one: Struck) -> list[Warm]:
    """The minutes in which it may have been above 40 °F: all, where that was read; else what goes
    beyond the hours that a shut door holds; all of it for what came when it was off already."""
    hot = _hottest(one)
    full = all(piece.cut.full is True for piece in one.blackout.pieces)
    held = 0 if hot > COLD_F or one.late else round(hold_hours(one.climate, full) * 60)
    unread = [piece.cut for piece in one.blackout.pieces if piece.cut.max_temp_f is None]
    # Ice that is left in it says that it never was above 40 °F (USDA FSIS; FDA).
    if any(cut.ice is not True for cut in unread) or hot > COLD_F:
        begins = one.blackout.start + held
        where = f"Without power, {hot:g} F read" if hot > COLD_F else "Without power"
        return [
            Warm(max(start, begins), end, one.day, hot or COLD_F + 1, None, where)
            for start, end in one.times
            if end > max(start, begins)
        ]
    return []


def _sentence(one: Struck, worst: Triage) -> str:
    hours = round(one.minutes / 60, 1)
    return f"Power cut of {hours:g} h ({dates.say(one.blackout.day)}): {worst.action}. " + " ".join(
        worst.reasons
    )


def rules_of(outcomes: Sequence[Outcome]) -> tuple[OutageRule, ...]:
    """The rows they rest on."""
    return tuple(dict.fromkeys(rule for one in outcomes for rule in one.triage.rules))

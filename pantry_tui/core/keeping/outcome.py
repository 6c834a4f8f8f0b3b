"""What power cuts do to a container, by the published table (core.safety.outage)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.packs import packed
from pantry_tui.core.keeping.power import Struck, struck
from pantry_tui.core.keeping.reckoning import Reckoning
from pantry_tui.core.keeping.warm import HOT_F, HOT_MIN, WARM_MIN, Warm
from pantry_tui.core.model import EVER, FoodFacts, Place, When
from pantry_tui.core.safety.outage import (
    LOOK,
    Action,
    Cut,
    Triage,
    after_cut,
    hold_hours,
    perishes,
)
from pantry_tui.core.words import COLD_F, State

#: What nobody knows stands between what may be used and what must go.
_MILDEST_FIRST = (Action.KEEP, Action.REFREEZE, Action.USE_NOW, LOOK, Action.DISCARD)


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one blackout did: `day` is the earliest day on which it may have met the container,
    `triage` the worst answer of the table, `said` the sentence."""

    day: date
    triage: Triage
    said: str


def after_cuts(reckoning: Reckoning, places: Mapping[str, Place], now: When) -> list[Outcome]:
    """The outcome of every blackout that left its mark; what is only charged to the two hours is
    added to the warm minutes of the reckoning. What came when the power was off already and stood
    there for no more than two hours is judged by those alone."""
    found = []
    met = list(struck(reckoning.spans, places, now))
    if met:
        from pantry_tui.core.keeping.without_cold import across  # few containers met a cut

        met += across(reckoning.spans, places, now, tuple(reckoning.warm))
    for one in met:
        # Hours of another climate are no minutes above 40 °F in this one.
        if one.counts in (None, one.minutes) and _spoils(reckoning, one):
            reckoning.warm += _charges(one)
        if one.late and one.stayed <= _allowed(one):
            continue
        worst = _answer(reckoning, one)
        if worst.action != Action.KEEP:
            found.append(Outcome(one.day, worst, _sentence(one, worst)))
    return found


def _food(reckoning: Reckoning, one: Struck) -> FoodFacts:
    opened = all(span.opened for span in one.here)
    return packed(reckoning.batch.food, reckoning.batch, opened)


def _states(reckoning: Reckoning, one: Struck) -> list[State]:
    return sorted({state for span in one.here for state in reckoning.states(span)})


def _spoils(reckoning: Reckoning, one: Struck) -> bool:
    food, rows = _food(reckoning, one), reckoning.book.cuts()
    method = reckoning.batch.method
    return any(
        perishes(food, method, state, one.climate, rows) for state in _states(reckoning, one)
    )


def _answer(reckoning: Reckoning, one: Struck) -> Triage:
    """The worst that the table says of it."""
    food, rows = _food(reckoning, one), reckoning.book.cuts()
    method = reckoning.batch.method
    answers = [
        after_cut(food, method, state, cut, rows)
        for state in _states(reckoning, one)
        for cut in _known(one)
    ]
    return max(answers, key=lambda answer: _MILDEST_FIRST.index(answer.action))


def _allowed(one: Struck) -> int:
    return HOT_MIN if any(warm > HOT_F for warm in _read(one)) else WARM_MIN


def _read(one: Struck) -> list[float]:
    """The warmest that was read in each of its cuts."""
    warmest = (piece.cut.max_temp_f for piece in one.blackout.pieces)
    return [warm for warm in warmest if warm is not None]


def _known(one: Struck) -> list[Cut]:
    """What is known of it, in the words of the table: all its hours, the emptiest it was said to
    be, and each of the warmest readings and looks at the ice."""
    hours = (one.minutes if one.counts is None else one.counts) / 60
    full = all(piece.cut.full is True for piece in one.blackout.pieces)
    seen = dict.fromkeys((piece.cut.max_temp_f, piece.cut.ice) for piece in one.blackout.pieces)
    return [Cut(one.climate, hours, full, warmest, ice) for warmest, ice in seen]


def _charges(one: Struck) -> list[Warm]:
    """The minutes in which it may have been above 40 °F: all, where that was read; else what goes
    beyond the hours that a shut door holds, also while the power was on again for a moment, and,
    for what came when it was off already, all that it stood there without; none where it was never
    read so warm, or ice was left."""
    warmest = max(_read(one), default=COLD_F)
    if warmest > COLD_F:
        whole = (one.blackout.start, one.blackout.end)
        return _warm(one, [whole], warmest, f", {warmest:g} F read")
    cuts = [piece.cut for piece in one.blackout.pieces]
    if all(cut.max_temp_f is not None or cut.ice for cut in cuts):
        return []
    full = all(cut.full is True for cut in cuts)
    held = round(hold_hours(one.climate, full) * 60)
    beyond = one.blackout.held_until(held), one.blackout.end
    return _warm(one, [beyond, *(one.blackout.off() if one.late else [])], COLD_F)


def _warm(
    one: Struck, warm: Sequence[tuple[int, int]], warmth: float, read: str = ""
) -> list[Warm]:
    """What of these minutes it stood there."""
    return [
        Warm(max(start, begins), min(end, ends), one.day, warmth, None, f"Without power{read}")
        for start, end in one.times
        for begins, ends in warm
    ]


def _sentence(one: Struck, worst: Triage) -> str:
    known = one.blackout.start > EVER.last
    length = f"{round(one.minutes / 60, 1):g} h" if known else "unknown length"
    day = one.blackout.day if known else one.day
    return f"Power cut of {length} ({dates.say(day)}): {worst.action}. " + " ".join(worst.reasons)

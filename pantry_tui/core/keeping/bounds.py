"""How what bounds an assessment does: what it was made of, or what its note says that it is."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from enum import StrEnum

from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.ladder import Assessment, worse
from pantry_tui.core.words import Verdict

#: What makes of a jar that may only have been filled over one that was processed.
RECORD_IT = "Record how it was processed; if it was not, it is for the refrigerator."


class How(StrEnum):
    """How a part bounds what was made of it."""

    MADE_OF = "made of"  # another thing now: fit then or not
    RUNS_ON = "runs on"  # another thing, but nothing that was done to it ends a safety limit
    REFILLED = "refilled"  # another name, and no process told: in another jar, as far as is known
    GOES_ON = "goes on"  # the same food, kept in the same way


@dataclass(frozen=True, slots=True)
class Bound:
    """What a part says of what was made from it: "2A/1", its assessment as it goes on, or as it
    was on the day it was taken."""

    name: str
    part: Assessment
    how: How = How.MADE_OF
    used: int = 0  # minutes of the two hours out of the cold, which no packing gives back
    left: int | None = None  # of its days, where the freezer holds them back until it is thawed


def bounded(own: Assessment, bounds: Sequence[Bound], taken: date) -> Assessment:
    """Its own assessment, no milder than any part allows; `taken` is the day it was made."""
    for one in bounds:
        if one.how is How.GOES_ON:
            own = _goes_on(own, one)
        elif one.how is How.RUNS_ON:
            own = _running(own, one)
        elif one.how is How.REFILLED:
            own = _refilled(own, one)
        else:
            own = _thawed(_made_of(own, one, taken), one)
    return own


def stricter(own: Assessment, other: Assessment, why: str) -> Assessment:
    """Its own assessment, no milder than another one of it, which `why` says."""
    over = [day for day in (own.over_from, other.over_from) if day is not None]
    floor = worse(own.floor, other.floor)
    if other.fixed is not None:
        floor = worse(floor, other.fixed.verdict)
        if other.fixed.then is not None and other.fixed.until is not None:
            over.append(other.fixed.until + timedelta(days=1))
    discard = _earlier(own.discard_after, other.discard_after)
    why_none = own.why_no_discard or other.why_no_discard
    if discard is not None:
        why_none = (own if own.discard_after == discard else other).why_no_discard
    best = _earlier(own.best_by, other.best_by)
    again = [minute for minute in (own.again_at, other.again_at) if minute is not None]
    bound_by = (discard, best, floor, other.doubt) != (
        own.discard_after,
        own.best_by,
        own.floor,
        own.doubt,
    )
    return replace(
        own,
        discard_after=discard,
        best_by=best,
        floor=floor,
        doubt=own.doubt or other.doubt,
        in_progress=own.in_progress or other.in_progress,
        over_from=min(over, default=None),
        again_at=min(again, default=None),
        harmless=own.harmless and other.harmless,
        why_no_discard=why_none,
        reasons=(why, *own.reasons) if bound_by else own.reasons,
        rules=(*own.rules, *(rule for rule in other.rules if rule not in own.rules)),
        standing=tuple(dict.fromkeys((*own.standing, *other.standing))),
        facts_to=max(own.facts_to, other.facts_to),
    )


def _goes_on(own: Assessment, bound: Bound) -> Assessment:
    return stricter(own, bound.part, _from(bound))


def _made_of(own: Assessment, bound: Bound, taken: date) -> Assessment:
    judged = bound.part.on(taken)
    own = replace(own, facts_to=max(own.facts_to, bound.part.facts_to))
    if judged.usable:
        return own
    unfit = judged.verdict in UNFIT
    discard = taken - timedelta(days=1) if unfit else None
    return replace(
        own,
        floor=worse(own.floor, judged.verdict if unfit else Verdict.UNKNOWN),
        discard_after=_earlier(own.discard_after, discard),
        why_no_discard="" if unfit else own.why_no_discard,
        harmless=False,
        reasons=_told(own, bound),
    )


def _running(own: Assessment, bound: Bound) -> Assessment:
    """No later than the safety limit that runs on the part; how good it is, is its own."""
    both = _goes_on(own, bound)
    unfit = both.floor in UNFIT
    if (both.discard_after, both.over_from) == (own.discard_after, own.over_from) and not unfit:
        return own
    why = f"Nothing that was done to it ends the limit that ran. {_from(bound)}"
    return replace(
        own,
        discard_after=both.discard_after,
        over_from=both.over_from,
        floor=both.floor if unfit else own.floor,
        again_at=both.again_at,
        why_no_discard=both.why_no_discard if both.discard_after else own.why_no_discard,
        reasons=(why, *own.reasons),
        rules=both.rules,
        facts_to=both.facts_to,
    )


def _refilled(own: Assessment, bound: Bound) -> Assessment:
    """In the cold it is what it was, out of its jar. What was put on a shelf was processed before,
    or stands there open: nobody knows."""
    why = f"No process recorded: {bound.name} may only be in another jar."
    if own.spans and own.spans[0].climate.is_cold:
        return stricter(own, bound.part, f"{why} {_from(bound)}")
    ends = bound.part.discard_after is not None
    return replace(
        own,
        doubt=True,
        harmless=own.harmless and bound.part.harmless and not ends,
        reasons=(f"{why} {RECORD_IT}", *own.reasons),
        facts_to=max(own.facts_to, bound.part.facts_to),
    )


def _thawed(own: Assessment, bound: Bound) -> Assessment:
    """What the freezer held back runs on from the day it was thawed."""
    days = [span.thawed for span in own.spans if span.thawed is not None]
    if bound.left is None or not days:
        return own
    last = min(days) + timedelta(days=max(0, bound.left))
    if own.discard_after is not None and own.discard_after <= last:
        return own
    why = "The freezer held its days back, and gave none of them anew."
    return replace(
        own,
        discard_after=last,
        why_no_discard="",
        reasons=(f"{why} {_from(bound)}", *own.reasons),
        rules=(*own.rules, *(rule for rule in bound.part.rules if rule not in own.rules)),
    )


def _told(own: Assessment, bound: Bound) -> tuple[str, ...]:
    return (_from(bound), *own.reasons)


def _from(bound: Bound) -> str:
    why = bound.part.reasons[:1]
    return " ".join(("Made from", f"{bound.name}:", *why)) if why else f"Made from {bound.name}."


def suspected(own: Assessment, why: str) -> Assessment:
    """Something that was made of it is under suspicion: it is to be looked at too."""
    if not why:
        return own
    floor = worse(own.floor, Verdict.UNKNOWN)
    return replace(own, floor=floor, harmless=False, reasons=(why, *own.reasons))


def _earlier(one: date | None, other: date | None) -> date | None:
    return min((day for day in (one, other) if day is not None), default=None)

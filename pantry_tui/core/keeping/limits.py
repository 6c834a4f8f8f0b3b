"""Limits and verdicts: how long this container keeps, and what to do with it today.

Laws, tested over random histories (tests/core/test_limits.py, and against a slow second
evaluator in tests/core/test_second.py):

* safety: `discard_after` is the earliest of all safety limits that ever started running on the
  container; a later stay, sign or reading can add a limit and never takes one away, so no event
  moves it later. Cooler never lengthens it.
* quality: life is spent stay by stay, as a fraction of the published life in each climate (the
  time-temperature-tolerance way of reckoning, worked out on frozen foods by the USDA Western
  Regional Research Laboratory, Van Arsdel and Guadagni 1959; from memory); `best_by` is when
  the whole is spent. Warmer never lengthens it.
* what no publication covers is unknown, whatever came before or after.

The day made, opened or thawed is day 0; the last day is day 0 + N and is still good.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.rules import COOK_AT_ONCE, Rule, Rulebook
from pantry_tui.core.keeping.trouble import Trouble, aged, trouble
from pantry_tui.core.keeping.warmth import Life, closest, life, spoken
from pantry_tui.core.model import Batch, Container, Stay
from pantry_tui.core.words import SEVERITY, Acidity, Group, Kind, Method, State, Verdict

#: Within this many hours a jar of doubtful process may still be refrigerated, frozen or
#: processed again (USDA AIB 539, as the extension services repeat it).
RESCUE_DAYS = 1


@dataclass(frozen=True, slots=True)
class Judgement:
    """A verdict with its dates, its reasons and the rules they rest on. `until` is the last day
    on which the verdict stays what it is, None where no date will turn it."""

    verdict: Verdict
    best_by: date | None
    discard_after: date | None
    reasons: tuple[str, ...]
    rules: tuple[Rule, ...]
    until: date | None = None


@dataclass(frozen=True, slots=True)
class Limit:
    """The last good day, the rule that says so, day 0, and what the place's warmth did to it."""

    day: date
    rule: Rule
    start: date
    note: str = ""


def _end(start: date, rule: Rule) -> date:
    assert rule.use is not None
    return dates.add(start, rule.use, rule.unit)


def safety_limits(batch: Batch, stays: Sequence[Stay], book: Rulebook) -> Iterator[Limit]:
    """Every safety limit that ever started. A refused place counts as no days at all; a place
    too warm for the figures ends them on the day it became so."""
    started: dict[State, date] = {}
    for stay in stays:
        start = started.setdefault(stay.state, stay.since)
        found = spoken(batch, stay, book)
        refused = closest(found, batch, Kind.REFUSE)
        if refused is not None:
            yield Limit(stay.since - timedelta(days=1), refused, stay.since)
        limit = closest(found, batch, Kind.SAFETY)
        if limit is not None and limit.use is not None:
            yield Limit(_end(start, limit), limit, start)
            wrong = trouble(batch, stay, found, book)
            if wrong is not None and wrong.ends_safety:
                yield Limit(stay.since, limit, stay.since, wrong.text)
        if stay.state is State.THAWED and stay.thawed:
            yield Limit(start, COOK_AT_ONCE, start)
        for own in book.own_for(batch.food, batch.method, stay.state, stay.climate):
            if own.kind is Kind.SAFETY and own.use is not None:
                yield Limit(_end(start, own), own, start)


def safety_limit(batch: Batch, stays: Sequence[Stay], book: Rulebook) -> Limit | None:
    """The earliest of them."""
    return min(safety_limits(batch, stays, book), key=lambda limit: limit.day, default=None)


def quality_limit(batch: Batch, stays: Sequence[Stay], book: Rulebook) -> Limit | None:
    """When the whole quality life of a state is spent; the earliest over all states."""
    ends = (_spent(batch, state, stays, book) for state in dict.fromkeys(s.state for s in stays))
    return min((one for one in ends if one is not None), key=lambda one: one.day, default=None)


def spending(
    batch: Batch, state: State, stays: Sequence[Stay], book: Rulebook
) -> Iterator[tuple[Stay, Limit, float]]:
    """For each stay in `state` that has a figure: the stay, when life would end if it stayed
    there, and the part of life spent before it began."""
    spent = 0.0
    for stay, lived, until in _runs(batch, state, stays, book):
        end = _end(stay.since, lived.rule)
        whole = (end - stay.since).days * lived.share
        if spent == 0 and lived.share == 1:
            day = end
        else:
            day = stay.since + timedelta(days=math.floor(max(0.0, 1 - spent) * whole))
        # A stay that begins after life is spent does not bring it back.
        day = day if spent < 1 else min(day, stay.since)
        yield stay, Limit(day, lived.rule, stay.since, lived.note), spent
        if until is not None:
            spent += (until - stay.since).days / whole if whole > 0 else 1.0


def _runs(
    batch: Batch, state: State, stays: Sequence[Stay], book: Rulebook
) -> Iterator[tuple[Stay, Life, date | None]]:
    """Stays in `state` with a figure, each with the day it ended. Neighbours under the same
    figure and warmth are one, so that a reading that changes nothing changes no date."""
    run: tuple[Stay, Life] | None = None
    for stay in stays:
        lived = life(batch, stay, book) if stay.state is state else None
        if run is not None and lived is not None and _same(run[1], lived):
            continue
        if run is not None:
            yield *run, stay.since
        run = (stay, lived) if lived is not None else None
    if run is not None:
        yield *run, None


def _same(one: Life, other: Life) -> bool:
    return one.rule.id == other.rule.id and one.share == other.share


def _spent(batch: Batch, state: State, stays: Sequence[Stay], book: Rulebook) -> Limit | None:
    """The end of one state's life; once it was reached in an earlier stay, that day stands."""
    last: Limit | None = None
    for stay, limit, spent in spending(batch, state, stays, book):
        if last is not None and spent >= 1 and last.day <= stay.since:
            return last
        last = limit
    own = [
        Limit(_end(stay.since, rule), rule, stay.since)
        for stay in stays
        if stay.state is state
        for rule in book.own_for(batch.food, batch.method, stay.state, stay.climate)
        if rule.kind is Kind.QUALITY and rule.use is not None
    ]
    return min([*own[:1], *([last] if last else [])], key=lambda one: one.day, default=None)


def judge(
    batch: Batch, container: Container, stays: Sequence[Stay], book: Rulebook, today: date
) -> Judgement:
    """The verdict on one container today. Dates are both kinds, never mixed.

    `stays` are where it stood, in which state and how warm (core.keeping.exposure.stretches).
    """
    by_dates = _by_dates(batch, stays, book, today)
    return _with_signs(batch, container, by_dates)


def as_packed(batch: Batch, stays: Sequence[Stay]) -> Batch:
    """A pack under vacuum keeps the air out, and so has rules of its own until it is opened."""
    record = dict(batch.process)
    if record.get("vacuum", "no") == "no" or any(stay.state is State.OPEN for stay in stays):
        return batch
    extra = {"vacuum-packed"} | ({"vacuum-fish"} if batch.food.group is Group.FISH else set())
    return replace(batch, food=replace(batch.food, classes=batch.food.classes | extra))


def _by_dates(batch: Batch, stays: Sequence[Stay], book: Rulebook, today: date) -> Judgement:
    batch = as_packed(batch, stays)
    if batch.method is Method.BOILING_WATER and batch.food.acidity is Acidity.LOW_ACID:
        why = "Low-acid food in boiling water: spores live through it, so it is suspect unseen."
        return Judgement(Verdict.DO_NOT_TASTE, None, None, (why,), ())
    if batch.doubt:
        saved = rescued(batch, stays)
        if saved is None:
            return _doubtful(batch, today)
        stays = saved
    if batch.printed is not None and batch.method is Method.BOUGHT:
        return _dated(stays, batch.printed, None, ("The printed date.",), (), today)
    safety = safety_limit(batch, stays, book)
    if batch.made is None:
        return _undated(safety, spoken(batch, stays[-1], book))
    return _weigh(batch, stays, book, today, safety, quality_limit(batch, stays, book))


def _doubtful(batch: Batch, today: date) -> Judgement:
    """A process that no publication stands for gives no shelf date."""
    why = (*batch.doubt, batch.possible) if batch.possible else batch.doubt
    low_acid = batch.food.acidity is Acidity.LOW_ACID
    if batch.made is not None and today <= batch.made + timedelta(days=RESCUE_DAYS):
        return Judgement(Verdict.UNKNOWN, None, None, why, (), batch.made + timedelta(RESCUE_DAYS))
    return Judgement(Verdict.DO_NOT_TASTE if low_acid else Verdict.DISCARD, None, None, why, ())


def rescued(batch: Batch, stays: Sequence[Stay]) -> tuple[Stay, ...] | None:
    """Its stays if it went into the cold within a day, from then on as an opened jar."""
    if batch.made is None:
        return None
    by = batch.made + timedelta(days=RESCUE_DAYS)
    if not stays[-1].climate.is_cold or not any(s.climate.is_cold and s.since <= by for s in stays):
        return None
    first = next(i for i, stay in enumerate(stays) if stay.climate.is_cold)
    kept = stays[first:]
    if not all(stay.climate.is_cold for stay in kept):
        return None
    return tuple(
        replace(stay, since=batch.made if i == 0 else stay.since, state=State.OPEN)
        for i, stay in enumerate(kept)
    )


def _undated(safety: Limit | None, found: Sequence[Rule]) -> Judgement:
    if safety is not None:
        why = "Nobody knows when it was made, and a safety limit runs on it: judged as past it."
        return Judgement(Verdict.DISCARD, None, None, (why, safety.rule.wording), (safety.rule,))
    why = "Nobody knows when it was made: no date can be given."
    return Judgement(Verdict.UNKNOWN, None, None, (why,), tuple(found))


def _weigh(
    batch: Batch,
    stays: Sequence[Stay],
    book: Rulebook,
    today: date,
    safety: Limit | None,
    quality: Limit | None,
) -> Judgement:
    limits = [("Discard after", safety), ("Best by", quality)]
    used = [limit.rule for _, limit in limits if limit is not None]
    reasons = [_because(word, limit) for word, limit in limits if limit is not None]
    reasons += aged(batch, stays[-1], today)
    if not stays[-1].measured:
        reasons.append(f"{stays[-1].temperature_f:g} F is assumed for its place, not read.")
    best_by = quality.day if quality else None
    discard_after = safety.day if safety else None
    if safety and safety.rule.kind is Kind.REFUSE:
        return Judgement(Verdict.DISCARD, best_by, discard_after, tuple(reasons), tuple(used))
    over = discard_after is not None and today > discard_after
    doubted = _doubt(batch, stays, book, today)
    if doubted is not None:
        used += [rule for rule in doubted.rules if rule not in used]
        reasons += [one.wording for one in doubted.rules if one.wording not in doubted.text]
    verdict = None
    if doubted is not None and not over:
        verdict = Verdict.UNKNOWN
        reasons.insert(0, doubted.text)
    elif stays[-1].state is State.WORKING and not over:
        verdict = Verdict.TEND
        reasons.insert(0, "Still working: look at it, and mark it finished when it is.")
    if verdict is None:
        return _dated(stays, best_by, discard_after, tuple(reasons), tuple(used), today)
    return Judgement(verdict, best_by, discard_after, tuple(reasons), tuple(used), discard_after)


def _doubt(batch: Batch, stays: Sequence[Stay], book: Rulebook, today: date) -> Trouble | None:
    """Why no published figure covers the container's history.

    A stay of less than a day (moved on the day it came) is passed over, unless it is the last
    or its warmth was read off.
    """
    for index, stay in enumerate(stays):
        last = index + 1 == len(stays)
        left = today if last else stays[index + 1].since
        if stay.state is State.WORKING or (not last and left <= stay.since and not stay.measured):
            continue
        found = spoken(batch, stay, book)
        wrong = trouble(batch, stay, found, book)
        if wrong is not None:
            return wrong
        if not any(rule.use is not None for rule in found):
            text = f"No published figure for this, {stay.state} in a {stay.climate}."
            return Trouble(text, tuple(found))
    return None


def _because(word: str, limit: Limit) -> str:
    rule = limit.rule
    if rule.kind is Kind.REFUSE or rule.use is None:
        return rule.wording
    if limit.note and rule.kind is Kind.SAFETY:
        return f"{word} {dates.say(limit.day)}: {limit.note}"
    estimate = f" (an estimate: {limit.note})" if limit.note else ""
    return (
        f"{word} {dates.say(limit.day)}: {dates.span(rule.use, rule.unit)} from "
        f"{dates.say(limit.start)}{estimate}. {rule.wording}"
    )


def _with_signs(batch: Batch, container: Container, judged: Judgement) -> Judgement:
    """Signs only ever make a verdict worse; a suspect batch is looked at jar by jar."""
    for seen in container.signs:
        said = f"{seen.sign.capitalize()} ({dates.say(seen.day)})."
        judged = _no_better(judged, seen.verdict, said)
    doubted = SEVERITY.index(Verdict.UNKNOWN)
    bad = any(SEVERITY.index(seen.verdict) <= doubted for seen in container.signs)
    if batch.suspect and not (bad or container.looked):
        said = f"Look at every container of this batch: {batch.suspect}."
        judged = _no_better(judged, Verdict.UNKNOWN, said)
    return judged


def _no_better(judged: Judgement, verdict: Verdict, reason: str) -> Judgement:
    if verdict is Verdict.SOUND:
        return replace(judged, reasons=(*judged.reasons, f"Harmless: {reason}"))
    worse = min(judged.verdict, verdict, key=SEVERITY.index)
    return replace(judged, verdict=worse, reasons=(reason, *judged.reasons))


def soon_window(life_days: int) -> int:
    """How many days before a date food is eaten first: a quarter of its life, 1 to 30 days.
    A choice of this program, not a published figure."""
    return min(30, max(1, life_days // 4))


def _dated(
    stays: Sequence[Stay],
    best_by: date | None,
    discard_after: date | None,
    reasons: tuple[str, ...],
    used: tuple[Rule, ...],
    today: date,
) -> Judgement:
    """The verdict that dates alone give, and the last day on which it holds."""
    began = next(stay.since for stay in stays if stay.state is stays[-1].state)

    def soon(day: date) -> date:
        return day - timedelta(days=soon_window((day - began).days))

    verdict = Verdict.SOUND
    dated = [day for day in (best_by, discard_after) if day is not None]
    turns = [turn for day in dated for turn in (soon(day) - timedelta(days=1), day)]
    if discard_after is not None and today > discard_after:
        verdict = Verdict.DISCARD
    elif discard_after is not None and today >= soon(discard_after):
        verdict = Verdict.EAT_SOON
    elif best_by is not None and today > best_by:
        verdict = Verdict.PAST_BEST
    elif best_by is not None and today >= soon(best_by):
        verdict = Verdict.EAT_SOON
    until = min((day for day in turns if day >= today), default=None)
    return Judgement(verdict, best_by, discard_after, reasons, used, until)

"""Limits and verdicts: how long this container keeps, and what to do with it today.

Two laws, tested over random histories:

* safety: `discard_after` is the earliest of all safety limits that ever started running on the
  container; a later stay can add a limit and never takes one away, so no event moves it later.
* quality: life is spent stay by stay, as a fraction of the published life in each climate (the
  time-temperature-tolerance way of reckoning, worked out on frozen foods by the USDA Western
  Regional Research Laboratory, Van Arsdel and Guadagni 1959; from memory); `best_by` is when
  the whole is spent.

The day made, opened or thawed is day 0; the last day is day 0 + N and is still good.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.model import Batch, Container, Stay
from pantry_tui.core.rules import Rule, closeness, speaking
from pantry_tui.core.words import Acidity, Climate, Kind, Method, State, Verdict

RuleTable = Mapping[Method, Sequence[Rule]]

#: A refrigerator above this keeps nothing by refrigerator figures (FSIS, 40 °F or below).
FRIDGE_MAX_F = 40.0


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
class _Limit:
    day: date
    rule: Rule
    start: date


def _spoken(batch: Batch, stay: Stay, rules: RuleTable) -> list[Rule]:
    """The rules for one stay. An opened bag in the freezer keeps like a closed one."""
    table = rules.get(batch.method, ())
    found = speaking(table, batch.food, batch.method, stay.state, stay.climate)
    if not found and stay.state is State.OPEN and stay.climate is Climate.FREEZER:
        return speaking(table, batch.food, batch.method, State.SEALED, stay.climate)
    if not found and stay.state is State.THAWED and stay.climate is Climate.FREEZER:
        return speaking(table, batch.food, batch.method, State.SEALED, stay.climate)
    return found


def _too_warm(stay: Stay, spoken: Sequence[Rule]) -> bool:
    """A refrigerator warmer than its figures ask for: 40 °F, or 38 where the rule says so.

    Figures published at 36 or 37 °F are held to a place at 38 °F, the coldest that a household
    refrigerator is taken to be.
    """
    if stay.climate is not Climate.FRIDGE:
        return False
    asked = [r.temp_f_max for r in spoken if r.kind is Kind.SAFETY and r.temp_f_max is not None]
    return stay.temperature_f > min([FRIDGE_MAX_F, *(max(38.0, warm) for warm in asked)])


def warmth(method: Method, stay: Stay, rule: Rule) -> float:
    """By what part a place warmer than the rule's reference shortens quality; at most 1.

    Frozen above 0 °F: a quarter per +10 °F. Dried above its reference: half per +10 °F. Both are
    estimates for quality and never touch a safety date.
    """
    if stay.climate is Climate.FREEZER and stay.temperature_f > 0:
        return float(0.25 ** (stay.temperature_f / 10))
    reference = rule.temp_f_max
    if method is Method.DRIED and reference is not None and stay.temperature_f > reference:
        return float(0.5 ** ((stay.temperature_f - reference) / 10))
    return 1.0


def _closest(found: Sequence[Rule], batch: Batch, kind: Kind) -> Rule | None:
    """The closest current rule of that kind; where equally close, the one with the shortest life.

    data/keeping.csv marks as current only the figure in use, so a food's own row stands for it.
    """
    best = [rule for rule in found if rule.kind is kind]
    if not best:
        return None
    nearest = closeness(best[0], batch.food)
    level = [rule for rule in best if closeness(rule, batch.food) == nearest]
    return min(level, key=lambda rule: rule.days)


def _end(start: date, rule: Rule) -> date:
    assert rule.use is not None
    return dates.add(start, rule.use, rule.unit)


def safety_limit(batch: Batch, stays: Sequence[Stay], rules: RuleTable) -> _Limit | None:
    """The earliest safety limit that ever started; a refused place counts as no days at all."""
    limits: list[_Limit] = []
    started: dict[State, date] = {}
    for stay in stays:
        start = started.setdefault(stay.state, stay.since)
        spoken = _spoken(batch, stay, rules)
        refused = _closest(spoken, batch, Kind.REFUSE)
        if refused is not None and stay.climate is not Climate.FREEZER:
            limits.append(_Limit(stay.since - timedelta(days=1), refused, stay.since))
        limit = _closest(spoken, batch, Kind.SAFETY)
        if limit is not None and limit.use is not None:
            limits.append(_Limit(_end(start, limit), limit, start))
    return min(limits, key=lambda limit: limit.day, default=None)


def quality_limit(batch: Batch, stays: Sequence[Stay], rules: RuleTable) -> _Limit | None:
    """When the whole quality life is spent; None where the present stay has no figure."""
    ends: list[_Limit] = []
    for state in dict.fromkeys(stay.state for stay in stays):
        limit = _spent(batch, state, stays, rules)
        if limit is not None:
            ends.append(limit)
    return min(ends, key=lambda limit: limit.day, default=None)


def _spent(batch: Batch, state: State, stays: Sequence[Stay], rules: RuleTable) -> _Limit | None:
    """Quality of one state, life spent stay by stay. A stay that had no figure spends none,
    but is said so by the caller; the first day of the state is day 0."""
    spent = 0.0
    limit: _Limit | None = None
    for index, stay in enumerate(stays):
        if stay.state is not state:
            continue
        rule = _closest(_spoken(batch, stay, rules), batch, Kind.QUALITY)
        if rule is None or rule.use is None:
            continue
        share = warmth(batch.method, stay, rule)
        whole = (_end(stay.since, rule) - stay.since).days * share
        if spent == 0 and share == 1:
            day = _end(stay.since, rule)
        else:
            day = stay.since + timedelta(days=math.floor(max(0.0, 1 - spent) * whole))
        limit = _Limit(day, rule, stay.since)
        if index + 1 < len(stays) and whole > 0:
            spent += (stays[index + 1].since - stay.since).days / whole
    return limit


def judge(batch: Batch, container: Container, rules: RuleTable, today: date) -> Judgement:
    """The verdict on one container today. Dates are both kinds, never mixed."""
    stays = container.stays
    now = stays[-1]
    spoken = _spoken(batch, now, rules)
    if batch.method is Method.BOILING_WATER and batch.food.acidity is Acidity.LOW_ACID:
        why = "Low-acid food in boiling water: spores live through it, so it is suspect unseen."
        return Judgement(Verdict.DO_NOT_TASTE, None, None, (why,), ())
    safety = safety_limit(batch, stays, rules)
    quality = quality_limit(batch, stays, rules)
    if batch.printed is not None and batch.method is Method.BOUGHT:
        return _dated(now, batch.printed, None, ("The printed date.",), (), today)
    if batch.made is None:
        return _undated(safety, spoken)
    return _weigh(batch, stays, rules, today, safety, quality)


def _undated(safety: _Limit | None, spoken: Sequence[Rule]) -> Judgement:
    if safety is not None:
        why = "Nobody knows when it was made, and a safety limit runs on it: judged as past it."
        return Judgement(Verdict.DISCARD, None, None, (why, safety.rule.wording), (safety.rule,))
    why = "Nobody knows when it was made: no date can be given."
    return Judgement(Verdict.UNKNOWN, None, None, (why,), tuple(spoken))


def _weigh(
    batch: Batch,
    stays: Sequence[Stay],
    rules: RuleTable,
    today: date,
    safety: _Limit | None,
    quality: _Limit | None,
) -> Judgement:
    now = stays[-1]
    reasons: list[str] = []
    used: list[Rule] = []
    for word, limit in (("Discard after", safety), ("Best by", quality)):
        if limit is not None:
            used.append(limit.rule)
            reasons.append(_because(word, limit))
    best_by = quality.day if quality else None
    discard_after = safety.day if safety else None
    if safety and safety.rule.kind is Kind.REFUSE:
        return Judgement(Verdict.DISCARD, best_by, discard_after, tuple(reasons), tuple(used))
    over = discard_after is not None and today > discard_after
    unsure, doubted = _doubt(batch, stays, rules, today)
    if unsure:
        used += [rule for rule in doubted if rule not in used]
        reasons += [rule.wording for rule in doubted if rule.wording not in unsure]
    if unsure and not over:
        return Judgement(
            Verdict.UNKNOWN, best_by, discard_after, (unsure, *reasons), tuple(used), discard_after
        )
    if now.state is State.WORKING and not over:
        return Judgement(
            Verdict.TEND,
            best_by,
            discard_after,
            ("Still working: look at it, and mark it finished when it is.", *reasons),
            tuple(used),
            discard_after,
        )
    return _dated(now, best_by, discard_after, tuple(reasons), tuple(used), today)


def _doubt(
    batch: Batch, stays: Sequence[Stay], rules: RuleTable, today: date
) -> tuple[str, Sequence[Rule]]:
    """Why no published figure covers the container's history, or "".

    A stay of less than a day (moved on the day it came) is passed over, unless it is the last.
    """
    for index, stay in enumerate(stays):
        last = index + 1 == len(stays)
        left = today if last else stays[index + 1].since
        if stay.state is State.WORKING or (not last and left <= stay.since):
            continue
        spoken = _spoken(batch, stay, rules)
        refused = next((rule for rule in spoken if rule.kind is Kind.REFUSE), None)
        if refused is not None:
            return refused.wording, (refused,)
        if _too_warm(stay, spoken):
            return f"Stood at {stay.temperature_f:g} F: warmer than the published figures.", ()
        if not any(rule.use is not None for rule in spoken):
            return f"No published figure for this, {stay.state} in a {stay.climate}.", spoken
    return "", ()


def _because(word: str, limit: _Limit) -> str:
    rule = limit.rule
    if rule.kind is Kind.REFUSE or rule.use is None:
        return rule.wording
    return (
        f"{word} {dates.say(limit.day)}: {dates.span(rule.use, rule.unit)} from "
        f"{dates.say(limit.start)}. "
        f"{rule.wording}"
    )


def soon_window(life_days: int) -> int:
    """How many days before a date food is eaten first: a quarter of its life, 1 to 30 days.
    A choice of this program, not a published figure."""
    return min(30, max(1, life_days // 4))


def _dated(
    now: Stay,
    best_by: date | None,
    discard_after: date | None,
    reasons: tuple[str, ...],
    used: tuple[Rule, ...],
    today: date,
) -> Judgement:
    """The verdict that dates alone give, and the last day on which it holds."""

    def soon(day: date) -> date:
        return day - timedelta(days=soon_window((day - now.since).days))

    verdict, until = Verdict.SOUND, None
    turns: list[date] = []
    for day in (best_by, discard_after):
        if day is not None:
            turns += [soon(day) - timedelta(days=1), day]
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

"""The chain behind a verdict, so that a person can follow each date by hand."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from pantry_tui.core import dates
from pantry_tui.core.keeping.asked import only_asked
from pantry_tui.core.keeping.doubt import rescued, unsealed
from pantry_tui.core.keeping.exposure import Span, exposures
from pantry_tui.core.keeping.outcome import after_cuts
from pantry_tui.core.keeping.printed import is_last_safe
from pantry_tui.core.keeping.quality import Spent, spending
from pantry_tui.core.keeping.reckoning import Limit, Reckoning
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.keeping.shopfood import wide_ends
from pantry_tui.core.keeping.warm import westmost
from pantry_tui.core.model import Batch, Container, Place, When
from pantry_tui.core.safety.outage import OutageRule
from pantry_tui.core.words import Kind, Method

#: Stands before the day that a step comes to.
UNTIL = "so until"


def chain(
    batch: Batch,
    container: Container,
    places: Mapping[str, Place],
    book: Rulebook,
    now: When,
    where: Callable[[str], str],
    cite: Callable[[Rule | OutageRule], str],
) -> list[str]:
    """Where it stood in order, then every safety limit that started, then how quality was spent.

    `where` names a place, `cite` a rule's source.
    """
    spans: Sequence[Span] = exposures(batch, container, places, now)
    lines = [_span(span, where) for span in _alike(spans)]
    asked = only_asked(batch, spans)
    if batch.doubt:
        # No publication stands for its process, so none gives it a date but by the cold.
        lines += [f"Process: {why}" for why in batch.doubt]
        saved = spans if asked else rescued(batch, spans, book)
        if saved is None:
            return lines
        spans = saved
    reckoning = Reckoning(batch, spans, book, now, unsealed(batch, container, asked))
    reckoning.home = westmost(container, now)
    lines += [f"{one.said}" for one in after_cuts(reckoning, places, now)]
    over = reckoning.over(now.last)
    limits = [*reckoning.limits, *([over] if over is not None else [])]
    if over is None and reckoning.runs_out(now.last) is not None:
        limits = [one for one in limits if one.day <= now.day]  # it may not stand there so long
    lines += dict.fromkeys(_safety(limit, cite) for limit in limits)
    for state, lives in reckoning.lives().items():
        lines += [_quality(f"Quality, {state}", one, cite) for one in spending(lives)]
    lines += dict.fromkeys(
        _quality("Quality, shop food", one, cite) for one in wide_ends(reckoning)
    )
    return [*lines, *_printed(batch, reckoning, limits)]


def _printed(batch: Batch, reckoning: Reckoning, limits: Sequence[Limit]) -> Iterator[str]:
    """The date that is printed on a pack, where it counts: no safe day is before it."""
    day = batch.printed
    if batch.method is not Method.BOUGHT or day is None or any(one.day < day for one in limits):
        return
    what = "Safety and quality" if is_last_safe(batch, reckoning.sold) else "Quality"
    yield f"{what}: the printed date, {UNTIL} {dates.say(day)}."


def _quality(what: str, one: Spent, cite: Callable[[Rule], str]) -> str:
    rule, note = one.rule, one.stretch.life.note
    assert rule.use is not None
    before = f", {one.before:.0%} of it spent before" if one.before else ""
    note = f", {note}" if note else ""
    return (
        f"{what} from {dates.say(one.stretch.day)}: {dates.span(rule.use, rule.unit)} "
        f"published{note}{before}, {UNTIL} {dates.say(one.day)} if it stays. [{cite(rule)}]"
    )


def _alike(spans: Sequence[Span]) -> list[Span]:
    """Spans that differ only in their moments, once."""
    found: dict[tuple[object, ...], Span] = {}
    for span in spans:
        found.setdefault(span[2:], span)
    return list(found.values())


def _span(span: Span, where: Callable[[str], str]) -> str:
    how = "measured" if span.measured else "assumed"
    states = [
        word
        for word, so in (
            ("in progress", span.in_progress),
            ("open", span.opened),
            ("thawed", span.thawed is not None),
        )
        if so
    ]
    thawed = ", not thawed in a refrigerator" if span.fast else ""
    return (
        f"From {dates.say(span.day)}: {' and '.join(states) or 'sealed'} in {where(span.place)} "
        f"({span.climate}, {span.temperature_f:g} F {how}){thawed}."
    )


def _safety(limit: Limit, cite: Callable[[Rule | OutageRule], str]) -> str:
    rule = limit.rule
    source = f" [{cite(rule)}]" if rule is not None else ""
    if isinstance(rule, Rule) and rule.kind is Kind.REFUSE:
        return f"Safety: {rule.wording}{source}"
    if limit.text:
        return f"Safety: {limit.text}{source}"
    assert isinstance(rule, Rule)
    assert rule.use is not None
    return (
        f"Safety: {dates.span(rule.use, rule.unit)} from {dates.say(limit.start)}, {UNTIL} "
        f"{dates.say(limit.day)}.{source}"
    )

"""The chain behind a verdict, so that a person can follow each date by hand."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from pantry_tui.core import dates
from pantry_tui.core.keeping.limits import Limit, as_packed, rescued, safety_limits, spending
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.model import Batch, Stay
from pantry_tui.core.words import Kind


def chain(
    batch: Batch,
    stays: Sequence[Stay],
    book: Rulebook,
    where: Callable[[str], str],
    cite: Callable[[Rule], str],
) -> list[str]:
    """Stretches in order, then every safety limit that started, then how quality was spent.

    `stays` are already cut by the places' warmth; `where` names a place, `cite` a rule's source.
    """
    batch = as_packed(batch, stays)
    lines = [_stretch(stay, where) for stay in stays]
    if batch.doubt:
        # No publication stands for its process, so none gives it a date but by the cold.
        lines += [f"Process: {why}" for why in batch.doubt]
        stays = rescued(batch, stays) or ()
    lines += dict.fromkeys(_safety(limit, cite) for limit in safety_limits(batch, stays, book))
    for state in dict.fromkeys(stay.state for stay in stays):
        for stay, limit, spent in spending(batch, state, stays, book):
            rule = limit.rule
            assert rule.use is not None
            before = f", {spent:.0%} of it spent before" if spent else ""
            note = f", {limit.note}" if limit.note else ""
            lines.append(
                f"Quality, {state} from {dates.say(stay.since)}: {dates.span(rule.use, rule.unit)} "
                f"published{note}{before}, so until {dates.say(limit.day)} if it stays. "
                f"[{cite(rule)}]"
            )
    return lines


def _stretch(stay: Stay, where: Callable[[str], str]) -> str:
    how = "read" if stay.measured else "assumed"
    thawed = f", thawed in a {stay.thawed}" if stay.thawed == "microwave" else ""
    thawed = f", thawed in {stay.thawed}" if stay.thawed == "cold water" else thawed
    return (
        f"From {dates.say(stay.since)}: {stay.state} in {where(stay.place)} ({stay.climate}, "
        f"{stay.temperature_f:g} F {how}){thawed}."
    )


def _safety(limit: Limit, cite: Callable[[Rule], str]) -> str:
    rule = limit.rule
    if rule.kind is Kind.REFUSE:
        return f"Safety: {rule.wording} [{cite(rule)}]"
    if limit.note:
        return f"Safety: {limit.note} [{cite(rule)}]"
    assert rule.use is not None
    return (
        f"Safety: {dates.span(rule.use, rule.unit)} from {dates.say(limit.start)}, "
        f"so until {dates.say(limit.day)}. [{cite(rule)}]"
    )

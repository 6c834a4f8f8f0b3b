"""Why a container must go for a reason of its own, in the words of the log, and how such a one is
thrown away."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.ladder import Assessment, Judgement
from pantry_tui.core.keeping.outcome import Outcome
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.older import reason_of
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.safety.outage import Action
from pantry_tui.core.safety.signs import DISPOSAL
from pantry_tui.core.words import State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import OutageRow
from pantry_tui.services.stock.pick import name_of

#: How a reason ends that says itself that it is thrown away shut.
_SHUT = ("discard it unopened", "discard it closed")


def why_of(
    batch: Batch, container: Container, found: Assessment, judged: Judgement, cuts: list[Outcome]
) -> tuple[said.Reason, str]:
    """The reason for which it must be discarded: a sign that it showed, a power cut of before, how
    it was made, its date, else the sentence of the judge. `found` and `cuts` are what it is judged
    by."""
    shown = [seen for seen in container.signs if seen.verdict in UNFIT]
    if shown:
        words = shown[-1].sign
        return reason_of(words), words
    went = next((one for one in cuts if one.triage.action == Action.DISCARD), None)
    if went is not None:
        return said.Reason.POWER_CUT, went.said.partition(":")[0].lower().partition(" (")[0]
    if batch.doubt and found.fixed is not None and batch.method in LIDDED:
        return said.Reason.PROCESS, said.Reason.PROCESS.value
    dated = found.discard_after is not None and found.fixed is None and found.over_from is None
    if dated:
        return said.Reason.PAST_DATE, said.Reason.PAST_DATE.value
    first = judged.reasons[0] if judged.reasons else judged.verdict.said
    return said.Reason.OTHER, first.split(". ")[0].rstrip(".")


def thrown_how(p: Pantry, container: Container, judged: Judgement) -> tuple[str, ...]:
    """How what must be discarded is thrown away, where that matters: by what it showed; shut and in
    two bags, where it may not even be tasted; and as the reason for it says."""
    if judged.verdict not in UNFIT:
        return ()
    from pantry_tui.services.lookup.sign_named import possible  # only what is thrown away needs it

    shown = {seen.sign for seen in container.signs if seen.verdict in UNFIT}
    routes = [one.disposal for one in possible(p, container) if one.words in shown]
    if routes:
        return DISPOSAL[routes[0]]
    if judged.verdict is Verdict.DO_NOT_TASTE:
        return DISPOSAL["bag"]
    batch = p.stock.batches[container.batch]
    if batch.method in PROCESSED and container.state is State.SEALED:
        told = [one for one in judged.reasons if any(word in one for word in _SHUT)]
        shut = f"{name_of(p, container)} was canned and is shut: discard it closed, in two bags."
        return tuple(told) or (shut,)
    return ()


def disposal(go: Sequence[OutageRow]) -> tuple[str, ...]:
    """How those are thrown away of which that matters, what is said of several once."""
    told: dict[tuple[str, ...], list[str]] = defaultdict(list)
    for row in go:
        if row.verdict in UNFIT and row.disposal:
            told[row.disposal].append(f"{row.code} {row.food}")
    return tuple(f"{', '.join(names)}: {' '.join(how)}" for how, names in told.items())

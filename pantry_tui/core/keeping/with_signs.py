"""What the signs on a container, and on others of its batch, make of its verdict."""

from __future__ import annotations

from pantry_tui.core import dates
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping import wording
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.ladder import Assessment, worse
from pantry_tui.core.model import Batch, Container, Seen
from pantry_tui.core.safety.caution import OWN
from pantry_tui.core.text import begun
from pantry_tui.core.words import SEVERITY, Verdict


def with_signs(batch: Batch, container: Container, judged: Assessment) -> Assessment:
    """Signs only ever make a verdict worse; a suspect batch is looked at jar by jar."""
    if not container.signs and not batch.suspect:
        return judged
    for seen in container.signs:
        said, own = f"{begun(seen.sign)} ({dates.say(seen.day)}).", _in_own_words(seen)
        if seen.verdict is Verdict.SOUND:
            judged = replace(judged, reasons=(*judged.reasons, f"Harmless: {said}"))
        elif (own or seen.verdict is Verdict.NEEDS_CARE) and _looked_since(container, seen):
            judged = replace(judged, reasons=(*judged.reasons, f"Looked at since: {said}"))
        elif own:
            name = f"{batch.code}/{container.number}"
            said = f"{said} If it shows nothing, `sign {name} looks sound`."
            judged = replace(without_days(judged), harmless=False)
            judged = no_better(judged, Verdict.UNKNOWN, said)
        else:
            # Of what nobody is sure after looking, that it is harmless is not known either.
            harmless = judged.harmless and seen.verdict is not Verdict.UNKNOWN
            judged = no_better(replace(judged, harmless=harmless), seen.verdict, said)
    doubted = SEVERITY.index(Verdict.UNKNOWN)
    bad = any(
        SEVERITY.index(seen.verdict) <= doubted and not _in_own_words(seen)
        for seen in container.signs
    )
    if batch.suspect and not (bad or container.looked):
        said = f"Look at every container of this batch: {batch.suspect}."
        judged = replace(without_days(judged), harmless=False)
        judged = no_better(judged, Verdict.UNKNOWN, said)
    return judged


def _in_own_words(seen: Seen) -> bool:
    """Whether it is kept as somebody said it, as no sign is like it."""
    return seen.verdict is Verdict.UNKNOWN and seen.sign.startswith(OWN)


def _looked_since(container: Container, seen: Seen) -> bool:
    """Whether it was looked at when that was surely seen: a look before it says nothing of it."""
    return container.looked is not None and container.looked_at >= seen.at


def no_better(judged: Assessment, verdict: Verdict, reason: str) -> Assessment:
    judged = without_days(judged) if verdict in UNFIT else judged
    return replace(judged, floor=worse(judged.floor, verdict), reasons=(reason, *judged.reasons))


def without_days(judged: Assessment) -> Assessment:
    """A day beside what may not be eaten would say that it may be eaten until then."""
    days = (wording.BEST, wording.DISCARD)
    return replace(judged, reasons=tuple(x for x in judged.reasons if not x.startswith(days)))

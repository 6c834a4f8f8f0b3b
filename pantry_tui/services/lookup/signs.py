"""Something seen, smelled or heard on a container: the verdict, what to do, how to dispose."""

from __future__ import annotations

from pantry_tui.core import dates
from pantry_tui.core.keeping.limits import as_packed
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import standing
from pantry_tui.core.model import Container
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.signs import (
    DISPOSAL,
    DISPOSAL_SOURCES,
    Sign,
    find_sign,
    likely_sign,
    near_signs,
    signs_for,
    verdict_of,
)
from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import BadInput
from pantry_tui.reference.names import method_named
from pantry_tui.reference.signs import load_signs
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Kept, SignAnswer, SignRow
from pantry_tui.services.stock.pick import batch_named, containers_named, name_of
from pantry_tui.store import log

#: What a person says of a container that was looked at and shows nothing.
LOOKED = ("looked", "sound", "looks sound", "nothing", "fine", "ok")
#: These verdicts and disposal routes are this project's reading of the sources, on the strict side.
READING = "Verdict and disposal are this program's strict reading of the source."


def possible(p: Pantry, container: Container) -> list[Sign]:
    """The signs that can be seen on a container, worst first."""
    batch = p.stock.batches[container.batch]
    food = as_packed(batch, container.state is State.OPEN).food
    return signs_for(load_signs(), batch.method, food, container.state is not State.SEALED)


def possible_words(p: Pantry, ref: str) -> list[str]:
    """Their words, for a list to choose from; the last one is that nothing shows."""
    container = containers_named(p, ref)[0]
    return [*dict.fromkeys(sign.words for sign in possible(p, container)), "looks sound"]


@booked
def mark(p: Pantry, ref: str, text: str) -> SignAnswer:
    """Record a sign on the oldest container unless one is named, and say what it means.

    Raises BadInput naming near signs when nothing of that kind is known for this method.
    """
    container = containers_named(p, ref)[0]
    batch = p.stock.batches[container.batch]
    name = name_of(p, container)
    if " ".join(text.lower().split()) in LOOKED:
        p.book(said.Sign(batch.id, (container.id,), "looked", "looks sound", Verdict.SOUND))
        judged = p.judge(p.stock.containers[container.id])
        return SignAnswer(name, "looks sound", judged.verdict, (), (), (), judged.reasons)
    known = possible(p, container)
    sign = find_sign(known, text) or likely_sign(known, text)
    if sign is None:
        near = "; ".join(one.words for one in near_signs(known, text)) or "none"
        raise BadInput(
            f"{text[:60]!r} is no sign known for {batch.method}; near it: {near}. If in doubt, "
            "do not taste it: discard."
        )
    verdict = verdict_of(sign, batch.method, batch.food, container.state is State.SEALED)
    suspect = f"{name} showed {sign.words} on {dates.say(p.today)}" if sign.suspect_batch else ""
    p.book(said.Sign(batch.id, (container.id,), sign.id, sign.words, verdict, suspect))
    return _answer(p, name, sign, verdict, suspect)


def _answer(p: Pantry, name: str, sign: Sign, verdict: Verdict, suspect: str) -> SignAnswer:
    said = [sign.means, READING]
    steps = list(sign.steps)
    if suspect:
        steps.append(
            "Look at every other container of this batch, also those given away: "
            f"pantry-tui recall {name.partition('/')[0]}."
        )
    if verdict in (Verdict.DO_NOT_TASTE, Verdict.DISCARD):
        said.append(CAUTION)
    sources = [f"{p.tables.sources[sign.source]} ({sign.trust})"]
    sources += [str(p.tables.sources[id_]) for id_ in DISPOSAL_SOURCES.get(sign.disposal, ())]
    disposal = DISPOSAL.get(sign.disposal, ())
    return SignAnswer(
        name,
        sign.words,
        verdict,
        tuple(steps),
        tuple(disposal),
        tuple(dict.fromkeys(sources)),
        tuple(said),
    )


def listing(method: str | None = None) -> list[SignRow]:
    """All signs, or those of one method. Raises BadInput for an unknown method."""
    how = method_named(method) if method else None
    return [
        SignRow(
            sign.id,
            tuple(m.value for m in sign.methods),
            sign.seal,
            sign.words,
            sign.means,
            sign.verdict.value,
            sign.steps,
            sign.disposal,
            str(sign.source),
            sign.trust.value,
        )
        for sign in load_signs()
        if how is None or how in sign.methods
    ]


def recall(p: Pantry, code: str) -> list[Kept]:
    """Where every container of a batch is or went, and to whom it was given."""
    batch = batch_named(p, code)
    given = _given(p, batch.id)
    return [
        Kept(
            name_of(p, container),
            container.state.value if container.here else container.fate,
            p.where(container) if container.here else "",
            given.get(container.id, ""),
            container.ended,
            tuple(seen.sign for seen in container.signs),
        )
        for container in sorted(p.containers_of(batch), key=lambda c: c.number)
    ]


def _given(p: Pantry, batch: str) -> dict[str, str]:
    """Container -> to whom it was given."""
    events = standing(log.of_batch(p.store.db, batch))
    gifts = (event.payload for event in events if isinstance(event.payload, said.Give))
    return {id_: gift.to for gift in gifts for id_ in gift.containers}

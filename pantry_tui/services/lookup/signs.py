"""Something seen, smelled or heard on a container: the verdict, what to do, how to dispose."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.limits import judge_fresh
from pantry_tui.core.log import payloads as said
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.of_all import OF_ALL
from pantry_tui.core.safety.out_of_the_cold import book_the_move, says_left_out
from pantry_tui.core.safety.own_words import OWN_ID
from pantry_tui.core.safety.signs import (
    DISPOSAL,
    DISPOSAL_SOURCES,
    THROWN,
    UNSURE,
    Sign,
    SignVerdict,
    find_sign,
    near_signs,
    verdict_of,
)
from pantry_tui.core.safety.sisters import (
    CULL,
    Found,
    Sisters,
    lies_loose,
    of_pile,
    of_sisters,
)
from pantry_tui.core.text import clean
from pantry_tui.core.words import SEVERITY, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.names import method_named
from pantry_tui.reference.signs import load_signs
from pantry_tui.services.lookup.sign_named import near_ones, possible, sign_named
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done, SignAnswer, SignRow
from pantry_tui.services.stock import tables
from pantry_tui.services.stock.named_in import held_with
from pantry_tui.services.stock.pick import (
    batch_named,
    containers_named,
    last_state,
    name_of,
    refuse_unless_alike,
)
from pantry_tui.services.stock.seen import At, still, when
from pantry_tui.services.stock.signed import still_to_name

#: What a person says of a container that was looked at and shows nothing.
LOOKED_WORDS = "looks sound"
LOOKED = ("looked", "sound", LOOKED_WORDS, "nothing", "fine", "ok")
#: These verdicts and disposal routes are this project's reading of the sources, on the strict side.
READING = "Verdict and disposal are this program's strict reading of the source."


class Choice(NamedTuple):
    """A sign that may be seen on a container; a harmless one changes nothing. `danger`: 0 for the
    worst that it may mean here."""

    words: str
    harmless: bool
    danger: int = len(SEVERITY)


def to_choose(p: Pantry, ref: str) -> list[Choice]:
    """The signs that this food in its state may show: first those that are said of it by its name
    (of hard cheese before those of dairy), then those of its kind, then those that are said of any,
    of each the worst first; harmless ones last, and that nothing shows."""
    container = _meant(p, ref)
    food = p.stock.batches[container.batch].food
    closed = last_state(container) is State.SEALED
    method = p.stock.batches[container.batch].method

    def danger(sign: Sign) -> int:
        return SEVERITY.index(verdict_of(sign, method, food, closed))

    def rank(sign: Sign) -> tuple[bool, bool, bool, int]:
        of_any, by_name = "*" in sign.foods, food.name in sign.foods
        return sign.verdict is SignVerdict.HARMLESS, of_any, not by_name, danger(sign)

    choices: dict[str, Choice] = {}
    for one in sorted(possible(p, container), key=rank):
        harmless = one.verdict is SignVerdict.HARMLESS
        choices.setdefault(one.words, Choice(one.words, harmless, danger(one)))
    return [*choices.values(), Choice(LOOKED_WORDS, False)]


def weigh(p: Pantry, ref: str, text: str) -> SignAnswer:
    """What a sign would mean; nothing is booked. Raises BadInput as `mark` does."""
    refuse_unless_alike(p, ref)
    container = _meant(p, ref)
    if _looked(text):
        says = (
            "Nothing shows: it was looked at, and what was said of it because of others of its "
            "batch is taken back. Its dates stay as they are.",
            CAUTION,
        )
        return SignAnswer(name_of(p, container), LOOKED_WORDS, Verdict.SOUND, (), (), (), says)
    sign = sign_named(p, container, text)
    payload, sisters = showing(p, (container,), sign, which=_which(p, ref))
    return _answer(p, container, sign, payload.verdict, sisters, text)


@booked
def mark(p: Pantry, ref: str, text: str, *, at: At | None = None, saw: str = "") -> SignAnswer:
    """Record a sign on the oldest container unless one is named, and say what it means; one that
    is used up or was given away may be named too, since its sisters are looked at then.

    Raises BadInput naming near signs when nothing of that kind is known for this method.
    """
    still(p, ref, saw)
    refuse_unless_alike(p, ref)
    container = _meant(p, ref)
    batch = p.stock.batches[container.batch]
    name = name_of(p, container)
    if _looked(text):
        _refuse_what_looks_cannot_tell(p, batch)
        looked = said.Sign(batch.id, (container.id,), "looked", LOOKED_WORDS, Verdict.SOUND)
        p.book(looked, **when(at))
        judged = p.judge(p.stock.containers[container.id])
        return SignAnswer(name, LOOKED_WORDS, judged.verdict, (), (), (), judged.reasons)
    sign = sign_named(p, container, text, at.day if at else None)
    payload, sisters = showing(p, (container,), sign, at, which=_which(p, ref))
    with p.together():
        p.book(payload, **when(at))
        with_it = held_with(p, p.stock.batches[batch.id], payload, at)
    answer = _answer(p, container, sign, payload.verdict, sisters, text)
    if sisters is Sisters.TEST:
        answer = _told_late(p, p.stock.containers[container.id], answer)
    still_to = still_to_name(p, p.stock.batches[batch.id])
    more = (*with_it, *filter(None, [still_to]))
    return replace(answer, do=(*answer.do, *more)) if more else answer


def mark_all(p: Pantry, refs: Sequence[str], text: str, *, saw: str = "") -> Done:
    """Record a sign on each of these containers of one batch in one booking, and say how many of
    those that its note speaks of are named then."""
    with p.together():
        # What a screen showed of them holds until the first is booked.
        said = [mark(p, ref, text, saw="" if at else saw) for at, ref in enumerate(refs)]
    codes = ", ".join(one.code for one in said)
    still_to = still_to_name(p, batch_named(p, refs[0]))
    return Done(f"{codes}: {said[0].sign}: {said[0].verdict}.", (still_to,) if still_to else ())


def _refuse_what_looks_cannot_tell(p: Pantry, batch: Batch) -> None:
    """Raises Refused where some of the same food, in another vessel, was never to be tasted: what
    is in it cannot be seen."""
    if not batch.parts:
        return
    for id_ in tables.kin(p, [batch.id]):
        other = p.stock.batches[id_]
        for one in p.containers_of(other):
            if any(seen.verdict is Verdict.DO_NOT_TASTE for seen in one.signs):
                raise Refused(
                    f"{name_of(p, one)} is of the same food and must not be tasted, and looks do "
                    f"not show it: discard {batch.code}."
                )


def _looked(text: str) -> bool:
    return " ".join(text.lower().split()) in LOOKED


def showing(
    p: Pantry,
    containers: Sequence[Container],
    sign: Sign,
    at: At | None = None,
    which: bool = False,
) -> tuple[said.Sign, Sisters]:
    """What is booked of a sign on containers of one batch, and what it says of the others.
    `which`: somebody said on which of them it is; what nobody understood speaks of that one."""
    # Of several the one of which it says most: what is in a sealed one may be in all.
    first = max(containers, key=lambda one: _says_most(p, one, sign, at))
    batch = p.stock.batches[first.batch]
    found = _found(p, first, at.day if at else p.today)
    sisters = of_sisters(sign, found)
    verdict = verdict_of(sign, batch.method, batch.food, last_state(first) is State.SEALED)
    if sign.id == OWN_ID:
        verdict, sisters = Verdict.UNKNOWN, Sisters.NOTHING if which else sisters
    day = dates.say(at.day if at else p.today)
    suspect = f"{name_of(p, first)} showed {sign.words} on {day}"
    if sign.id in OF_ALL:  # no look at another of them takes it back
        containers = (
            *containers,
            *(one for one in p.containers_of(batch) if one not in containers),
        )
    payload = said.Sign(
        batch.id,
        tuple(one.id for one in containers),
        sign.id,
        sign.words,
        of_pile(sign, verdict, found),
        suspect if sisters is Sisters.SUSPECT else "",
    )
    return payload, sisters


def _which(p: Pantry, ref: str) -> bool:
    """Whether it is known on which container of the batch a sign is."""
    return "/" in ref or sum(one.here for one in p.containers_of(batch_named(p, ref))) < 2


def _says_most(p: Pantry, container: Container, sign: Sign, at: At | None) -> int:
    found = of_sisters(sign, _found(p, container, at.day if at else p.today))
    return list(Sisters).index(found)


def _meant(p: Pantry, ref: str) -> Container:
    """The one that is named, here or gone; of a batch the oldest that is here, else the last that
    left. Raises BadInput."""
    batch = batch_named(p, ref)
    mine = p.containers_of(batch)
    number = ref.partition("/")[2].strip()
    if number:
        named = [one for one in mine if str(one.number) == number]
        if not named:
            raise BadInput(f"{batch.code} has no container {number!r}.")
        return named[0]
    if any(one.here for one in mine):
        return containers_named(p, ref)[0]
    return max(mine, key=lambda one: (one.ended or date.min, one.number))


def _found(p: Pantry, container: Container, day: date) -> Found:
    """How it was on that day, or when it left."""
    batch = p.stock.batches[container.batch]
    pile = lies_loose(batch)
    opened = [turn.when.day for turn in container.turns if turn.state is State.OPEN]
    if not opened or last_state(container) is not State.OPEN:
        return Found(None, None, pile)
    until = day if container.here or container.ended is None else min(day, container.ended)
    days = (until - opened[0]).days
    return Found(days, _opened_life(p, container, opened[0]), pile)


def _opened_life(p: Pantry, container: Container, day: date) -> int | None:
    """How many days it keeps once open where it stands, by what is published."""
    batch = p.stock.batches[container.batch]
    place = p.places.get(container.place)
    if place is None:
        return None
    bare = replace(batch, suspect="", doubt=(), made=day, process=())
    judged = judge_fresh(bare, State.OPEN, place, day, p.book_of_rules)
    last = judged.discard_after or judged.best_by
    return None if last is None else (last - day).days


def _answer(
    p: Pantry, container: Container, sign: Sign, verdict: Verdict, sisters: Sisters, text: str
) -> SignAnswer:
    name, reasons = name_of(p, container), [*_not_known(p, container, sign, text)]
    reasons += [sign.means, READING]
    steps = list(sign.steps)
    told = about_sisters(name, sisters, sign)
    if sign.id == OWN_ID:
        near = near_ones(p, container, text)
        steps.append(f"If it is one of these, say which: {near}.")
        steps.append(f"If it was looked at and all is well: `sign {name} {LOOKED_WORDS}`.")
    if verdict is Verdict.NEEDS_CARE and sign.verdict in THROWN:
        steps = [CULL]
    if told:
        steps.append(told)
    place = p.places.get(container.place)
    if place is not None and place.climate.is_cold and says_left_out(text):
        steps.append(book_the_move(name))
    if verdict in (Verdict.DO_NOT_TASTE, Verdict.DISCARD) or sisters is Sisters.SUSPECT:
        reasons.append(CAUTION)
    sources = [f"{p.tables.sources[sign.source]} ({sign.trust.shown})"]
    sources += [str(p.tables.sources[id_]) for id_ in DISPOSAL_SOURCES.get(sign.disposal, ())]
    disposal = DISPOSAL.get(sign.disposal, ())
    return SignAnswer(
        name,
        sign.words,
        verdict,
        tuple(steps),
        tuple(disposal),
        tuple(dict.fromkeys(sources)),
        tuple(reasons),
    )


def _told_late(p: Pantry, container: Container, answer: SignAnswer) -> SignAnswer:
    """What could be done within a day, told later: then the jar is judged as it stood since."""
    judged = p.judge(container)
    if judged.verdict not in (Verdict.DO_NOT_TASTE, Verdict.DISCARD):
        return answer
    later = [one for one in answer.do if one.startswith("Later")]
    do = (*later, "Test the lids of all others of this batch now.")
    return replace(
        answer, verdict=judged.verdict, do=do, reasons=(*judged.reasons[:2], *answer.reasons)
    )


def _not_known(p: Pantry, container: Container, sign: Sign, text: str) -> list[str]:
    """That words which no sign of this food has were taken for doubt, and what comes near them."""
    known = possible(p, container)
    if not sign.id.startswith(UNSURE) or find_sign(known, text) is not None:
        return []
    near = "; ".join(one.words for one in near_signs(known, text) if one is not sign)
    pick = f"one that says more: {near}" if near else "`signs` lists those that are known"
    return [
        f"{clean(text[:60])!r} is no sign of its own here, so {sign.words!r} is taken, which is "
        f"the strictest; {pick}."
    ]


def about_sisters(name: str, sisters: Sisters, sign: Sign) -> str:
    """What is to be done with the others, "" for nothing."""
    code = name.partition("/")[0]
    if sign.id in OF_ALL:
        return f"It holds for all of this batch, also those given away: pantry-tui recall {code}."
    return {
        Sisters.SUSPECT: "Look at every other container of this batch, also those given away: "
        f"pantry-tui recall {code}.",
        Sisters.LOOK_OVER: "Look the others over; they are not locked.",
        Sisters.TEST: "Test the lids of all others of this batch now, within a day of making it.",
        Sisters.NOTHING: "",
    }[sisters]


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

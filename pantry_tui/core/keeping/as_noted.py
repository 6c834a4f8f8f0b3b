"""Food that its note says is something else by now is judged as that, too: no milder than either.

What is cooked is held to the figures of cooked food, what was cut to those of cut crops, eggs out
of the shell to those of whites and yolks, an opened or thawed pack to those of opened or thawed
food, each from the day it was made, since a note has no day. Only a note that is put right, or the
record, takes that away again.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date, timedelta

from pantry_tui.core.canned import LIDDED, WORKING
from pantry_tui.core.dataclass import replace
from pantry_tui.core.dates import say
from pantry_tui.core.keeping.before_frozen import frozen_late, over_before_frozen
from pantry_tui.core.keeping.bounds import stricter
from pantry_tui.core.keeping.harm import can_hurt, is_dry, is_shop_tin
from pantry_tui.core.keeping.ladder import Assessment, worse
from pantry_tui.core.keeping.wording import BEST, DISCARD
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.safety.kept_warm import degrees_of
from pantry_tui.core.safety.note_advice import advised
from pantry_tui.core.safety.note_days import Of, days_of
from pantry_tui.core.safety.note_hot_place import stood_hot
from pantry_tui.core.safety.note_raw_egg import raw_egg_at_home
from pantry_tui.core.safety.note_share import to_cull
from pantry_tui.core.safety.note_states import Now, Told, happened, states
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.safety.prepared import PREPARED
from pantry_tui.core.safety.sisters import CULL, lies_loose
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import Group, Method, State, Verdict

#: By so many days what is counted in months is no older.
_MONTHS_DAYS = 7
#: What is said of it, and what a person does.
_SAYS = {
    Now.COOKED: "judged as cooked food, too. What was cooked is a batch of its own: `repack {}`",
    Now.OF_RAW_EGG: (
        "made at home of raw egg it keeps as cooked food does, in the cold alone. If it is, "
        "`repack {}` into a batch of it as cooked meal"
    ),
    Now.CUT: "judged as cut, too. If it is, record it: `correct {} --process prepared=...`",
    Now.SHELLED: (
        "judged as raw eggs out of the shell, too. If they are, `repack {}` into a batch of whites "
        "or yolks"
    ),
    Now.FLAVOURED: (
        "judged as flavoured vinegar, too. If it is, record it as herb vinegar and as that method, "
        "`correct {}`"
    ),
    Now.HURT: "whole, dry crops alone have figures. Take out what is hurt or wet, and use it first",
    Now.WET: "what is wet has no published figure. Cook it, or put it right: `correct {} --note`",
    Now.FINER: "judged as that, too. If it is, `repack {}` into a batch of what it is now",
    Now.OPENED: (
        "by its record it is shut. Book it with `open {}` on the day it was opened, and put the "
        "note right. Until then nobody knows how long it has been open"
    ),
    Now.THAWED: (
        "by its record it is frozen. Book it with `thaw {}` on the day it thawed, and put the note "
        "right. Until then nobody knows how long it was thawed"
    ),
}
#: The same of what is still in progress by its record.
_WORKING = {
    Now.OPENED: (
        "by its record it is still in progress. If it was ready and opened since, book `ready {0}` "
        "and `open {0}` on their days, and put the note right. Until then nobody knows how long it "
        "has been open"
    ),
}
_FROZE = (
    "nothing is published for what freezes while it works. Look it over, and book where it stood "
    "with `move {}`"
)
#: What happened while it worked, and what books it.
_BOOKED = {
    Now.MOVED: "judged where it stands by its record. Book it with `move {}` on its day",
    Now.FROZEN: _FROZE,
    Now.THAWED: _FROZE,
    Now.WITHOUT_POWER: "a power cut counts when it is booked. Book it with `outage` and its place",
}
#: Beaten eggs, whites and yolks have one figure.
_RAW_EGG = "egg whites"
#: What meat, ham and cheese are once they are cut so.
_MINCED, _SLICED, _GRATED = "ground meat", "lunch meats", "shredded cheese"
#: Nobody knows since when, whatever the figures are.
_SINCE_WHEN = frozenset({Now.OPENED, Now.THAWED})


def told_of(batch: Batch) -> tuple[Told, ...]:
    """What its note says that it is by now, and its record does not."""
    if not batch.note:
        return ()
    egg = raw_egg_at_home(batch.method, batch.food, batch.note)
    return (*states(batch.method, batch.food, batch.note, dry=is_dry(batch.food)), *egg)


def as_noted(
    batch: Batch,
    container: Container,
    own: Assessment,
    assess: Callable[..., Assessment],
) -> Assessment:
    """Its own assessment, no milder than what it is by its note; `assess` judges a batch and its
    container, and places where they are other ones, as if they were all that is known."""
    silent = replace(batch, note="")
    bare = replace(container, signs=())
    for told in told_of(batch):
        for meant, as_it_is in _meant(silent, bare, told):
            working = container.state is State.IN_PROGRESS
            words = _WORKING.get(told.now, "") if working else ""
            says = _command(words or _SAYS[told.now], batch.code)
            why = f"Its note says {told.typed!r}: {says}."
            own = _no_milder(own, assess(meant, as_it_is), told.now, meant, why)
    if container.state is State.IN_PROGRESS:
        own = _happened(batch, own)
    own = over_before_frozen(batch, _older(batch, container, own), assess)
    own = _stood_hot(batch, own)
    return _advised(batch, _culled(batch, container, own))


def _older(batch: Batch, container: Container, own: Assessment) -> Assessment:
    """Where its last day is counted from a day that the note has earlier, nobody knows which. A
    last day that its note has counts as the date on a pack does, and is in doubt where it was over
    when it was written."""
    frozen = batch.method is Method.FROZEN and own.best_by is not None
    if (own.discard_after is None and not frozen) or not container.turns:
        return own
    when = container.turns[0].when
    noted = when.day_of(batch.noted) if batch.noted else batch.booked
    opened = [turn.when.day for turn in container.turns if turn.state is State.OPEN]
    for typed, day, of in days_of(batch.method, batch.note, noted) if noted else ():
        if of is Of.LAST:
            own = _until(batch, own, typed, day, over=noted is not None and day < noted)
            continue
        if of is Of.TOPPED:
            own = _topped(batch, own, typed, day)
            continue
        began = min(opened, default=None) if of is Of.OPENED else batch.made
        older = began - day if began is not None and of is Of.MADE else timedelta()
        if frozen and older.days > _MONTHS_DAYS and own.best_by is not None:
            best = own.best_by - older
            why = f"{BEST} {say(best)}: its note says {typed!r}."
            old = [one for one in own.reasons if not one.startswith(BEST)]
            own = replace(own, best_by=best, reasons=(why, *old))
            continue
        if own.discard_after is not None and began is not None and day < began:
            has = "has it opened on" if of is Of.OPENED else "says"
            says = (
                f"that is {say(day)}, and its record {has} {say(began)}. Put right whichever is "
                "wrong, `correct {}`. Until then nobody knows its last day"
            )
            why = f"Its note says {typed!r}: {_command(says, batch.code)}."
            return replace(own, doubt=True, harmless=False, reasons=(why, *own.reasons))
    return own


def _topped(batch: Batch, own: Assessment, typed: str, day: date) -> Assessment:
    """What was topped up is as old as what was there before: in doubt where its record begins on
    that day, or later."""
    if batch.made is None or day > batch.made or batch.method is Method.FROZEN:
        return own
    says = (
        f"what was there before is older than {say(batch.made)}, the day of its record. Put that "
        "right, `correct {} --made`. Until then nobody knows its last day"
    )
    why = f"Its note says {typed!r}: {_command(says, batch.code)}."
    return replace(own, doubt=True, harmless=False, reasons=(why, *own.reasons))


def _until(batch: Batch, own: Assessment, typed: str, day: date, *, over: bool) -> Assessment:
    if over:
        says = (
            f"that was over on {say(day)}. Discard what is past its date, or put the note right, "
            "`correct {} --note`"
        )
        why = f"Its note says {typed!r}: {_command(says, batch.code)}."
        return replace(own, doubt=True, harmless=False, reasons=(why, *own.reasons))
    if own.discard_after is None or day >= own.discard_after:
        return own
    best = own.best_by if own.best_by is None or own.best_by <= day else day
    why = f"{DISCARD} {say(day)}: its note says {typed!r}."
    old = [one for one in own.reasons if not one.startswith((DISCARD, BEST))]
    return replace(own, discard_after=day, best_by=best, reasons=(why, *old))


def _happened(batch: Batch, own: Assessment) -> Assessment:
    """What a note says that happened while it worked is booked by its own act, and counts then. A
    place alone leaves what it is; what froze or lost its cold is unknown until then."""
    for told in happened(batch.note):
        why = f"Its note says {told.typed!r}: {_command(_BOOKED[told.now], batch.code)}."
        own = replace(own, reasons=(why, *own.reasons))
        if told.now is not Now.MOVED:
            own = replace(own, doubt=True, harmless=False)
    return own


def _culled(batch: Batch, container: Container, own: Assessment) -> Assessment:
    """Of a pile the bad pieces are taken out, and the rest is looked over, as a sign on one of them
    has it: until somebody looked since that note was written."""
    looked = container.looked is not None and container.looked_at >= batch.noted
    for typed in culled_of(batch):
        if looked:
            old = f"Looked at since its note said {typed!r}."
            own = replace(own, reasons=(*own.reasons, old))
            continue
        why = f"Its note says {typed!r}: {CULL[:1].lower()}{CULL[1:]}"
        floor = worse(own.floor, Verdict.NEEDS_CARE)
        own = replace(own, floor=floor, reasons=(why, *own.reasons))
    return own


def _advised(batch: Batch, own: Assessment) -> Assessment:
    """With what is only to be known, or to be used first."""
    for why, at_best in advised(batch):
        floor = own.floor if at_best is Verdict.SOUND else worse(own.floor, at_best)
        own = replace(own, floor=floor, reasons=(why, *own.reasons))
    return own


def _stood_hot(batch: Batch, own: Assessment) -> Assessment:
    """In doubt where its jars stood hot, as a reading of their place would have it."""
    for typed in hot_places(batch):
        says = "above 95 F canned food may spoil, and no number is published"
        if batch.code:
            says += f". If it was cooler, put the note right, `correct {batch.code} --note`"
        why = f"Its note says {typed!r}: {says}."
        harmless = own.harmless and not can_hurt(batch)
        own = replace(own, doubt=True, harmless=harmless, reasons=(why, *own.reasons))
    return own


def hot_places(batch: Batch) -> tuple[str, ...]:
    """What its note says of jars that stood hot, as it was typed."""
    if not batch.note or not (batch.method in LIDDED or is_shop_tin(batch)):
        return ()
    told = clauses(batch.note)
    return tuple(typed for typed, clause in told if stood_hot(clause, degrees_of(clause)))


def told_beside(batch: Batch) -> bool:
    """Whether anything is said beside a batch of what its note says."""
    working = batch.method in WORKING and bool(happened(batch.note))
    days = days_of(batch.method, batch.note, batch.booked) if batch.booked else ()
    older = any(
        one.of is Of.LAST
        or (batch.made and one.day < batch.made)
        or (one.of is Of.TOPPED and one.day == batch.made)
        for one in days
    )
    said = told_of(batch) or culled_of(batch) or tuple(advised(batch)) or frozen_late(batch)
    said = said or hot_places(batch)
    return working or older or bool(said)


def culled_of(batch: Batch) -> tuple[str, ...]:
    """What its note says of bad pieces of a pile, as it was typed."""
    if not batch.note or not lies_loose(batch):
        return ()
    return tuple(typed for typed, clause in clauses(batch.note) if to_cull(batch, clause))


def _command(says: str, code: str) -> str:
    """The sentence with the lid code; before there is one a dry run names no batch to a command."""
    return says.format(code) if code else says.partition(". ")[0]


def _meant(batch: Batch, container: Container, told: Told) -> Iterator[tuple[Batch, Container]]:
    match told.now:
        case Now.COOKED | Now.OF_RAW_EGG:
            classes = batch.food.classes - {"dry"} | {"cooked"}
            food = replace(batch.food, classes=classes)
            yield replace(batch, food=food, method=Method.MEAL, doubt=()), container
        case Now.FLAVOURED:
            food = replace(batch.food, name="herb vinegar")
            yield replace(batch, food=food, method=Method.FLAVOURED_VINEGAR), container
        case Now.SHELLED:
            classes = batch.food.classes - {"whole-egg"}
            food = replace(batch.food, name=_RAW_EGG, classes=classes)
            yield replace(batch, food=food), container
        case Now.FINER:
            yield from _finer(batch, container, told.how)
        case Now.CUT:
            record = dict(batch.process)
            record[PREPARED] = f"{record.get(PREPARED, '')} {told.how}".strip()
            yield replace(batch, process=tuple(record.items())), container
        case Now.OPENED | Now.THAWED:
            shut = container.state is State.SEALED and container.vessel is Vessel.CLOSED
            thawed = container.state is State.SEALED and told.now is Now.THAWED
            if shut or thawed or container.state is State.IN_PROGRESS:
                state = State.OPEN if told.now is Now.OPENED else State.THAWED
                yield batch, _from_the_first(container, state)
        case _:
            yield batch, container


def _finer(batch: Batch, container: Container, how: str) -> Iterator[tuple[Batch, Container]]:
    """Minced, stuffed and sliced meat as what is sold so, and cut cheese as an opened one, too."""
    food = batch.food
    if food.group is Group.DAIRY:
        if how == "grated":
            yield replace(batch, food=replace(food, name=_GRATED)), container
        if container.state is State.SEALED and container.vessel is Vessel.CLOSED:
            yield batch, _from_the_first(container, State.OPEN)
    elif how == "sliced":
        classes = food.classes - {"cured-meat", "whole-cut"}
        yield replace(batch, food=replace(food, name=_SLICED, classes=classes)), container
    elif food.group is Group.MEAT and (how != "cubed" or batch.method is not Method.FROZEN):
        classes = food.classes - {"whole-cut"} | {"ground-meat"}
        yield replace(batch, food=replace(food, name=_MINCED, classes=classes)), container


def _from_the_first(container: Container, state: State) -> Container:
    first, *later = container.turns
    return replace(container, state=state, turns=(first._replace(state=state), *later))


def _no_milder(own: Assessment, other: Assessment, now: Now, meant: Batch, why: str) -> Assessment:
    found = stricter(own, other, why)
    unknown = now in (Now.WET, Now.HURT)
    # An open jar of honey or of oil stands as it stood shut; of what has days nobody knows which.
    if now in _SINCE_WHEN:
        unknown = other.discard_after is not None or other.doubt or other.fixed is not None
    if unknown:
        hurts = now is Now.WET or can_hurt(meant)
        found = replace(found, doubt=True, harmless=found.harmless and not hurts)
    last, over = found.discard_after, False
    if last is not None and found.best_by is not None and found.best_by > last:
        over = meant.made is not None and last < meant.made
        found = replace(found, best_by=None if over else last)
    old = [one for one in own.reasons if not _of_a_day_gone(one, own, found)]
    new = [one for one in other.reasons if one.startswith((DISCARD, BEST)) and found != own]
    new = [one for one in new if not _of_a_day_gone(one, other, found) and not over]
    return replace(found, reasons=tuple(dict.fromkeys((why, *new, *old))))


def _of_a_day_gone(reason: str, judged: Assessment, found: Assessment) -> bool:
    """Whether a reason names a day of an assessment that is not the day found."""
    return (reason.startswith(BEST) and judged.best_by != found.best_by) or (
        reason.startswith(DISCARD) and judged.discard_after != found.discard_after
    )

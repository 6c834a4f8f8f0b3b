"""A count: the stock check of one place. Expected against counted (`count_begun`), booked in one
transaction."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date
from fractions import Fraction
from types import MappingProxyType
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.exposure import as_if
from pantry_tui.core.keeping.weather import above
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.log.fold import EMPTY
from pantry_tui.core.log.payloads import Back, Count, Fate, Found, Gone
from pantry_tui.core.log.returned import UNSEEN
from pantry_tui.core.model import Batch, Container, Place, Turn
from pantry_tui.core.text import agreed
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import SEVERITY, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Difference, Done, RoundLine
from pantry_tui.services.stock.count_begun import Draft as Draft
from pantry_tui.services.stock.count_begun import add_find as add_find
from pantry_tui.services.stock.count_begun import count as count
from pantry_tui.services.stock.count_begun import draft as draft
from pantry_tui.services.stock.count_begun import keep, refuse_other
from pantry_tui.services.stock.count_begun import lines as lines
from pantry_tui.services.stock.count_begun import take_back as take_back
from pantry_tui.services.stock.count_begun import uncount as uncount
from pantry_tui.services.stock.count_next import next_places as next_places
from pantry_tui.services.stock.count_next import since as since
from pantry_tui.services.stock.drawing import convert, read_wanted
from pantry_tui.services.stock.lines import inside
from pantry_tui.services.stock.pick import batch_named, containers_named, last_state, name_of
from pantry_tui.services.stock.seen import At, when

#: What a difference is booked as. All gone may stand elsewhere, so it is missing, not eaten.
UNRECORDED, MISSING = Fate.UNRECORDED, Fate.MISSING
FOUND = "found"


def differences(p: Pantry, place: Place) -> list[Difference]:
    """Where counted and expected differ, and what each will be booked as."""
    found = [
        Difference(
            line.code,
            line.food,
            line.place,
            line.expected,
            line.seen,
            _kind(line),
            _exceeded(p, batch_named(p, line.code), line.seen - line.expected),
        )
        for line in lines(p, place, gone=True)
        if line.seen is not None and line.seen != line.expected
    ]
    finds = (putup.read(p, text) for text in draft(p, place).finds)
    found += [Difference("", one.food, one.place, 0, one.count, FOUND) for one in finds]
    return found


def _kind(line: RoundLine) -> str:
    assert line.seen is not None
    if line.seen > line.expected:
        return FOUND
    return MISSING if line.seen == 0 else UNRECORDED


@booked
def finish(
    p: Pantry,
    place: Place,
    weighed: Sequence[Gone] = (),
    *,
    at: At | None = None,
    saw: Draft | None = None,
) -> Done:
    """Book every difference and the check, of the whole place or in part, in one transaction;
    `weighed` is what is gone of containers by weight or by eye (`by_amount`). Raises Refused where
    the count, or what is counted, is another than in `saw`."""
    refuse_other(p, place, draft(p, place), saw)
    differs = differences(p, place)
    _refuse_if_changed(p, place)
    if at is not None and at.day < p.today and differs:
        raise Refused(
            "What was counted on an earlier day is compared with what stands now: count it today."
        )
    finds = [putup.read(p, text) for text in draft(p, place).finds]
    uncounted = sum(one.seen is None and one.expected > 0 for one in lines(p, place))
    counted = _counted(p, place)._replace(part=uncounted > 0)
    with p.together():
        for one in _counted_within(p, place):
            p.book(one, **when(at))
        p.book(counted._replace(gone=(*counted.gone, *weighed)), **when(at))
        for reading in finds:
            putup.put_up(p, reading)
    keep(p, place, None)
    less = [f"{one.amount} of {name_of(p, p.stock.containers[one.container])}" for one in weighed]
    found = [_say(one) for one in differs] + [f"{one} {UNRECORDED}" for one in less]
    said = "; ".join(found) or "all as expected"
    part = f"; {_of_lines(uncounted)} not counted" if uncounted else ""
    return Done(f"Checked {p.place_paths()[place.id]}: {said}{part}.")


def _counted_within(p: Pantry, place: Place) -> list[Count]:
    """That what stands in it was counted with it: each place of which any line was looked at."""
    seen: dict[str, list[bool]] = defaultdict(list)
    for line in lines(p, place):
        for one in above(line.key.partition("|")[0], p.places):
            if one.id == place.id:
                break
            seen[one.id].append(line.seen is not None)
    return [
        Count(id_, part=not all(looked), within=place.id)
        for id_, looked in seen.items()
        if any(looked)
    ]


def _of_lines(number: int) -> str:
    return "one line was" if number == 1 else f"{number} lines were"


def _refuse_if_changed(p: Pantry, place: Place) -> None:
    """Raises Refused where something came or went since its line was counted; that line is to be
    counted again, and nothing is booked."""
    now = draft(p, place)
    here = {one.key: one for one in lines(p, place, gone=True)}
    for key, was in now.expected.items():
        line = here.get(key)
        is_now = line.expected if line is not None else 0
        if key in now.seen and is_now != was:
            what = f"{line.code} {line.food}" if line is not None else "A line"
            raise Refused(
                f"{what} changed since it was counted: {was} stood there then, {is_now} now. Count "
                "that line again; nothing is booked."
            )


@booked
def give_up(p: Pantry, place: Place, *, saw: Draft | None = None) -> Done:
    """Forget an unfinished count; nothing of it is booked. Raises Refused as `finish` does."""
    refuse_other(p, place, draft(p, place), saw)
    keep(p, place, None)
    return Done(f"Forgot the count of {place.name}; nothing was booked.")


def _say(one: Difference) -> str:
    number = abs((one.seen or 0) - one.expected)
    return f"{number} {one.food} {one.booked_as}"


def _counted(p: Pantry, place: Place) -> Count:
    gone: list[Gone] = []
    back: dict[str, str] = {}
    new: list[Found] = []
    known: dict[str, int] = {}
    for line in lines(p, place, gone=True):
        if line.seen is None or line.seen == line.expected:
            continue
        where, batch_id, state = line.key.split("|")
        if line.pieces and line.seen:
            gone += _fewer(_standing(p, where, batch_id, state), line.expected - line.seen)
            continue
        if line.seen < line.expected:
            fate = MISSING if line.seen == 0 else UNRECORDED
            missing = _standing(p, where, batch_id, state)[: line.expected - line.seen]
            gone += [Gone(one.id, fate) for one in missing]
            continue
        extra = line.seen - line.expected
        mine = p.containers_of(p.stock.batches[batch_id])
        left = [one for one in mine if not one.here and one.id not in back]
        returned = [one.id for one in sorted(left, key=lambda one: _likely(p, one, where))]
        back |= dict.fromkeys(returned[:extra], where)
        count = extra - len(returned[:extra])
        if count:
            number = known.setdefault(batch_id, len(mine))
            known[batch_id] = number + count
            ids = tuple(f"{batch_id}.{number + n}" for n in range(1, count + 1))
            new.append(Found(batch_id, where, State(state), ids))
    return Count(place.id, tuple(gone), tuple(Back(*one) for one in back.items()), tuple(new))


def _likely(p: Pantry, gone: Container, where: str) -> tuple[bool, int, bool, date]:
    """Which of those that are gone it was that was found, the first first: one that nobody saw
    leave, else one that was seen to; the worst of them, since nobody can tell them apart."""
    back = as_if(replace(gone, fate="", state=last_state(gone)), Turn(p.clock.now, "", where))
    judged = p.judge(back)
    return (
        gone.fate not in UNSEEN,
        SEVERITY.index(judged.verdict),
        gone.fate != Fate.DISCARDED,
        judged.discard_after or date.max,
    )


def _fewer(piles: Sequence[Container], number: int) -> list[Gone]:
    """So many pieces fewer, from the first pile on."""
    found = []
    for one in piles:
        assert one.left is not None
        if number <= 0:
            break
        much = min(Fraction(number), one.left.number)
        found.append(Gone(one.id, UNRECORDED, Amount(much)))
        number -= math.ceil(much)
    return found


def by_amount(p: Pantry, place: Place, seen: Mapping[str, str]) -> list[Gone]:
    """What is gone of single containers by what is in them now, weighed or by eye: "9H/1" -> "38
    lb", "2A/3" -> "half". Raises BadInput, and Refused where more is there than was recorded."""
    within = inside(p, place.id)
    found = []
    for ref, typed in seen.items():
        one = containers_named(p, ref)[0]
        if one.place not in within:
            raise Refused(
                f"{normal_code(ref)} is not known to stand in {place.name}: move it first."
            )
        assert one.left is not None
        assert one.first is not None
        now = seen_in(one, typed)
        if now.number > one.left.number:
            raise Refused(
                f"{name_of(p, one)} held {one.left}, and {now} is more: put the rest up, or undo "
                "what was booked too much."
            )
        if one.left.number - now.number >= EMPTY:
            found.append(Gone(one.id, UNRECORDED, Amount(one.left.number - now.number, now.unit)))
    return found


def seen_in(container: Container, typed: str) -> Amount:
    """What is in it now: an amount, or by eye a part of what it held when it was full."""
    wanted = read_wanted(typed)
    first = container.first
    assert first is not None
    if wanted.kind == "share":
        return Amount(first.number * wanted.number, first.unit)
    if wanted.kind == "all":
        return first
    if wanted.kind not in ("amount", "count"):
        raise BadInput(f"{typed[:40]!r} is no amount: write 38 lb, half or a quarter.")
    return convert(container, Amount(wanted.number, wanted.unit))


def _standing(p: Pantry, where: str, batch_id: str, state: str) -> list[Container]:
    """The oldest first: what was eaten unseen was most likely taken from the front."""
    found = [
        c
        for c in p.containers_of(p.stock.batches[batch_id])
        if c.here and c.place == where and c.state.value == state
    ]
    return sorted(found, key=lambda c: bool(c.reserved))  # nobody eats a gift unseen


class Counted(NamedTuple):
    """What a count without a screen found, and what was booked."""

    differs: list[Difference]
    done: Done


@booked
def count_now(
    p: Pantry,
    place: Place,
    seen: Mapping[str, int],
    amounts: Mapping[str, str] = MappingProxyType({}),
    *,
    more: bool = False,
    at: At | None = None,
) -> Counted:
    """Counts by lid code, and what is left by container (`by_amount`), booked at once. A count that
    a screen has begun there stays as it is. Raises BadInput, Refused; also where more is counted
    than was ever put up, which is most often a slip, unless `more` says that it is so."""
    for code, number in () if more else seen.items():
        _refuse_more_than_ever(p, place, code, number)
    begun = draft(p, place)
    keep(p, place, Draft())
    weighed = by_amount(p, place, amounts)
    differs = from_counts(p, place, seen)
    done = finish(p, place, weighed, at=at)
    if begun.turns:
        keep(p, place, begun)
    return Counted(differs, done)


def _refuse_more_than_ever(p: Pantry, place: Place, code: str, number: int) -> None:
    batch, within = batch_named(p, code), inside(p, place.id)
    standing = [one.place in within for one in p.containers_of(batch) if one.here]
    ever = _exceeded(p, batch, number - sum(standing))
    if ever is None:
        return
    away = len(standing) - sum(standing)
    beside = f" and {away} {agreed(away, 'stands', 'stand')} elsewhere" if away else ""
    mend = "mend the number, move what came from there," if away else "mend the number,"
    raise Refused(
        f"{number} of {batch.code} {batch.food.name} are counted{beside}, and {ever} "
        f"{agreed(ever, 'was', 'were')} ever put up: {mend} or say --more if so."
    )


def _exceeded(p: Pantry, batch: Batch, extra: int) -> int | None:
    """How many of it were ever put up, where so many beside all that stand are more; a heap is
    counted by the piece."""
    mine = p.containers_of(batch)
    heap = any(one.bulk and one.vessel is Vessel.PIECES for one in mine)
    return len(mine) if sum(one.here for one in mine) + extra > len(mine) and not heap else None


def slip(p: Pantry, place: Place, key: str) -> str:
    """That more is counted on a line than was ever put up, "" where not."""
    line = next((one for one in lines(p, place, gone=True) if one.key == key), None)
    if line is None or line.seen is None:
        return ""
    ever = _exceeded(p, batch_named(p, line.code), line.seen - line.expected)
    if ever is None:
        return ""
    was = agreed(ever, "was", "were")
    return f"{line.seen} of {line.code} {line.food}, and {ever} {was} ever put up: a slip?"


def from_counts(p: Pantry, place: Place, seen: Mapping[str, int]) -> list[Difference]:
    """Counts by lid code, for the command line. Raises BadInput, Refused."""
    for code, number in seen.items():
        batch = batch_named(p, code)
        mine = [line for line in lines(p, place, gone=True) if line.code == batch.code]
        if not mine:
            raise Refused(f"{batch.code} is not known to stand in {place.name}: move it first.")
        _spread(p, place, mine, number)
    return differences(p, place)


def _spread(p: Pantry, place: Place, mine: Sequence[RoundLine], number: int) -> None:
    """One number over several lines of a batch: filled from the first, the rest on the last."""
    left = number
    for line in mine[:-1]:
        count(p, place, line.key, min(left, line.expected))
        left -= min(left, line.expected)
    count(p, place, mine[-1].key, left)

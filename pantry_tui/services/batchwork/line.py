"""The put-up line: "7 pint jars runner beans, pressure canned, shelf 2, yesterday".

Read in any order by claiming tokens: details of the process, the place, the day, how many and how
much; the words that are left are the food and how it is kept. What nobody understands is named,
never dropped; what two readings would judge differently is asked about.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from pantry_tui.core.canned import LIDDED, PROCESSED, WORKING
from pantry_tui.core.dates import say
from pantry_tui.core.line.counts import take_held
from pantry_tui.core.line.days import Day, take_day
from pantry_tui.core.line.held import Held
from pantry_tui.core.line.left_out import take_cooker, take_left_out
from pantry_tui.core.line.noted import take_note
from pantry_tui.core.line.process import take_process
from pantry_tui.core.line.tokens import MOST, Kind, Line, tokens
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.prepared import PREPARED, is_large
from pantry_tui.core.safety.record import key_named
from pantry_tui.core.safety.values import HINTS
from pantry_tui.core.text import begun
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import Climate, Method, State
from pantry_tui.errors import BadInput
from pantry_tui.reference.ambiguous import could_be
from pantry_tui.reference.compose import Composer
from pantry_tui.services.batchwork.line_as_is import frozen_as_bought, pickled_in_glass, several_of
from pantry_tui.services.batchwork.line_aside import opened_wrongly, take_ingredients, take_state
from pantry_tui.services.batchwork.line_food import Food, as_typed, spelled, take_food
from pantry_tui.services.batchwork.line_method import settle
from pantry_tui.services.batchwork.line_place import Stands, protect, take_place
from pantry_tui.services.batchwork.line_slips import ask_slip
from pantry_tui.services.batchwork.prepared import is_raw_crop
from pantry_tui.services.rows import Ask, PutUpReading

#: Methods of which it is known what the food is packed in.
_PACKED = LIDDED | {Method.FROZEN, Method.SUGAR, Method.BOUGHT}
#: What keeps so for months: the first day that may be meant is the strict one, and costs little.
_FOR_MONTHS = PROCESSED | {
    *(Method.JAM, Method.VINEGAR_PICKLE, Method.FREEZER_JAM, Method.DRIED, Method.FREEZE_DRIED),
    *(Method.FROZEN, Method.SUGAR, Method.CELLAR, Method.RENDERED_FAT),
}
#: Ways to name where none was said: of what stands in a fridge, and elsewhere.
_COLD = (Method.FRESH, Method.MEAL, Method.FRIDGE_PICKLE, Method.BOUGHT)
_WARM = (Method.PRESSURE, Method.DRIED, Method.FROZEN, Method.BOUGHT)
#: Details of what nobody has bought, or has only laid by.
_WORKED = frozenset(
    {"salt", "sugar", "vinegar", "acid", "minutes", "psi", "canner", "pack", "cure"}
)
#: Pots of jam are jars, others are tubs.
#: What nobody fills at home.
_OF_A_SHOP = frozenset({"tin", "tins", "can", "cans", "carton", "cartons"})
_POTS = re.compile(r"\bpot(?=s?\b)")


def _nothing(_name: str) -> Method | None:
    return None


def _no_ways(_name: str) -> tuple[str, ...]:
    return ()


def _any_way(_food: FoodFacts, _method: Method, _climate: Climate | None) -> bool:
    return True


@dataclass(frozen=True)
class Kitchen:
    """What a line is read with: the day, the places (id -> full path, and what they are like), the
    household's units, the foods and methods. `says` is the method that a food's name says, `usual`
    the ways in which households keep it, `offers` whether one of them may be named of a food."""

    today: date
    places: Mapping[str, str]
    composer: Composer
    find_method: Callable[[str], Method | None]
    climates: Mapping[str, Climate] = field(default_factory=dict)
    units: str = "us"
    says: Callable[[str], Method | None] = _nothing
    usual: Callable[[str], tuple[str, ...]] = _no_ways
    offers: Callable[[FoodFacts, Method, Climate | None], bool] = _any_way

    def is_food(self, words: list[str]) -> bool:
        """Whether the words are a food, or could be several, and nothing else."""
        meant = self.composer.meant(words)
        return not meant.strange and (meant.facts is not None or bool(meant.either))

    def could_be(self, text: str) -> tuple[str, ...]:
        """The foods of which a word could be any."""
        found = could_be(text, self.units)
        return found.foods if found is not None else ()


_OF_UK = frozenset({"imperial", "uk"})
_IMPERIAL = "An imperial pint is 568 ml, a quart 1,137: write what each jar holds in ml or litres."


def _fit(
    ways: Iterable[str], facts: FoodFacts | None, climate: Climate | None, kitchen: Kitchen
) -> tuple[str, ...]:
    """Up to four of them that nothing refuses of that food; what was bought may be anything."""
    if facts is None:
        return tuple(one for one in ways if one not in PROCESSED)[:4]
    found = tuple(one for one in ways if kitchen.offers(facts, Method(one), climate))
    return found[:4] or (Method.BOUGHT.value,)


def read_line(text: str, kitchen: Kitchen, note: str = "") -> tuple[PutUpReading, str]:
    """What `text` says, and the `note` beside it, and the food as it was typed. Never raises."""
    rest, noted, unclear = take_note(text)
    note = "; ".join(filter(None, (note, noted)))
    found = spelled(tokens(rest[: MOST * 100]), kitchen.composer)
    if len(found) > MOST or len(rest) > MOST * 100:
        return _too_long(rest, note), ""
    found, state, came = take_state(found, kitchen.today)
    line = Line(found)
    pairs = {"state": state.value} if state in (State.OPEN, State.THAWED) else {}
    take_left_out(line, pairs)
    take_cooker(line, pairs)
    note = "; ".join(filter(None, (note, take_ingredients(line, kitchen.is_food))))
    take_process(line, pairs)
    kept = protect(line, kitchen)
    for i in kept:
        line.free[i] = False
    stands = take_place(line, kitchen)
    day = take_day(line, kitchen.today, frozenset())
    held = take_held(line, kitchen.units)
    for i in kept:
        line.free[i] = True
    food = take_food(line, kitchen)
    if "group" not in pairs:
        ask_slip(food, line, kitchen)
    food.started = any(token.text in ("started", "begun") for token in line.tokens)
    reading = _reading(kitchen, note, pairs, stands, day, held, food)
    if any(line.word(i) in _OF_UK for i in range(len(line.tokens))):
        reading = replace(
            reading,
            unread=tuple(one for one in reading.unread if one.casefold() not in _OF_UK),
            problems=(_IMPERIAL, *reading.problems),
        )
    if unclear is not None:
        reading = replace(
            reading,
            problems=(*reading.problems, unclear[2]),
            asks=(*reading.asks, Ask("note", unclear[0], unclear[1])),
        )
    told = any(token.text.casefold().startswith("state=") for token in line.tokens)
    return (_still_at_work(reading, came) if came and not told else reading), food.typed


#: What is closed until the first of it is taken.
_TIGHT = frozenset({"jar", "bottle", "jug", "tin", "can", "carton", "tub"})


def read_pairs(text: str) -> list[tuple[str, str]]:
    """("minutes=20 psi=11") -> the pairs. Raises BadInput for a word that is no pair."""
    line = Line(tokens(text[: MOST * 100]))
    pairs: dict[str, str] = {}
    if any(token.kind is Kind.FLAG for token in line.tokens):
        take_process(line, pairs)
    left = " ".join(token.said for token, free in zip(line.tokens, line.free, strict=True) if free)
    if left and (key := key_named(left)) is not None:
        raise BadInput(f"{left[:40]!r} alone says nothing: {HINTS[key]}.")
    if left or not pairs:
        raise BadInput(f"{left[:40]!r} is no detail: write minutes=20 psi=11 canner=dial.")
    return list(pairs.items())


def _packed(pairs: dict[str, str], method: Method | None) -> list[str]:
    """What it is packed in, of a batch that is neither canned nor frozen: nobody can say what that
    is, so it stays unread. "Apples in juice" are no whole apples."""
    form = pairs.get("form", "")
    if not form.startswith("in ") or method in _PACKED or method is None:
        return []
    return [pairs.pop("form")]


def _still_at_work(reading: PutUpReading, came: str) -> PutUpReading:
    """A batch that is said to be open or shut, and would be still at work otherwise: asked about,
    since a ferment that is finished has more time."""
    if reading.method not in WORKING:
        return reading
    process = tuple(pair for pair in reading.process if pair[0] != "state")
    why = (
        f"{begun(came)}: is it still at work? Leave the word out where it is; where it is "
        "finished, write state=open or state=sealed in its place."
    )
    return replace(
        reading,
        process=process,
        problems=(*reading.problems, why),
        asks=(
            *reading.asks,
            Ask("state", came, ("state=in-progress", "state=open", "state=sealed")),
        ),
    )


def _rolls(food: Food, held: Held, kitchen: Kitchen) -> None:
    """ "18 rolls": what looks like a vessel is the food, where there is no other."""
    facts = kitchen.composer.called(held.vessel)
    if facts is not None:
        food.name = food.typed = facts.name
        food.facts, held.vessel, held.pieces = facts, "", True


def _too_long(text: str, note: str) -> PutUpReading:
    start = " ".join(text[:40].split())
    problem = f"{start!r} ... is too long for one batch: give each batch a line of its own."
    return PutUpReading(note=note, unread=(text[:60],), problems=(problem,))


def _reading(
    kitchen: Kitchen,
    note: str,
    pairs: dict[str, str],
    stands: Stands,
    day: Day,
    held: Held,
    food: Food,
) -> PutUpReading:
    problems: list[str] = []
    asks: list[Ask] = []

    def ask(about: str, typed: str, choices: tuple[str, ...], why: str) -> None:
        asks.append(Ask(about, typed, choices))
        problems.append(why)

    if not food.name and food.ask is None and held.vessel:
        _rolls(food, held, kitchen)
    if food.ask is not None:
        ask("food", *food.ask)
    elif not food.name:
        problems.append("Say which food it is.")
    named = kitchen.find_method(pairs.get("method", "")) if "method" in pairs else None
    if named is not None:
        del pairs["method"]
    climate = kitchen.climates.get(stands.id, stands.like)
    food.worked = bool(pairs.keys() & _WORKED)
    method, why = settle(food, named, climate, held, kitchen)
    method = frozen_as_bought(method, climate, held, pairs)
    dated = not pairs.keys().isdisjoint(("printed", "expiry"))
    if dated and why is None and method in (None, Method.FRESH):
        method = Method.BOUGHT  # nobody prints a date on what grew in the garden
    if dated and why is None and method not in (None, Method.BOUGHT, Method.FROZEN):
        two = (Method.BOUGHT.value, str(method))
        why = ("printed", two, f"With a printed date: {' or '.join(two)}? Say which.")
        method = None
    if why is not None:
        ask("method", *why)
    in_water = Method.BOILING_WATER in food.explicit
    if method is Method.JAM and in_water and not {"acid", "vinegar"} & set(map(key_named, pairs)):
        method = Method.BOILING_WATER  # sour by its recipe, and nobody says by what
    if method in (Method.VINEGAR_PICKLE, Method.JAM) and in_water:
        pairs.setdefault("process", "boiling-water")
    held.vessel = _POTS.sub("jar" if method in LIDDED else "tub", held.vessel)
    if food.vinegar_strength:
        pairs.setdefault("vinegar", food.vinegar_strength)
    for about, typed, choices, sentence in held.asks:
        ask(about, typed, choices, sentence)
    if day.ask is not None:
        ask("made", *day.ask)
    if stands.ask is not None:
        ask("place", *stands.ask)
    if method is Method.LACTIC and (whole := kitchen.composer.called(f"fermented {food.name}")):
        food.name, food.facts = whole.name, whole
    if method is Method.BOUGHT and (pickled := pickled_in_glass(food.name, held)):
        whole = kitchen.composer.called(pickled)
        food.name, food.facts = (whole.name, whole) if whole else (food.name, food.facts)
    unread = [*food.unread, *_packed(pairs, method)]
    if method is None and why is None:
        usual = kitchen.usual(food.facts.name) if food.facts is not None else ()
        raw = usual and is_raw_crop(food.facts, Method.FRESH)
        if raw and climate in (Climate.FRIDGE, Climate.ROOM):
            usual = (Method.FRESH.value, *(one for one in usual if one != Method.FRESH.value))
        ways = usual or (_COLD if climate is Climate.FRIDGE else _WARM)
        if set(held.vessel.casefold().split()) & _OF_A_SHOP:
            ways = tuple(dict.fromkeys((Method.BOUGHT.value, *ways)))
        if ways == (Method.FRESH.value,) and climate is Climate.FRIDGE:
            method = Method.FRESH  # the one way in which anybody keeps it
        else:
            ways = _fit(ways, food.facts, climate, kitchen)
            problems.append(f"Say how it is kept, for example: {', '.join(ways)}.")
    note = "; ".join(filter(None, (note, as_typed(food, note, kitchen, method))))
    if held.amount:
        pairs.setdefault("amount", held.amount)
    if held.vacuum:
        pairs.setdefault("vacuum", "yes")
    if held.begun and method is not None and is_closed(method, held.vessel):
        if not (held.amount or held.size):
            how_much = f"How much is in the {held.begun} {held.vessel}? Give a weight or a volume."
            ask("contents", held.begun, (), how_much)
        if method not in WORKING and held.vessel in _TIGHT:  # a bag of rice is as it was
            pairs.setdefault("state", State.OPEN.value)
    part = held.part or (held.piece if is_large(food.facts) else "")
    if part and is_raw_crop(food.facts, method):
        pairs.setdefault(PREPARED, part)
    several = several_of(held, food.facts) if is_raw_crop(food.facts, method) else None
    if several is not None:
        ask("contents", *several)
    group, acidity = pairs.pop("group", ""), pairs.pop("acidity", "")
    if not group and food.facts is not None and not food.facts.known:
        group, acidity = food.facts.group.value, food.facts.acidity.value
    unsaid = day.unknown or (day.opened is not None and not day.said)
    made = None if unsaid else day.day or kitchen.today
    if day.among and day.day is not None and method not in _FOR_MONTHS and day.ask is None:
        # What works is ready sooner, the earlier it was begun; what keeps for days has none over.
        choices = (day.day.isoformat(),)
        first = f"for example {say(day.day)}, if nobody knows"
        ask(
            "made", day.among, choices, f"{begun(day.among)} could be many days: give one, {first}."
        )
    if day.opened is not None:
        pairs.pop("state", None)  # it came shut, and was opened on that day
        if day.ask is None and (wrong := opened_wrongly(day.opened, made, method, held.vessel)):
            ask("made", day.opened.isoformat(), (), wrong)
    return PutUpReading(
        food=food.name if food.ask is None or food.facts is not None else "",
        method=method,
        count=held.count or 1,
        size=held.size,
        container=held.vessel,
        place=stands.path,
        made=made,
        process=tuple(pairs.items()),
        note=note,
        group=group,
        acidity=acidity,
        unread=tuple(unread),
        problems=tuple(problems),
        asks=tuple(asks),
        opened=day.opened,
        made_in=(day.first_of or day.among) if made == day.day else "",
    )

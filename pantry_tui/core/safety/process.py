"""Tested canning processes, looked up and never computed, and what makes a batch's doubtful.

A process is a pair of time and pressure for one food, pack, jar, canner and band of altitude
(USDA AIB 539). The time of one pair never goes with the pressure of another.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from pantry_tui.core.canned import LIDDED, PROCESSED, still_possible, thrown
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.acid import unacidified
from pantry_tui.core.safety.heat import too_cool
from pantry_tui.core.safety.jars import BIGGER, JARS, of_one_jar, read_jar
from pantry_tui.core.safety.measured import (
    read_minutes,
    read_psi,
    sealed_so,
)
from pantry_tui.core.safety.prepared import beyond_help
from pantry_tui.core.safety.process_names import name_key
from pantry_tui.core.safety.record import DETAILS, WAYS, read_details
from pantry_tui.core.safety.shortfall import pair, unsaid
from pantry_tui.core.safety.strength import too_weak
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.safety.ways import (
    altitude_of,
    canner_of,
    canners_of,
    dangers,
    seal_unknown,
    two_canners,
)
from pantry_tui.core.words import Acidity, Method, Trust

PACKS = ("hot", "raw")
#: The longest process an atmospheric steam canner can do, altitude included (NCHFP).
STEAM_MAX_MINUTES = 45


@dataclass(frozen=True, slots=True)
class ProcessRow:
    """One published process. `high_ft` None is an open band; `psi` None is boiling water.

    `names` are the keys of all names that it is found by, those of the food table among them."""

    food: str
    names: frozenset[tuple[str, ...]]
    pack: str
    jar: str
    canner: str
    low_ft: int
    high_ft: int | None
    minutes: int
    psi: int | None
    acidify: str
    headspace_in: float | None
    option: str
    source: str
    trust: Trust
    note: str

    def at(self, altitude_ft: int) -> bool:
        """Whether the band holds there; below the sea the lowest band does."""
        below = self.high_ft is None or altitude_ft <= self.high_ft
        return below and self.low_ft <= max(0, altitude_ft)

    @property
    def adds_acid(self) -> str | None:
        """What must be added, None where nothing is."""
        return None if self.acidify in ("", "none", "natural acid") else self.acidify


@dataclass(frozen=True, slots=True)
class NotRecommended:
    """A food or a way that publications advise against; `plain_only` where pickling or sugar
    by a tested recipe lifts it."""

    food: str
    names: frozenset[tuple[str, ...]]
    plain_only: bool
    reason: str
    alternative: str
    source: str
    trust: Trust


def lookup(
    rows: Iterable[ProcessRow], food: str, jar: str, canner: str, altitude_ft: int, pack: str | None
) -> list[ProcessRow]:
    """All rows for exactly this (forms, packs, options), each a pair of its own; empty where
    none is published. Rows from memory are among them: see `standing`."""
    key = name_key(food)
    fits = (row for row in rows if key in row.names and (row.jar, row.canner) == (jar, canner))
    return [row for row in fits if row.at(altitude_ft) and pack in (None, row.pack)]


def standing(rows: Sequence[ProcessRow]) -> list[ProcessRow]:
    """The rows that were read or reprinted; those from memory only where there are no others,
    since they may make a doubt and never lift one."""
    return [row for row in rows if row.trust is not Trust.MEMORY] or list(rows)


@dataclass(frozen=True, slots=True)
class Doubt:
    """What is wrong with how a batch was put up, and what may still be done about it."""

    problems: tuple[str, ...]
    still_possible: str


def recorded(record: Mapping[str, str]) -> bool:
    """Whether any detail of the process was written down; a jar or an altitude is none."""
    said = dict(read_details(record.items()).pairs)
    return any(key in said and not is_unknown(said[key]) for key in DETAILS)


#: A recipe for a diet is nobody's who did not name it: guide 6 of AIB 539 prints it by itself.
_BY_ITS_NAME = r"\breduced-sodium\b"
#: The largest jar, and the fewest minutes in it below 1,001 ft; 5 more above, 10 more above 6,000.
#: Jams, jellies: half-pints or pints, 5 (USDA HG 56 at NCHFP; UGA, So Easy to Preserve). Relishes
#: in pints, mixed pickles in quarts: 10 (USDA AIB 539 of 1994, guide 6). Read in copies. In pints
#: guide 6 has 5 for piccalilli, small gherkins, bell peppers and mixed vegetables: what has no row
#: of its own is held to 10.
_OF_ANY = {
    Method.JAM: ("pint", 5, "the fewest that are published for a jam"),
    Method.VINEGAR_PICKLE: ("quart", 10, "what relishes and most pickles are published with"),
}


def doubt(
    method: Method,
    food: FoodFacts,
    size: str,
    record: Mapping[str, str],
    altitude_ft: int | None,
    rows: Iterable[ProcessRow],
    not_recommended: Iterable[NotRecommended],
) -> Doubt | None:
    """Why no publication stands for a batch's process, or None where nothing speaks against it.

    None does not say that it was right: a record may be empty (`recorded`). Altitude in feet,
    unless the record has one; None where nobody knows, which counts as the lowest band: too little
    even there is doubt. What cannot be read is doubt. Time and pressure of canned food alone; too
    little acid, salt or heat of whatever is kept by it."""
    details = read_details(record.items())
    said = {key: "" if is_unknown(value) else value for key, value in details.pairs}
    lost = beyond_help(method, food, said)
    if method not in LIDDED:
        sealed = (sealed_so(value) for key, value in said.items() if key in WAYS)
        weak = [*filter(None, sealed), *too_weak(method, food, size, said, ())]
        return Doubt(tuple(weak), lost or _put_right(food)) if weak else None
    names = names_of(method, food.name)
    mine = [row for row in rows if not names.isdisjoint(row.names)]
    canners = canners_of(method, canner := canner_of(said))
    usable = [row for row in mine if row.canner in canners]
    problems = [*details.problems, *dangers(said), *two_canners(said)]
    problems += seal_unknown(dict(details.pairs).get("seal", ""))
    form = said.get("form", "")
    in_water = method is Method.BOILING_WATER or canners == ("boiling-water",)
    never = _never(method, food, in_water, not_recommended)
    problems += never
    if usable:
        feet = altitude_of(said.get("altitude", ""), altitude_ft)
        problems += _against(usable, food, size, said, feet)
    elif not never and (method in PROCESSED or canner == "steam"):
        kind = "boiling-water" if in_water else "pressure"
        problems.append(f"No tested process for {food.name} in a {kind} canner is known here.")
    elif not never:
        problems += _beyond_any(method, food, size, said, altitude_ft)
    problems += too_cool(canners, said, [row for row in usable if is_form(row, form)], altitude_ft)
    problems += unacidified(food, [row.acidify for row in mine], said.get("acid", ""))
    rooms = {row.headspace_in for row in usable if row.headspace_in is not None}
    problems += too_weak(method, food, size, said, [row.acidify for row in mine], rooms)
    still = lost or still_possible(food, again=bool(usable) and not never)
    return Doubt(tuple(dict.fromkeys(problems)), still) if problems else None


def names_of(method: Method, food: str) -> frozenset[tuple[str, ...]]:
    """The keys of the names under which the processes of a food stand: beets in vinegar are
    pickled beets, and take their time."""
    pickled = {name_key(f"pickled {food}")} if method is Method.VINEGAR_PICKLE else set()
    return frozenset({name_key(food), *pickled})


def _beyond_any(
    method: Method, food: FoodFacts, size: str, said: Mapping[str, str], altitude_ft: int | None
) -> list[str]:
    """What no jam or pickle is published for, where this one has no row of its own: a larger jar,
    fewer minutes."""
    largest, least, whose = _OF_ANY[method]
    jar, order = read_jar(of_one_jar(said, size)), [*JARS, BIGGER]
    found = []
    if jar is not None and order.index(jar) > order.index(largest):
        found.append(f"No {method} like {food.name} is published in a jar larger than a {largest}.")
    feet = altitude_of(said.get("altitude", ""), altitude_ft)
    least += sum(5 for above in (1000, 6000) if feet > above)
    minutes = read_minutes(said.get("minutes", ""))
    if minutes is not None and minutes < least:
        found.append(
            f"{minutes:g} minutes are fewer than {least}, {whose} at {feet:,} ft; no process for "
            f"{food.name} itself is known here."
        )
    return found


def _never(
    method: Method, food: FoodFacts, in_water: bool, advice: Iterable[NotRecommended]
) -> list[str]:
    """What no record can put right: the food itself, or low-acid food in boiling water."""
    plain = method in PROCESSED
    found = [
        f"{row.food}: {row.reason[:1].lower()}{row.reason[1:]}."
        for row in advice
        if name_key(food.name) in row.names and (plain or not row.plain_only)
    ]
    if plain and in_water and food.acidity is Acidity.LOW_ACID:
        found.append("Low-acid food in boiling water: spores live through it.")
    return found


def _against(
    usable: Sequence[ProcessRow], food: FoodFacts, size: str, said: Mapping[str, str], ft: int
) -> list[str]:
    """The record beside the published rows for its jar, form, pack and altitude in feet. Where it
    does not say which of them it was, all of them must be reached."""
    jar, order = read_jar(of_one_jar(said, size)), [*JARS, BIGGER]
    largest = max((row.jar for row in usable), key=order.index)
    if jar is not None and order.index(jar) > order.index(largest):
        return [f"The jar is larger than any with a tested process for {food.name} ({largest})."]
    form = said.get("form", "")
    fits = [row for row in usable if is_form(row, form)]
    plain = [row for row in fits if not re.search(_BY_ITS_NAME, row.food)]
    fits = plain if plain and not form else fits
    if not fits:
        listed = f" Where {form[:30]} {food.name} are listed by themselves, put them up as that."
        none = f"No tested process for {food.name} in the form {form[:30]!r} is known here."
        return [none + listed] if len(form.split()) == 1 else [none]
    pack = _pack(said.get("pack", ""))
    fits = [row for row in fits if pack in (None, row.pack)]
    if jar is not None:
        # A smaller jar than any published one is held to the smallest that is: never shorter.
        fits = [row for row in fits if order.index(row.jar) >= order.index(jar)]
        least = min((row.jar for row in fits), key=order.index, default=jar)
        fits = [row for row in fits if row.jar == least]
    if not fits:
        return [f"No tested process for {food.name} packed {pack} in this jar is known here."]
    here = standing([row for row in fits if row.at(ft)])
    if not here:
        return [f"No process for {food.name} is published at {ft:,} ft."]
    return _too_little(here, said, ft)


def _pack(text: str) -> str | None:
    words = text.casefold().replace("cold", "raw")
    return next((one for one in PACKS if re.search(rf"\b{one}\b", words)), None)


def is_form(row: ProcessRow, form: str) -> bool:
    """Whether the row is for this form of the food: bone-in, boneless, whole, in water."""
    plain = form.casefold().replace("bone-in", "with bones").replace("bone in", "with bones")
    plain = plain.replace("boneless", "without bones").replace("no bones", "without bones")
    return set(name_key(_bones(plain))) <= set(name_key(_bones(row.food)))


def _bones(text: str) -> str:
    """With and without bones as words of their own: "with" alone is passed over in names."""
    plain = text.casefold().replace("(", " ").replace(")", " ")
    return plain.replace("without bones", "boneless").replace("with bones", "boned-in")


def _too_little(rows: Sequence[ProcessRow], said: Mapping[str, str], ft: int) -> list[str]:
    """Time and pressure against the published pairs: of each reading of the record one whole pair
    must be reached."""
    minutes, psi = read_minutes(said.get("minutes", "")), read_psi(said.get("psi", ""))
    if canner_of(said) == "steam":
        too_long = any(row.minutes > STEAM_MAX_MINUTES for row in rows)
        # Run for longer than that it may have boiled dry: what was asked for is no matter then.
        if too_long or (minutes is not None and minutes > STEAM_MAX_MINUTES):
            return [f"A steam canner cannot run for more than {STEAM_MAX_MINUTES} minutes."]
    readings: dict[tuple[str, ...], list[ProcessRow]] = {}
    for row in rows:
        readings.setdefault((row.food, row.pack, row.jar, row.canner), []).append(row)
    short = {
        key: mine
        for key, mine in readings.items()
        if not any(_reached(row, minutes, psi) for row in mine)
    }
    if not short:
        return []
    done = pair(minutes, psi if rows[0].psi else None)
    needed = [row for mine in short.values() for row in mine]
    pairs = " or ".join(dict.fromkeys(pair(row.minutes, row.psi) for row in needed))
    told = f"{done} is too little: at {ft:,} ft {pairs} is published"
    enough = [key for key in readings if key not in short]
    return [f"{told}{unsaid(list(short), enough)}."]


def _reached(row: ProcessRow, minutes: float | None, psi: float | None) -> bool:
    long = minutes is None or minutes >= row.minutes
    return long and (psi is None or row.psi is None or psi >= row.psi)


def _put_right(food: FoodFacts) -> str:
    """Of what is not canned: a day, as of a jar that did not seal."""
    return f"Within 24 hours: put it right by a published recipe. After that {thrown(food)}."

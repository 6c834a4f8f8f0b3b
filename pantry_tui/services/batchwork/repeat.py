"""A batch once more: what was said at table leads, amounts follow today's crop, and the process is
looked up again, since the old one may have been for another jar, height or advice."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from pantry_tui.core.amounts import say_amount
from pantry_tui.core.batchwork.balance import full
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.jars import JARS, read_jar
from pantry_tui.core.safety.measured import CANNERS, read_canner
from pantry_tui.core.safety.record import read_details
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput
from pantry_tui.reference.batchwork import load_batchwork
from pantry_tui.reference.yields import load_yields
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.calc.answer import Books
from pantry_tui.services.batchwork.calc.jars import pounds_of
from pantry_tui.services.batchwork.calc.sentence import BASKETS, Sentence
from pantry_tui.services.batchwork.checked import in_tested_jar
from pantry_tui.services.lookup.process import process
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import PutUp, PutUpReading
from pantry_tui.services.stock.pick import batch_named

#: What of a record is the recipe; the rest is how it went that day, and is never copied.
RECIPE = ("form", "pack", "salt", "sugar", "vinegar", "acid", "cure")
#: Amounts that grow with the batch; a share ("2.25%") does not.
_SCALED = re.compile(r"^(\d{1,7}(?:\.\d{1,6})?)\s*(tbsp|tsp|cups?|g|kg|oz|lb|ml|l)\b(.*)$")


class Again(NamedTuple):
    """What a batch once more would be. `lead` was said at table; `process` is what is published
    for it today; `was` is what is left out of its record."""

    of: str
    lead: tuple[str, ...]
    reading: PutUpReading
    scaled: tuple[str, ...]
    process: tuple[str, ...]
    was: tuple[str, ...]


def again(
    p: Pantry,
    code: str,
    *,
    crop: str | None = None,
    count: int | None = None,
    place: str | None = None,
    change: str | None = None,
    said: Sequence[tuple[str, str]] = (),
) -> Again:
    """The same food by the same method, for `crop` ("20 lb") or `count` containers. `change` is
    what is to be done otherwise, in words; `said` replaces details. Raises BadInput."""
    batch = batch_named(p, code)
    old = max(1, len(p.containers_of(batch)))
    number = count if count is not None else _for_crop(p, batch, crop) if crop else old
    if number < 1:
        raise BadInput("That is less than one container: give more of the crop, or --count.")
    record = dict(read_details(batch.process).pairs)
    recipe = {key: _scale(record[key], number, old) for key in RECIPE if key in record}
    scaled = tuple(
        f"{key}: {record[key]} for {old}, {recipe[key]} for {number}"
        for key in recipe
        if recipe[key] != record[key]
    )
    recipe |= dict(said)
    note = f"as {batch.code}" + (f": {change.strip()}" if change and change.strip() else "")
    where = place or _put_up_in(p, batch)
    reading = putup.from_flags(
        p,
        food=batch.food.name,
        method=batch.method.value,
        count=number,
        size=batch.size,
        place=where,
        process=recipe,
        note=note,
        group="" if batch.food.known else batch.food.group.value,
        acidity="" if batch.food.known else batch.food.acidity.value,
    )
    return Again(
        batch.code,
        tuple(str(one) for one in reversed(batch.rated)),
        reading,
        scaled,
        _today(p, batch),
        tuple(f"{key}={value}" for key, value in record.items() if key not in RECIPE),
    )


def _put_up_in(p: Pantry, batch: Batch) -> str:
    """The place where most of it was put up, wherever it stands now; "" where that is no more."""
    first = Counter(one.turns[0].place for one in p.containers_of(batch) if one.turns)
    paths = p.place_paths()
    return next((paths[id_] for id_, _ in first.most_common() if id_ in paths), "")


def _scale(value: str, number: int, old: int) -> str:
    """("3 tbsp") for twice as many -> "6 tbsp"."""
    match = _SCALED.match(value.strip())
    if match is None:
        return value
    return say_amount(Fraction(match[1]) * number / old, match[2]) + match[3]


def _for_crop(p: Pantry, batch: Batch, crop: str) -> int:
    """How many containers a crop fills, by the published yield and the size of its jars."""
    item = Sentence(crop).weight() or Sentence(crop).take(BASKETS)
    if item is None:
        raise BadInput(f"{crop[:30]!r} is no weight of a crop: write 20 lb or 9 kg.")
    row = load_yields().get((batch.food.name, batch.method))
    jar = read_jar(batch.size)
    if row is None or jar not in JARS:
        raise BadInput(f"No yield of {batch.food.name} in {batch.size or 'that'}: say --count.")
    facts = p.tables.facts(row.crop) or batch.food
    pounds, _ = pounds_of(Books(p.tables, load_batchwork()), item, facts)
    return full(pounds, row.per_pint * JARS[str(jar)] / JARS["pint"])


def _today(p: Pantry, batch: Batch) -> tuple[str, ...]:
    """The process that is published for it now, or why there is none."""
    if batch.method not in LIDDED:
        return ()
    size = in_tested_jar(p, batch.method, batch.food, batch.size)
    jar = read_jar(size)
    canner = read_canner(dict(batch.process).get("canner", ""))
    ways: tuple[str, ...] = CANNERS[:1]
    if batch.method is Method.PRESSURE:
        ways = (canner,) if canner in ("dial", "weighted") else CANNERS[1:]
    found: list[str] = []
    for way in ways if jar in JARS else ():
        got = process(p.tables, batch.food.name, str(jar), way, None, p.altitude_ft)
        found += [_option(one, way) for one in got["options"]] or got["reasons"][:1]
    return tuple(found) or ("Say the jar to look its process up.",)


def _option(one: Mapping[str, Any], canner: str) -> str:
    at = f" at {one['psi']} psi" if one["psi"] else ""
    return f"{one['minutes']} min{at} ({canner}, {one['pack']}, {one['food']})"


@booked
def put_up(p: Pantry, planned: Again) -> PutUp:
    """Book it as planned."""
    return putup.put_up(p, planned.reading)

"""Batch arithmetic: a typed sum to an answer with its formula and its source."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from typing import TYPE_CHECKING

from pantry_tui.core.dataclass import replace
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.batchwork import load_batchwork
from pantry_tui.reference.tables import Tables
from pantry_tui.services.batchwork.calc.answer import OTHER_SCALES, Answer, Books
from pantry_tui.services.batchwork.calc.sentence import Sentence

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry
    from pantry_tui.services.rows import Done

#: Every calculation by its name: the module here, the function, an example.
KINDS: dict[str, tuple[str, str, str]] = {
    "brine": ("salt", "brine", "500 g water 3 %"),
    "drysalt": ("salt", "drysalt", "5 lb cabbage"),
    "vinegar": ("sour", "vinegar", "5 % 4 cups vinegar 2 cups water"),
    "syrup": ("sweet", "syrup", "light 7 quart jars"),
    "drying": ("dry", "drying", "5 lb carrots"),
    "conditioning": ("dry", "conditioning", "dried apples"),
    "blanching": ("dry", "blanching", "carrots 5500ft"),
    "yield": ("jars", "jar_count", "20 lb tomatoes"),
    "headspace": ("jars", "headspace", "peaches quart"),
    "packs": ("jars", "packs", "10 lb broccoli 4 people"),
    "infusion": ("spirit", "infusion", "500 ml 40 % 300 g cherries"),
    "cure": ("spirit", "cure", "5 lb ground pork"),
    "smoking": ("spirit", "smoking", "trout"),
    "boil": ("boil", "boil", "1800ft 11 psi"),
}
#: Other words that people use for them.
ALSO = {
    "dry-salt": "drysalt", "dry salt": "drysalt", "salt": "drysalt", "dry": "drying",
    "blanch": "blanching", "condition": "conditioning", "jars": "yield", "freeze": "packs",
    "freezing": "packs", "smoke": "smoking", "curing": "cure", "steam": "boil",
    "boiling": "boil", "pressure": "boil",
}  # fmt: skip


def reckon(
    tables: Tables,
    kind: str,
    text: str,
    altitude_ft: int | None = None,
    people: int | None = None,
    units: str = "",
) -> Answer:
    """The answer to one sum. Raises BadInput for what cannot be read, Refused for what no
    publication allows."""
    name = ALSO.get(kind.casefold(), kind.casefold())
    if name not in KINDS:
        raise BadInput(f"{kind[:30]!r} is no sum known here: {', '.join(KINDS)}.")
    module, function, _ = KINDS[name]
    do: Callable[[Books, Sentence], Answer] = getattr(
        import_module(f"{__name__}.{module}"), function
    )
    books = Books(tables, load_batchwork(), altitude_ft, people, units)
    return _in_one_system(do(books, Sentence(text)), units)


def _in_one_system(found: Answer, units: str) -> Answer:
    """Without the same figures in the other system, where the household has said which is its own;
    ounces keep their grams beside them, since kitchen scales show both."""
    left_out = {"us": OTHER_SCALES[1:], "metric": OTHER_SCALES}.get(units, ())
    return replace(found, also=tuple(one for one in found.also if one.formula not in left_out))


def record(p: Pantry, code: str, answer: Answer) -> Done:
    """Write what was reckoned into the record of a batch. Raises Refused where there is nothing
    that a record keeps, BadInput for an unknown code."""
    from pantry_tui.services.stock.correct import correct

    if not answer.record:
        raise Refused("Nothing of this is kept in the record of a batch: leave --for out.")
    return correct(p, code, process=tuple(answer.record.items()))

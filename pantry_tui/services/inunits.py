"""What is said, in the units of the household that it is said to.

One `Units` stands at each edge: where the command line prints, and where a screen shows a text.
Sentences and amounts are said anew (core/metric.py); numbers and dates are not sentences, and what
the household typed (names, sizes, notes) stays as it typed it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any, TypeVar, cast

from pantry_tui.core.text import singular
from pantry_tui.core.vessels import in_jars

if TYPE_CHECKING:
    from pantry_tui.core.model import Batch
    from pantry_tui.services.pantry import Pantry

T = TypeVar("T")

#: Fields, and heads of sheets, that hold what somebody typed or called a thing.
TYPED = frozenset(
    {
        "code", "container", "container_ids", "containers", "crop", "dish", "file", "food", "id",
        "key", "name", "names", "note", "path", "place", "reserved", "size", "takes", "to",
        "topic", "typed", "uid", "value", "vessel", "where", "about",
    }
)  # fmt: skip
#: Fields of JSON that are no sentences: they carry their own unit, as the contract has them.
FIELDS = TYPED | {
    "amount", "answer", "contents", "climate", "jar", "left", "lid", "method", "methods",
    "process", "published", "sources", "state", "stamp", "took", "unit", "units", "temperature",
    "verdict",
}  # fmt: skip
#: Said of both kinds of units: they are the choice itself.
CHOICES = ("US: pounds, pints, °F", "metric: kilograms, litres, °C")


class Units:
    """The units of one household; `names` are asked for when a sentence would change."""

    def __init__(self, metric: bool, names: Callable[[], Iterable[str]] = tuple) -> None:
        self.metric, self._names = metric, names
        self._shown: set[str] = set()  # names that stood in rows

    @classmethod
    def of(cls, p: Pantry) -> Units:
        """Those of an open household, for as long as it is open."""
        return cls(p.metric, lambda: names_of(p))

    def kept(self) -> Units:
        """The same for when the household is closed."""
        names = tuple(self._names()) if self.metric else ()
        return Units(self.metric, lambda: names)

    def text(self, text: str, *names: str) -> str:
        """A sentence, a line, a whole page; `names`: more that was typed and stays as it is."""
        if not self.metric:
            return _american(text)
        if not _measures(text):
            return text
        from pantry_tui.core.metric import in_metric

        return in_metric(text, (*names, *self._names(), *self._shown, *CHOICES, *_titles()))

    def rows(self, found: T) -> T:
        """Rows with their sentences and contents said in these units, so that columns fit them."""
        if not self.metric:
            return cast(T, _with_contents(found))
        self._shown.update(filter(_is_name, _typed_in(found)))
        return cast(T, self._row(found))

    def contents(self, text: str) -> str:
        """What is left of a thing, alone: "38 lb", "3×5 l"."""
        return self.text(text) if self.metric else _us_contents(text)

    def _row(self, found: Any) -> Any:
        if isinstance(found, str):
            return self.text(found) if type(found) is str else found
        if isinstance(found, Mapping):
            return {key: self._field(key, one) for key, one in found.items()}
        if hasattr(found, "_fields"):
            return type(found)(*map(self._field, found._fields, found))
        if hasattr(found, "__match_args__"):
            return self._sheet(found) if hasattr(found, "heads") else self._dataclass(found)
        if isinstance(found, tuple | list):
            return type(found)(map(self._row, found))
        return found

    def _dataclass(self, found: Any) -> Any:
        return type(found)(
            *(self._field(name, getattr(found, name)) for name in found.__match_args__)
        )

    def _field(self, name: Any, value: Any) -> Any:
        if name == "jars" and isinstance(value, str) and value[:1].isdigit():
            return self.text(in_jars(value))
        return value if name in TYPED else self._row(value)

    def _sheet(self, page: Any) -> Any:
        """A table to print, whose cells are named by the heads above them."""
        self._shown.update(
            cell
            for row in page.rows
            for head, cell in zip(page.heads, row, strict=True)
            if head in TYPED and _is_name(cell)
        )
        from pantry_tui.core.dataclass import replace

        rows = tuple(tuple(map(self._field, page.heads, row)) for row in page.rows)
        return replace(
            page,
            rows=rows,
            title=self.text(page.title),
            notes=tuple(map(self.text, page.notes)),
        )

    def data(self, data: Any) -> Any:
        """JSON with its sentences in these units; fields and numbers are the contract's."""
        return self._json("", data) if self.metric else data

    def _json(self, name: str, value: Any) -> Any:
        if name in FIELDS:
            return value
        if isinstance(value, str):
            return self.text(value)
        if isinstance(value, dict):
            return {key: self._json(key, one) for key, one in value.items()}
        if isinstance(value, list | tuple):
            return [self._json(name, one) for one in value]
        return value


_SIGNLESS = r"(?<=\d) F\b"
#: A metric measure beside another one.
_DOUBLE = r"(?: \(| or )-?\d[\d. to-]* ?(?:°? ?C|k?g|[mck]?m|m?l|L|kPa)\b"
#: What was drawn from a container of metric measures, and what it held or holds.
_DRAWN = (
    r"(?<![\w.])\d[\d. ]*(?:/\d+ )?(?:kg|g|ml|l)"
    r"(?= of \d[A-Z\d]{1,4}\b| left in it\b|, and \d[\d. ]* (?:kg|g|ml|l) is more| is more:)"
)


#: Where rows stand in what a service answers.
_ROWS = ("rows", "take", "beside", "more", "waiting", "discard")


def _with_contents(found: Any) -> Any:
    """Rows with what they hold in US measures; light, since there may be thousands."""
    if isinstance(found, tuple | list) and not hasattr(found, "_fields"):
        return type(found)(map(_with_contents, found))
    if hasattr(found, "heads"):
        return _sheet_with_contents(found)
    said = {}
    for name in ("amount", "left"):
        held = getattr(found, name, "")
        if isinstance(held, str) and held and _us_contents(held) != held:
            said[name] = _us_contents(held)
    for name in _ROWS:
        rows = getattr(found, name, None)
        if isinstance(rows, tuple) and rows:
            said[name] = _with_contents(rows)
    if not said:
        return found
    if hasattr(found, "_replace"):
        return found._replace(**said)
    from pantry_tui.core.dataclass import replace

    return replace(found, **said)


def _sheet_with_contents(page: Any) -> Any:
    from pantry_tui.core.dataclass import replace

    held = [number for number, head in enumerate(page.heads) if head in ("left", "count")]
    rows = tuple(
        tuple(_us_contents(cell) if at in held else cell for at, cell in enumerate(row))
        for row in page.rows
    )
    return replace(page, rows=rows)


def _us_contents(text: str) -> str:
    if not text.endswith(("g", "l")):
        return text
    from pantry_tui.core.metric import us_contents

    return us_contents(text)


def _american(text: str) -> str:
    """Cheap where there is little to do: a list of ten thousand lines goes through here."""
    if "left in it" in text or "l of " in text or "g of " in text or " is more:" in text:
        text = re.sub(_DRAWN, lambda found: _us_contents(found[0]), text)
    if not re.search(_DOUBLE, text):
        return re.sub(_SIGNLESS, " °F", text) if " F" in text else text
    from pantry_tui.core.metric import in_us

    return in_us(text)


@lru_cache(maxsize=8192)
def _measures(text: str) -> bool:
    """Whether something in it would be read as a measure; a list says the same sentences often."""
    from pantry_tui.core.metric import in_metric

    return in_metric(text) != text


def _is_name(text: str) -> bool:
    """Whether it holds a measure and is more than one: the size "1 lb" would hide every pound."""
    from pantry_tui.core.metric import is_measure

    return _measures(text) and not is_measure(text)


def _typed_in(found: Any, name: Any = "") -> Iterator[str]:
    """What stands in fields that hold names, a size also with its container."""
    if isinstance(found, str):
        if name in TYPED:
            yield from (found, singular(found))
    elif isinstance(found, Mapping):
        for key, one in found.items():
            yield from _typed_in(one, key)
    elif hasattr(found, "_fields"):
        for key, one in zip(found._fields, found, strict=True):
            yield from _typed_in(one, key)
    elif hasattr(found, "__match_args__"):
        for one in found.__match_args__:
            yield from _typed_in(getattr(found, one), one)
        if hasattr(found, "size") and hasattr(found, "container"):
            yield f"{found.size} {found.container}"
    elif isinstance(found, tuple | list):
        for one in found:
            yield from _typed_in(one, name)


def names_of(p: Pantry) -> Iterator[str]:
    """What the household typed that could be read as a measure: of its places, its own foods and
    dishes, and of the batches that were read so far."""
    home = p.home
    typed = [place.name for place in p.ever.values()]
    typed += [*home.dishes, *(one.name for one in home.foods)]
    if "stock" in p.__dict__:
        typed += [
            text for held in tuple(p.stock.loaded.values()) if held for text in _of_batch(held[0])
        ]
    for text in dict.fromkeys(filter(None, typed)):
        if _is_name(text):
            yield from (text, singular(text))


def _of_batch(batch: Batch) -> Iterator[str]:
    yield from (batch.food.name, batch.size, batch.note)
    yield from (one.note for one in batch.rated)


@cache
def _titles() -> tuple[str, ...]:
    """Publications whose title holds a measure: a title is no figure."""
    from pantry_tui.reference.tables import load_tables

    return tuple(one.title for one in load_tables().sources.values() if _measures(one.title))

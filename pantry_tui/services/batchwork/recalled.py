"""What a household did before, offered while it types a put-up line: the rest of a word, how the
last such batch was put up, earlier lines, and how last year's was."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from datetime import timedelta

from pantry_tui.core.line.noted import as_noted
from pantry_tui.core.model import Batch
from pantry_tui.core.text import clean
from pantry_tui.core.words import Climate, Method
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.contents import size_of
from pantry_tui.services.batchwork.understood import line_at
from pantry_tui.services.books.past import Past, past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Ask, PutUpReading

_METHODS = tuple(method.value for method in Method)
#: So many letters of a word before it is finished: of what the household has, of any food.
_OWN, _ANY = 2, 3
#: How many words a name may have of which the last ones are typed.
_WORDS = 4
#: So many lines are brought back.
MOST = 50
#: Last year's: put up so many days ago, from and to.
_LAST_YEAR = (183, 550)


def offered(p: Pantry, line: str, place: str = "", before: PutUpReading | None = None) -> str:
    """What one key adds to the end of a line: the rest of a word that it begins, else how and where
    the last such batch was put up, as far as the line does not say; "" for nothing.

    With a `place` (its id) the line is of what stands there, and `before` the line before it, as
    which it may be kept.
    """
    return (
        _rest_of_word(p, line)
        or _as_last_time(p, line, place)
        or (_as_before(p, line, place, before) if before is not None else "")
    )


# -- words ----------------------------------------------------------------------------------------


def _rest_of_word(p: Pantry, line: str) -> str:
    part = line.rpartition(",")[2].lstrip()
    words = part.split(" ")
    if not part or not words[-1]:
        return ""
    first = "," not in line
    for size in range(min(_WORDS, len(words)), 0, -1):
        typed = " ".join(words[-size:]).casefold()
        if any(typed == name.casefold() for name in (*_place_names(p), *Climate, *_METHODS)):
            return ""  # "fridge" is a place here, and need not become a fridge pickle
        for least, names in _names(p, food_first=first):
            if len(typed) < least or not typed[0].isalpha():
                continue
            found = min((name for name in names if _begins(name, typed)), key=len, default="")
            if found:
                return found[len(typed) :]
        if p.tables.index.named(typed) is not None or any(
            typed == name.casefold() for _, names in _names(p, first) for name in names
        ):
            return ""  # it is whole: "beans" behind "runner" begins no other word
    return ""


def _begins(name: str, typed: str) -> bool:
    return len(name) > len(typed) and name.casefold().startswith(typed)


def _names(p: Pantry, food_first: bool) -> Iterator[tuple[int, Iterable[str]]]:
    """The names that a word may begin, those that are meant sooner first, with how many letters of
    them have to be there."""
    own = p.once("names of own foods", lambda: tuple({one.food for one in past(p).values()}))
    places = p.once("names of places", lambda: tuple(_said(one) for one in _place_names(p)))
    tables = p.once("names of foods", lambda: tuple(food.name for food in p.tables.foods))
    kinds = [(_OWN, own), (_ANY, tables), (_OWN, places), (_OWN, _METHODS)]
    yield from kinds if food_first else [*kinds[2:], *kinds[:2]]


def _place_names(p: Pantry) -> Iterator[str]:
    yield from (place.name for place in p.places.values())
    yield from p.place_paths().values()


def _said(path: str) -> str:
    """A path as it is typed: ("cellar › north wall") -> "cellar north wall"."""
    return " ".join(path.replace("›", " ").split())


# -- the last such batch --------------------------------------------------------------------------


def _as_last_time(p: Pantry, line: str, where: str) -> str:
    reading = _read(p, line, where)
    if not reading.food or reading.unread or p.facts(reading.food) is None:
        return ""
    last = last_such(p, reading.food, reading.method)
    if last is None:
        return ""
    size = "" if reading.size or reading.container or reading.contents else last.size
    method = "" if reading.method else last.method.value
    place = "" if reading.place else _place_of(p, last)
    for parts in ((size, method, place), ("", method, place)):
        if more := _more(p, line, where, reading, last.method, parts):
            return more
    return ""


def _as_before(p: Pantry, line: str, where: str, before: PutUpReading) -> str:
    """Kept as the line before it, where it does not say how."""
    reading = _read(p, line, where)
    if not reading.food or reading.unread or reading.method is not None or before.method is None:
        return ""
    size = "" if reading.size or reading.container or reading.contents else size_of(before)
    parts = (size, before.method.value)
    return _more(p, line, where, reading, before.method, parts)


def _more(
    p: Pantry,
    line: str,
    where: str,
    typed: PutUpReading,
    method: Method,
    parts: Sequence[str],
) -> str:
    """What is added, where the longer line can be booked and what was typed stays as it was."""
    more = ", ".join(filter(None, parts))
    if not more:
        return ""
    bare = line.rstrip()
    between = " " if bare.endswith(",") else ", "
    read = _read(p, f"{bare}{between}{more}", where)
    same = (read.food, read.count, read.method) == (typed.food, typed.count, method)
    if not same or read.problems or read.unread:
        return ""
    return f"{between}{more}" if line == bare else f"{between.strip()} {more}".lstrip()


def _read(p: Pantry, line: str, where: str) -> PutUpReading:
    return there(p, line, where) if where else putup.read(p, line)


def last_such(p: Pantry, food: str, method: Method | None = None) -> Batch | None:
    """The batch of a food that was put up last, by that method where one is said."""
    mine = [one for one in of_food(p, food) if method in (None, one.method)]
    last = max(mine, key=_when, default=None)
    return p.stock.batches[last.id] if last is not None else None


def of_food(p: Pantry, food: str) -> Sequence[Past]:
    """Every batch of it that there ever was."""
    return p.once(
        f"past of {food}", lambda: tuple(one for one in past(p).values() if one.food == food)
    )


def _when(one: Past) -> tuple[object, str]:
    return one.born, one.id


def _place_of(p: Pantry, batch: Batch) -> str:
    """Where it was put up, as it is typed; "" where that place is gone."""
    first = p.containers_of(batch)[0].turns[0].place
    return _said(p.place_paths().get(first or "", ""))


# -- a place that is not there yet, and what stands in one ----------------------------------------


def place_to_make(reading: PutUpReading) -> Ask | None:
    """The place that a line names and that is not there, with those that could be meant; None where
    the line wants something else as well, or names none."""
    wrong = len(reading.problems) + len(reading.unread)
    if reading.place or not reading.food:
        return None
    said = next((one for one in reading.asks if one.about == "place" and one.typed), None)
    if said is not None:
        return said if wrong == 1 and " and " not in said.typed else None
    if len(reading.unread) == 1 and wrong == 2 and reading.unread[0][:1].isalpha():
        return Ask("place", reading.unread[0])
    return None


def there(p: Pantry, line: str, place: str) -> PutUpReading:
    """What a line says of something that has stood in a place (its id) for a while: the place need
    not be said again, and a day that is not said is not known."""
    line = line_at(p, line, place)
    undated = putup.read(p, f"date unknown, {line}")
    dated = any(one.about == "made" for one in undated.asks)
    return putup.read(p, line) if dated else undated


# -- earlier lines and years ----------------------------------------------------------------------


def earlier(p: Pantry, but: Collection[str] = ()) -> Sequence[str]:
    """Lines that put up again what was put up before, the last batch first, each once, without
    those of some lid codes. What a process was is not said again: it may have been for another jar,
    height or advice."""
    newest = sorted(past(p).values(), key=_when, reverse=True)[:MOST]
    lines = p.once("earlier lines", lambda: [(one.code, _line_of(p, one)) for one in newest])
    return tuple(dict.fromkeys(line for code, line in lines if code not in but))


def _line_of(p: Pantry, one: Past) -> str:
    batch = p.stock.batches[one.id]
    place = _place_of(p, batch)
    of = "," if " of " in batch.size else ""  # "box of 12, eggs"
    count = f"{len(one.kept)} {batch.size}{of} {one.food}"
    if one.came[0].bulk and not one.came[0].first.unit:  # ten squash are one pile
        count = f"{int(one.came[0].first.number)} {one.food}"
    count = " ".join(count.split())
    short = ", ".join(filter(None, (count, place)))
    read = putup.read(p, short)
    if read.method is one.method and not (read.problems or read.unread):
        return short  # jam, or what stands in a freezer
    return ", ".join(filter(None, (count, one.method.value, place)))


def line_of(p: Pantry, batch: Batch) -> str:
    """The whole line of a put-up, with its day, its record and its note, to be typed anew."""
    said = [_line_of(p, past(p)[batch.id])]
    said += [batch.made.isoformat() if batch.made is not None else "unknown"]
    for key, value in batch.process:
        said.append(f'{key}="{value}"' if " " in value else f"{key}={value}")
    said += [as_noted(batch.note)] if batch.note else []
    return clean(", ".join(said))


def before(p: Pantry, food: str) -> Sequence[str]:
    """How it was: the batch that was put up last, and what became of last year's, how it tasted and
    how much of it is left over."""
    mine = of_food(p, food)
    if not mine:
        return ()
    last = max(mine, key=_when)
    day = f"{last.born:%d %b %Y}".lstrip("0")
    told = [f"last time      {last.code}, {_many(last, ever=True)} on {day}"]
    first, most = (p.today - timedelta(days=days) for days in reversed(_LAST_YEAR))
    year = [one for one in mine if first <= one.born <= most]
    told += [f"last year      {_came_of(one)}" for one in sorted(year, key=_when, reverse=True)[:3]]
    return tuple(told)


def _came_of(one: Past) -> str:
    here = sum(kept.here for kept in one.kept)
    left = f"{_many(one, ever=False)} left over" if here else "none left over"
    rated = f"; {clean(one.rated[1]).replace(f': {one.code}', '')}" if one.rated[1] else ""
    return f"{one.code}, {_many(one, ever=True)}: {left}{rated}"


def _many(one: Past, *, ever: bool) -> str:
    """ "10 pint jars", "3 of them", or so much of what is drawn from."""
    kept = one.kept if ever else [each for each in one.kept if each.here]
    came = one.came[0]
    if came.bulk and len(one.came) == 1:
        held = sum(float(came.first.number) * (1.0 if ever else each.left) for each in kept)
        return f"{held:g} {came.first.unit}".strip()
    return f"{len(kept)} {one.size}".strip() if ever else str(len(kept))

"""Words beside a food's name: data/words.csv (they leave it what it is, or say how it is kept) and
data/heads.csv (they make another food of it). Read once."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from pantry_tui.core import scope
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.csvrows import Row, one_of, read_rows
from pantry_tui.reference.names import single
from pantry_tui.reference.packing import Lazy, Packing
from pantry_tui.reference.tables import Tables

#: The same food, and one that nobody can name.
SAME, ASKED = "=", "?"


@dataclass(frozen=True, slots=True)
class Word:
    """A row of words.csv: `methods` is one method that it says, or several to ask about."""

    kind: str
    methods: tuple[Method, ...]


@dataclass(frozen=True, slots=True)
class Head:
    """A row of heads.csv: what the word makes of what `of` names (a key as in keeping.csv).

    `becomes` is a food of foods.csv, `SAME`, `ASKED`, or "": a food in no table, of this group,
    acidity (`SAME`: that of what it is made of) and classes; `methods` is the method that the word
    says. `where`: the word stands only in "front" of it or "behind"; "" either.
    """

    of: str
    where: str
    becomes: str
    group: str
    acidity: str
    classes: frozenset[str]
    methods: tuple[Method, ...] = ()


@dataclass(frozen=True, slots=True)
class Beside:
    """Both tables, by the single form of their words."""

    words: Mapping[str, Word]
    heads: Mapping[str, tuple[Head, ...]]


def _word_key(text: str) -> str:
    return " ".join(part for word in text.split() for part in single(word))


def read_beside(folder: Path, tables: Tables) -> Beside:
    """Both tables under `folder`. Raises DataError naming file, row and column."""
    words: dict[str, Word] = {}
    for row in read_rows(folder / "words.csv", ("word", "kind", "effect", "means")):
        effect = one_of(row, "effect", ("keeps", "method", "ask"))
        said = row.words("means")
        strange = next((one for one in said if one not in tuple(Method)), None)
        if strange is not None:
            raise row.bad("means", f"{strange!r} is no method")
        if len(said) != {"keeps": 0, "method": 1}.get(effect, max(2, len(said))):
            raise row.bad("means", f"does not fit {effect}")
        key = _word_key(row.text("word", need=True))
        found = Word(row.text("kind", need=True), tuple(map(Method, said)))
        if words.setdefault(key, found) != found:
            raise row.bad("word", f"{key!r} stands twice")
    known = {food.name for food in tables.foods}
    classes = {one for food in tables.foods for one in food.classes}
    heads: dict[str, list[Head]] = defaultdict(list)
    columns = ("word", "where", "of", "becomes", "group", "acidity", "classes", "method")
    for row in read_rows(folder / "heads.csv", columns):
        becomes = row.text("becomes")
        if becomes not in known | {"", SAME, ASKED}:
            raise row.bad("becomes", f"{becomes!r} is no food of foods.csv")
        of = row.text("of", need=True)
        if not all(_is_key(one, known, classes) for one in scope.parts(of)):
            raise row.bad("of", f"{of!r} is no food, class:, group: ... of foods.csv")
        head = Head(
            of,
            one_of(row, "where", ("front", "behind")) if row.text("where") else "",
            becomes,
            "" if becomes else row.word("group", Group).value,
            "" if becomes else _sourness(row),
            frozenset(row.words("classes")),
            (row.word("method", Method),) if row.text("method") else (),
        )
        for word in row.words("word"):
            heads[_word_key(word)].append(head)
    if not words or not heads:
        raise DataError("words.csv row 2, column word: one word is needed.")
    return Beside(words, {word: tuple(found) for word, found in heads.items()})


def _sourness(row: Row) -> str:
    """How sour what is made is, or that it is as sour as what it is made of."""
    return SAME if row.text("acidity") == SAME else row.word("acidity", Acidity).value


def _is_key(key: str, foods: set[str], classes: set[str]) -> bool:
    kind, colon, name = key.partition(":")
    if key == "*" or not colon:
        return key == "*" or key in foods
    return name in (classes if kind == "class" else tuple(Group)) and kind in (
        "class",
        "group",
        "acid",
        "low",
    )


_WORD = Packing(Word, methods=Method)
_HEAD = Packing(Head, methods=Method)


def beside_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """Both tables as a part of the compiled file."""
    found = read_beside(folder, tables)
    words = {word: _WORD.pack(row) for word, row in found.words.items()}
    heads = {word: tuple(map(_HEAD.pack, rows)) for word, rows in found.heads.items()}
    return {"beside": (words, heads)}


def unpack_beside(parts: Mapping[str, Any]) -> Beside:
    """The same out of that part."""
    words, heads = parts["beside"]
    return Beside(
        Lazy(lambda: words, _WORD.unpack),
        Lazy(lambda: heads, lambda rows: tuple(map(_HEAD.unpack, rows))),
    )


@cache
def load_beside() -> Beside:
    """The tables that ship with the program, once a process."""
    parts = compiled()
    if "beside" in parts:
        return unpack_beside(parts)
    from pantry_tui.reference.tables import load_tables

    return read_beside(data_dir(), load_tables())

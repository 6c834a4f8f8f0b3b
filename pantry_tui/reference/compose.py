"""What food a run of words means: a known one, or a known one and words beside it.

"Red onions" are onions; "leek powder" is a food of its own, and never stands on the figures of
leeks. Where the words could mean two things nothing is guessed: the answer says what to ask.

English puts the main word last. A word in front of a food that nobody knows may be where it came
from, and is given back to be a note; one behind it may make another food of it ("tomato
gazpacho"), and in front of a word like jam it is what the jam is made of: then no food is found.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING

from pantry_tui.core import scope
from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.reference.beside import ASKED, SAME, Beside, Head, load_beside
from pantry_tui.reference.names import JOINING, single

if TYPE_CHECKING:
    from pantry_tui.reference.tables import Tables

#: More words than this are no name of a food.
LONGEST = 8
_JOINED = 3
#: Classes whose danger stays in whatever is made of the food: cooked rice keeps for a day.
_STILL = frozenset({"rice"})
#: What joins two foods that one word like soup is made of, and all that joins two.
_AND = frozenset({"and", "&", "or"})
_TELLING = frozenset({"cut of meat", "variety by name", "kind"})
_JOINS = JOINING | _AND
#: Jams of two acid fruits are one that is in the tables: by their class, its name.
_JAM, _MIXED_JAM = "jam", "mixed fruit jam"


@dataclass(frozen=True, slots=True)
class Meant:
    """`facts` None: a food nobody knows, or one of `either`. `methods`: one that the words say, or
    several to choose from. `strange` are words in front of it that are not understood."""

    facts: FoodFacts | None
    methods: tuple[Method, ...] = ()
    strange: tuple[str, ...] = ()
    either: tuple[str, ...] = ()


NOBODY = Meant(None)


def _key(words: Sequence[str]) -> str:
    return " ".join(part for word in words for part in single(word))


def _parted(words: Sequence[str]) -> list[list[str]]:
    """The runs between the words that join two foods, one that is empty too."""
    parts: list[list[str]] = [[]]
    for word in words:
        if word in _AND:
            parts.append([])
        else:
            parts[-1].append(word)
    return parts


def _said(found: Meant, methods: tuple[Method, ...]) -> Meant:
    """The same with one method more said of it: what both words could mean, else both."""
    if not methods:
        return found
    same = tuple(one for one in methods if one in found.methods)
    return replace(found, methods=same or (*found.methods, *methods))


def composer(tables: Tables, own: Callable[[str], FoodFacts | None] | None = None) -> Composer:
    """One that knows the foods of the tables, and those that `own` finds."""

    def named(text: str) -> FoodFacts | None:
        food = tables.index.named(text)
        if food is not None:
            return food.facts
        return own(text) if own is not None else None

    return Composer(named, load_beside(), tables.index.words)


def composed(tables: Tables, text: str) -> FoodFacts | None:
    """The food, where the words beside its name leave nothing to ask."""
    words = re.findall(r"[^\W_]+(?:['’][^\W_]+)*", text.lower())
    found = composer(tables).meant(words)
    return found.facts if not (found.methods or found.strange) else None


class Composer:
    """Reads runs of words as foods: `named` finds a food by exactly one of its names, of which
    `words` are all the words."""

    def __init__(
        self,
        named: Callable[[str], FoodFacts | None],
        beside: Beside,
        words: Callable[[], frozenset[str]] = frozenset,
    ) -> None:
        self._named, self._beside, self._words = named, beside, words

    def knows(self, word: str) -> bool:
        """Whether it is a word of the name of a food, or one that stands beside such a name."""
        return all(part in self._words() or part in self._beside.heads for part in single(word))

    def alike(self, word: str) -> tuple[str, ...]:
        """The words of foods of which it could be a slip of the pen, nearest first."""
        from pantry_tui.reference.near import alike

        return alike(_key([word]), self._words() | self._beside.heads.keys())

    def called(self, text: str) -> FoodFacts | None:
        """The food of exactly this name."""
        return self._named(text)

    def names(self, text: str) -> bool:
        """Whether it is exactly the name of a food."""
        return self._named(text) is not None

    def telling(self, words: Sequence[str]) -> list[str]:
        """The words without those beside a food that tell little of it: a colour, a size, a way to
        cut or keep it. A variety and a cut of meat tell more."""
        left, at = [], 0
        while at < len(words):
            for size in range(_JOINED, 0, -1):
                row = self._beside.words.get(_key(words[at : at + size]))
                if row is not None and row.kind not in _TELLING and not self._fruit(words[at]):
                    at += size
                    break
            else:
                left.append(words[at])
                at += 1
        return left

    def otherwise(self, words: Sequence[str], method: Method | None) -> list[str]:
        """The words that say that it was kept in another way than `method`: smoked sausages."""
        said = {one: row.methods for one in words if (row := self._beside.words.get(_key([one])))}
        return [one for one, ways in said.items() if ways and method not in ways]

    def _fruit(self, word: str) -> bool:
        """Whether a colour is a food, too: an orange."""
        other = self._named(word)
        return other is not None and single(other.name) == single(word)

    def made_of(self, words: Sequence[str]) -> bool:
        """Whether they are a word like jam, soup or mince, made of what stands in front."""
        return any(row.where != "front" for row in self._beside.heads.get(_key(words), ()))

    def meant(self, words: Sequence[str]) -> Meant:
        """The food that the words mean. Nothing is dropped: each is part of a name, one of the
        tables' words, or strange."""
        if not 0 < len(words) <= LONGEST:
            return NOBODY
        if words[0] in JOINING or words[-1] in JOINING:
            return NOBODY
        whole = self._named(" ".join(words))
        if whole is not None:
            return Meant(whole)
        best: Meant | None = None
        for start, stop, core in self._cores(words):
            found = self._around(words, start, stop, core)
            if found.facts is None and not found.either:
                continue
            if best is None or len(found.strange) < len(best.strange):
                best = found
        return best or NOBODY

    def _cores(self, words: Sequence[str]) -> Iterator[tuple[int, int, FoodFacts]]:
        """Every run that names a food, longest first, then the last; none that lies within the
        name of another, or begins within one: "green tomato juice" is made of green tomatoes.
        Where the words in front leave the other what it is, it ends there: fresh egg whites."""
        found: list[tuple[int, int, FoodFacts]] = []
        for size in range(len(words) - 1, 0, -1):
            for start in range(len(words) - size, -1, -1):
                said = words[start : start + size]
                if said[0] in JOINING or said[-1] in JOINING:
                    continue
                core = self._named(" ".join(said))
                if core is not None:
                    found.append((start, start + size, core))
        for start, stop, core in found:
            if not any(self._hides((a, b, one), words, start, stop) for a, b, one in found):
                yield start, stop, core

    def _hides(
        self, other: tuple[int, int, FoodFacts], words: Sequence[str], start: int, stop: int
    ) -> bool:
        """Whether another name takes words of the run from `start` to `stop`."""
        a, b, food = other
        if a == start:
            return b > stop
        if start < a < stop < b:
            core = self._named(" ".join(words[start:stop]))
            return self._named(" ".join(words[a:stop])) == core
        return a < start < b and (b >= stop or self._named(" ".join(words[start:b])) != food)

    def _around(self, words: Sequence[str], start: int, stop: int, core: FoodFacts) -> Meant:
        """The core with the words behind it, then those in front of it, nearest first."""
        found, at = Meant(core), stop
        while at < len(words):
            size, found = self._next(words, at, found, behind=True)
            if not size or found.facts is None:
                return NOBODY
            at += size
        if stop == len(words) and start > 0:
            if _JAM in core.classes and (jam := self._mixed_jam(words)) is not None:
                return Meant(jam)
            if self.made_of(words[start:stop]):
                return self._mixed(words, start)
            if words[start - 1] in _AND and self.made_of(words[-1:]):
                return self._mixed(words, len(words) - 1)  # "chicken and leek soup"
        at = start
        strange: list[str] = []
        while at > 0:
            size, more = self._next(words, at, found, behind=False)
            if not size:
                strange.insert(0, words[at - 1])
                at -= 1
            elif more.facts is None:
                return NOBODY
            else:
                found, at = more, at - size
        joined = any(word in _JOINS for word in strange)
        front = [word for word in strange if word not in _JOINS]
        if front and (found.facts != core or joined):
            return NOBODY  # "zorble soup", or two foods in one jar
        if any(self._named(word) is not None for word in front):
            return NOBODY
        return replace(found, strange=tuple(front))

    def _mixed(self, words: Sequence[str], start: int) -> Meant:
        """A word like soup behind the foods it is made of: "carrot and coriander soup". Where they
        make different foods of it, which one is asked."""
        if words[start - 1] in JOINING:
            return NOBODY  # "apples with cheese"
        made: list[Meant] = []
        for part in filter(None, _parted(words[:start])):
            base = self.meant(part)
            if base.facts is None or base.strange:
                return NOBODY
            said = words[start:]
            found = self._made(_key(said), base, " ".join((*part, *said)), behind=True)
            if found is None or found.facts is None:
                return NOBODY
            made.append(found)
        if not made:
            return NOBODY
        foods = dict.fromkeys(one.facts.name for one in made if one.facts is not None)
        if len(foods) == 1:
            return made[0]
        kinds = {replace(one.facts, name="") for one in made if one.facts is not None}
        if len(kinds) == 1 and not next(iter(kinds)).known:
            return replace(made[0], facts=replace(next(iter(kinds)), name=" ".join(words)))
        return Meant(None, either=tuple(foods))

    def _mixed_jam(self, words: Sequence[str]) -> FoodFacts | None:
        """The jam of several fruits: "strawberry rhubarb jam". None where it is made of one, or
        where one of them makes no jam that is acid by itself."""
        fruits = [fruit for part in _parted(words[:-1]) for fruit in self._side_by_side(part)]
        if len(fruits) < 2:
            return None
        for fruit in fruits:
            base = self.meant(fruit)
            if base.facts is None or base.strange or base.facts.group is Group.HERB:
                return None  # "apple and mint jelly" is asked about
            made = self._made(_key(words[-1:]), base, " ".join((*fruit, words[-1])), behind=True)
            jam = made.facts if made is not None else None
            if jam is None or _JAM not in jam.classes or jam.acidity is not Acidity.ACID:
                return None
        return self._named(_MIXED_JAM)

    def _side_by_side(self, words: Sequence[str]) -> list[Sequence[str]]:
        """ "strawberry rhubarb": the foods that stand side by side; one where they are one."""
        for cut in range(len(words), 0, -1):
            found = self.meant(words[:cut])
            if found.facts is not None and not found.strange:
                return [words[:cut], *(self._side_by_side(words[cut:]) if words[cut:] else [])]
        return [words]

    def _next(
        self, words: Sequence[str], at: int, found: Meant, *, behind: bool
    ) -> tuple[int, Meant]:
        """How many words are taken, and what the food is with them; 0 where none is known."""
        for size in range(_JOINED, 0, -1):
            start, stop = (at, at + size) if behind else (at - size, at)
            if start < 0 or stop > len(words):
                continue
            said = words[start:stop]
            name = " ".join(self._unsaid(words[:stop] if behind else words[start:]))
            made = self._made(_key(said), found, name, behind)
            if made is not None:
                return size, made
        return 0, found

    def _unsaid(self, words: Sequence[str]) -> list[str]:
        """The words of a name without those that say by which method it is kept: dried carrot
        leather is carrot leather, by whichever of them it is looked up again."""
        rows = [(word, self._beside.words.get(_key([word]))) for word in words]
        return [
            word
            for word, row in rows
            if row is None or row.kind != "method" or len(row.methods) != 1
        ]

    def _made(self, key: str, found: Meant, name: str, behind: bool) -> Meant | None:
        """The food with one word more beside it, which is called `name` if no table has it."""
        facts = found.facts
        assert facts is not None
        side = "behind" if behind else "front"
        rows = [one for one in self._beside.heads.get(key, ()) if one.where in ("", side)]
        near = max((scope.near(row.of, facts, guess=False) for row in rows), default=-1)
        if near >= 0:
            row = next(one for one in rows if scope.near(one.of, facts, guess=False) == near)
            made = replace(found, facts=self._becomes(row, facts, key, name, behind))
            return _said(made, row.methods)
        word = self._beside.words.get(key)
        if word is None:
            return None
        if word.kind == "cut of meat" and facts.group not in (Group.MEAT, Group.FISH):
            return None
        return _said(found, word.methods)

    def _becomes(
        self, row: Head, facts: FoodFacts, key: str, name: str, behind: bool
    ) -> FoodFacts | None:
        """What is made of the food: one that is in the tables by that name, the one of the row, or
        one that is in no table."""
        if row.becomes == SAME:
            return facts
        if row.becomes == ASKED:
            return None
        sides = [f"{facts.name} {key}"] if behind else [f"{key} {facts.name}"]
        sides += [] if row.where else [f"{key} {facts.name}", f"{facts.name} {key}"]
        own = next(filter(None, map(self._named, sides)), None)
        if own is not None:
            return own
        made = self._named(row.becomes) if row.becomes else None
        still = facts.classes & _STILL
        if made is not None and still <= made.classes:
            return made
        if made is not None:
            return replace(made, name=name, classes=made.classes | still, known=False)
        sour = facts.acidity if row.acidity == SAME else Acidity(row.acidity)
        return FoodFacts(name, Group(row.group), sour, row.classes | still, known=False)

"""The food in a put-up line, and the words of methods beside it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from pantry_tui.core.line.tokens import Kind, Line
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Method
from pantry_tui.reference.compose import LONGEST, Meant
from pantry_tui.reference.near import slip

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.line import Kitchen

_FILLERS = frozenset(
    {"of", "in", "on", "into", "to", "at", "the", "made", "with", "put", "up", "and", "x", "×",
     "i", "we", "my", "our", "a", "an", "is", "are", "was", "it", "some", "just", "putting", "&",
     "stored", "kept", "now", "by", "as"}
)  # fmt: skip
#: Words that begin a remark: where it came from, for whom.
_REMARKS = frozenset({"from", "for", "because", "but", "see", "gift", "thanks", "out"})
#: Verbs and other words of a method, beside those that `find_method` knows.
_VERBS: dict[str, Method] = {
    "froze": Method.FROZEN, "pressure-canned": Method.PRESSURE, "dehydrated": Method.DRIED,
    "waterbathed": Method.BOILING_WATER, "bwb": Method.BOILING_WATER,
    "in the water bath": Method.BOILING_WATER, "in water bath": Method.BOILING_WATER,
    "pressure canner": Method.PRESSURE, "in the pressure canner": Method.PRESSURE,
    "boiling water bath": Method.BOILING_WATER, "rendered": Method.RENDERED_FAT,
    "in damp sand": Method.CELLAR, "in sand": Method.CELLAR, "in sawdust": Method.CELLAR,
    "in peat": Method.CELLAR, "bought": Method.BOUGHT, "tincture": Method.INFUSION,
    "put by": Method.CELLAR, "pc": Method.PRESSURE, "wb": Method.BOILING_WATER,
}  # fmt: skip
#: Said of the way, and no method by itself.
_IDLE = frozenset({"put by", "put up", "putting up", "laid down"})
#: Words of `find_method` that are foods or too short to mean a method beside a food.
_NO_METHOD = frozenset(
    {"paste", "oil", "syrup", "stored", "shop", "jam", "jams", "jelly", "jellies", "preserves",
     "marmalade", "liqueur", "lime", "wine", "raw", "fresh", "dry", "koji", "cellar", "freezer",
     "cured", "curing", "cooked", "leftover", "leftovers"}
)  # fmt: skip
#: Signs that say nothing by themselves.
_SIGNS = frozenset("?.!+~'\"@/*&")
_FERMENTS = frozenset({"fermenting", "fermented", "ferment", "lacto", "working", "brewing"})


@dataclass
class Food:
    """`name` of the food, or as it was typed where nobody knows it. `explicit` are methods that
    stand beside it, `said` those that words beside its name could mean; `fermenting` that it is
    said to ferment. `ask` is (typed, choices, why)."""

    name: str = ""
    facts: FoodFacts | None = None
    typed: str = ""
    explicit: list[Method] = field(default_factory=list)
    said: tuple[Method, ...] = ()
    method_typed: str = ""
    slips: tuple[str, ...] = ()
    fermenting: bool = False
    fresh: bool = False  # said by itself: "eggs, fresh"
    negated: bool = False
    unread: list[str] = field(default_factory=list)
    ask: tuple[str, tuple[str, ...], str] | None = None
    vinegar_strength: str = ""


class _Span(NamedTuple):
    """A stretch of words as a food: `cost` is how many words beside it nobody understands."""

    cost: int
    length: int
    run: int
    start: int
    stop: int
    meant: Meant


def take_food(line: Line, kitchen: Kitchen) -> Food:
    """What is left of the line: the food, its methods, and what nobody understands."""
    food = Food()
    runs = _runs(line, food)
    best: _Span | None = None
    for number, run in enumerate(runs):
        for span in _spans(number, run, kitchen):
            if best is None or (span.cost, -span.length) < (best.cost, -best.length):
                best = span
    left: list[list[str]] = []
    if best is not None:
        run = runs[best.run]
        food.typed = " ".join(run[best.start : best.stop])
        _take_meant(food, best.meant)
        left += [run[: best.start], run[best.stop :]]
    left += [run for n, run in enumerate(runs) if best is None or n != best.run]
    for words in left:
        _beside(food, words, kitchen, has_food=best is not None)
    if best is None:
        _unknown(food)
    return food


def _runs(line: Line, food: Food) -> list[list[str]]:
    """The free words, part by part; a remark is named as it stands; so are numbers and signs that
    nobody claimed."""
    parts: dict[int, list[int]] = {}
    for i, token in enumerate(line.tokens):
        if line.free[i]:
            parts.setdefault(token.part, []).append(i)
    runs: list[list[str]] = []
    for indices in parts.values():
        run: list[str] = []
        for n, i in enumerate(indices):
            token = line.tokens[i]
            if token.text in _REMARKS and token.kind is Kind.WORD and n + 1 < len(indices):
                food.unread.append(" ".join(line.tokens[j].said for j in indices[n:]))
                break
            if token.kind is Kind.WORD:
                if run and indices[n - 1] != i - 1:
                    runs.append(run)
                    run = []
                run.append(token.text)
            elif token.said not in _SIGNS:
                food.unread.append(token.said)
        if run:
            runs.append(run)
    return runs


def _spans(number: int, run: list[str], kitchen: Kitchen) -> list[_Span]:
    found = []
    whole = _within(run, kitchen)
    for start in range(len(run)):
        for stop in range(min(len(run), start + LONGEST), start, -1):
            if run[start] in _FILLERS or run[stop - 1] in _FILLERS:
                continue
            if start in whole or stop in whole:
                continue
            meant = _meaning(run[start:stop], kitchen)
            if meant.facts is None and not meant.either:
                continue
            before = run[start - 1] if start else ""
            if before and kitchen.composer.made_of(run[start:stop]) and _made(before, kitchen):
                continue
            cost = _strange(run[:start], kitchen) + _strange(run[stop:], kitchen, behind=True)
            cost += 2 * len(meant.strange)
            found.append(_Span(cost, stop - start, number, start, stop, meant))
    return found


def _within(run: list[str], kitchen: Kitchen) -> set[int]:
    """Where a method of several words would be cut in two: before the bath of "water bath"."""
    found: set[int] = set()
    for i in range(len(run)):
        for size in range(2, min(5, len(run) - i + 1)):
            said = " ".join(run[i : i + size])
            if said in _VERBS or kitchen.find_method(said) is not None:
                found.update(range(i + 1, i + size))
    return found


def _meaning(words: list[str], kitchen: Kitchen) -> Meant:
    """The food that the words mean, or the foods that they could."""
    meant = kitchen.composer.meant(words)
    if meant.facts is not None or meant.either:
        return meant
    could = kitchen.could_be(" ".join(words))
    return Meant(None, either=could) if could else meant


def _made(word: str, kitchen: Kitchen) -> bool:
    """Whether a word in front of "jam" is what it is made of, and nobody knows it."""
    return word not in _FILLERS and bool(_methods([word], kitchen)[1])


def _strange(words: Sequence[str], kitchen: Kitchen, *, behind: bool = False) -> int:
    """How many words are no method and no filler. Behind a food they may make another of it."""
    left = _methods(words, kitchen)[1]
    return (3 if behind else 2) * len(left)


def _methods(words: Sequence[str], kitchen: Kitchen) -> tuple[list[tuple[str, Method]], list[str]]:
    """The methods in a stretch of words, and the words that are left, fillers aside."""
    found: list[tuple[str, Method]] = []
    left: list[str] = []
    i = 0
    while i < len(words):
        for size in range(min(5, len(words) - i), 0, -1):
            said = " ".join(words[i : i + size])
            if said in _IDLE:
                i += size
                break
            method = _VERBS.get(said) or (None if said in _NO_METHOD else kitchen.find_method(said))
            if method is not None:
                found.append((said, method))
                i += size
                break
        else:
            if words[i] not in _FILLERS:
                left.append(words[i])
            i += 1
    return found, left


def _take_meant(food: Food, meant: Meant) -> None:
    food.facts = meant.facts
    food.said = meant.methods
    food.negated |= "not" in meant.strange
    food.unread += meant.strange
    if meant.either:
        why = f"{food.typed!r} could be {' or '.join(meant.either)}: say which."
        food.ask = (food.typed, meant.either, why)
    elif meant.facts is not None:
        food.name = meant.facts.name


def _beside(food: Food, words: list[str], kitchen: Kitchen, *, has_food: bool) -> None:
    """Words beside the food: methods, more of the food ("chicken, whole"), or not understood."""
    if "not" in words or "no" in words[:1]:
        food.negated = True
    food.fermenting |= bool(_FERMENTS & set(words))
    food.fresh |= words in (["fresh"], ["kept", "fresh"], ["stored", "fresh"])
    alone = kitchen.find_method(" ".join(words))
    plain = alone is not None and " ".join(words) not in _NO_METHOD
    if has_food and words and not plain and _adds(food, words, kitchen):
        return
    if alone is not None and words:
        food.explicit.append(alone)
        food.method_typed = " ".join(words)
        return
    methods, left = _methods(words, kitchen)
    food.explicit += [method for _, method in methods]
    if methods:
        food.method_typed = methods[0][0]
    if not left:
        return
    if has_food and not _packed_in(words, left) and _adds(food, left, kitchen):
        return
    near = _slips(left)
    if near:
        food.slips, food.method_typed = near, " ".join(left)
        return
    if has_food:
        other = kitchen.composer.meant([word for word in words if word not in _FILLERS])
        if (other.facts or other.either) and food.ask is None and not other.strange:
            second = other.facts.name if other.facts is not None else " ".join(words)
            choices = (food.name or food.typed, second)
            why = f"Two foods are named, {choices[0]} and {choices[1]}: give each its own line."
            food.ask = (" ".join(words), choices, why)
            return
    food.unread += _stretches(words, left)


def _packed_in(words: Sequence[str], left: Sequence[str]) -> bool:
    """Whether some of the words that are left are what the food is in or with: "beef in sauce" is
    no beef sauce."""
    joined = ("in", "with")
    return any(
        (a in joined and b in left) or (b in joined and a in left) for a, b in pairwise(words)
    )


def _stretches(words: Sequence[str], left: Sequence[str]) -> list[str]:
    """The words that are left, those together that stand together."""
    found: list[str] = []
    rest, last = list(left), -2
    for i, word in enumerate(words):
        if not rest or word != rest[0]:
            continue
        rest.pop(0)
        if found and last == i - 1:
            found[-1] += f" {word}"
        else:
            found.append(word)
        last = i
    return found


def _adds(food: Food, words: list[str], kitchen: Kitchen) -> bool:
    """Whether the words belong to the food from another part of the line: "beetroot, pickled"."""
    plain = [word for word in words if word not in ("and", "the", "a", "x")]
    if not plain or not food.typed or food.facts is None:
        return False
    typed = food.typed.split()
    for tried in ([*plain, *typed], [*typed, *plain]):
        meant = kitchen.composer.meant(tried)
        if meant.facts is None or meant.strange:
            continue
        said = tuple(dict.fromkeys((*food.said, *meant.methods)))
        food.facts, food.name, food.typed = meant.facts, meant.facts.name, " ".join(tried)
        food.said = meant.methods if set(food.said) <= set(meant.methods) else said
        return True
    return False


def _slips(words: list[str]) -> tuple[str, ...]:
    """Methods of which the words are a slip of the pen: "presure canned"."""
    if len(words) > 3:
        return ()
    found = []
    for method in Method:
        names = method.value.replace("-", " ").split()
        if len(names) == len(words) and all(
            a == b or slip(a, b) for a, b in zip(words, names, strict=True)
        ):
            found.append(method.value)
    return tuple(found)


def _unknown(food: Food) -> None:
    """No known food: the first words that nobody understands are its name."""
    at = next((n for n, text in enumerate(food.unread) if text[:1].isalpha()), None)
    if at is None:
        return
    food.name = food.typed = food.unread.pop(at)

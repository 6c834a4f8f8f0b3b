"""The food in a put-up line, and the words of methods beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, NamedTuple

from pantry_tui.core.line.tokens import Kind, Line, Token
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Group, Method
from pantry_tui.reference.compose import LONGEST, Composer, Meant
from pantry_tui.reference.names import single
from pantry_tui.services.batchwork.line_words import (
    AND,
    FERMENTS,
    FIGURES,
    FILLERS,
    NO_METHOD,
    REMARKS,
    SIGNS,
    VERBS,
    methods_in,
    packed_in,
    slips_of,
    stretches,
)

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.line import Kitchen

_NO_CHEESE = r"milk|butter|cream\b|yogh?urt|kefir|custard|whey"


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
    treated: bool = False  # bought, and something was done to it before
    worked: bool = False  # details say that something was done to it
    started: bool = False  # "started sunday": it is still at work
    fresh: bool = False  # "eggs, fresh", "fresh trout"
    negated: bool = False
    unread: list[str] = field(default_factory=list)
    ask: tuple[str, tuple[str, ...], str] | None = None
    vinegar_strength: str = ""


class Span(NamedTuple):
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
    parts = runs(line, food)
    best: Span | None = None
    for number, run in enumerate(parts):
        for span in spans(number, run, kitchen):
            if best is None or (span.cost, -span.length) < (best.cost, -best.length):
                best = span
    left: list[list[str]] = []
    if best is not None:
        run = parts[best.run]
        food.typed = " ".join(run[best.start : best.stop])
        _take_meant(food, best.meant)
        left += [run[: best.start], run[best.stop :]]
    left += [run for n, run in enumerate(parts) if best is None or n != best.run]
    for words in left:
        _beside(food, words, kitchen, has_food=best is not None)
    if best is None:
        _unknown(food)
    elif food.facts is not None:
        _passed_over(food)
    return food


def _passed_over(food: Food) -> None:
    """A method within the name that was found without it: basil frozen in oil is frozen, too."""
    words = food.typed.split()
    known = food.facts is not None and "frozen" in food.facts.name.split()
    if "frozen" in words and not known and Method.FROZEN not in (*food.said, *food.explicit):
        food.explicit.append(Method.FROZEN)


def spelled(found: list[Token], composer: Composer) -> list[Token]:
    """The tokens with a figure that belongs to the name of a food as its word: "3 bean salad"."""
    for i, token in enumerate(found):
        word = FIGURES.get(token.said, "")
        for size in range(3, 1, -1) if word else ():
            after = [one.text for one in found[i + 1 : i + size + 1]]
            if len(after) == size and composer.names(" ".join((word, *after))):
                found[i] = replace(token, kind=Kind.WORD, text=word, number=None)
                break
    return found


def as_typed(food: Food, note: str, kitchen: Kitchen, method: Method | None) -> str:
    """The food as it was typed, where that says more than its name here: rhubarb wine is a wine,
    pinto beans are dry beans; and what was smoked or cured before it was bought. It is kept as a
    note; "" where the name, the method or the note says it."""
    if food.facts is None or food.ask is not None or food.typed in note.casefold():
        return ""
    if method is Method.BOUGHT and food.treated:
        return food.typed
    named = {part for word in _letters(food.name) for part in single(word)}
    more = kitchen.composer.telling(_letters(food.typed))
    more += kitchen.composer.otherwise(_letters(food.typed), method)
    told = any(len(one) > 1 and one not in FILLERS and not _said_in(one, named) for one in more)
    return food.typed if told else ""


def _said_in(word: str, named: set[str]) -> bool:
    """Whether a name says the word: mango is said in mangoes, and beetroot in beets."""
    return all(
        any(part.startswith(other) or other.startswith(part) for other in named if len(other) > 2)
        for part in single(word)
    )


def _letters(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.casefold())


def runs(line: Line, food: Food) -> list[list[str]]:
    """The free words, part by part; a remark is named as it stands; so are numbers and signs that
    nobody claimed."""
    parts: dict[int, list[int]] = {}
    for i, token in enumerate(line.tokens):
        if line.free[i]:
            parts.setdefault(token.part, []).append(i)
    found: list[list[str]] = []
    for indices in parts.values():
        run: list[str] = []
        for n, i in enumerate(indices):
            token = line.tokens[i]
            if token.text in REMARKS and token.kind is Kind.WORD and n + 1 < len(indices):
                food.unread.append(" ".join(line.tokens[j].said for j in indices[n:]))
                break
            if token.kind is Kind.WORD:
                if run and indices[n - 1] != i - 1:
                    found.append(run)
                    run = []
                run.append(token.text)
            elif token.said not in SIGNS:
                food.unread.append(token.said)
        if run:
            found.append(run)
    return found


def spans(number: int, run: list[str], kitchen: Kitchen) -> list[Span]:
    """Every stretch of the run that is a food, or one of several."""
    found = []
    whole = _within(run, kitchen)
    before_it = [_strange(run[:start], kitchen) for start in range(len(run))]
    behind_it = [_strange(run[stop:], kitchen, behind=True) for stop in range(len(run) + 1)]
    for start in range(len(run)):
        for stop in range(min(len(run), start + LONGEST), start, -1):
            if run[start] in FILLERS or run[stop - 1] in FILLERS:
                continue
            if start in whole or stop in whole:
                continue
            meant = _meaning(run[start:stop], kitchen)
            if meant.facts is None and not meant.either:
                continue
            before = run[start - 1] if start else ""
            if before and kitchen.composer.made_of(run[start:stop]) and _made(before, kitchen):
                continue
            cost = before_it[start] + behind_it[stop] + 2 * len(meant.strange)
            found.append(Span(cost, stop - start, number, start, stop, meant))
    return found


def _within(run: list[str], kitchen: Kitchen) -> set[int]:
    """Where a method of several words would be cut in two: before the bath of "water bath"."""
    found: set[int] = set()
    for i in range(len(run)):
        for size in range(2, min(5, len(run) - i + 1)):
            said = " ".join(run[i : i + size])
            if said in VERBS or kitchen.find_method(said) is not None:
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
    return word not in FILLERS and bool(methods_in([word], kitchen)[1])


def _strange(words: Sequence[str], kitchen: Kitchen, *, behind: bool = False) -> int:
    """How many words are no method and no filler. Behind a food they may make another of it."""
    left = methods_in(words, kitchen)[1]
    return (3 if behind else 2) * len(left)


def _take_meant(food: Food, meant: Meant) -> None:
    food.facts = meant.facts
    food.said = meant.methods
    food.negated |= "not" in meant.strange
    food.fresh |= "fresh" in meant.strange
    food.unread += [word for word in meant.strange if word != "fresh"]
    if meant.either:
        why = f"{food.typed!r} could be {' or '.join(meant.either)}: say which."
        food.ask = (food.typed, meant.either, why)
    elif meant.facts is not None:
        food.name = meant.facts.name


def _beside(food: Food, words: list[str], kitchen: Kitchen, *, has_food: bool) -> None:
    """Words beside the food: methods, more of the food ("chicken, whole"), or not understood."""
    if "not" in words or "no" in words[:1]:
        food.negated = True
    food.fermenting |= bool(FERMENTS & set(words))
    food.fresh |= words in (["fresh"], ["kept", "fresh"], ["stored", "fresh"])
    alone = kitchen.find_method(" ".join(words))
    plain = alone is not None and " ".join(words) not in NO_METHOD
    if has_food and words and not plain and _adds(food, words, kitchen):
        return
    if alone is not None and words:
        food.explicit.append(alone)
        food.method_typed = " ".join(words)
        return
    methods, left = methods_in(words, kitchen)
    food.explicit += [method for _, method in methods]
    if methods:
        food.method_typed = methods[0][0]
    if not left:
        return
    if has_food and not packed_in(words, left) and _adds(food, left, kitchen):
        return
    near = slips_of(left)
    if near:
        food.slips, food.method_typed = near, " ".join(left)
        return
    if has_food and (
        _crop_of(food, words, left, kitchen) or _names_food(food, words, left, kitchen)
    ):
        return
    food.unread += stretches(words, left)


def _crop_of(food: Food, words: list[str], left: list[str], kitchen: Kitchen) -> bool:
    """Whether one of the two foods is the other one fermented: sauerkraut and its cabbage. The
    ferment is what stands there."""
    other = kitchen.composer.meant(left)
    if other.facts is None or other.strange or food.facts is None or AND & set(words):
        return False
    for crop, whole in ((other.facts, food.facts), (food.facts, other.facts)):
        made = kitchen.composer.called(f"fermented {crop.name}")
        if crop.name != whole.name and made is not None and made.name == whole.name:
            food.facts, food.name = whole, whole.name
            return True
    return False


def _names_food(food: Food, words: list[str], left: list[str], kitchen: Kitchen) -> bool:
    """Whether the words name a food: the same one by another name, or a second one, which is
    asked about."""
    other = kitchen.composer.meant([word for word in words if word not in FILLERS])
    whole = not other.strange
    foods = [other.facts.name] if other.facts is not None and whole else []
    if not foods and AND & set(words):
        called = [one for word in left if (one := kitchen.composer.called(word)) is not None]
        foods = [one.name for one in called] if len(called) == len(left) else []
    if foods == [food.name] or _is_its_kind(food, words):
        food.typed += f" {' '.join(words)}"
        return True
    if food.ask is not None or not (foods or (other.either and whole)):
        return False
    if len(foods) == 1 and other.facts is not None and _was_method(food, words, other, kitchen):
        return True
    second = " and ".join(foods) or " ".join(words)
    choices = (food.name or food.typed, second)
    why = f"Two foods are named, {choices[0]} and {choices[1]}: give each its own line."
    food.ask = (" ".join(words), choices, why)
    return True


def _is_its_kind(food: Food, words: list[str]) -> bool:
    """("cheddar", "cheese") Whether the words only say what kind of thing the food is."""
    dairy = food.facts is not None and food.facts.group is Group.DAIRY
    return dairy and words == ["cheese"] and not re.search(_NO_CHEESE, food.name)


def _was_method(food: Food, words: list[str], other: Meant, kitchen: Kitchen) -> bool:
    """Whether what was taken for the food is a method's own name ("fridge pickle"): beside another
    food it is the method."""
    method = kitchen.find_method(food.typed) if " " in food.typed else None
    if method is None:
        return False
    food.explicit.append(method)
    food.method_typed, food.typed = food.typed, " ".join(words)
    food.said = ()
    _take_meant(food, other)
    return True


def _adds(food: Food, words: list[str], kitchen: Kitchen) -> bool:
    """Whether the words belong to the food from another part of the line: "beetroot, pickled"."""
    plain = [word for word in words if word not in ("and", "the", "a", "x")]
    while plain and plain[0] in ("of", "is", "are", "was"):
        plain.pop(0)
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


def _unknown(food: Food) -> None:
    """No known food: the first words that nobody understands are its name."""
    at = next((n for n, text in enumerate(food.unread) if text[:1].isalpha()), None)
    if at is None:
        return
    food.name = food.typed = food.unread.pop(at)

"""A slip of the pen in the name of a food: "dill pickels" are no dill, nor is "beef stok" beef.

The words beside a slip often name another food by themselves, so what is meant is asked, and
never taken.
"""

from __future__ import annotations

from itertools import islice
from typing import TYPE_CHECKING

from pantry_tui.core.line.tokens import Line
from pantry_tui.core.text import singular
from pantry_tui.reference.names import single
from pantry_tui.services.batchwork.line_food import Food, runs, spans
from pantry_tui.services.batchwork.line_words import FILLERS, methods_in

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.line import Kitchen

#: So many foods are named where a word could be a slip for several.
_MOST = 4
#: So many words of the tables are tried for one that is typed.
_TRIED = 12


def ask_slip(food: Food, line: Line, kitchen: Kitchen) -> None:
    """Asks which food is meant where one word of its name is nearly one of the tables, and those
    beside it do not say that they are another."""
    if food.ask is not None and not food.unread:
        return
    strange = {word for text in food.unread for word in text.split()}
    if food.facts is None and food.ask is None:
        strange |= set(food.name.split())
    for run in runs(line, Food()):
        if food.facts is not None and not set(food.typed.split()) <= set(run):
            continue  # a word in another part of the line is no part of its name
        found: dict[str, tuple[str, str]] = {}
        for at, word in enumerate(run):
            if word in strange and not _known(word, kitchen):
                _collect(found, run, at, kitchen)
        if found:
            _ask(food, list(found.values())[:_MOST])
            return


def _known(word: str, kitchen: Kitchen) -> bool:
    """Whether it says something as it is."""
    return word in FILLERS or not methods_in([word], kitchen)[1] or kitchen.composer.knows(word)


def _collect(found: dict[str, tuple[str, str]], run: list[str], at: int, kitchen: Kitchen) -> None:
    """The foods that the run names with another word at `at`: as it was typed, and mended."""
    for near in islice(kitchen.composer.alike(run[at]), _TRIED):
        mended = [*run[:at], _ending(near, run[at]), *run[at + 1 :]]
        for span in spans(0, mended, kitchen):
            inside = span.start <= at < span.stop and not span.cost
            if inside and span.meant.facts is not None:
                typed = " ".join(run[span.start : span.stop])
                words = " ".join(mended[span.start : span.stop])
                found.setdefault(span.meant.facts.name, (typed, words))


def _ending(near: str, typed: str) -> str:
    """With the s of what was typed: "pickels" are pickles."""
    if single(typed) == (typed,) or near.endswith("s") or singular(typed) == typed:
        return near
    return near + ("es" if near.endswith(("o", "x", "ch", "sh")) else "s")


def _ask(food: Food, found: list[tuple[str, str]]) -> None:
    typed = found[0][0]
    choices = tuple(words for _, words in found)
    unknown = food.facts is None and food.ask is None
    own = ", or add group= and acidity= to a food of your own" if unknown else ""
    meant = " or ".join(choices)
    why = f"{typed[:40]!r} is no food here: is it {meant}? Say which food it is{own}."
    said = set(typed.split())
    food.unread = [one for one in food.unread if not said & set(one.split())]
    food.ask, food.facts = (typed, choices, why), None
    if not unknown:
        food.name = ""

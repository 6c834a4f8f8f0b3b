"""The words of people, each read as publications read what it says, or asked about."""

from __future__ import annotations

from pathlib import Path

import pytest

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.said import SAID, meant
from pantry_tui.core.safety.seals import says_seal_failed
from pantry_tui.core.safety.signs import Sign, signs_for, verdict_of
from pantry_tui.core.words import SEVERITY, Method, Verdict
from pantry_tui.reference.signs import load_signs
from pantry_tui.reference.tables import load_tables

THROWN = (Verdict.DO_NOT_TASTE, Verdict.DISCARD)
LINES = [
    tuple(part.strip() for part in line.split("|"))
    for line in Path(__file__).with_name("said.txt").read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]
PHRASES = [
    (method, food, seal, words.strip(), verdicts)
    for method, food, seal, verdicts, said in LINES
    for words in said.split(";")
]


def facts(food: str) -> FoodFacts:
    found = load_tables().facts(food)
    assert found is not None, food
    return found


def known(method: str, food: str, seal: str) -> list[Sign]:
    return signs_for(load_signs(), Method(method), facts(food), seal == "open")


def read(method: str, food: str, seal: str, words: str) -> Verdict | None:
    """What the words make of it; None where they are asked about. What ferments stands open."""
    working = method == Method.LACTIC and seal == "open"
    sign = meant(known(method, food, seal), words, food, working)
    if sign is None:
        lidded = any(one.id == "loose-lid" for one in known(method, food, seal))
        return Verdict.DO_NOT_TASTE if lidded and says_seal_failed(words) else None
    return verdict_of(sign, Method(method), facts(food), seal == "closed")


@pytest.mark.parametrize(("method", "food", "seal", "verdicts", "said"), LINES)
def test_it_is_read_as_publications_read_it_or_more_strictly(
    method: str, food: str, seal: str, verdicts: str, said: str
) -> None:
    right = {one.strip() for one in verdicts.split("/")}
    thrown = bool(right & set(THROWN))
    for words in said.split(";"):
        found = read(method, food, seal, words.strip())
        shown = "ask" if found is None else found.value
        assert shown in right or (thrown and found is Verdict.DO_NOT_TASTE), (words, shown)


def test_enough_is_said_and_hardly_any_of_it_is_only_asked_about() -> None:
    assert len(PHRASES) >= 800
    asked = [one for one in PHRASES if read(*one[:4]) is None]
    assert len(asked) <= len(PHRASES) // 8


def test_what_throws_food_away_is_never_lost_among_other_words() -> None:
    for method, food, seal, words, _ in PHRASES:
        alone = read(method, food, seal, words)
        if alone in THROWN and not says_seal_failed(words):
            for around in (
                f"{words} and cloudy",
                f"a bit {words}, I think",
                f"today {words} again",
            ):
                found = read(method, food, seal, around)
                assert found in THROWN, (method, food, around)
                assert SEVERITY.index(found) <= SEVERITY.index(Verdict.DISCARD)


def test_nothing_keeps_food_of_which_more_is_said_than_is_understood() -> None:
    for method, food, seal, words, _ in PHRASES:
        found = read(method, food, seal, f"{words} zzyx")
        assert found is None or found in THROWN, (method, food, words)


@pytest.mark.parametrize("method", ["pressure canned", "lactic ferment", "dried", "frozen"])
@pytest.mark.parametrize(
    "words",
    ["not slimy", "no mould", "never fizzed", "isn't mouldy", "without any bubbles", "no off smell",
     "smells nice", "looks good", "popcorn", "new lid"],
)  # fmt: skip
def test_what_is_denied_or_good_is_no_sign(method: str, words: str) -> None:
    assert meant(known(method, "carrots", "closed"), words) is None


def test_every_sign_that_words_stand_for_is_in_the_table() -> None:
    ids = {sign.id for sign in load_signs()}
    for _, tiers in SAID:
        for tier in tiers:
            assert set(tier.split()) <= ids

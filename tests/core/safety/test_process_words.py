"""What a doubt about a process says, and what it passes over."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pantry_tui.core.safety.process import doubt
from pantry_tui.core.safety.process_names import name_key
from tests.core.safety.test_process import ADVICE, FOODS, PRESSURE, TABLE, WATER, asked, rows


@pytest.mark.parametrize("word", ["of", "the", "or", "a", "an", "An"])
def test_a_name_is_the_same_without_its_small_words(word: str) -> None:
    assert name_key(f"beans {word} pork") == name_key("pork, beans") == ("bean", "pork")


@pytest.mark.parametrize("word", ["with", "and", "And"])
def test_two_foods_in_one_jar_are_another_thing_in_whatever_words(word: str) -> None:
    assert name_key(f"beans {word} pork") == name_key("pork and beans")
    assert name_key(f"beans {word} pork") != name_key("beans pork")


def test_in_can_mean_much() -> None:
    assert name_key("beans in pork") != name_key("beans pork")
    assert name_key("beans (shelled)") == name_key("bean")


@pytest.mark.parametrize(
    ("name", "single"),
    [
        ("tomatoes", "tomato"), ("peaches", "peach"), ("radishes", "radish"),
        ("berries", "berry"), ("pies", "pie"), ("beans", "bean"), ("asparagus", "asparagus"),
        ("cress", "cress"), ("chillies", "chilly"), ("kiwis", "kiwis"),
    ],
)  # fmt: skip
def test_one_of_several(name: str, single: str) -> None:
    assert name_key(name) == (single,)


@pytest.mark.parametrize("key", ["by", "amount", "printed"])
def test_a_name_an_amount_and_a_day_are_no_way_of_canning(key: str) -> None:
    def doubted(key: str) -> bool:
        said = {"minutes": "20", "psi": "11", key: "from the Ovens in the sun"}
        return doubt(PRESSURE, FOODS["runner beans"], "pint", said, 0, TABLE, ADVICE) is not None

    assert not doubted(key)
    assert doubted("form")


def test_it_may_be_processed_again_only_where_a_process_stands_for_it() -> None:
    again = "or process it again by a tested process"
    short = asked(PRESSURE, "runner beans", "pint", minutes="5")
    assert short is not None
    assert again in short.still_possible
    none = asked(PRESSURE, "turkeys", "pint")
    assert none is not None
    assert again not in none.still_possible
    table = [*TABLE, *rows("pumpkin butter", "pint", "dial", 50)]
    against = doubt(PRESSURE, FOODS["pumpkin butter"], "pint", {}, 0, table, ADVICE)
    assert against is not None
    assert again not in against.still_possible, "a row does not lift what is advised against"


def test_a_long_form_is_told_by_its_beginning() -> None:
    found = asked(WATER, "peaches", "quart", form="minced " * 9)
    assert found is not None
    assert f"in the form '{('minced ' * 9)[:30]}' is known here." in found.problems[0]


def test_what_is_advised_against_is_said_in_a_sentence() -> None:
    found = asked(PRESSURE, "pumpkin butter", "pint")
    assert found is not None
    assert "Pumpkin butter: advised against: too thick." in found.problems


def test_a_row_for_another_food_says_nothing() -> None:
    other = [replace(row, names=frozenset({name_key("swedes")})) for row in TABLE]
    found = doubt(PRESSURE, FOODS["runner beans"], "pint", {"minutes": "5"}, 0, other, ())
    assert found is not None
    assert found.problems == (
        "No tested process for runner beans in a pressure canner is known here.",
    )

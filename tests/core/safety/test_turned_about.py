"""What is typed of a process is understood whole or refused by name: a word that turns another one
about, two answers in one, a slip of the fingers; and what nobody knows counts the stricter way."""

from __future__ import annotations

import csv
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.keeping.doubt import BRINE_NOT_CHECKED, not_checked
from pantry_tui.core.keeping.harm import is_vacuum_packed, surely_vacuum_packed
from pantry_tui.core.keeping.printed import RAW_USE_BY, VACUUM_USE_BY, furthest
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared import is_cut, not_tested
from pantry_tui.core.safety.prepared_words import all_understood, plainly
from pantry_tui.core.safety.process import doubt
from pantry_tui.core.safety.record import KEYS, TEXTS, read_details
from pantry_tui.core.safety.values import HINTS
from pantry_tui.core.words import Acidity, Group, Method

DAY = date(2026, 11, 1)
CARROTS = FoodFacts("carrots", Group.VEGETABLE, Acidity.LOW_ACID)
FIGS = FoodFacts("figs", Group.FRUIT, Acidity.ACIDIFIED, frozenset({"tomato"}))
#: Of each key one value that is understood.
GOOD = {
    "minutes": "20", "psi": "11", "canner": "dial", "process": "boiling-water", "pack": "hot",
    "prepared": "diced", "jar": "quart", "form": "whole", "acid": "lemon", "vinegar": "5%",
    "altitude": "1800ft", "seal": "tight", "headspace": "1/2 in", "salt": "2.5%", "sugar": "60%",
    "ph": "4.1", "vacuum": "yes", "blanched": "3 min", "temperature": "160F", "cure": "2 tsp",
    "state": "open", "dated": "use-by", "sold": "chilled",
}  # fmt: skip
#: Of these a no is an answer: there was none, or it did not hold.
NONE_OF_IT = {"acid", "seal"}
#: "No. 1" is the number of a cure; not peeled is unpeeled, and not cut whole.
WITH_A_NO = {("cure", "no 2 tsp")}


def problems(key: str, value: str) -> tuple[str, ...]:
    return read_details([(key, value)]).problems


def test_every_key_is_asked_about() -> None:
    assert set(GOOD) | TEXTS == set(KEYS) == set(HINTS)
    assert not any(problems(key, value) for key, value in GOOD.items())


@pytest.mark.parametrize("key", list(GOOD))
def test_a_value_that_is_turned_about_is_refused_by_name(key: str) -> None:
    good = GOOD[key]
    for typed in (f"not {good}", f"no {good}", f"never {good}", f"{good} not", f"{good}?"):
        none = key in NONE_OF_IT and not typed.endswith("?")
        if (none and read_details([(key, typed)]).pairs) or (key, typed) in WITH_A_NO:
            assert key not in NONE_OF_IT or doubt(
                Method.BOILING_WATER, FIGS, "", {key: typed}, 0, (), ()
            )
            continue
        (said,) = problems(key, typed)
        assert said == f"{key}={typed} is not understood: {HINTS[key]}."


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("canner", "dial or weighted"), ("canner", "boiling water and pressure"),
        ("canner", "undial"), ("canner", "unweighted"), ("canner", "without a weight"),
        ("process", "boiling water and pressure"), ("process", "no pressure"),
        ("jar", "pint or quart"), ("jar", "pint quart"), ("jar", "non quart"),
        ("pack", "hot or raw"),
        ("acid", "no 2 tbsp lemon"), ("vinegar", "not homemade"), ("vinegar", "no 4%"),
        ("seal", "no, failed"), ("seal", "most sealed"), ("ph", "4 1"), ("ph", "yes"),
        ("temperature", "yes"), ("form", "pelled"), ("prepared", "not sliced"),
        ("prepared", "in grandmother's way"), ("form", "unsliced"),
    ],
)  # fmt: skip
def test_what_says_two_things_or_its_contrary(key: str, typed: str) -> None:
    assert problems(key, typed)


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("jar", "1 quart (32 oz)"), ("canner", "dial-gauge pressure canner"),
        ("canner", "water bath"),
        ("canner", "weighted pressure"), ("acid", "no lemon juice"), ("vinegar", "none added"),
        ("prepared", "not peeled"), ("prepared", "skin on, halved"), ("prepared", "diced, diced"),
        ("form", "in tomato juice"), ("form", "without bones"), ("seal", "one did not seal"),
        ("prepared", "cut into 1/2 in pieces"), ("form", "no added liquid"),
    ],
)  # fmt: skip
def test_what_is_said_in_other_words(key: str, typed: str) -> None:
    assert not problems(key, typed)


@pytest.mark.parametrize("typed", ["20, 25", "25, 20", "25 (20)", "25 20", "20-25", "1h, 20 min"])
def test_of_several_times_the_shortest_counts(typed: str) -> None:
    from pantry_tui.core.safety.measured import read_minutes

    assert read_minutes(typed) == 20


def test_not_peeled_is_unpeeled_and_never_both() -> None:
    assert plainly("Not peeled, sliced") == "unpeeled sliced"
    assert plainly("skins on") == plainly("with their skins") == "unpeeled"
    for typed in ("not peeled", "unpeeled", "skin on"):
        assert not_tested(Method.PRESSURE, CARROTS, {"prepared": typed})
    assert not is_cut(
        Batch("b", "2A", CARROTS, Method.CELLAR, DAY, process=(("prepared", "not cut"),))
    )
    assert is_cut(Batch("b", "2A", CARROTS, Method.CELLAR, DAY, process=(("prepared", "mashed"),)))
    for typed in ("no liquid", "without water", "dry packed"):
        assert not_tested(Method.PRESSURE, CARROTS, {"prepared": typed})


def test_every_form_of_a_published_process_is_understood() -> None:
    table = Path(__file__).parents[3] / "data" / "process.csv"
    with table.open(encoding="utf-8") as file:
        foods = {row["food"].partition("(")[0] for row in csv.DictReader(file)}
    assert [one for one in foods if not all_understood(one)] == []


def test_an_unknown_vacuum_is_the_stricter_of_both() -> None:
    beef = FoodFacts("beef", Group.MEAT, Acidity.LOW_ACID)
    days = {}
    for said in ("yes", "unknown", "?", "no", None):
        record = () if said is None else (("vacuum", said),)
        batch = Batch(
            "b", "2A", beef, Method.BOUGHT, DAY, process=record, printed=DAY + timedelta(50)
        )
        assert surely_vacuum_packed(batch) is (said == "yes")
        assert is_vacuum_packed(batch) is (said in ("yes", "unknown", "?"))
        days[said] = furthest(batch)
    assert days.pop("yes") == VACUUM_USE_BY
    assert set(days.values()) == {RAW_USE_BY}


@pytest.mark.parametrize(("vacuum", "wrong"), [("yes", True), ("unknown", True), ("no", False)])
def test_smoked_fish_of_which_nobody_knows_is_held_to_the_salt_of_a_vacuum_pack(
    vacuum: str, wrong: bool
) -> None:
    salmon = FoodFacts("salmon", Group.FISH, Acidity.LOW_ACID)
    record = {"salt": "3.2%", "vacuum": vacuum, "cure": "yes", "temperature": "70F"}
    found = doubt(Method.COLD_SMOKED, salmon, "", record, 0, (), ())
    said = found is not None and any("packed without air" in one for one in found.problems)
    assert said is wrong


def test_a_brine_is_no_share_of_what_lies_in_it() -> None:
    def weak(salt: str) -> bool:
        found = doubt(Method.LACTIC, CARROTS, "", {"salt": salt}, 0, (), ())
        return found is not None

    assert weak("2% brine")
    assert weak("2.2 % of the water")
    assert not weak("2.25% brine")
    assert not weak("2%")
    assert weak("1.9%")

    def said(**record: str) -> tuple[str, ...]:
        made = tuple(record.items())
        return not_checked(Batch("b", "2A", CARROTS, Method.LACTIC, DAY, process=made))

    assert said(salt="5% brine") == (BRINE_NOT_CHECKED,)
    assert said(salt="5% brine", ph="3.9") == said(salt="2.5%") == said() == ()

"""What a script or a reader of the screen is told where safety is decided."""

from __future__ import annotations

import json

import pytest

from pantry_tui.app.format import take_columns
from pantry_tui.app.rowtext import due_cells
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import MARK, Method, State, Verdict
from pantry_tui.services.stock.rows import DueRow
from tests.cli.conftest import Kitchen


def test_a_bare_number_that_is_absurd_for_a_place_is_a_question(kitchen: Kitchen) -> None:
    code, out, err = kitchen.run("reading", "fridge", "8", "--json")
    assert code == 2
    assert json.loads(out)["asks"] == [{"about": "temp", "typed": "8", "choices": ["8F", "8C"]}]
    assert "8F or 8C" in err
    assert kitchen.run("reading", "fridge", "45F", "--since", "soon")[0] == 2
    said = kitchen.answer("reading", "fridge", "45F", "--since", "90m")
    assert not any("Since when" in one for one in said["warnings"])


@pytest.mark.parametrize(
    ("words", "about"),
    [
        ("outage|fridge|--from|18:00|--to|19:00|--max-temp|8|--dry-run", "max_temp"),
        ("place|add|garage fridge|--climate|fridge|--temp|5", "temp"),
        ("place|change|fridge|--temp|5", "temp"),
    ],
)
def test_wherever_a_temperature_is_typed_an_absurd_bare_number_is_a_question(
    kitchen: Kitchen, words: str, about: str
) -> None:
    before = kitchen.booked()
    code, out, _ = kitchen.run(*words.split("|"), "--json")
    assert code == 2
    (ask,) = json.loads(out)["asks"]
    assert ask["about"] == about
    assert ask["choices"] == [f"{ask['typed']}F", f"{ask['typed']}C"]
    assert kitchen.booked() == before


def test_a_cut_since_nobody_knows_when_is_shown_before_it_is_booked(kitchen: Kitchen) -> None:
    before = kitchen.booked()
    said = kitchen.answer(
        "outage", "fridge", "--from", "unknown", "--to", "01:00", "--ajar", "--dry-run"
    )
    assert said["cautions"] == [CAUTION]
    assert kitchen.booked() == before
    kitchen.answer("outage", "fridge", "--from", "unknown", "--to", "01:00", "--ajar")
    assert "since nobody knows when" in kitchen.answer("log")[-1]["says"]


def test_a_cut_names_its_days_as_a_person_does(kitchen: Kitchen) -> None:
    dry = ("--dry-run", "--today", "2026-11-25 20:00")
    named = ("outage", "fridge", "--from", "yesterday 18:00", "--to", "today 06:00", *dry)
    dated = ("outage", "fridge", "--from", "2026-11-24 18:00", "--to", "2026-11-25 06:00", *dry)
    assert kitchen.answer(*named) == kitchen.answer(*dated)


def test_a_cut_names_what_was_written_down_after_it(kitchen: Kitchen) -> None:
    line = "2 packs pork, frozen, big freezer"
    evening = ("--today", "2026-11-25 20:00")
    code = kitchen.answer("putup", line, *evening)["code"]
    cut = ("outage", "big freezer", "--from", "18:00", "--to", "09:00", "--dry-run", *evening)
    later, *rest = kitchen.answer(*cut)["cautions"]
    assert f"put up later: {code}." in later
    assert rest == [CAUTION]
    assert later in kitchen.run(*cut)[1]


@pytest.mark.parametrize(
    ("words", "key"),
    [
        (("process", "green", "beans", "--jar", "pint", "--canner", "boiling-water"), "answer"),
        (("process", "peaches", "--jar", "pint", "--canner", "oven"), "answer"),
        (("shelf-life", "in oil", "garlic", "--in", "room"), "allowed"),
        (("shelf-life", "bought in", "eggs", "--in", "freezer"), "allowed"),
        (("shelf-life", "bought in", "milk", "--in", "room"), "allowed"),
        (("shelf-life", "pressure canned", "eggplants"), "allowed"),
        (("shelf-life", "boiling-water canned", "carrots"), "allowed"),
    ],
)
def test_a_refusal_exits_with_one_and_says_why(
    kitchen: Kitchen, words: tuple[str, ...], key: str
) -> None:
    code, out, err = kitchen.run(*words, "--json")
    said = json.loads(out)
    assert code == 1
    assert said[key] in ("refused", False)
    assert said["reasons"]
    assert said["cautions"] == [CAUTION]
    assert err.strip() == said["reasons"][0]
    assert CAUTION in kitchen.run(*words)[1]


def test_bought_food_is_looked_up_where_it_may_stand(kitchen: Kitchen) -> None:
    said = kitchen.answer("shelf-life", "bought in", "eggs")
    assert (said["place"], said["allowed"]) == ("fridge", True)
    assert said["discard_after"] is None
    no = json.loads(kitchen.run("shelf-life", "bought in", "eggs", "--in", "room", "--json")[1])
    assert no["sources"], "a refusal is cited"


def test_what_must_go_after_a_cut_is_told_nothing_of_refreezing(kitchen: Kitchen) -> None:
    cut = ("outage", "big freezer", "--from", "2026-11-23 01:00", "--to", "2026-11-24 23:00")
    (row,) = kitchen.answer(*cut, "--ice", "--max-temp", "45F")["items"]
    assert row["verdict"] == "discard"
    (shown,) = [one for one in kitchen.answer("due") if one["food"] == "ground beef"]
    for said in (row["reasons"], shown["reasons"]):
        assert "over two hours" in said[0]
        assert not any("refreeze" in one.lower() for one in said)


def test_whose_limits_are_followed_is_a_setting(kitchen: Kitchen) -> None:
    assert kitchen.answer("household")["advice"] == "usual"
    asked = ("shelf-life", "cooked meal", "lasagne", "--in", "fridge", "--made", "today")
    usual = kitchen.answer(*asked)
    assert kitchen.answer("household", "--advice", "strictest")["advice"] == "strictest"
    strict = kitchen.answer(*asked)
    assert strict["discard_after"] < usual["discard_after"]
    assert kitchen.run("household", "--advice", "mild")[0] == 2


def test_why_there_is_no_last_day_stands_in_every_answer(kitchen: Kitchen) -> None:
    rows = kitchen.answer("due")
    assert all((row["discard_after"] is None) == bool(row["discard_after_why"]) for row in rows)
    assert all(isinstance(row["standing"], list) for row in rows)
    line = "1 crock sauerkraut, lactic ferment, fridge"
    assert kitchen.answer("putup", line, "--dry-run")["discard_after_why"] == "in progress"
    frozen = kitchen.answer("shelf-life", "frozen", "beef")
    assert frozen["discard_after_why"] == "no limit"
    assert "discard after: no set day" in kitchen.run("shelf-life", "frozen", "beef")[1]
    assert " -" not in kitchen.run("due")[1].replace("- past best", ""), "no dash for a date"


def test_marks_differ_in_shape_and_not_in_case() -> None:
    assert len({mark.casefold() for mark in MARK.values()}) == len(MARK)
    assert [MARK[one] for one in (Verdict.DO_NOT_TASTE, Verdict.DISCARD)] == ["#", "x"]


@pytest.mark.parametrize("width", [40, 60, 80, 120, 200])
@pytest.mark.parametrize("verdict", [Verdict.DO_NOT_TASTE, Verdict.DISCARD, Verdict.UNKNOWN])
def test_the_worst_word_is_never_cut_short(width: int, verdict: Verdict) -> None:
    row = DueRow(
        "2A", ("2A/1",), "beans", Method.PRESSURE, "larder", 1, State.SEALED, verdict,
        None, None, None, ("because",),
    )  # fmt: skip
    said, _ = due_cells(row, take_columns(width))[0]
    assert said in (f"{MARK[verdict]} {verdict}", MARK[verdict])

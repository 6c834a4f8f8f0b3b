"""The verbs of the books: JSON fields, exit codes, one sentence on errors, nothing typed steers."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.cli import main

TODAY = "2026-11-25"
Run = Callable[..., tuple[int, str, str]]


@pytest.fixture
def run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Run:
    """Runs one command on a store with eight jars of peaches, whose code is 2A."""

    def call(*words: str) -> tuple[int, str, str]:
        code = main(["--store", str(tmp_path / "store.db"), "--today", TODAY, *words])
        said = capsys.readouterr()
        return code, said.out, said.err

    assert call("init", "--people", "4")[0] == 0
    assert call("place", "add", "shelf 2", "--climate", "pantry")[0] == 0
    line = "8 pint jars peaches, boiling-water canned, shelf 2, 2026-08-10"
    assert call("putup", line)[0] == 0
    return call


def answer(run: Run, *words: str) -> Any:
    code, out, err = run(*words, "--json")
    assert code == 0, err
    return json.loads(out)


def test_the_outlook_answers_for_food_group_and_household(run: Run) -> None:
    found = answer(run, "outlook")
    (peaches,) = found["foods"]
    assert peaches["put_up"] is None, "a first year"
    code, out, _ = run("outlook")
    assert code == 0
    assert "not known yet" in out
    line = "8 pint jars peaches, boiling-water canned, shelf 2, 2025-08-10"
    assert run("putup", line)[0] == 0
    assert run("use", "3A", "8", "--at", "2025-12-10")[0] == 0
    found = answer(run, "outlook")
    (peaches,) = found["foods"]
    for name in (
        "food",
        "group",
        "servings",
        "pace_need",
        "pace_can",
        "runs_out",
        "lost",
        "put_up",
        "pounds",
        "pace_says",
    ):
        assert name in peaches, name
    assert peaches["pounds"] == peaches["put_up"] * 1.25
    assert [one["food"] for one in found["groups"]] == ["fruit"]
    assert found["household"]["servings"] == 32
    more = answer(run, "outlook", "--margin", "50%")["foods"][0]
    assert more["put_up"] > peaches["put_up"]
    assert answer(run, "outlook", "--years", "2")["notes"]
    code, out, _ = run("outlook")
    assert code == 0
    assert "whole household" in out
    assert "lb peaches" in out


def test_what_if_answers_now_and_then(run: Run) -> None:
    now = answer(run, "outlook")
    words = ("--people", "5", "--guests", "6 from 24 dec to 2 jan", "--away", "3 jan to 9 jan")
    both = answer(run, "outlook", *words, "--eat", "peaches 5")
    assert list(both) == ["now", "what_if"]
    assert both["now"] == now
    assert both["what_if"]["foods"][0]["rate"] == 5
    assert len(both["what_if"]["notes"]) == 4
    code, out, _ = run("outlook", "--without", "peaches")
    assert code == 0
    assert "now" in out
    assert "then" in out
    assert "nobody eats peaches" in out
    assert now["range_note"].startswith("No range yet")
    assert now["foods"][0]["lost_range"] is None


def test_a_day_ahead_without_a_year_is_the_coming_one(run: Run) -> None:
    by_name = answer(run, "outlook", "--until", "1 jun")
    assert by_name == answer(run, "outlook", "--until", "2027-06-01")
    assert run("outlook", "--until", "2026-06-01")[0] == 2


@pytest.mark.parametrize(
    "words",
    [("outlook", "--margin", "much"), ("outlook", "--margin", "-5%"), ("outlook", "--years", "0"),
     ("outlook", "--years", "two"), ("outlook", "--guests", "many"), ("outlook", "--eat", "moon 3"),
     ("outlook", "--people", "0"), ("outlook", "--away", "24 dec to 1 dec 2026"),
     ("taste", "2A", "lovely"), ("taste", "2A"),
     ("taste", "9ZZ", "again"), ("reserve", "2A", "0"), ("reserve", "2A", "--free", "--for", "me"),
     ("substitute", "peaches"), ("substitute", "peaches", "with", "moon", "cheese")],
)  # fmt: skip
def test_bad_input_is_one_sentence_and_2(run: Run, words: tuple[str, ...]) -> None:
    code, out, err = run(*words)
    assert code == 2
    assert out == ""
    assert err.count("\n") == 1
    assert "Traceback" not in err


def test_taste_and_reserve_from_the_command_line(run: Run) -> None:
    assert "not again" in answer(run, "taste", "2A", "not-again", "too", "soft")["message"]
    assert answer(run, "show", "2A")["tasted"][0].endswith("not again: too soft")
    assert answer(run, "year", "peaches")[0]["tasted"] == ["not again: 2A (too soft)"]
    assert answer(run, "outlook")["foods"][0]["tasted"] == ["not again: 2A (too soft)"]
    assert len(answer(run, "reserve", "2A", "7", "--for", "Aunt Sunniva")["containers"]) == 7
    rows = {row["reserved"]: row["count"] for row in answer(run, "due")}
    assert rows == {"": 1, "Aunt Sunniva": 7}
    assert run("use", "2A", "2")[0] == 1
    assert run("use", "2A")[0] == 0
    code, out, _ = run("shelves")
    assert code == 0
    assert "(for Aunt Sunniva)" in out
    given = answer(run, "give", "2A", "--to", "Aunt Sunniva")["containers"]
    year = answer(run, "year", "peaches")[0]
    assert len(given) == 1
    assert (year["closing"], year["reserved"]) == (6, 6)
    assert run("reserve", "2A", "9", "--free")[0] == 1
    assert len(answer(run, "reserve", "2A", "--free")["containers"]) == 6
    assert answer(run, "outlook")["foods"][0]["reserved"] == 0


def test_what_is_typed_cannot_steer_the_terminal(run: Run) -> None:
    nasty = "\x1b[31mred\x1b[0m\u202e"
    run("taste", "2A", "change", nasty)
    run("reserve", "2A", "1", "--for", nasty)
    for words in (("show", "2A"), ("due",), ("log",), ("year",), ("outlook",), ("sheet", "due")):
        code, out, _ = run(*words)
        assert code == 0, words
        assert not {"\x1b", "\u202e"} & set(out), words


def test_losses_and_substitutes_answer_in_json(run: Run) -> None:
    run("discard", "2A", "2", "--why", "seal failed")
    found = answer(run, "losses")
    assert found["rows"][0]["share"] == 0.25
    assert found["seasons"] == [
        {"season": "autumn 2026", "containers": 2, "servings": 8, "share": 1.0}
    ]
    assert answer(run, "substitute", "peaches", "with", "plums", "pears")["message"]
    assert answer(run, "substitute", "list") == {"peaches": ["plums", "pears"]}
    assert "stand in" in answer(run, "undo")["message"]
    assert answer(run, "substitute", "list") == {}
    assert run("year", "moon", "cheese")[0] == 2

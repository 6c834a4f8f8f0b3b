"""A power cut that is told of a room reaches what is cold in it, and says which."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.caution import CAUTION
from tests.cli.conftest import Kitchen

CUT = ("--from", "2026-11-24 18:00", "--to", "2026-11-25 06:00")
THEN = ("--from", "2026-11-23 10:00", "--to", "2026-11-24 05:00")


@pytest.fixture
def scullery(kitchen: Kitchen) -> Kitchen:
    for name, climate, outer in (
        ("scullery", "room", ()),
        ("small fridge", "fridge", ("--in", "scullery")),
        ("ice box", "freezer", ("--in", "small fridge")),
    ):
        kitchen.answer("place", "add", name, "--climate", climate, *outer)
    for line in ("1 pack chicken breast, fresh, small fridge", "1 pack pork, frozen, ice box"):
        kitchen.answer("putup", f"{line}, 2026-11-24", "--at", "2026-11-24 12:00")
    return kitchen


def test_it_reaches_the_refrigerator_in_it(scullery: Kitchen) -> None:
    by_room = scullery.answer("outage", "scullery", *CUT, "--dry-run")["items"]
    assert {one["food"] for one in by_room} == {"chicken breasts", "pork"}
    assert by_room == scullery.answer("outage", "small fridge", *CUT, "--dry-run")["items"]
    code, out, _ = scullery.run("outage", "scullery", *CUT)
    assert code == 0
    assert "power cut of 12 h in small fridge" in out
    assert out.count(CAUTION) == 1, "once, at the end"
    assert out.rstrip().endswith(CAUTION)
    verdicts = {one["food"]: one["verdict"] for one in scullery.answer("due")}
    assert verdicts["chicken breasts"] == "discard"


def test_all_that_are_in_it_are_one_act(scullery: Kitchen) -> None:
    scullery.answer("place", "add", "chest", "--climate", "freezer", "--in", "scullery")
    before = scullery.answer("due")
    code, out, _ = scullery.run("outage", "scullery", *CUT)
    assert code == 0
    assert "in chest" in out
    assert "in small fridge" in out
    scullery.run("undo")
    assert scullery.answer("due") == before


@pytest.mark.parametrize("told", [("--max-temp", "45F"), ("--full",), ("--ice",), ("--ajar",)])
def test_what_is_so_of_one_alone_is_asked_about(scullery: Kitchen, told: tuple[str, ...]) -> None:
    scullery.answer("place", "add", "chest", "--climate", "freezer", "--in", "scullery")
    before = scullery.booked()
    code, _, err = scullery.run("outage", "scullery", *CUT, *told)
    assert code == 2
    assert "chest or small fridge" in err
    assert scullery.booked() == before


def test_a_room_without_any_says_so(kitchen: Kitchen) -> None:
    code, _, err = kitchen.run("outage", "shelf 2", *CUT)
    assert code == 1
    assert "none stands in it" in err


@pytest.mark.parametrize(
    "became",
    [
        ("place", "merge", "back fridge", "--into", "small fridge"),
        ("place", "remove", "back fridge", "--to", "small fridge"),
        ("place", "change", "back fridge", "--climate", "pantry"),
    ],
)
def test_what_was_cold_in_it_then_counts_whatever_became_of_it(
    scullery: Kitchen, became: tuple[str, ...]
) -> None:
    scullery.answer("place", "add", "back fridge", "--climate", "fridge", "--in", "scullery")
    line = "1 pack stew, cooked meal, back fridge, 2026-11-23"
    code = scullery.answer("putup", line, "--at", "2026-11-23 08:00")["code"]
    scullery.answer("move", code, "small fridge", "--at", "2026-11-24 06:00")
    assert scullery.run(*became)[0] == 0
    for told_of in ("scullery", "back fridge"):
        items = scullery.answer("outage", told_of, *THEN, "--dry-run")["items"]
        assert [one["action"] for one in items if one["food"] == "stew"] == ["discard"]
        code, out, _ = scullery.run("outage", told_of, *THEN)
        assert code == 0
        assert "in back fridge" in out
        verdicts = {one["food"]: one["verdict"] for one in scullery.answer("due")}
        assert verdicts["stew"] == "discard"
        scullery.run("undo")


def test_a_cold_place_given_up_empty_is_not_named(scullery: Kitchen) -> None:
    scullery.answer("place", "add", "back fridge", "--climate", "fridge", "--in", "scullery")
    scullery.answer("place", "remove", "back fridge")
    _, out, _ = scullery.run("outage", "scullery", *CUT)
    assert "back fridge" not in out

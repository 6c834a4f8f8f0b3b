"""Another altitude of the household says what it does to what was canned before."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.cli.run import main
from pantry_tui.core.words import Verdict
from pantry_tui.services import household
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import correct, undo

#: By USDA (Complete Guide to Home Canning), pints of snap beans: 20 minutes at 11 psi in a dial
#: gauge canner up to 2,000 ft, 13 psi up to 6,000 ft.
BEANS = "4 pint jars runner beans, pressure canned, larder, minutes=20 psi=11 canner=dial"


@pytest.fixture
def low(larder: Pantry) -> Pantry:
    household.change(larder, 500)
    put_up(larder, read(larder, BEANS))
    return larder


def verdict(p: Pantry) -> Verdict:
    batch = next(iter(p.stock.batches.values()))
    return p.judge(p.containers_of(batch)[0]).verdict


def test_a_higher_one_says_how_many_change_to_what_and_what_to_do_after_a_move(low: Pantry) -> None:
    told = household.change(low, 5000).warnings
    assert told[0] == "By 5,000 ft 4 canned containers are judged unknown, until now sound."
    assert told[1].startswith("2A runner beans: ")
    assert "If the household moved" in told[1]
    assert "correct 2A --process altitude=500ft" in told[1]
    assert len(told) == 2
    correct.correct(low, "2A", process=[("altitude", "500ft")])
    assert verdict(low) is Verdict.SOUND
    assert household.change(low, 6000).warnings == ()


def test_a_lower_one_says_that_it_lifts_nothing(low: Pantry) -> None:
    household.change(low, 5000)
    (told,) = household.change(low, 500).warnings
    assert "2A runner beans stays judged by 5,000 ft" in told
    assert "altitude=500ft" in told
    assert verdict(low) is Verdict.UNKNOWN


def test_taken_back_they_are_as_they_were(low: Pantry) -> None:
    household.change(low, 5000)
    undo.undo(low)
    assert verdict(low) is Verdict.SOUND


@pytest.mark.parametrize("feet", [500, 900])
def test_where_nothing_changes_nothing_is_said(low: Pantry, feet: int) -> None:
    assert household.change(low, feet).warnings == ()


def test_a_script_is_told_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    store, day = str(tmp_path / "store.db"), date(2026, 11, 25).isoformat()
    every = ("--store", store, "--today", day)
    main([*every, "init", "--altitude", "500ft"])
    main([*every, "place", "add", "larder", "--climate", "pantry"])
    main([*every, "putup", BEANS])
    capsys.readouterr()
    main([*every, "--json", "household", "--altitude", "5000ft"])
    assert "4 canned containers" in json.loads(capsys.readouterr().out)["warnings"][0]
    main([*every, "--json", "household", "--people", "3"])
    assert "warnings" not in json.loads(capsys.readouterr().out)

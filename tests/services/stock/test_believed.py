"""What is believed and what is said of it: printed dates, freezers that hardly freeze, jars of
which nobody said that they were processed, a record that makes food milder."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.safety import seals
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, readings
from pantry_tui.services.stock.correct import correct


def judged(p: Pantry, line: str) -> Judgement:
    code = put_up(p, read(p, line)).code
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return p.judge(p.containers_of(batch)[0])


@pytest.mark.parametrize(
    ("line", "usable"),
    [
        # 25 November 2026: a year that was mistyped made it sound for half a year.
        ("1 lb tofu, bought in, fridge, printed=2027-09-01", False),
        ("1 lb tofu, bought in, fridge, printed=2027-01-01 dated=use-by", True),
        ("1 lb tofu, bought in, fridge, printed=2027-01-01", False),
        ("1 lb bean sprouts, bought in, fridge, printed=2027-09-01", False),
        ("1 lb hard cheese, bought in, fridge, printed=2027-06-01", True),
        ("4 cans canned tuna, bought in, larder, printed=2029-06-01", True),
    ],
)
def test_a_printed_date_is_believed_as_far_as_one_can_be(
    larder: Pantry, line: str, usable: bool
) -> None:
    found = judged(larder, line)
    assert found.usable is usable, found
    assert usable or any("printed date" in one for one in found.reasons)


@pytest.mark.parametrize("warm", [29.0, 30.0, 31.0])
def test_meat_that_is_hardly_frozen_has_no_life_without_end(tmp_path: Path, warm: float) -> None:
    """Meat freezes at about 28 °F; nothing is published that keeps it without end above that."""
    create(tmp_path / "a.db")
    with open_pantry(tmp_path / "a.db", date(2026, 11, 25)) as p:
        places.add(p, "chest", "freezer", temp_f=warm)
        found = judged(p, "2 bags chicken, frozen, chest")
        assert found.discard_after is not None
        places.add(p, "cold chest", "freezer", temp_f=0)
        assert judged(p, "2 bags chicken, frozen, cold chest").discard_after is None
        readings.read(p, "cold chest", warm)
        batch = next(one for one in p.stock.batches.values() if one.code == "3A")
        assert p.judge(p.containers_of(batch)[0]).discard_after is not None


def test_a_pickle_on_a_shelf_says_that_nobody_said_it_was_processed(larder: Pantry) -> None:
    said = judged(larder, "4 pint jars dill pickles, vinegar pickle, larder").standing
    assert any("processed" in one for one in said)
    cold = judged(larder, "4 pint jars dill pickles, vinegar pickle, fridge")
    assert cold.standing == (seals.FIRST,)
    jars = "4 pint jars pickled onions, vinegar pickle, larder, minutes=10"
    assert judged(larder, jars).standing == (seals.FIRST,)


def test_a_record_that_makes_it_milder_says_so(larder: Pantry) -> None:
    line = "4 pint jars snap beans, pressure canned, larder, minutes=5 psi=11 canner=dial"
    found = judged(larder, line)
    assert found.verdict is Verdict.UNKNOWN
    done = correct(larder, "2A", process=[("minutes", "20")])
    assert "milder" in done.message
    again = correct(larder, "2A", process=[("minutes", "5")])
    assert "milder" not in again.message


def test_a_place_that_a_wrong_clock_added_later_is_as_warm_as_was_said_before(
    tmp_path: Path,
) -> None:
    create(tmp_path / "a.db")
    with open_pantry(tmp_path / "a.db", date(2027, 1, 1)) as p:
        places.add(p, "box", "freezer", temp_f=0)
    with open_pantry(tmp_path / "a.db", date(2026, 1, 1)) as p:
        put_up(p, read(p, "2 bags chicken, frozen, box"))
    with open_pantry(tmp_path / "a.db", date(2026, 1, 2)) as p:
        places.change(p, "box", temp_f=50)
    with open_pantry(tmp_path / "a.db", date(2026, 1, 10)) as p:
        batch = next(iter(p.stock.batches.values()))
        assert p.judge(p.containers_of(batch)[0]).verdict is Verdict.DISCARD


@pytest.mark.parametrize("where", ["fridge", "larder"])
@pytest.mark.parametrize(
    "pack",
    ["1 jar garlic in oil", "1 bottle garlic oil", "2 jars peppers in oil", "1 jar anchovies",
     "1 jar chilli oil", "1 jar pesto", "1 pack hummus", "1 jar garlic in oil, sold=shelf"],
)  # fmt: skip
def test_what_only_its_date_keeps_is_not_eaten_behind_it(
    larder: Pantry, pack: str, where: str
) -> None:
    """A best-before speaks of quality on a tin; on a jar in oil nothing keeps it for longer."""
    found = judged(larder, f"{pack}, bought in, {where}, 2025-12-01, printed=2026-01-10")
    assert found.verdict is Verdict.DISCARD
    assert not found.usable


@pytest.mark.parametrize("pack", ["1 jar garlic in oil", "1 jar peppers in oil"])
def test_a_jar_in_oil_without_a_date_is_not_past_best_for_ever(larder: Pantry, pack: str) -> None:
    found = judged(larder, f"{pack}, bought in, larder, 2023-12-01")
    assert not found.usable
    assert found.verdict in (Verdict.DISCARD, Verdict.UNKNOWN)


def test_a_tin_in_oil_is_past_its_best_and_safe(larder: Pantry) -> None:
    found = judged(larder, "2 cans canned tuna, bought in, larder, 2025-12-01, printed=2026-01-10")
    assert found.verdict is Verdict.PAST_BEST


@pytest.mark.parametrize(
    ("line", "ends"),
    [
        ("1 jar garlic in oil, bought in, fridge", True),
        ("1 jar garlic in oil, bought in, larder", True),
        ("1 jar honey, bought in, larder", False),
        ("4 cans canned tuna, bought in, larder", False),
    ],
)
def test_a_use_by_ends_what_can_hurt_wherever_it_was_sold(
    larder: Pantry, line: str, ends: bool
) -> None:
    found = judged(larder, f"{line}, printed=2027-02-20 dated=use-by")
    assert (found.discard_after == date(2027, 2, 20)) is ends
    assert found.best_by == date(2027, 2, 20)

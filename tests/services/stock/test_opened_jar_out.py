"""Opened jars out of the refrigerator. The power-cut chart (USDA/HHS foodsafety.gov, Food Safety
During Power Outage, seen in copies) keeps jelly, relish and pickles that were above 40 °F for over
two hours, and throws garlic in oil away; nobody publishes how long they may stand out."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, moving, places

DAY = date(2026, 11, 2)
_ACID = ("strawberry jam, jam", "dill pickles, vinegar pickle", "pickle relish, vinegar pickle")


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", DAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("kitchen", "room")):
            places.add(pantry, name, climate)
        yield pantry


def out_for(p: Pantry, line: str, minutes: int, *, back: bool = True) -> Judgement:
    """The verdict on one that was opened at eight and stood in the kitchen for so long since."""
    p.clock = Clock(DAY, 8 * 60)
    code = put_up(p, read(p, f"2 pint jars {line}, 2026-11-01")).code
    act.open_(p, f"{code}/1")
    moving.move(p, f"{code}/1", "kitchen")
    p.clock = Clock(DAY, 8 * 60 + minutes)
    if back:
        moving.move(p, f"{code}/1", "fridge")
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return p.judge(next(one for one in p.containers_of(batch) if one.number == 1))


@pytest.mark.parametrize("line", [f"{one}, larder" for one in _ACID])
def test_of_acid_and_sugared_jars_nobody_knows_after_two_hours(p: Pantry, line: str) -> None:
    found = out_for(p, line, 121)
    assert (found.verdict, found.usable) == (Verdict.UNKNOWN, True)
    assert found.discard_after is None
    assert any(
        "no published time out of it" in one.casefold() or "No published figure" in one
        for one in found.reasons
    )


@pytest.mark.parametrize("line", [f"{one}, larder" for one in _ACID])
def test_two_hours_at_the_table_change_nothing(p: Pantry, line: str) -> None:
    assert out_for(p, line, 120).verdict is Verdict.SOUND


def test_while_it_stands_there_nobody_knows(p: Pantry) -> None:
    assert out_for(p, "strawberry jam, jam, larder", 30, back=False).verdict is Verdict.UNKNOWN


def test_two_stays_add_up(p: Pantry) -> None:
    out_for(p, "strawberry jam, jam, larder", 90)
    moving.move(p, "2A/1", "kitchen")
    p.clock = Clock(DAY, 8 * 60 + 90 + 60)
    moving.move(p, "2A/1", "fridge")
    batch = next(one for one in p.stock.batches.values() if one.code == "2A")
    assert p.judge(p.containers_of(batch)[0]).verdict is Verdict.UNKNOWN


@pytest.mark.parametrize(
    "line",
    [
        "garlic in oil, in oil, fridge", "runner beans, pressure canned, larder, "
        "minutes=20 psi=11 canner=dial altitude=500ft", "dill pickles, fridge pickle, fridge",
        "low-sugar jam, jam, larder",
    ],
)  # fmt: skip
def test_what_can_hurt_or_is_refused_by_a_publication_is_discarded(p: Pantry, line: str) -> None:
    assert out_for(p, line, 121).verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)

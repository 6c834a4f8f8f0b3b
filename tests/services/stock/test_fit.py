"""Nothing unfit leaves the shelf among others, and the right one is found."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.safety import seals
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup, tending
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import act, one_batch, places

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """Peas: 2A (3 jars on the shelf), 3A (3 bags in the freezer, one more already thawed)."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("freezer", "freezer"), ("fridge", "fridge")):
            places.add(pantry, name, climate)
        for line in (
            "3 pint jars peas, pressure canned, larder, 1 jul",
            "4 bags peas, frozen, freezer, 1 aug",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        act.thaw(pantry, "3A/1")
        yield pantry


def test_thaw_finds_the_frozen_one_of_a_batch_and_of_a_food(p: Pantry) -> None:
    assert act.thaw(p, "3A").containers == ("3A/2",)
    assert act.thaw(p, "peas").containers == ("3A/3",)
    assert act.thaw(p, "garden peas").containers == ("3A/4",)
    with pytest.raises(Refused, match="does not stand in a freezer"):
        act.thaw(p, "peas")


def test_a_food_name_takes_the_one_that_goes_first(p: Pantry) -> None:
    assert act.use(p, "peas").containers == ("3A/1",), "what is thawed goes first"
    assert act.open_(p, "peas").containers == ("3A/2",), "the bag falls due before the jars"
    with pytest.raises(Refused, match="nothing of carrots"):
        act.use(p, "carrots")
    with pytest.raises(BadInput):
        act.use(p, "moon cheese")


@pytest.mark.parametrize("do", [act.use, act.open_, act.give])
def test_what_waits_to_be_looked_at_stays_where_it_is(
    p: Pantry, do: Callable[[Pantry, str], Done]
) -> None:
    signs.mark(p, "2A/2", "swollen lid")
    before = len(p.events)
    for ref in ("2A", "2A/1", "2A/2"):
        with pytest.raises(Refused):
            do(p, ref)
    assert len(p.events) == before
    signs.mark(p, "2A/3", "looks sound")
    assert do(p, "2A").containers == ("2A/3",)


def test_a_count_never_takes_an_unfit_one_among_the_others(p: Pantry) -> None:
    signs.mark(p, "2A/1", "swollen lid")
    for number in (2, 3):
        signs.mark(p, f"2A/{number}", "looks sound")
    with pytest.raises(Refused, match="Only 2"):
        act.use(p, "2A", "3")
    with pytest.raises(Refused, match="Only 2"):
        act.give(p, "2A", 3)
    assert act.give(p, "2A", 2).containers == ("2A/2", "2A/3")


def test_discarding_several_takes_the_unfit_ones_first(p: Pantry) -> None:
    signs.mark(p, "2A/3", "swollen lid")
    assert act.discard(p, "2A", 2, why="swollen").containers[0] == "2A/3"


def test_one_container_is_not_several(p: Pantry) -> None:
    several: list[Callable[[], object]] = [
        lambda: act.use(p, "2A/1", "2"),
        lambda: act.give(p, "2A/1", 2),
        lambda: act.missing(p, "2A/1", 2),
        lambda: act.discard(p, "2A/1", 2, why="broken"),
    ]
    for do in several:
        with pytest.raises(BadInput, match="one container"):
            do()
    with pytest.raises(BadInput):
        act.missing(p, "2A", 0)
    with pytest.raises(BadInput):
        act.discard(p, "2A", 0, why="broken")
    assert all(row.state is not State.GONE for row in one_batch.show(p, "2A").rows)


def test_who_gets_a_jar_is_told_what_whoever_opens_it_is_told(p: Pantry) -> None:
    opened = act.open_(p, "2A/1").warnings
    given = act.give(p, "2A/2", to="Aunt Sunniva").warnings
    standing = one_batch.show(p, "2A").rows[0].standing
    assert standing
    for told in (opened, given):
        assert set(standing) <= set(told)
    assert any("discard it closed, in two bags" in word for word in given)
    assert len(set(given)) == len(given)
    assert not act.give(p, "3A/2", to="Aunt Sunniva").warnings, "nothing is to be said of these"


def test_a_jar_whose_seal_nobody_looked_at_yet_is_given_with_that_word(p: Pantry) -> None:
    line = "2 pint jars peaches, boiling-water canned minutes=25, larder, today"
    code = putup.put_up(p, putup.read(p, line)).code
    assert seals.FIRST in act.give(p, code, to="Aunt Sunniva").warnings


def test_of_a_job_that_is_late_it_says_what_to_do(p: Pantry) -> None:
    line = "3 pint jars runner beans, pressure canned, larder minutes=20 psi=11 canner=dial"
    code = putup.put_up(p, putup.read(p, line)).code
    p.today += timedelta(days=4)
    with pytest.raises(Refused, match=f"check the seals. Do that and book it, `tend {code}`"):
        act.use(p, code)
    tending.tend(p, code)
    act.use(p, code)

"""A batch once more: notes lead, amounts are scaled, the process is looked up and never copied."""

from __future__ import annotations

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services import household
from pantry_tui.services.batchwork import repeat
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.books import rating
from pantry_tui.services.pantry import Pantry

BEANS = (
    "7 pint jars runner beans, pressure canned, minutes=20, psi=11, canner=dial, salt=3 tsp, larder"
)


@pytest.fixture
def code(larder: Pantry) -> str:
    household.change(larder, 500)
    return put_up(larder, read(larder, BEANS)).code


def test_the_process_is_looked_up_for_today_and_never_copied(larder: Pantry, code: str) -> None:
    household.change(larder, 2500)
    plan = repeat.again(larder, code)
    record = dict(plan.reading.process)
    assert not {"minutes", "psi", "altitude", "seal"} & set(record)
    # MSU 1997 (USDA): dial gauge, 2,001 to 4,000 ft: 20 minutes at 12 psi.
    assert any("20 min at 12 psi (dial" in one for one in plan.process)
    assert not any("11 psi" in one for one in plan.process)
    assert {"minutes=20", "psi=11"} <= set(plan.was)


def test_amounts_grow_with_the_batch_and_shares_do_not(larder: Pantry, code: str) -> None:
    plan = repeat.again(larder, code, count=14)
    assert (plan.reading.count, dict(plan.reading.process)["salt"]) == (14, "6 tsp")
    assert plan.scaled == ("salt: 3 tsp for 7, 6 tsp for 14",)
    kraut = put_up(larder, read(larder, "1 crock sauerkraut, lactic ferment, salt=2.25%, larder"))
    again = repeat.again(larder, kraut.code, count=3)
    assert (dict(again.reading.process)["salt"], again.scaled) == ("2.25%", ())


def test_todays_crop_says_how_many(larder: Pantry, code: str) -> None:
    """University of Wyoming: a quart of snap beans takes 2 lb, so a pint takes one."""
    assert repeat.again(larder, code, crop="9 lb").reading.count == 9
    assert repeat.again(larder, code, crop="a bushel").reading.count == 30
    for crop in ("a lot", "0.5 lb", "9 quarts"):
        with pytest.raises(BadInput):
            repeat.again(larder, code, crop=crop)


def test_what_was_said_at_table_leads(larder: Pantry, code: str) -> None:
    rating.taste(larder, code, "again", "")
    rating.taste(larder, code, "change", "less salt")
    plan = repeat.again(larder, code, change="less salt", said=[("salt", "2 tsp")])
    assert plan.lead == ("change: less salt", "again")
    assert plan.reading.note == f"as {code}: less salt"
    assert dict(plan.reading.process)["salt"] == "2 tsp"
    made = repeat.put_up(larder, plan)
    assert made.code != code
    assert len(made.containers) == 7


def test_a_litre_jar_takes_the_process_of_the_jar_it_stands_for(larder: Pantry) -> None:
    """By the makers' manuals a litre is processed as a quart (USDA: dial, 25 minutes at 11 psi)."""
    household.change(larder, 500, units="metric")
    line = "6 1 l jars snap beans, pressure canned, minutes=25, psi=11, canner=dial, larder"
    plan = repeat.again(larder, put_up(larder, read(larder, line)).code)
    assert any("25 min at 11 psi (dial" in one for one in plan.process), plan.process
    household.change(larder, jars="strict")
    assert not any("25 min" in one for one in repeat.again(larder, "2A").process)

"""Nothing is planned to be eaten after its date as that day will find it; many more stores by
`python -m tests.long weeks`."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.stock import act, places, view
from tests.examples import many
from tests.services.plan.weeks_at_random import PLACES, TODAY, hold

#: Stores a test holds, so that a run can be shared out.
_EACH = 10


@pytest.mark.parametrize("part", range(many(4)))
def test_a_week_is_safe_on_each_of_its_days(tmp_path: Path, part: int) -> None:
    found = [
        one for seed in range(part * _EACH, part * _EACH + _EACH) for one in hold(tmp_path, seed)
    ]
    assert not found, "\n".join(found)


def test_a_twenty_pound_bird_thawed_as_the_plan_tells_is_fit_on_its_day(tmp_path: Path) -> None:
    """USDA FSIS, the big thaw: a day in the refrigerator for each 5 lb; then poultry has a day."""
    create(tmp_path / "store.db", people=6)
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        for name, climate in PLACES:
            places.add(p, name, climate)
        code = putup.put_up(p, putup.read(p, "1 20 lb bag turkey, frozen, freezer")).code
        wishes.pin(p, f"{code}/1", TODAY + timedelta(days=5))
        (take,) = [one for one in weeks.week(p).take if one.code == code]
        assert take.thaw_by is not None
        assert (take.days[0] - take.thaw_by).days >= 4
        p.today = take.thaw_by
        act.thaw(p, f"{code}/1")
        day = take.thaw_by
        while day <= take.days[-1]:
            p.today = day
            (row,) = [one for one in view.due(p) if one.code == code]
            assert row.verdict not in UNFIT, (day, row.verdict, row.reasons)
            day += timedelta(days=1)
        p.today = take.days[-1] + timedelta(days=9)
        (row,) = [one for one in view.due(p) if one.code == code]
        assert row.verdict in UNFIT

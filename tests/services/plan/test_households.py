"""A few households through some weeks, with the eyes of a cook; 200 of them through twelve by
`python -m tests.long households`."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.examples import many
from tests.services.plan.households import hold


@pytest.mark.parametrize("seed", range(many(6)))
def test_a_cook_would_not_laugh_at_these_weeks(tmp_path: Path, seed: int) -> None:
    found = hold(tmp_path, seed, 4)
    assert not found, "\n".join(found)


def test_what_fills_the_day_of_guests_up_leaves_no_other_day_without_a_main(tmp_path: Path) -> None:
    """Seven sit there on one day: eggs that were the main of the next day go to them, and the
    ground beef that stands is that day's."""
    assert not hold(tmp_path, 87, 1)

"""Nothing is planned to be eaten after its date as that day will find it; many more stores by
`python -m tests.long weeks`."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.examples import many
from tests.services.plan.weeks_at_random import hold

#: Stores a test holds, so that a run can be shared out.
_EACH = 10


@pytest.mark.parametrize("part", range(many(4)))
def test_a_week_is_safe_on_each_of_its_days(tmp_path: Path, part: int) -> None:
    found = [
        one for seed in range(part * _EACH, part * _EACH + _EACH) for one in hold(tmp_path, seed)
    ]
    assert not found, "\n".join(found)

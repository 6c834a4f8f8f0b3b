"""What is said of jars that stood as no publication allows: after a day, no remedy."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.caution import STOOD
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry

#: Words of what may be done only with food made today.
REMEDIES = ("freeze", "pressure-can", "refrigerat", "fridge", "process it", "say instead", "keep")


def refusal(p: Pantry, line: str) -> str:
    with pytest.raises(Refused) as caught:
        putup.put_up(p, putup.read(p, line))
    return caught.value.message


@pytest.mark.parametrize("food", ["green beans", "sweet corn", "beef stew"])
@pytest.mark.parametrize("day", ["2026-08-01", "2026-11-23"])
def test_low_acid_jars_that_stand_since_days_are_to_be_discarded_closed(
    larder: Pantry, food: str, day: str
) -> None:
    said = refusal(larder, f"6 pint jars {food}, boiling-water canned, larder, {day}")
    assert said.endswith(STOOD)
    for word in ("not open or taste", "closed, in two bags", "local food-safety authority"):
        assert word in said
    assert not any(word in said.lower() for word in REMEDIES)


@pytest.mark.parametrize("day", ["2026-11-25", "2026-11-24"])
def test_those_of_today_may_still_be_saved(larder: Pantry, day: str) -> None:
    said = refusal(larder, f"6 pint jars green beans, boiling-water canned, larder, {day}")
    assert said.endswith("Freeze it, or can it in a pressure canner by a tested process.")
    assert STOOD not in said


@pytest.mark.parametrize(
    "what", ["jars garlic, in oil", "jars eggs, fridge pickle", "jars trout, vinegar pickle"]
)
def test_what_may_not_stand_there_and_did_is_not_put_in_the_cold_now(
    larder: Pantry, what: str
) -> None:
    old = refusal(larder, f"2 pint {what}, larder, 2026-08-01")
    assert STOOD[1:] in old
    assert not any(word in old.lower().replace("fridge pickle", "") for word in REMEDIES)
    assert STOOD[1:] not in refusal(larder, f"2 pint {what}, larder, 2026-11-25")

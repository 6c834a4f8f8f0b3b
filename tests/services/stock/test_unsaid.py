"""That nobody knows any more what was told lifts nothing that stands against a batch."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, one_batch
from pantry_tui.services.stock.correct import correct

BEANS = "3 pint jars snap beans, pressure canned, larder, 2026-11-20, canner=dial, "
PLUMS = "3 pint jars plums, boiling-water canned, larder, 2026-11-20, "
SOUND = frozenset({Verdict.SOUND, Verdict.EAT_SOON})


def up(p: Pantry, line: str) -> None:
    putup.put_up(p, putup.read(p, line))


def sound(p: Pantry) -> bool:
    return {row.verdict for row in one_batch.show(p, "2A").rows} <= SOUND


@pytest.mark.parametrize("nothing", ["unknown", "?", "", "not recorded", "Not known"])
@pytest.mark.parametrize(
    ("line", "key", "good"),
    [
        (f"{BEANS}minutes=10 psi=11", "minutes", "20"),
        (f"{BEANS}minutes=20 psi=5", "psi", "11"),
        (f"{BEANS}minutes=20 psi=11 altitude=9000ft", "altitude", "500ft"),
        (f"{BEANS}minutes=20 psi=11 seal=failed", "seal", "tight"),
        (f"{BEANS}minutes=20 psi=11 process=oven", "process", "pressure"),
        (f"{PLUMS}minutes=25 jar=half-gallon", "jar", "pint"),
        (f"{PLUMS}minutes=25 temperature=150F", "temperature", "212F"),
        (f"{PLUMS}minutes=25 ph=5", "ph", "3.4"),
        (f"{PLUMS}minutes=25 headspace=none", "headspace", "1/2 in"),
        ("3 pint jars tomatoes, boiling-water canned, larder, minutes=85 acid=none", "acid",
         "lemon"),
    ],
)  # fmt: skip
def test_a_bad_value_counts_until_a_good_one_is_told(
    larder: Pantry, nothing: str, line: str, key: str, good: str
) -> None:
    up(larder, line)
    before = one_batch.show(larder, "2A")
    with pytest.raises(Refused) as refused:
        correct(larder, "2A", process=[(key, nothing)])
    assert f"{key}=" in refused.value.message
    assert one_batch.show(larder, "2A") == before
    done = correct(larder, "2A", process=[(key, good)])
    assert "milder" in done.message


def test_it_counts_beside_others_that_are_put_right(larder: Pantry) -> None:
    up(larder, f"{BEANS}minutes=10 psi=5")
    with pytest.raises(Refused):
        correct(larder, "2A", process=[("minutes", "unknown")])
    with pytest.raises(Refused):
        correct(larder, "2A", process=[("minutes", "unknown"), ("psi", "11")])
    correct(larder, "2A", process=[("psi", "11")])
    assert not sound(larder)
    correct(larder, "2A", process=[("minutes", "20")])
    assert sound(larder)


def test_what_made_it_sound_may_be_unknown(larder: Pantry) -> None:
    up(larder, f"{BEANS}minutes=20 psi=11")
    assert sound(larder)
    done = correct(larder, "2A", process=[("minutes", "unknown")])
    assert "milder" not in done.message
    assert "minutes" in " ".join(one_batch.show(larder, "2A").rows[0].standing)


def test_a_ferment_of_a_high_ph_stays_unfinished(larder: Pantry) -> None:
    up(larder, "1 quart jar sauerkraut, lactic ferment, larder, 2026-09-01, salt=2.5%, ph=5")
    act.ready(larder, "2A")
    with pytest.raises(Refused):
        correct(larder, "2A", process=[("ph", "unknown")])

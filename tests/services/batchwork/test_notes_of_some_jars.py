"""What a note says only some of the jars went without: kept beside a record that has it, and held
against all of them, since nobody knows which."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import one_batch
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "tomatoes": "6 pint jars tomatoes, boiling-water canned, larder, 20 nov, minutes=85 "
    "acid=lemon juice",
    "pickles": "6 pint jars dill pickles, vinegar pickle, larder, 20 nov, minutes=15 vinegar=5%",
}
GOOD = {
    "tomatoes": """
lemon juice in every jar
lemon juice in every jar, one jar for Ann
no lemon zest in two of them
two jars without rings
one jar without a label
no salt in two of them
lemon juice in all; 2 jars for my sister
forgot the basil in two
left the basil out of the last two
two lids were missing, new ones bought
lemon juice in each, none forgotten
""",
    "pickles": """
no dill in two of them
two jars without garlic
forgot the mustard seed in one
""",
}
BAD = {
    "tomatoes": """
forgot the lemon juice in two of them
no lemon juice in two jars
two jars without lemon juice
one without lemon
2 with no acid
one jar has no acid
lemon juice missing in one
skipped the lemon in half
forgot the lemon juice, two of them
ran out of lemon juice, so the last jar has none
ran out of lemon juice for the last jar
the rest have no lemon juice
most jars have no lemon juice
jar 3 has no lemon juice
no lemon juice in the small ones
no citric acid in the first batch
lemon juice in every jar but one
lemon juice in all except the last one
only 4 jars got lemon juice
two jars were not processed
""",
    "pickles": """
no vinegar in two of them
the last jar has no vinegar
one jar without vinegar
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_jars_that_lack_nothing_stay_what_they_are(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_what_some_lack_is_held_against_all(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)


def test_a_correction_that_some_jars_have_no_acid_is_kept(larder: Pantry) -> None:
    code = putup.put_up(larder, putup.read(larder, LINES["tomatoes"])).code
    correct(larder, code, note="forgot the lemon juice in two of them")
    shown = one_batch.show(larder, code)
    assert shown.note == "forgot the lemon juice in two of them"
    assert not {row.verdict for row in shown.rows} & {Verdict.SOUND, Verdict.PAST_BEST}


def test_what_all_of_them_lack_is_still_asked_about(larder: Pantry) -> None:
    code = putup.put_up(larder, putup.read(larder, LINES["tomatoes"])).code
    with pytest.raises(BadInput):
        correct(larder, code, note="forgot the lemon juice, one jar for Ann")

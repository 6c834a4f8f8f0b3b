"""Notes by which somebody set food aside, whatever it is and however it was put up: not to be
eaten, to be thrown away, for animals alone, recalled. Who eats what and when raises nothing."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried, tried_each

LINES = (
    "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial",
    "3 half-pint jars strawberry jam, jam, larder, minutes=10",
    "2 tubs beef stew, cooked meal, fridge",
    "2 jars apples, dried, larder",
    "20 lb potatoes, cellar-stored, cellar",
    "2 tins tuna, bought in, larder",
    "4 bags peas 1 lb, frozen, freezer",
)
ASIDE = (
    "DO NOT EAT", "don't eat", "do not open", "DO NOT USE", "do not eat any of it", "never eat",
    "Jo says do not eat", "must not be eaten", "not to be opened", "do not taste", "toss",
    "toss it", "throw this out", "to be thrown away", "bin it", "discard", "compost", "suspect",
    "looks suspect", "suspect seal", "dodgy", "questionable", "not fit for people",
    "not fit to eat", "unfit for human consumption", "not safe", "unsafe", "inedible",
    "not for eating", "condemned", "for the pigs", "for the chickens", "pigs only",
    "for the dog only", "for the dog", "compost only", "only fit for the compost", "chicken feed",
    "recalled", "on the recall list", "for pigs, not people", "do not eat because the seal moved",
)  # fmt: skip
EATEN = (
    "do not open before christmas", "do not open until june", "do not eat raw",
    "do not eat all at once", "the children do not eat it", "we do not eat it cold",
    "do not use metal spoons", "toss with oil", "toss hot with pepper", "toss and serve",
    "toss after june", "tossed twice a day", "discarded the tops", "threw out the small ones",
    "suspect it needs salt", "i suspect the last picking", "for the duck", "for the pig roast",
    "peelings went to the pigs", "bones for the dog", "tops to the compost",
    "good for people who like it sharp", "fit for a king", "as far as i recall",
    "i recalled the recipe", "not recalled", "not for sale",
    "not for guests", "not eaten raw", "chicken only", "never eaten better",
    "fed with compost", "toss with butter", "never opened", "never used", "grown in compost",
    "cannot eat enough of it",
)  # fmt: skip


@pytest.mark.parametrize("line", LINES)
def test_what_somebody_set_aside_is_not_eaten(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, ASIDE)
    assert quoted(found) == set(ASIDE)
    well = (Verdict.SOUND, Verdict.EAT_SOON)
    assert {note for note, one in found.items() if one.verdict in well} == set()


@pytest.mark.parametrize("line", LINES)
def test_who_eats_what_and_when_sets_nothing_aside(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line).verdict
    found = tried_each(chilled, line, EATEN)
    assert {note for note, one in found.items() if one.verdict is not bare} == set()

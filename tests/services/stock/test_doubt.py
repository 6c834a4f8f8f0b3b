"""A batch whose process no publication stands for gets no shelf date, and says what is left."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.log.payloads import Correct, Household
from pantry_tui.core.safety import seals
from pantry_tui.core.words import Verdict
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, one_batch, places, undo, view
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.rows import DueRow

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """A household at 1,800 ft."""
    create(tmp_path / "store.db", altitude_ft=1800)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("freezer", "freezer")):
            places.add(pantry, name, climate)
        yield pantry


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def only(p: Pantry, code: str) -> DueRow:
    (row,) = one_batch.show(p, code).rows
    return row


BEANS = "1 pint jar snap beans, pressure canned, larder"


@pytest.mark.parametrize(
    ("line", "word"),
    [
        # USDA AIB 539, snap beans: pints 20 minutes; dial gauge 11 psi to 2,000 ft, weighted 15
        # above 1,000 ft.
        (f"{BEANS}, minutes=10 psi=11 canner=dial", "minutes"),
        (f"{BEANS}, minutes=20 psi=9 canner=dial", "psi"),
        (f"{BEANS}, minutes=20 psi=10 canner=weighted", "psi"),
        (f"{BEANS}, process=none", ""),
        (f"{BEANS}, canner=oven", ""),
        (
            "1 half-gallon jar snap beans, pressure canned, larder, minutes=20 psi=11",
            "larger than any",
        ),
        ('1 pint jar peaches, boiling-water canned, larder, process="open kettle"', ""),
        ("1 jar strawberry jam, jam, larder, seal=paraffin", "wax"),
        ("1 pint jar crushed tomatoes, boiling-water canned, larder, acid=no", "No acid"),
        ("1 pint jar dill pickles, vinegar pickle, larder, vinegar=4%", "5"),
    ],
)
def test_a_doubtful_process_gives_no_shelf_date(p: Pantry, line: str, word: str) -> None:
    row = only(p, up(p, line))
    assert row.verdict is Verdict.UNKNOWN, row.reasons
    assert row.best_by is None
    assert row.discard_after is None
    assert any(word in one for one in row.reasons), row.reasons
    assert any("24 hours" in one for one in row.reasons), row.reasons
    p.today += timedelta(days=2)
    later = view.due(p)[0]
    low_acid = "snap beans" in line
    assert later.verdict is (Verdict.DO_NOT_TASTE if low_acid else Verdict.DISCARD)


def test_within_a_day_the_cold_saves_it(p: Pantry) -> None:
    code = up(p, f"{BEANS}, minutes=10 psi=11 canner=dial")
    act.move(p, code, "fridge")
    row = only(p, code)
    assert row.discard_after == TODAY + timedelta(days=3)
    assert row.verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    frozen = up(p, f"{BEANS}, minutes=10 psi=11 canner=dial")
    act.move(p, frozen, "freezer")
    assert only(p, frozen).best_by is not None


def test_later_the_cold_saves_nothing(p: Pantry) -> None:
    code = up(p, f"{BEANS}, minutes=10 psi=11 canner=dial")
    p.today += timedelta(days=2)
    act.move(p, code, "fridge")
    assert only(p, code).verdict is Verdict.DO_NOT_TASTE


def test_a_tested_process_stands_and_an_unrecorded_one_is_said(p: Pantry) -> None:
    good = putup.put_up(p, putup.read(p, f"{BEANS}, minutes=20 psi=11 canner=dial"))
    assert good.verdict is Verdict.SOUND
    assert good.best_by == date(2027, 11, 25)
    assert not any("not checked" in one for one in good.cautions)
    bare = putup.put_up(p, putup.read(p, BEANS))
    assert bare.best_by == date(2027, 11, 25)
    assert any("not checked" in one for one in bare.cautions)


def test_the_chain_of_a_doubtful_batch_names_no_shelf_date(p: Pantry) -> None:
    code = up(p, f"{BEANS}, minutes=10 psi=11 canner=dial")
    chain = str(one_batch.show(p, code).chain)
    assert "Process:" in chain
    assert "published, so until" not in chain
    act.move(p, code, "fridge")
    assert "Safety:" in str(one_batch.show(p, code).chain), "what the cold allows is shown"


@pytest.mark.parametrize(
    ("line", "old", "said"),
    [
        ("1 pint jar peaches, boiling-water canned, larder, 24 nov 2024", True, True),
        ("1 pint jar peaches, boiling-water canned, larder, 25 nov 2024", True, False),
        ("1 jar apples, dried, larder, 24 nov 2024", True, False),
    ],
)
def test_a_sealed_jar_of_over_two_years_carries_a_word_of_caution(
    p: Pantry, line: str, old: bool, said: bool
) -> None:
    """Household default: home-canned, sealed, a word of caution after 24 months; University of
    Idaho Extension, lids rated 18 months and contents older than two years thrown out."""
    row = only(p, up(p, line))
    assert (row.verdict is Verdict.PAST_BEST) is old
    assert any("Over two years" in one for one in row.reasons) is said
    if said:
        p.today -= timedelta(days=1)
        assert not any("Over two years" in one for one in view.due(p)[0].reasons), "24 months"


def test_jars_of_which_nobody_knew_the_altitude_are_checked_once_it_is_said(tmp_path: Path) -> None:
    """USDA AIB 539: weighted gauge, 10 psi to 1,000 ft and 15 above."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "larder", "pantry")
        low = up(p, f"{BEANS}, minutes=20 psi=10 canner=weighted")
        high = up(p, f"{BEANS}, minutes=20 psi=15 canner=weighted")
        bare = up(p, BEANS)
        assert "1,000 ft only" in only(p, low).standing[0]
        told = household.change(p, altitude_ft=4500).warnings
        assert [one.split()[0] for one in told] == ["By", low]
        assert only(p, low).verdict is Verdict.UNKNOWN
        assert not only(p, low).usable
        assert only(p, high).verdict is Verdict.SOUND
        assert only(p, high).standing == (seals.FIRST,)
        assert "No process recorded" in only(p, bare).standing[0]
        undo.undo(p)
        assert only(p, low).verdict is Verdict.SOUND
        assert "1,000 ft only" in only(p, low).standing[0]


JARS = (
    # USDA AIB 539: snap beans 20 minutes in pints, dial gauge 11 psi to 2,000 ft and 12 to 4,000;
    # peaches, hot, pints 20 minutes to 1,000 ft, 25 to 3,000, 30 to 6,000.
    f"{BEANS}, minutes=20 psi=11 canner=dial",
    "1 pint jar peaches, boiling-water canned, larder, minutes=25, pack=hot",
)


@pytest.mark.parametrize("line", JARS)
def test_jars_judged_by_a_lower_altitude_are_checked_again_by_a_higher_one(
    p: Pantry, line: str
) -> None:
    code = up(p, line)
    assert only(p, code).usable
    told = household.change(p, altitude_ft=3500).warnings
    assert [one.split()[0] for one in told] == ["By", code]
    assert "altitude=" in told[1], "it says what would settle it"
    row = only(p, code)
    assert not row.usable
    assert any("3,500 ft" in one for one in row.reasons)
    assert "lifts nothing" in household.change(p, altitude_ft=900).warnings[0]
    assert not only(p, code).usable, "a lower one lets nobody eat it"
    correct(p, code, note="the big canner")
    assert not only(p, code).usable, "nor does another word of its record"
    correct(p, code, process=[("altitude", "1800 ft")])
    assert only(p, code).usable, "only its own altitude does"
    assert household.change(p, altitude_ft=7000).warnings == ()
    assert only(p, code).usable, "which no household changes"


@pytest.mark.parametrize("line", JARS)
def test_what_would_do_higher_up_as_well_is_left_alone(p: Pantry, line: str) -> None:
    better = line.replace("psi=11", "psi=13").replace("minutes=25", "minutes=30")
    code = up(p, better)
    assert household.change(p, altitude_ft=3500).warnings == ()
    assert only(p, code).verdict is Verdict.SOUND


def test_an_altitude_that_is_taken_back_checks_what_was_canned_meanwhile(p: Pantry) -> None:
    household.change(p, altitude_ft=500)
    code = up(p, "1 pint jar peaches, boiling-water canned, larder, minutes=20, pack=hot")
    change = next(e for e in reversed(p.standing) if e.payload == Household(altitude_ft=500))
    assert only(p, code).verdict is Verdict.SOUND
    told = undo.undo(p, change.id)
    assert p.altitude_ft == 1800
    assert [one.split()[0] for one in told.warnings] == [code]
    assert not only(p, code).usable


def test_an_altitude_that_is_taken_back_leaves_all_as_it_was_and_comes_again(p: Pantry) -> None:
    """Jars of which it is recorded that nobody knows the altitude among them."""
    code = up(p, f"{BEANS}, minutes=20 psi=11 canner=dial altitude=unknown")
    before = only(p, code)
    household.change(p, altitude_ft=500)
    after = only(p, code)
    undo.undo(p)
    assert only(p, code) == before
    undo.redo(p)
    assert (p.altitude_ft, only(p, code)) == (500, after)
    undo.undo(p)
    assert only(p, code) == before


@pytest.mark.parametrize(
    ("line", "word"),
    [
        # USDA HG 56 and AIB 539, guide 6 (1994), read in copies: jams in half-pints or pints for 5
        # minutes, relishes and mixed pickles in no more than a quart for 10; 5 more above 1,000
        # ft, and again above 6,000 ft.
        ("4 quart jars pepper jelly, jam, larder, minutes=10", "larger than a pint"),
        ("4 half-pint jars tomato jam, jam, larder, minutes=4, altitude=900ft", "fewer than 5"),
        ("4 gallon jars pickled cauliflower, vinegar pickle, larder", "larger than a quart"),
        ("4 pint jars tomato chutney, vinegar pickle, larder, minutes=9, altitude=900ft",
         "fewer than 10"),
        ("4 pint jars tomato chutney, vinegar pickle, larder, minutes=14, altitude=2000ft",
         "fewer than 15"),
        ("4 pint jars tomato chutney, vinegar pickle, larder, minutes=19, altitude=6001ft",
         "fewer than 20"),
        ("4 pint jars pepper jelly, jam, larder, minutes=14, altitude=6001ft", "fewer than 15"),
    ],
)  # fmt: skip
def test_a_food_without_a_process_has_no_larger_jar_and_no_shorter_time_than_any(
    p: Pantry, line: str, word: str
) -> None:
    row = only(p, up(p, line))
    assert not row.usable
    assert any(word in reason for reason in row.reasons), row.reasons


@pytest.mark.parametrize(
    "line",
    [
        "4 half-pint jars pepper jelly, jam, larder, minutes=5, altitude=900ft",
        "4 quart jars pickled cauliflower, vinegar pickle, larder, minutes=10, altitude=900ft",
        "4 pint jars tomato chutney, vinegar pickle, larder",
    ],
)
def test_nothing_speaks_against_one_that_is_within_what_is_published(p: Pantry, line: str) -> None:
    assert only(p, up(p, line)).usable


def test_a_check_that_is_new_reaches_what_was_put_up_before(p: Pantry) -> None:
    """The log says what stood against a batch on its day; what publications say today counts
    beside it, and what the household says later of its altitude does so only if it is higher."""
    code = up(p, f"{BEANS}, minutes=20 psi=11 canner=dial headspace=0")
    batch = p.batch(code)
    assert batch is not None
    # As a program booked it that did not know of the check.
    p.book(Correct(batch.id, doubt=(), possible=""))
    assert not only(p, code).usable
    correct(p, code, process=[("headspace", "1in")])
    assert only(p, code).usable


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("1 stuffed turkey, fresh, fridge", "Cook it at once, or discard it."),
        ("5 lb apples, fresh, fridge, prepared=windfalls", "Discard it."),
    ],
)
def test_what_no_recipe_puts_right_is_not_said_to_be_put_right(
    p: Pantry, line: str, told: str
) -> None:
    row = only(p, up(p, line))
    assert told in row.reasons
    assert not any("24 hours" in one for one in row.reasons)
    p.today += timedelta(days=2)
    assert told not in view.due(p)[0].reasons

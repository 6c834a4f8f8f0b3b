"""Lines as people type them: where it comes from, a month behind "from", a week that still runs,
foods whose name says how they are kept. Nothing typed is dropped, and nothing is read as milder."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.line.givers import says_where_from
from pantry_tui.core.words import Method, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.rows import PutUpReading
from pantry_tui.services.stock import places

TODAY = date(2026, 11, 25)  # a Wednesday


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (
            ("larder", "pantry"), ("fridge", "fridge"), ("freezer", "freezer"),
            ("cellar", "cellar"),
        ):  # fmt: skip
            places.add(pantry, name, climate)
        yield pantry


def clean(p: Pantry, line: str) -> PutUpReading:
    read = putup.read(p, line)
    assert (read.unread, read.problems) == ((), ()), line
    return read


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("12 jars peaches, boiling-water canned, larder, from june", date(2026, 6, 1)),
        ("12 eggs, fridge, from monday", date(2026, 11, 23)),
        ("20 lb potatoes, cellar, from 12 september", date(2026, 9, 12)),
        ("20 lb potatoes, cellar, from september 2025", date(2025, 9, 1)),
        ("6 pint jars beef, pressure canned, larder, from may", date(2026, 5, 1)),
        ("20 lb potatoes, cellar, this week", date(2026, 11, 22)),
        ("6 jars plum jam, larder, this month", date(2026, 11, 1)),
        ("3 bags peas, freezer, this month", date(2026, 11, 1)),
    ],
)
def test_a_day_behind_from_and_a_week_that_runs_have_a_first_day(
    p: Pantry, line: str, made: date
) -> None:
    assert clean(p, line).made == made


@pytest.mark.parametrize("today", [date(2026, 11, 22), date(2026, 11, 28), date(2026, 11, 23)])
def test_the_first_day_of_a_week_is_the_earlier_of_sunday_and_monday(
    p: Pantry, today: date
) -> None:
    p.today = today
    first = clean(p, "20 lb potatoes, cellar, this week").made
    assert first in (date(2026, 11, 22), date(2026, 11, 16))
    assert first is not None
    assert 0 < (today - first).days <= 6


@pytest.mark.parametrize(
    "line",
    ["1 carton milk, fridge, this week", "1 crock sauerkraut, cellar, this week",
     "1 tub chicken soup, cooked meal, fridge, this week", "6 jars jam, larder, last week",
     "1 jar kimchi, fridge, this month"],
)  # fmt: skip
def test_where_its_days_decide_it_is_asked_which(p: Pantry, line: str) -> None:
    read = putup.read(p, line)
    assert any("could be many days" in one for one in read.problems)
    assert any(one.about == "made" for one in read.asks)


@pytest.mark.parametrize(
    ("line", "note"),
    [
        ("12 eggs, fridge, from our hens", "from our hens"),
        ("12 eggs from our own hens, fridge", "from our own hens"),
        ("20 lb potatoes, cellar, from the allotment", "from the allotment"),
        ("20 lb potatoes, cellar, from the market", "from the market"),
        ("2 lb ground beef, freezer, from the butcher's", "from the butcher's"),
        ("7 pint jars runner beans, pressure canned, larder, from our back garden",
         "from our back garden"),
    ],
)  # fmt: skip
def test_where_it_comes_from_is_its_note(p: Pantry, line: str, note: str) -> None:
    read = clean(p, line)
    assert read.note == note
    assert "by" not in dict(read.process)


@pytest.mark.parametrize(
    "said",
    ["from the neighbour", "from Ida's garden", "from the neighbour's hens", "from the market",
     "from a shop", "from my sister", "from the fair", "from their garden"],
)  # fmt: skip
def test_a_jar_that_somebody_else_may_have_canned_stays_theirs(p: Pantry, said: str) -> None:
    read = putup.read(p, f"2 pint jars green beans, pressure canned, larder, {said}")
    assert dict(read.process)["by"] == said


@pytest.mark.parametrize(
    ("text", "own", "bought"),
    [
        ("from our hens", True, True), ("from the old apple trees", True, True),
        ("from the market", False, True), ("from the farm shop", False, True),
        ("from the neighbour's hens", False, False), ("from Ida", False, False),
        ("from the hens and the ducks next door", False, False), ("our hens", False, False),
        ("from 2 lb of 2A", False, False), ("from our hens, cracked", False, False),
    ],
)  # fmt: skip
def test_only_words_that_say_nothing_else_are_where_it_comes_from(
    text: str, own: bool, bought: bool
) -> None:
    assert says_where_from(text, canned=True) is own
    assert says_where_from(text, canned=False) is bought


@pytest.mark.parametrize(
    ("line", "method", "note"),
    [
        ("4 half-pint jars apple butter, larder", Method.JAM, ""),
        ("2 jars peach butter, larder", Method.JAM, "peach butter"),
        ("2 jars yogurt, fridge", Method.FRESH, ""),
        ("1 bottle kefir, fridge", Method.FRESH, ""),
        ("1 gouda, fridge", Method.FRESH, "gouda"),
        ("6 duck eggs, fridge", Method.FRESH, ""),
        ("2 jars duck confit, fridge", Method.RENDERED_FAT, "duck confit"),
        ("2 smoked sausages, fridge", Method.MEAL, "smoked sausages"),
        ("2 smoked sausages, freezer", Method.FROZEN, "smoked sausages"),
        ("1 jar smoked paprika, bought in, larder", Method.BOUGHT, "smoked paprika"),
        ("3 bags frozen peas, freezer", Method.FROZEN, ""),
        ("1 bag dried apricots, larder", Method.DRIED, ""),
        ("2 jars pickled beets, vinegar pickle, larder", Method.VINEGAR_PICKLE, ""),
    ],
)
def test_a_name_says_how_it_is_kept_and_what_it_says_more_is_its_note(
    p: Pantry, line: str, method: Method, note: str
) -> None:
    read = clean(p, line)
    assert (read.method, read.note) == (method, note)


def test_what_a_name_says_is_judged_no_more_leniently_than_what_else_it_could_be(
    p: Pantry,
) -> None:
    """Potted meat has no published figure; yogurt in a fridge keeps as a bought one does."""
    assert putup.preview(p, putup.read(p, "2 jars duck confit, larder")).verdict is Verdict.UNKNOWN
    for food in ("yogurt", "kefir", "hard cheese"):
        plain = putup.preview(p, putup.read(p, f"1 tub {food}, fridge"))
        bought = putup.preview(p, putup.read(p, f"1 tub {food}, bought in, fridge"))
        if bought.discard_after is not None:
            assert plain.discard_after is not None
            assert plain.discard_after <= bought.discard_after


@pytest.mark.parametrize("line", ["1 gouda, cellar", "6 duck eggs, larder", "6 eggs, larder"])
def test_what_may_stand_nowhere_but_in_the_cold_is_refused_with_the_reason(
    p: Pantry, line: str
) -> None:
    with pytest.raises(Refused, match="may not stand in"):
        putup.preview(p, clean(p, line))


@pytest.mark.parametrize(
    "line",
    ["2 jars pumpkin butter, larder", "1 jar peanut butter, larder", "1 jar hot sauce, larder",
     "2 jars lemon curd, fridge", "1 litre UHT milk, larder"],
)  # fmt: skip
def test_what_may_be_kept_in_several_ways_is_asked_about(p: Pantry, line: str) -> None:
    assert putup.read(p, line).method is None

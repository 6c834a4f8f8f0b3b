"""A column that is nothing here is kept in the note, and read there as any note is."""

from __future__ import annotations

from pathlib import Path

import pytest

from pantry_tui.core.safety.note_labels import in_words
from pantry_tui.core.words import Verdict
from pantry_tui.services import household
from pantry_tui.services.batchwork.importing import import_list
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places
from pantry_tui.services.stock.view import due

HEAD = "Item,Method,Qty,Size,Where,Date,Minutes,psi,Canner"
BEANS = "green beans,pressure canned,4,pint jars,larder,2026-11-20,20,11,dial"


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    household.change(larder, altitude_ft=500)
    places.add(larder, "chest", "freezer")
    return larder


def one(p: Pantry, tmp_path: Path, heading: str, cell: str, row: str = BEANS) -> Verdict:
    """How a row with such a column beside is judged."""
    path = tmp_path / "list.csv"
    path.write_text(f'{HEAD},"{heading}"\n{row},"{cell}"\n', encoding="utf-8")
    found = import_list(p, path)
    assert (found.booked, found.bad) == (True, [])
    (line,) = due(p)
    return line.verdict


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Spoiled", "yes"), ("Spoiled", "x"), ("Spoiled?", "TRUE"), ("Problem", "lid bulging"),
        ("Sign", "mould"), ("Observations", "fizzy, leaking"), ("Smell", "off"), ("Smell", "sour"),
        ("Verdict", "throw out"), ("Verdict", "bad"), ("Recipe", "untested"), ("Recipe", "my own"),
        ("Thickener", "flour"), ("Vented", "no"), ("Sealed", "no"), ("Safe to eat", "no"),
        ("Leaking", "yes"), ("Tested recipe", "no"), ("Added", "onions"), ("Lid", "popped"),
        ("Lost pressure", "yes"), ("Remark 2", "never reached pressure"), ("Tags", "mouldy"),
    ],
)  # fmt: skip
def test_what_speaks_against_it_is_held_against_it(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert one(p, tmp_path, heading, cell) in (Verdict.UNKNOWN, Verdict.DO_NOT_TASTE)


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Spoiled", "no"), ("Spoiled", "none"), ("Spoiled", ""), ("Spoiled", "-"),
        ("Problem", "none"),
        ("Problem", "no"), ("Sign", "nothing"), ("Observations", "clear, all good"),
        ("Seal checked", "yes"), ("Sealed", "yes"), ("Smell", "fine"), ("Smell", "no"),
        ("Verdict", "good"), ("Recipe", "USDA"), ("Recipe", "tested"), ("Thickener", "none"),
        ("Vented", "yes"), ("Leaking", "no"), ("Mould", "no"), ("Lost pressure", "no"),
        ("Safe to eat", "yes"), ("Discard", "no"), ("Botulism risk", "no"), ("Rating", "5"),
        ("Category", "Vegetables"), ("Category", "Meat"), ("Supplier", "the corner shop"),
        ("Owner", "Mike"), ("Season", "summer"), ("Variety", "Blue Lake"), ("Servings", "4"),
        ("Purchased", "2026-10-01"), ("Garden bed", "3"), ("Colour", "green"), ("Tags", "winter"),
        ("Opened by", ""), ("Batch ID", "12"), ("Price", "3.50"), ("Photo", "https://x.example/a"),
    ],
)  # fmt: skip
def test_what_does_not_stays_quiet(p: Pantry, tmp_path: Path, heading: str, cell: str) -> None:
    assert one(p, tmp_path, heading, cell) is Verdict.SOUND


def test_frozen_food_of_which_a_column_says_that_it_is_spoiled_is_not_eaten(
    p: Pantry, tmp_path: Path
) -> None:
    row = "ground beef,frozen,2,1 lb bags,chest,2026-11-20,,,"
    assert one(p, tmp_path, "Spoiled", "yes", row) is Verdict.DISCARD


def test_it_stands_in_the_note_with_its_column_beside_what_the_note_says(
    p: Pantry, tmp_path: Path
) -> None:
    path = tmp_path / "list.csv"
    text = f"{HEAD},Remarks,Sign,Oven: top,Price\n{BEANS},for Ann,none,two  racks,3.50\n"
    path.write_text(text, encoding="utf-8")
    found = import_list(p, path)
    assert (found.noted, found.unused) == (["Sign", "Oven: top"], ["Price"])
    (batch,) = p.stock.batches.values()
    assert batch.note == "for Ann; Sign: none; Oven top: two racks"


def test_what_a_person_leaves_out_is_left_out(p: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text(f"{HEAD},Spoiled\n{BEANS},yes\n", encoding="utf-8")
    found = import_list(p, path, columns="out=Spoiled")
    assert (found.noted, found.unused) == ([], ["Spoiled"])
    (batch,) = p.stock.batches.values()
    assert not batch.note


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("spoiled: yes", "spoiled"), ("spoiled: no", "not spoiled"), ("mould: no", "no mould"),
        ("seal checked: no", "seal not checked"), ("tested recipe: no", "recipe not tested"),
        ("smell: slightly off", "slightly off smell"), ("smell: fine", "smell: fine"),
        ("smell: not good", "not good smell"), ("verdict: thrown away", "spoiled"),
        ("verdict: good", "good"), ("edible: no", "spoiled"), ("bad: no", "no bad"),
        ("problem: leaking", "leaking"), ("boiled at 12:30", "boiled at 12:30"),
        ("with garlic", "with garlic"), ("garden: no 3 bed", "garden: no 3 bed"),
    ],
)  # fmt: skip
def test_a_label_is_read_as_words(typed: str, words: str) -> None:
    assert in_words(typed) == words


STEW = "beef stew,cooked meal,3,boxes,fridge,2026-11-24,,,"
MILK = "milk,bought in,2,cartons,fridge,2026-11-24,,,"
BEEF = "ground beef,frozen,3,bags,chest,2026-11-20,,,"


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Process OK?", "no"), ("Safe?", "no"), ("Tasted", "strange"), ("Seal ok?", "no"),
        ("Recipe tested?", "no"), ("Pressure held?", "no"), ("Vented (min)", "2"),
        ("Headspace ok", "no"), ("Lid popped", "yes"),
    ],
)  # fmt: skip
def test_what_was_not_well_is_held_against_a_jar(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert one(p, tmp_path, heading, cell) in (Verdict.UNKNOWN, Verdict.DO_NOT_TASTE)


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Process OK?", "yes"), ("Safe?", "yes"), ("Tasted", "good"), ("Seal ok?", "yes"),
        ("Lid popped", "no"), ("Hours out", "1"), ("Hours out", "6"), ("Spoiled?", "no"),
        ("Vented (min)", "10"), ("Pressure held?", "yes"), ("Portions", "6"), ("Jars", "4"),
    ],
)  # fmt: skip
def test_what_is_well_or_of_no_jar_raises_nothing(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert one(p, tmp_path, heading, cell) is Verdict.SOUND


@pytest.mark.parametrize(
    "heading",
    ["Minutes processed", "Processing minutes", "Time processed", "Mins at pressure",
     "Minutes in canner", "Minutes in water bath", "Process time (min)"],
)  # fmt: skip
def test_a_bare_number_of_a_process_is_its_minutes(p: Pantry, tmp_path: Path, heading: str) -> None:
    row = BEANS.replace(",20,", ",,")
    head = HEAD.replace(",Minutes", ",Empty")
    path = tmp_path / "list.csv"
    path.write_text(f"{head},{heading}\n{row},5\n", encoding="utf-8")
    assert import_list(p, path).booked
    (line,) = due(p)
    assert line.verdict in (Verdict.UNKNOWN, Verdict.DO_NOT_TASTE)


@pytest.mark.parametrize(
    ("heading", "cell", "verdict"),
    [
        ("Out of fridge (h)", "6", Verdict.DISCARD), ("Left out (h)", "6", Verdict.DISCARD),
        ("Hours out", "6", Verdict.DISCARD), ("Hours on counter", "4", Verdict.DISCARD),
        ("Time out (min)", "180", Verdict.DISCARD), ("Cooling time (h)", "6", Verdict.DISCARD),
        ("Still cold?", "no", Verdict.DISCARD), ("Chilled within 2h?", "no", Verdict.DISCARD),
        ("Left out", "yes", Verdict.DISCARD), ("Smell OK?", "no", Verdict.DISCARD),
        ("Looks ok", "no", Verdict.DISCARD), ("Tasted", "strange", Verdict.DISCARD),
        ("Fridge temp", "52F", Verdict.UNKNOWN), ("Fridge temp (F)", "52", Verdict.UNKNOWN),
        ("Temp", "60F", Verdict.UNKNOWN), ("Temp when found", "60F", Verdict.UNKNOWN),
        ("Fridge OK?", "no", Verdict.UNKNOWN), ("Cooked", "2026-11-18", Verdict.UNKNOWN),
        ("Cooked on", "2026-11-18", Verdict.UNKNOWN), ("Days old", "6", Verdict.UNKNOWN),
        ("Age (days)", "6", Verdict.UNKNOWN), ("Power cut (h)", "5", Verdict.UNKNOWN),
    ],
)  # fmt: skip
def test_what_must_be_cold_is_judged_by_any_column(
    p: Pantry, tmp_path: Path, heading: str, cell: str, verdict: Verdict
) -> None:
    assert one(p, tmp_path, heading, cell, STEW) is verdict


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Out of fridge (h)", "1"), ("Left out (h)", "0"), ("Left out (h)", "0.5"),
        ("Hours out", "1"), ("Left out", "no"), ("Left out (min)", "30"), ("Still cold?", "yes"),
        ("Cooling time (h)", "1"), ("Hours in fridge", "4"), ("Fridge temp", "38F"),
        ("Fridge temp (C)", "4"), ("Temp", "38F"), ("Temp", "165F"), ("Temp when found", "36F"),
        ("Cooked on", "2026-11-24"), ("Cooked", "yes"), ("Tasted", "fine"), ("Smell OK", "yes"),
        ("Chilled within 2h?", "yes"), ("Servings", "6"), ("Thrown out?", "no"),
    ],
)  # fmt: skip
def test_what_was_cold_enough_raises_nothing(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert one(p, tmp_path, heading, cell, STEW) is Verdict.EAT_SOON


@pytest.mark.parametrize("heading", ["Use by", "Eat by", "Sell by"])
def test_the_earlier_of_two_printed_days_counts(p: Pantry, tmp_path: Path, heading: str) -> None:
    head, row = f"{HEAD},Best before,{heading}", f"{MILK},2026-12-03"
    path = tmp_path / "list.csv"
    path.write_text(f"{head}\n{row},2026-11-20\n", encoding="utf-8")
    assert import_list(p, path).booked
    (line,) = due(p)
    assert line.verdict is Verdict.UNKNOWN


def test_days_open_are_no_days_of_a_shut_pack(p: Pantry, tmp_path: Path) -> None:
    assert one(p, tmp_path, "Days open", "9", MILK) is Verdict.UNKNOWN


def test_what_was_frozen_earlier_is_best_as_long_as_that(p: Pantry, tmp_path: Path) -> None:
    assert one(p, tmp_path, "Date frozen", "2026-08-01", BEEF) is Verdict.PAST_BEST


def test_frozen_food_that_was_found_warm_is_asked_about(p: Pantry, tmp_path: Path) -> None:
    assert one(p, tmp_path, "Temp when found", "35F", BEEF) is not Verdict.SOUND


def test_the_day_of_freezing_is_the_day_it_was_made(p: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    text = "Item,Method,Qty,Size,Where,Date frozen\nground beef,frozen,3,bags,chest,2026-08-01\n"
    path.write_text(text, encoding="utf-8")
    assert import_list(p, path).booked
    (line,) = due(p)
    assert line.verdict is Verdict.PAST_BEST


STEW = "beef stew,cooked meal,2,tubs,fridge,2026-11-24,,,"


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Discard by", "2026-11-20"), ("Throw out", "2026-11-20"), ("Throw out", "20/11/2026"),
        ("Good until", "2026-11-20"), ("Keeps till", "2026-11-20"), ("Exp.", "20.11.2026"),
        ("Toss by", "11/20/2026"), ("MHD", "20.11.2026"), ("Haltbar bis", "20.11."),
        ("Last day", "20 Nov"), ("Cook date", "2026-11-15"), ("Cooked (day)", "2026-11-15"),
        ("Date of cooking", "15.11.2026"), ("Gekocht am", "15.11.2026"), ("Age", "9 days"),
        ("Age", "9"), ("Age (days)", "9"), ("Days old", "9"), ("Counter (min)", "200"),
        ("Counter", "yes"), ("On the table", "x"), ("Room temp (h)", "3"), ("Buffet (h)", "2.5"),
        ("Out of fridge (min)", "200"), ("Hours on buffet", "3"), ("Max temp", "60F"),
        ("Highest temp (F)", "62"), ("Process OK?", "x"), ("Process OK?", "-"),
        ("Process OK?", "?"), ("Safe?", "?"), ("Smell OK?", "no"), ("OK", "-"),
        ("Bench time (min)", "180"), ("Outside?", "yes"), ("OK to eat?", "?"), ("How old", "8d"),
        ("Dispose by", "2026-11-20"), ("Verbrauchen bis", "20.11.2026"), ("Prep date", "15 Nov"),
        ("Cooled in (h)", "5"), ("Minutes out", "150"), ("In fridge since", "2026-11-15"),
    ],
)  # fmt: skip
def test_what_a_column_says_of_cooked_food_reaches_its_verdict(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert one(p, tmp_path, heading, cell, STEW) in (Verdict.UNKNOWN, Verdict.DISCARD)


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Throw out", "no"), ("Throw out", "2026-11-30"), ("Exp.", "2026-11-30"), ("Age", "1 day"),
        ("Max temp", "38F"), ("Cook date", "2026-11-24"), ("Good until", "2026-11-29"),
        ("Counter", "no"), ("Counter", "20 min"), ("Left out?", "-"), ("Process OK?", "yes"),
        ("Process OK?", ""), ("OK?", "yes"), ("Safe?", "y"), ("Age group", "adults"),
        ("Table", "2"), ("Variety", "?"), ("Mould", "-"),
    ],
)  # fmt: skip
def test_what_a_column_says_of_no_harm_stays_quiet(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert one(p, tmp_path, heading, cell, STEW) is Verdict.EAT_SOON


@pytest.mark.parametrize("cell", ["x", "-", "?", "no"])
@pytest.mark.parametrize("heading", ["Process OK?", "Safe", "Seal OK?", "All good?"])
def test_whether_a_jar_is_well_is_no_guess(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    found = one(p, tmp_path, heading, cell)
    assert found in (Verdict.UNKNOWN, Verdict.DISCARD, Verdict.DO_NOT_TASTE)


TOMATOES = "tomatoes,boiling-water canned,2,pint jars,larder,2026-11-01"
NO_TIME = "Item,Method,Qty,Size,Where,Date"


def untimed(p: Pantry, tmp_path: Path, heading: str, cell: str, row: str = TOMATOES) -> Verdict:
    """How a row is judged in a list that has no column for the time of its process but that."""
    path = tmp_path / "list.csv"
    path.write_text(f'{NO_TIME},"{heading}"\n{row},"{cell}"\n', encoding="utf-8")
    assert import_list(p, path).booked
    return due(p)[0].verdict


@pytest.mark.parametrize("cell", ["5", "5 min"])
@pytest.mark.parametrize(
    "heading",
    ["Min", "min.", "Duration", "Zeit", "Minuten", "Processing", "PT", "Timer", "Boiled for",
     "Cook time"],
)  # fmt: skip
def test_too_short_a_time_is_read_under_any_heading_for_it(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert untimed(p, tmp_path, heading, cell) is Verdict.DISCARD


@pytest.mark.parametrize("heading", ["Min", "Timer", "Cook time", "Duration"])
@pytest.mark.parametrize("cell", ["90", "90 min"])
def test_time_enough_under_such_a_heading_stays_quiet(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert untimed(p, tmp_path, heading, cell) is Verdict.SOUND


@pytest.mark.parametrize(
    ("heading", "cell", "row"),
    [
        ("Min", "2", "peas,frozen,2,1 lb bags,chest,2026-11-20"),
        ("Time", "8", "apples,dried,2,1 lb jars,larder,2026-11-20"),
        ("Cook time", "40", "peas,frozen,2,1 lb bags,chest,2026-11-20"),
    ],
)
def test_a_number_under_a_heading_of_time_says_nothing_of_what_has_no_process(
    p: Pantry, tmp_path: Path, heading: str, cell: str, row: str
) -> None:
    assert untimed(p, tmp_path, heading, cell, row) is Verdict.SOUND


def test_the_least_in_stock_is_no_time_beside_a_column_of_minutes(
    p: Pantry, tmp_path: Path
) -> None:
    assert one(p, tmp_path, "Min", "2") is Verdict.SOUND


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Lid", "bad"), ("Color", "bad"), ("Quality", "bad"), ("Good", "no"), ("Safe", "no"),
        ("Still good?", "no"), ("Remarks", "bad"), ("Comments", "bad"), ("Problem", "yes"),
        ("Issue", "yes"), ("Problem", "lid a bit up"), ("Discard", "bulging"), ("Toss", "bad"),
        ("Discard", "yes"), ("Toss", "x"), ("Still good?", "bad"),
    ],
)  # fmt: skip
def test_that_it_is_bad_is_heard_under_any_heading(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert untimed(p, tmp_path, heading, cell) in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Lid", "new"), ("Color", "red"), ("Quality", "good"), ("Good", "yes"), ("Safe", "yes"),
        ("Remarks", "not bad"), ("Comments", "for Ann"), ("Problem", "none"), ("Issue", "no"),
        ("Problem", "label fell off"), ("Discard", "no"), ("Toss", ""), ("Weather", "bad"),
        ("Harvest", "bad"), ("Discard", "not yet"), ("Toss", "n"),
    ],
)  # fmt: skip
def test_what_is_well_or_not_of_the_food_stays_quiet_under_them(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert untimed(p, tmp_path, heading, cell) is Verdict.SOUND

"""Putting up in a metric kitchen: why a batch is in doubt stands where it is typed, and the keys
below the line do what they say."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.app.screens.putup import PutUpScreen
from pantry_tui.app.texts import said_of
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.app.widgets.wordline import WordLine
from pantry_tui.core.safety.record import read_details
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup, sheet
from pantry_tui.services.batchwork.line import read_pairs
from pantry_tui.services.inunits import Units
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places
from pantry_tui.services.stock.correct import correct
from tests.app.screens import painted

STOCK = "6 jars chicken stock 500ml, pressure canned 25 min at 11 psi, larder, 1 oct"
BEANS = "7 500ml jars runner beans, pressure canned, larder"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 10, 3)) as pantry:
        household.change(pantry, altitude_ft=1700, units="metric")
        places.add(pantry, "larder", "pantry")
        places.add(pantry, "cellar", "cellar", temp_f=43)
        yield pantry


async def _typed(pilot: Pilot[None], line: str) -> str:
    """What is shown below the line."""
    pilot.app.screen.query_one("#line", Input).value = line
    await pilot.pause()
    return str(pilot.app.screen.query_one("#reading", Static).visual)


@pytest.mark.parametrize(
    ("line", "why"),
    [
        (STOCK, "if so, say canner=dial"),
        ("8 butternut squash, cellar, 25 sept", "below 10 °C it is hurt by cold"),
        ("9 500 ml jars tomatoes, water bath, 5 min with lemon juice, larder", "is too little"),
    ],
)
async def test_why_a_batch_is_in_doubt_stands_first_where_it_is_typed_and_once_it_is_booked(
    p: Pantry, line: str, why: str
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        typed = " ".join((await _typed(pilot, line)).split())
        assert why in typed
        assert _leads(why, typed)
        await pilot.press("enter")
        booked = str(pilot.app.screen.query_one("#reading", Static).visual)
        booked = " ".join(booked.split())
        assert booked.startswith(("Lid code", "Write ")), "what must go is not to be labelled"
        assert why in booked
        assert _leads(why, booked)


def _leads(why: str, shown: str) -> bool:
    """Whether the reason stands before the caution; what cannot hurt, as a squash, has none."""
    first, caution, _ = shown.partition("Never taste")
    return why in first and bool(caution) == ("squash" not in shown)


async def test_what_is_sound_says_no_more_than_its_dates(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        assert "why " not in await _typed(pilot, "12 jars strawberry jam, larder, june")


async def test_a_line_that_comes_back_is_mended_at_its_end_and_cleared_by_one_key(
    p: Pantry,
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        await _typed(pilot, BEANS)
        await pilot.press("enter", "ctrl+z")
        line = pilot.app.screen.query_one("#line", Input)
        assert line.value == BEANS
        assert line.cursor_position == len(BEANS)
        await pilot.press("left", "left", "ctrl+u")
        assert line.value == ""


async def test_a_refusal_does_not_stand_under_the_line_that_was_mended(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        await _typed(pilot, "3 jars dill pickles 1l, larder")
        await pilot.press("enter")
        said = pilot.app.screen.query_one(SaidLine)
        assert said.display
        assert said.has_class("refused")
        await pilot.press("x")
        assert not said.display


@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize(
    ("line", "keys"),
    [
        ("7 pint jars runner beans, pressure canned, larder", "minutes psi canner jar pack"),
        ("4 half-pint jars strawberry jam, jam, larder", "minutes jar"),
        ("4 pint jars peaches, boiling-water canned, larder", "minutes jar pack"),
        ("2 jars dill pickles, fridge pickle, fridge", "vinegar salt"),
        ("1 jar sauerkraut, lactic ferment, cellar", "salt temperature"),
        ("2 jars pears, dried, larder", "blanched temperature"),
        ("2 bags peas, frozen, chest", "blanched headspace"),
        ("2 jars garlic, in oil, fridge", "temperature"),
    ],
)
def test_the_example_of_a_record_is_of_its_method_and_can_be_typed_as_it_is_shown(
    p: Pantry, units: str, line: str, keys: str
) -> None:
    """Of a jam nobody says psi. Converted as a sentence, its "20 psi=11" was a pressure of 138
    kPa."""
    places.add(p, "fridge", "fridge")
    places.add(p, "chest", "freezer")
    household.change(p, units="us")
    code = putup.put_up(p, putup.read(p, line)).code
    household.change(p, units=units)
    example = sheet.example(p, code)
    shown = Units(metric=units == "metric").text(example).replace(" (500 ml)", "")
    assert list(dict(read_pairs(shown))) == keys.split()
    assert not read_details(read_pairs(shown)).problems
    assert Units(metric=True).text("write minutes=20 psi=11") == "write minutes=20 psi=11"


def test_the_example_of_a_tested_food_has_its_own_time_and_jar(p: Pantry) -> None:
    household.change(p, units="us")
    jam = "4 half-pint jars strawberry jam, jam, larder"
    assert sheet.example(p, putup.put_up(p, putup.read(p, jam)).code) == "minutes=10 jar=half-pint"


def test_the_example_of_a_metric_kitchen_has_no_less_pressure_than_its_process(p: Pantry) -> None:
    household.change(p, 5000, units="us")
    beans = "7 pint jars green beans, pressure canned, larder"
    code = putup.put_up(p, putup.read(p, beans)).code
    psi = int(dict(read_pairs(sheet.example(p, code)))["psi"])
    household.change(p, units="metric")
    told = dict(read_pairs(sheet.example(p, code)))
    assert psi > 11
    assert float(told["psi"].removesuffix("kPa")) >= psi * 6.8947


@pytest.mark.parametrize(("word", "says"), [("seal", "seal=tight"), ("pack", "pack=raw")])
def test_a_detail_without_its_value_says_what_values_there_are(word: str, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        read_pairs(word)


def test_pickles_that_were_said_to_be_processed_are_not_said_to_be_not(p: Pantry) -> None:
    line = "3 1 l jars dill pickles, {}larder, 20 aug"
    said = putup.put_up(p, putup.read(p, line.format("boiling-water canned, ")))
    assert dict(said.reading.process)["process"] == "boiling-water"
    assert said.standing == ("No process recorded: not checked.",)
    unsaid = putup.put_up(p, putup.read(p, line.format("vinegar pickle, ")))
    assert "Not said that the jars were processed" in unsaid.standing[0]


@pytest.mark.parametrize(
    ("line", "ways", "never"),
    [
        ("3 1 l jars dill pickles, larder", "boiling-water canned", "pressure canned"),
        ("3 1 l jars canned dill pickles, larder", "boiling-water canned", "pressure canned"),
        ("3 bottles elderflower cordial, larder", "frozen", "pressure canned"),
    ],
)
def test_the_ways_that_are_offered_are_those_of_the_food(
    p: Pantry, line: str, ways: str, never: str
) -> None:
    problems = " ".join(putup.read(p, line).problems)
    assert ways in problems
    assert never not in problems


@pytest.mark.parametrize(
    ("line", "mended"),
    [
        ("7 pint jars runner beans, pressure canned, larder", "write 473 ml or 568 ml"),
        ("1 chicken, frozen, larder, last month", "or unknown"),
    ],
)
def test_what_is_still_needed_says_what_to_write(p: Pantry, line: str, mended: str) -> None:
    assert mended in " ".join(putup.read(p, line).problems)


async def test_enter_on_an_example_in_grey_says_that_nothing_was_done(p: Pantry) -> None:
    """A file that was offered in grey was neither written nor refused."""
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        pilot.app.push_screen(TypeLine("Which file?", "~/door.html", accept=len))
        await pilot.pause()
        await pilot.press("enter")
        assert isinstance(pilot.app.screen, TypeLine)
        assert "nothing is typed. Write, for example, ~/door.html" in painted(pilot)
        await pilot.press("escape")
        assert not isinstance(pilot.app.screen, TypeLine)


async def test_a_place_at_the_head_of_the_line_is_named_once(p: Pantry) -> None:
    places.add(p, "larder shelf", "pantry", "larder")
    places.add(p, "top", "pantry", "larder")
    places.add(p, "top", "pantry", "cellar")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        screen, line = pilot.app.screen, pilot.app.screen.query_one("#line", Input)
        assert isinstance(screen, PutUpScreen)
        for path, filled in (
            ("larder › larder shelf", "larder shelf, "),
            ("larder › top", "larder top, "),
        ):
            line.value = ""
            screen.fill_in(path)
            assert line.value == filled


async def test_a_place_that_is_typed_goes_before_the_one_that_was_filled_in(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        screen = pilot.app.screen
        assert isinstance(screen, PutUpScreen)
        screen.fill_in("cellar")
        typed = screen.filled + "4 500 ml jars beets, pressure canned"
        assert (screen.read(typed).place, screen.read(typed).problems) == ("cellar", ())
        other = screen.read(f"{typed}, larder")
        assert (other.place, other.problems) == ("larder", ())


async def test_who_eats_when_is_answered(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "b", *"6 on friday", "enter")
        await pilot.pause()
        assert "Fri 9 Oct 2026: 6 at the table." in painted(pilot)


def test_one_of_a_food_is_one(p: Pantry) -> None:
    places.add(p, "chest", "freezer")
    made = putup.put_up(p, putup.read(p, "1 chicken, frozen, chest, 1 sept"))
    assert said_of(made) == "1 chicken, frozen"


async def test_a_sentence_under_the_list_that_has_no_room_is_marked(p: Pantry) -> None:
    """Cut in the middle it read as if it were whole: "If anyone feels ill, get"."""
    putup.put_up(p, putup.read(p, STOCK))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        word = pilot.app.screen.query_one(WordLine)
        shown = str(word.visual).split()
        assert shown[:4] == ["#", "do", "not", "taste:"]
        assert shown[-1] == "once."  # of the last sentence
        await pilot.resize_terminal(40, 20)
        await pilot.pause()
        cut = str(pilot.app.screen.query_one(WordLine).visual)
        assert cut.endswith("… Enter: all of it")


@pytest.mark.parametrize(
    ("put_right", "told"),
    [
        ({"process": [("canner", "dial")]}, "canner dial"),
        ({"size": "1 l jars"}, "one is 1 l jars"),
        ({"note": "less salt"}, "note 'less salt'"),
        ({"made": "2026-10-02"}, "made Fri 2 Oct 2026"),
    ],
)
def test_a_correction_says_what_it_put_right(
    p: Pantry, put_right: dict[str, str], told: str
) -> None:
    code = putup.put_up(p, putup.read(p, STOCK)).code
    said = correct(p, code, **put_right).message  # type: ignore[arg-type]
    assert said.startswith(f"Corrected {code} chicken stock: {told}.")


async def test_the_keys_of_a_question_say_what_escape_does_now(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        pilot.app.push_screen(Choose("Which?", [f"{word} jam" for word in "abcdef"]))
        await pilot.pause()
        assert "Esc leaves" in painted(pilot).replace("\xa0", " ")
        await pilot.press("c")
        assert "Esc shows all" in painted(pilot).replace("\xa0", " ")
        await pilot.press("escape")
        assert "Esc leaves" in painted(pilot).replace("\xa0", " ")
        await pilot.press("escape")
        assert not isinstance(pilot.app.screen, Choose)


def test_what_may_not_stand_there_is_told_where_it_may(p: Pantry) -> None:
    line = "1 bottle basil oil 250 ml, larder, today"
    with pytest.raises(Refused, match=r"Say instead: a fridge \(2 days\) or a freezer\.$"):
        putup.put_up(p, putup.read(p, line))
    places.add(p, "fridge", "fridge")
    with pytest.raises(Refused, match=r"Say instead: fridge \(2 days\)\.$"):
        putup.put_up(p, putup.read(p, line))


async def test_esc_leaves_put_up_and_the_count_for_the_room_one_came_from(p: Pantry) -> None:
    putup.put_up(p, putup.read(p, BEANS))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        for key in ("p", "c"):
            await pilot.press("S", key, "escape")
            await pilot.pause()
            assert getattr(pilot.app.screen, "here", "") == "shelves", key
        await pilot.press("D", "p", "f6", "escape")
        await pilot.pause()
        assert getattr(pilot.app.screen, "here", "") == "due"


async def test_the_answer_to_a_put_up_says_where_it_stands_and_how_it_is(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        await _typed(pilot, "4 jars plum jam, larder")
        await pilot.press("enter")
        await pilot.pause()
        shown = str(pilot.app.screen.query_one("#reading", Static).visual)
        assert "place          larder" in shown
        assert "sound" in shown


@pytest.mark.parametrize(("many", "said"), [(3, "1-3"), (9, "1-9"), (10, "1-9, 0")])
async def test_a_question_names_the_digits_that_take_something(
    p: Pantry, many: int, said: str
) -> None:
    taken: list[str | None] = []
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.app.push_screen(
            Choose("Which?", [f"no {n}" for n in range(many)]), taken.append
        )
        await pilot.pause()
        assert f" {said} takes one" in painted(pilot).replace("\u00a0", " ")
        await pilot.press(said[-1])
        await pilot.pause()
    assert taken == [f"no {many - 1}"]


async def test_the_tenth_place_is_counted_by_its_digit(p: Pantry) -> None:
    for n in range(10):
        places.add(p, f"rack {n}", "pantry")
        putup.put_up(p, putup.read(p, f"3 jars plum jam, rack {n}"))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c")
        await pilot.pause()
        shown = painted(pilot).replace("\u00a0", " ")
        assert "1-9, 0 take one" in shown
        tenth = re.search(r"\b0 (rack \d|larder)", shown)
        assert tenth
        await pilot.press("0")
        await pilot.pause()
        assert f"to go in {tenth[1]}" in painted(pilot)

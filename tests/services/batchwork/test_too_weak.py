"""What keeps food beside time and pressure is judged as it is typed: acid, vinegar, salt, sugar,
heat, how it was cut and packed, how long it fermented. Too little is never sound."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.methods import methods
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.batchwork.sheet import write
from pantry_tui.services.lookup.shelf_life import keeps
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, moving, places


def judged(p: Pantry, line: str) -> Judgement:
    code = put_up(p, read(p, line)).code
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return p.judge(p.containers_of(batch)[0])


SAUCE = "4 pint jars tomato sauce, boiling-water canned, larder, minutes=35"


@pytest.mark.parametrize(
    "line",
    [
        # USDA AIB 539, guide 3: a tablespoon of bottled juice or 1/4 tsp of citric acid a pint.
        f'{SAUCE} acid="1 tsp lemon juice"',
        f'{SAUCE} acid="1/4 tsp lemon juice"',
        f'{SAUCE} acid="1/8 tsp citric acid"',
        f'{SAUCE} acid="1 tbsp vinegar"',
        '4 quart jars tomato sauce, boiling-water canned, larder, minutes=40 acid="1 tbsp lemon"',
        "4 half-pint jars fig jam, larder, acid=none",
        "4 half-pint jars pepper jelly, larder, acid=none",
        "4 half-pint jars chutney, vinegar pickle, larder, acid=none",
        "4 pint jars dill pickles, fridge pickle, fridge, vinegar=2%",
        "4 pint jars dill pickles, fridge pickle, fridge, vinegar=none",
        # Colorado State University Extension: flavoured vinegars take vinegar of 5 %.
        "2 bottles raspberry vinegar, flavoured vinegar, larder, vinegar=2%",
        "2 bottles raspberry vinegar, flavoured vinegar, larder, vinegar=homemade",
        # University of Minnesota Extension, Making Sauerkraut: 2.25 to 2.5 % of the cabbage.
        "1 crock sauerkraut, lactic ferment, larder, salt=none",
        "1 crock sauerkraut, lactic ferment, larder, salt=1%",
        "4 pint jars miso, fermented paste, larder, salt=0%",
        "2 bottles elderflower cordial, sugar preserve, larder, sugar=5%",
        # USDA FSIS, jerky and food safety; safe minimum internal temperatures.
        "2 lb jerky, dried, larder, temperature=90F",
        "2 lb trout, hot smoked, fridge, temperature=100F",
        "2 lb chicken, hot smoked, fridge, temperature=60C",
        # Nought of it, however it is written.
        '4 pint jars dill pickles, fridge pickle, fridge, vinegar="0 ml"',
        "4 quart jars dill pickles, vinegar pickle, larder, minutes=15 vinegar=0ml",
        "1 crock sauerkraut, lactic ferment, larder, salt=0g",
        "2 bottles elderflower cordial, sugar preserve, larder, sugar=0g",
        # USDA AIB 539, guide 1: headspace lets the food boil and the jar seal.
        "4 pint jars snap beans, pressure canned, larder, minutes=20 psi=11 headspace=0",
        # The most room that any process is published with is 1.5 inches, the least 1/8.
        "4 pint jars snap beans, pressure canned, larder, minutes=20 psi=11 headspace=3in",
        "4 pint jars snap beans, pressure canned, larder, minutes=20 psi=11 headspace=5cm",
        "4 pint jars snap beans, pressure canned, larder, minutes=20 psi=11 headspace=1/16in",
        "4 half-pint jars strawberry jam, larder, headspace=2in",
        # The times for jams are tested with sugar.
        "4 half-pint jars strawberry jam, larder, sugar=0",
        "4 half-pint jars strawberry jam, larder, sugar=none",
        "4 half-pint jars strawberry jam, larder, sugar=2%",
        # A number in words or as a fraction is a number.
        '1 crock sauerkraut, lactic ferment, larder, salt="one percent"',
        "1 crock sauerkraut, lactic ferment, larder, salt=1/2%",
        "2 lb jerky, dried, larder, temperature=ninety",
        '4 pint jars snap beans, pressure canned, larder, minutes=20 psi=11 headspace="two inches"',
        "4 half-pint jars strawberry jam, larder, ph=five",
        '4 half-pint jars strawberry jam, larder, ph="4 3/4"',
        # No publication ferments sauerkraut below 60 F.
        "1 crock sauerkraut, lactic ferment, larder, temperature=45F",
    ],
)
def test_too_little_of_what_keeps_it_is_never_offered(larder: Pantry, line: str) -> None:
    found = judged(larder, line)
    assert not found.usable, found
    assert found.verdict not in (Verdict.SOUND, Verdict.EAT_SOON, Verdict.NEEDS_CARE)


@pytest.mark.parametrize(
    "line",
    [
        f'{SAUCE} acid="1 tbsp bottled lemon juice"',
        f'{SAUCE} acid="15 ml lemon juice"',
        f'{SAUCE} acid="1/4 tsp citric acid"',
        f"{SAUCE} acid=lemon",
        '4 quart jars tomato sauce, boiling-water canned, larder, minutes=40 acid="2 tbsp lemon"',
        "4 half-pint jars strawberry jam, larder, acid=none",
        "4 pint jars dill pickles, fridge pickle, fridge, vinegar=5%",
        "2 bottles raspberry vinegar, flavoured vinegar, larder, vinegar=5%",
        "2 lb jerky, dried, larder, temperature=140F",
        "2 lb trout, hot smoked, fridge, temperature=160F",
        "4 pint jars snap beans, pressure canned, larder, minutes=20 psi=11 headspace=1in",
        '4 pint jars snap beans, pressure canned, larder, minutes=20 psi=11 headspace="1 1/4 in"',
        "4 half-pint jars strawberry jam, larder, headspace=1/4in",
        "4 half-pint jars strawberry jam, larder, headspace=6mm",
        "4 half-pint jars strawberry jam, larder, sugar=50%",
        "4 half-pint jars strawberry jam, larder, sugar=2lb",
        "2 bags strawberries, frozen, icebox, temperature=0F",
        "2 bags strawberries, frozen, icebox, temperature=-18C",
    ],
)
def test_enough_of_it_is_as_good_as_before(larder: Pantry, line: str) -> None:
    places.add(larder, "icebox", "freezer")
    assert judged(larder, line).usable


@pytest.mark.parametrize(
    ("food", "minutes", "fine"),
    [
        # USDA AIB 539, guide 6: pickled beets 30 minutes; it was read as any relish's 10.
        ("beets", 10, False),
        ("beets", 30, True),
        ("pickled beets", 10, False),
        ("pickled onions", 10, True),
        ("snap beans", 5, True),  # dilly beans
    ],
)
def test_a_crop_in_vinegar_takes_the_time_of_its_pickle(
    larder: Pantry, food: str, minutes: int, fine: bool
) -> None:
    larder_at = f"4 pint jars {food}, vinegar pickle, larder, minutes={minutes}"
    assert judged(larder, larder_at).usable is fine


@pytest.mark.parametrize("food", ["refrigerator pickles", "horseradish sauce"])
def test_what_is_published_for_the_fridge_alone_is_refused_on_a_shelf(
    larder: Pantry, food: str
) -> None:
    with pytest.raises(Refused, match="fridge"):
        put_up(larder, read(larder, f"4 pint jars {food}, vinegar pickle, larder"))


@pytest.mark.parametrize(
    "food", ["tomato juice", "apple juice", "lemonade", "elderflower cordial", "kombucha"]
)
def test_what_was_only_bottled_has_no_year(larder: Pantry, food: str) -> None:
    found = judged(larder, f"2 bottles {food}, sugar preserve, larder")
    assert (found.verdict, found.best_by) == (Verdict.UNKNOWN, None)


# -- cut, peeled, packed dry -----------------------------------------------------------------------


@pytest.mark.parametrize(
    "food",
    ["diced onions", "peeled garlic", "shredded cabbage", "sliced apples", "blanched carrots"],
)
def test_a_crop_that_was_cut_has_not_the_life_of_a_whole_one(larder: Pantry, food: str) -> None:
    with pytest.raises(Refused, match="two hours"):
        put_up(larder, read(larder, f"5 lb {food}, cellar-stored, larder"))
    chilled = judged(larder, f"5 lb {food}, fresh, fridge")
    assert (chilled.verdict, chilled.best_by) == (Verdict.UNKNOWN, None)
    said = keeps(larder.tables, "cellar-stored", food, climate="cellar")
    assert not said["allowed"]


@pytest.mark.parametrize(
    "record", ["cut=diced", "form=diced", "cut=yes", 'prepared="diced, washed"']
)
def test_it_is_cut_under_whatever_name_its_record_says_it(larder: Pantry, record: str) -> None:
    with pytest.raises(Refused, match="two hours"):
        put_up(larder, read(larder, f"5 lb onions, cellar-stored, larder, {record}"))


@pytest.mark.parametrize("record", ["prepared=half-dried", "form='Semi-dried'"])
def test_what_is_still_moist_is_no_dried_food(larder: Pantry, record: str) -> None:
    with pytest.raises(Refused, match="moist"):
        put_up(larder, read(larder, f"2 lb tomatoes, dried, larder, {record}"))


def test_cut_melon_is_not_offered_on_a_guess(larder: Pantry) -> None:
    assert not judged(larder, "5 lb cut melon, bought in, fridge").usable
    assert judged(larder, "5 lb melons, bought in, fridge").usable


@pytest.mark.parametrize(
    "typed",
    ["1 half pumpkin", "1 wedge of pumpkin", "3 half cabbages", "2 pumpkin halves",
     "half a pumpkin, 3 lb", "a quarter of a cabbage, 1 lb"],
)  # fmt: skip
def test_a_part_of_a_crop_is_cut(larder: Pantry, typed: str) -> None:
    with pytest.raises(Refused, match="two hours"):
        put_up(larder, read(larder, f"{typed}, cellar-stored, larder"))
    assert judged(larder, f"{typed}, fresh, fridge").verdict is Verdict.UNKNOWN


def test_a_half_that_measures_or_names_a_kind_cuts_nothing(larder: Pantry) -> None:
    for typed in ("2 lb half runner beans", "half a sack of potatoes, 20 lb", "half a bag carrots"):
        assert dict(read(larder, f"{typed}, fresh, fridge").process).get("prepared") is None


def test_words_that_make_no_difference_are_passed_over(larder: Pantry) -> None:
    assert judged(larder, "2 lb sliced apples, dried, larder").verdict is Verdict.SOUND
    jar = "4 pint jars sliced carrots, pressure canned, larder, minutes=25 psi=11 canner=dial"
    assert judged(larder, jar).usable


@pytest.mark.parametrize(
    "food",
    # University of Wisconsin Extension, dry canning; the others from memory, the stricter choice.
    ["carrots dry pack", "dry canned carrots", "shredded carrots", "unpeeled carrots"],
)
def test_a_form_that_nobody_tested_is_in_doubt(larder: Pantry, food: str) -> None:
    line = f"4 pint jars {food}, pressure canned, larder, minutes=25 psi=11 canner=dial"
    assert not judged(larder, line).usable


@pytest.mark.parametrize(
    "line", ["5 lb green potatoes, cellar-stored, larder", "12 peeled eggs, fresh, fridge"]
)
def test_a_word_that_makes_another_thing_of_it_is_named(larder: Pantry, line: str) -> None:
    with pytest.raises(BadInput, match=r"green|peeled"):
        put_up(larder, read(larder, line))


def test_minestrone_has_pasta_and_no_process(larder: Pantry) -> None:
    line = "4 pint jars minestrone, pressure canned, larder, minutes=75 psi=11 canner=dial"
    assert not judged(larder, line).usable


# -- ready before its time -------------------------------------------------------------------------


def fermented(tmp_path: Path, food: str, days: int, record: str = "") -> Judgement:
    """In a fridge, after so many days at 72 °F."""
    made = date(2026, 11, 25).toordinal() - days
    path = tmp_path / "crock.db"
    create(path)
    with open_pantry(path, date(2026, 11, 25)) as p:
        places.add(p, "kitchen", "room", temp_f=72)
        places.add(p, "fridge", "fridge")
        day = date.fromordinal(made).isoformat()
        line = f"2 pint jars {food}, lactic ferment, kitchen, made {day}"
        code = put_up(p, read(p, line)).code
        act.ready(p, code)
        moving.move(p, code, "fridge")
        if record:
            write(p, code, [("ph", record)])
        batch = next(one for one in p.stock.batches.values() if one.code == code)
        return p.judge(p.containers_of(batch)[0])


@pytest.mark.parametrize(
    ("food", "days", "usable"),
    [
        # Michigan State University Extension: three to four weeks at 70 to 75 °F.
        ("sauerkraut", 0, False),
        ("sauerkraut", 20, False),
        ("sauerkraut", 21, True),
        # Colorado State University Extension: a day or two at room warmth.
        ("kimchi", 0, False),
        ("kimchi", 1, True),
        # University of California Master Food Preservers: two to seven weeks.
        ("carrots", 3, False),
        ("carrots", 14, True),
    ],
)
def test_a_ferment_is_not_finished_because_somebody_says_so(
    tmp_path: Path, food: str, days: int, usable: bool
) -> None:
    assert fermented(tmp_path, food, days).usable is usable


def test_a_measured_ph_says_it_better_than_days(tmp_path: Path) -> None:
    assert fermented(tmp_path, "carrots", 5, "3.9").usable


def test_a_ph_above_the_line_is_no_finished_ferment(tmp_path: Path) -> None:
    found = fermented(tmp_path, "sauerkraut", 30, "5.2")
    assert not found.usable
    assert any("4.6" in one for one in found.reasons)


@pytest.mark.parametrize("typed", ["9 lb sprouts", "9 lb green potatoes"])
def test_ways_are_told_of_no_other_food_than_was_meant(typed: str) -> None:
    with pytest.raises(BadInput):
        methods(load_tables(), typed)


def test_a_look_up_of_a_dry_pack_is_no_year() -> None:
    said = keeps(load_tables(), "pressure canned", "carrots dry pack")
    assert not said["allowed"]


@pytest.mark.parametrize("vinegar", [".5%", "2%", "no"])
@pytest.mark.parametrize("place", ["fridge", "larder"])
def test_the_cold_mends_no_weak_vinegar(tmp_path: Path, vinegar: str, place: str) -> None:
    """NCHFP, General Information on Pickling: vinegar of 5 %, on a shelf or in the cold."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 11, 28)) as p:
        places.add(p, "fridge", "fridge")
        places.add(p, "larder", "pantry")
        line = f"2 pint jars beets, vinegar pickle, {place}, vinegar={vinegar}"
        assert put_up(p, read(p, line)).verdict is not Verdict.SOUND
        good = put_up(p, read(p, "2 pint jars beets, vinegar pickle, fridge, vinegar=5%"))
        assert good.verdict is Verdict.SOUND

"""Bought food from the line to the verdict: on a shelf, in the cold, opened."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.words import Method, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork.putup import preview, put_up, read
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, readings
from pantry_tui.services.stock.view import due

UNKNOWN, SOUND, SOON, DISCARD = (
    Verdict.UNKNOWN, Verdict.SOUND, Verdict.EAT_SOON, Verdict.DISCARD
)  # fmt: skip


def judged(p: Pantry, line: str, opened: bool = False) -> Judgement:
    code = put_up(p, read(p, line)).code
    if opened:
        act.open_(p, code)
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return p.judge(p.containers_of(batch)[0])


def days(p: Pantry, last: date | None) -> int | None:
    return None if last is None else (last - p.today).days


@pytest.mark.parametrize(
    "food", ["raw milk", "bean sprouts", "ricotta", "tempeh", "mascarpone", "hummus", "smoothies"]
)
def test_a_best_before_says_nothing_of_how_long_what_can_hurt_is_safe(
    larder: Pantry, food: str
) -> None:
    by = larder.today + timedelta(10)
    found = judged(larder, f"1 tub {food}, bought in, fridge, printed={by}")
    assert (found.verdict, found.usable) == (UNKNOWN, False)
    assert any("dated=use-by" in one for one in found.reasons)
    assert judged(larder, f"1 tub {food}, bought in, fridge, printed={by} dated=use-by").usable


@pytest.mark.parametrize("food", ["hummus", "guacamole", "carrot juice", "apple cider", "salsa"])
@pytest.mark.parametrize("dated", ["", " dated=use-by"])
def test_chilled_food_has_two_hours_on_a_shelf(larder: Pantry, food: str, dated: str) -> None:
    by = larder.today + timedelta(10)
    found = judged(larder, f"1 tub {food}, bought in, larder, printed={by}{dated}")
    assert (found.verdict, found.usable) == (DISCARD, False)


@pytest.mark.parametrize(
    "food", ["1 bottle carrot juice", "1 jar pesto", "1 carton milk", "1 jar hummus"]
)
def test_of_a_pack_that_may_stand_nobody_knows_until_it_is_said(larder: Pantry, food: str) -> None:
    by = larder.today + timedelta(200)
    line = f"{food}, bought in, larder, printed={by}"
    found = judged(larder, line)
    assert (found.verdict, found.usable) == (UNKNOWN, False)
    assert any("sold=shelf" in one for one in found.reasons)
    assert judged(larder, f"{line} sold=shelf").verdict is SOUND
    assert judged(larder, f"{line} sold=chilled").verdict is DISCARD


def test_a_shelf_is_not_believed_of_raw_meat(larder: Pantry) -> None:
    by = larder.today + timedelta(9)
    found = judged(larder, f"1 pack chicken pieces, bought in, larder, printed={by} sold=shelf")
    assert found.verdict is DISCARD
    assert any("only in a tin" in one for one in found.reasons)
    late = larder.today + timedelta(300)
    for word in ("Shelf", "SHELF"):
        beef = f"1 pack ground beef, bought in, larder, printed={late} dated=use-by sold={word}"
        assert judged(larder, beef).verdict is DISCARD


@pytest.mark.parametrize(
    ("line", "verdict"),
    [
        # Published for a shelf: how good it is, is all that there is.
        ("4 tins snap beans", SOUND), ("4 tins canned tuna", SOUND), ("4 tins peaches", SOUND),
        ("1 jar honey", SOUND), ("1 jar jam", SOUND), ("1 l UHT milk", SOUND),
        ("1 bag jerky", SOUND),
        # Some hang on a shelf and some lie in the cold: a person says which.
        ("1 hard sausage", UNKNOWN),
        # The table of power cuts keeps them in the warm, and no publication says how long.
        ("1 lb butter", UNKNOWN), ("1 piece parmesan", UNKNOWN),
        # Nothing says that it stands.
        ("1 l milk", DISCARD), ("1 pack ham", DISCARD), ("1 pack hot dogs", DISCARD),
    ],
)  # fmt: skip
def test_what_stands_on_a_shelf_without_a_date(larder: Pantry, line: str, verdict: Verdict) -> None:
    assert judged(larder, f"{line}, bought in, larder").verdict is verdict


@pytest.mark.parametrize(
    ("line", "verdict"),
    [
        # The table of power cuts throws bought greens away: some are cut, and some jars are sold
        # cold. A tin, dry beans and what a person saw on a shelf are not meant.
        ("1 bag carrots", DISCARD), ("1 jar roasted peppers", DISCARD),
        ("1 tin snap beans", SOUND), ("1 bag chickpeas", SOUND),
        ("1 jar roasted peppers, sold=shelf", SOUND),
    ],
)  # fmt: skip
def test_bought_greens_in_a_refrigerator_that_was_warm(
    larder: Pantry, line: str, verdict: Verdict
) -> None:
    by = larder.today + timedelta(10)
    code = put_up(larder, read(larder, f"{line}, bought in, fridge, yesterday, printed={by}")).code
    readings.read(larder, "fridge", 38, since=readings.read_since("20h"))
    readings.read(larder, "fridge", 60, since=readings.read_since("3h"))
    batch = next(one for one in larder.stock.batches.values() if one.code == code)
    assert larder.judge(larder.containers_of(batch)[0]).verdict is verdict


@pytest.mark.parametrize(
    ("food", "shut", "opened"),
    [
        ("hot dogs", 14, 7), ("bacon", 7, 7), ("pepperoni", 14, 5), ("rotisserie chicken", 3, 3),
        ("pate", 1, 1), ("lunch meats", 3, 3), ("milk", 5, 5), ("butter", 21, 21),
        ("ground beef", 1, 1), ("chicken pieces", 1, 1), ("shelf-stable milk", None, 5),
        ("baked beans", None, 3),
    ],
)  # fmt: skip
def test_its_days_in_the_cold_count_shut_and_opened(
    larder: Pantry, food: str, shut: int | None, opened: int
) -> None:
    if shut is not None:
        found = judged(larder, f"1 pack {food}, bought in, fridge")
        assert (days(larder, found.discard_after), found.usable) == (shut, True)
    by = larder.today + timedelta(30)
    dated = f"1 pack {food}, bought in, fridge, printed={by}"
    found = judged(larder, dated, opened=True)
    assert (days(larder, found.discard_after), found.usable) == (opened, True)


@pytest.mark.parametrize(
    ("line", "most", "note"),
    [
        # Cut at a counter, or cooked: three to five days (USDA FSIS, Ham Storage Chart, and the
        # Cold Food Storage Chart, seen in copies); opened semi-dry sausage five days (University of
        # Missouri Extension MP558); the figures for whole pieces are longer.
        ("sliced ham, bought in", 3, "sliced ham"), ("ham slices, bought in", 3, "ham slices"),
        ("diced ham, bought in", 3, "diced ham"), ("sliced cooked ham, bought in", 3, ""),
        ("spiral ham, bought in", 3, "spiral ham"), ("cooked ham, bought in", 3, "cooked ham"),
        ("sliced corned beef, bought in", 3, ""), ("shredded corned beef, bought in", 3, ""),
        ("sliced pastrami, bought in", 3, ""), ("sliced canadian bacon, bought in", 3, ""),
        ("sliced summer sausage, bought in", 5, ""), ("sliced pepperoni, bought in", 5, ""),
        ("sliced summer sausage, salted", 5, ""), ("sliced ham, salted", 5, "sliced ham"),
        ("sliced country ham, salted", 61, "sliced country ham"),
    ],
)  # fmt: skip
def test_cured_meat_that_was_cut_or_cooked_keeps_no_longer_than_such_meat(
    larder: Pantry, line: str, most: int, note: str
) -> None:
    reading = read(
        larder,
        f"2 packs {line}, fridge, state=sealed" if "salted" in line else f"2 packs {line}, fridge",
    )
    assert note in reading.note
    code = put_up(larder, reading).code
    batch = next(one for one in larder.stock.batches.values() if one.code == code)
    shut = larder.judge(larder.containers_of(batch)[0])
    kept = days(larder, shut.discard_after)
    assert kept is not None
    assert kept <= most


@pytest.mark.parametrize("food", ["smoked ham", "smoked chicken", "smoked bacon", "smoked tofu"])
def test_that_it_was_smoked_before_it_was_bought_stays_with_it(larder: Pantry, food: str) -> None:
    assert read(larder, f"1 pack {food}, bought in, fridge").note == food


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("1 pack smoked salmon, bought in, fridge", "cold-smoked fish"),
        ("smoked salmon, bought, 2 packs, fridge", "cold-smoked fish"),
        ("1 pack hot smoked trout, bought in, fridge", "hot-smoked fish"),
        ("1 pack smoked bacon, bought in, fridge", "bacon"),
    ],
)
def test_what_was_smoked_before_it_was_bought_asks_nothing(
    larder: Pantry, line: str, food: str
) -> None:
    said = read(larder, line)
    assert not said.asks
    assert (said.food, said.method) == (food, Method.BOUGHT)


@pytest.mark.parametrize(
    "acid",
    ["1 tbsp bottled lemon juice", "1/4 tsp citric acid", "bottled lemon juice", "2 tbsp vinegar"],
)
@pytest.mark.parametrize("behind", ["", ", minutes=85", " per jar", " minutes=85"])
def test_the_acid_of_a_jar_is_no_second_food(larder: Pantry, acid: str, behind: str) -> None:
    line = f"4 pint jars tomatoes, boiling water canned, larder, acid={acid}{behind}"
    said = read(larder, line)
    assert (said.food, said.unread) == ("tomatoes", ())
    assert dict(said.process)["acid"] == acid


def drawn(p: Pantry, line: str, much: str) -> Judgement:
    code = put_up(p, read(p, line)).code
    act.use(p, code, much)
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return p.judge(p.containers_of(batch)[0])


@pytest.mark.parametrize("how", ["cellar-stored", "fresh"])
@pytest.mark.parametrize("food", ["pumpkin", "cabbage", "watermelon"])
def test_what_is_left_of_a_crop_is_cut(larder: Pantry, how: str, food: str) -> None:
    warm = drawn(larder, f"1 {food}, {how}, larder", "half")
    assert (warm.verdict, warm.usable) == (UNKNOWN, False)
    assert any("cut" in one for one in warm.reasons)
    cold = drawn(larder, f"1 {food}, {how}, fridge", "half")
    assert (cold.verdict, cold.usable) == (UNKNOWN, food == "pumpkin")


@pytest.mark.parametrize("food", ["pumpkin", "cabbage"])
def test_what_is_left_of_a_bought_crop_is_cut_too(larder: Pantry, food: str) -> None:
    found = drawn(larder, f"1 {food}, bought in, larder", "half")
    assert found.verdict is UNKNOWN
    assert any("cut off" in one for one in found.reasons)


def test_whole_ones_that_are_left_are_whole(larder: Pantry) -> None:
    whole = judged(larder, "3 cabbages, cellar-stored, larder")
    left = drawn(larder, "3 cabbages, cellar-stored, larder", "1")
    assert (left.verdict, left.best_by) == (whole.verdict, whole.best_by)


@pytest.mark.parametrize(
    ("line", "much", "usable"),
    [
        ("1 10 lb pumpkin, cellar-stored, larder", "3 lb", False),
        ("1 4 lb cabbage, fresh, larder", "1 lb", False),
        ("20 lb carrots, cellar-stored, larder", "3 lb", True),
        ("1 40-lb crate pumpkins, cellar-stored, larder", "8 lb", True),
    ],
)
def test_what_is_left_by_weight_of_a_large_crop_is_cut(
    larder: Pantry, line: str, much: str, usable: bool
) -> None:
    assert drawn(larder, line, much).usable is usable


@pytest.mark.parametrize(
    ("line", "stands"),
    [
        ("1 piece of pumpkin, cellar-stored, larder", False),
        ("2 pieces of watermelon, fresh, larder", False),
        ("1 pumpkin, cellar-stored, larder", True),
        ("6 pieces of ginger, cellar-stored, larder", True),
    ],
)
def test_a_piece_of_a_large_crop_is_cut(larder: Pantry, line: str, stands: bool) -> None:
    found = read(larder, line)
    if stands:
        assert put_up(larder, found).code
    else:
        with pytest.raises(Refused, match="may not stand"):
            put_up(larder, found)


def test_eggs_without_air_have_no_weeks_of_eggs_in_their_shells(larder: Pantry) -> None:
    """Cold Food Storage Chart: three to five weeks, in the shell."""
    found = judged(larder, "2 vacuum packs eggs, fresh, fridge")
    assert read(larder, "2 vacuum bags mushrooms, fresh, fridge").process == (("vacuum", "yes"),)
    assert (found.discard_after, found.usable) == (None, False)


@pytest.mark.parametrize("pack", ["pouch", "carton", "retort pouch", "jar", "tin"])
@pytest.mark.parametrize("food", ["lentils", "chickpeas", "black beans"])
def test_pulses_in_a_pack_that_holds_them_cooked_are_cooked_food_once_open(
    larder: Pantry, food: str, pack: str
) -> None:
    shut = judged(larder, f"1 {pack} {food}, bought in, larder")
    assert shut.usable
    open_there = judged(larder, f"1 {pack} {food}, bought in, larder, state=open")
    assert not open_there.usable
    cold = judged(larder, f"1 {pack} {food}, bought in, fridge, state=open")
    assert not cold.usable or (days(larder, cold.discard_after) or 99) <= 4
    assert judged(larder, f"1 bag {food}, bought in, larder, state=open").usable


def test_a_raw_ham_on_a_shelf_ends_with_its_printed_date(larder: Pantry) -> None:
    """Nobody publishes how long such a pack is safe behind it: the stricter choice."""
    put_up(larder, read(larder, "1 country ham, bought in, larder, printed=2027-03-01"))
    row = due(larder)[0]
    assert (row.verdict, row.discard_after) == (Verdict.SOUND, date(2027, 3, 1))


PULSES = ("lentils", "chickpeas", "dry beans", "split peas")


@pytest.mark.parametrize("pack", ["pouch", "carton", "jar"])
def test_opened_packs_of_cooked_pulses_are_alike(larder: Pantry, pack: str) -> None:
    """Whichever they are: two hours out of the cold, and to the refrigerator when they are opened
    (USDA FSIS: perishable food)."""
    found = set()
    for food in PULSES:
        line = f"1 {pack} {food}, bought in, larder"
        left_out = preview(larder, read(larder, f"{line}, state=open, 2026-11-20"))
        code = put_up(larder, read(larder, line)).code
        told = act.open_(larder, code).message
        found.add((left_out.verdict, "it now stands in fridge" in told))
    assert found == {(Verdict.DISCARD, True)}

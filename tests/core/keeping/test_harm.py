"""What can hurt where no publication speaks, and what stands against a batch beside its dates.

House law: meat, fish, egg, dairy, cooked food, sprouts, unfinished ferments and cures, and whatever
is low in acid and sealed without air, in oil, vacuum-packed or cooked.
"""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.doubt import (
    by_others,
    not_checked,
    rescued,
    unknown_origin,
    unsealed,
)
from pantry_tui.core.keeping.harm import can_hurt, is_vacuum_packed, kept_as
from pantry_tui.core.keeping.limits import judge_fresh
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN, Batch, Container, FoodFacts, Place, Seen
from pantry_tui.core.safety.acid import ACID_ADDED
from pantry_tui.core.safety.acid import NOT_CHECKED as NO_ACID_SAID
from pantry_tui.core.safety.process_names import name_key
from pantry_tui.core.safety.record import NO_ALTITUDE, NOT_CHECKED
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from pantry_tui.reference.process import load_processes
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import facts_of

MADE = date(2026, 3, 1)
BOOK = load_tables().book
LOW, ACID = Acidity.LOW_ACID, Acidity.ACID
ANIMALS = [Group.MEAT, Group.FISH, Group.EGG, Group.DAIRY, Group.MEAL]
CROPS = [Group.VEGETABLE, Group.FRUIT, Group.NUT, Group.HERB, Group.GRAIN]


def batch(
    method: Method,
    group: Group = Group.VEGETABLE,
    acidity: Acidity = LOW,
    *classes: str,
    size: str = "",
    **process: str,
) -> Batch:
    food = FoodFacts("something", group, acidity, frozenset(classes))
    return Batch("b", "2A", food, method, MADE, size, tuple(process.items()))


@pytest.mark.parametrize(
    "method",
    [Method.INFUSION, Method.LACTIC, Method.ALCOHOL_FERMENT, Method.SUGAR, Method.FRESH,
     Method.DRIED, Method.SALTED],
)  # fmt: skip
@pytest.mark.parametrize("name", ["garlic honey", "onion honey", "rosemary honey", "ginger honey"])
def test_what_lies_in_honey_can_hurt_however_it_is_called(method: Method, name: str) -> None:
    assert can_hurt(Batch("b", "2A", facts_of(name), method, MADE))


@pytest.mark.parametrize(
    ("name", "method"),
    [
        ("honey", Method.INFUSION), ("honey", Method.SUGAR), ("mead", Method.ALCOHOL_FERMENT),
        ("honeyberries", Method.DRIED), ("liquor", Method.INFUSION), ("sugar", Method.SUGAR),
        ("garlic", Method.INFUSION), ("maple syrup", Method.INFUSION),
    ],
)  # fmt: skip
def test_honey_itself_and_what_lies_in_spirit_cannot(name: str, method: Method) -> None:
    assert not can_hurt(Batch("b", "2A", facts_of(name), method, MADE))


# -- can it hurt -----------------------------------------------------------------------------------


@pytest.mark.parametrize("method", list(Method))
@pytest.mark.parametrize("group", ANIMALS)
def test_food_of_animals_and_cooked_food_can_hurt_however_it_is_kept(
    method: Method, group: Group
) -> None:
    assert can_hurt(batch(method, group))
    assert can_hurt(batch(method, group, ACID))


@pytest.mark.parametrize("method", list(Method))
@pytest.mark.parametrize("class_", ["sprout", "stock", "animal", "cooked", "in-oil"])
def test_sprouts_stock_and_what_is_made_with_animals_can_hurt(method: Method, class_: str) -> None:
    assert can_hurt(batch(method, Group.VEGETABLE, ACID, class_))


#: What can hurt of plants: low in acid, acid, low in acid and vacuum-packed.
PLANTS = {
    Method.DRIED: (False, False, False), Method.FREEZE_DRIED: (False, False, False),
    Method.SUGAR: (True, False, True), Method.INFUSION: (False, False, False),
    Method.FLAVOURED_VINEGAR: (False, False, True), Method.RENDERED_FAT: (True, True, True),
    Method.LACTIC: (False, False, True), Method.VINEGAR_FERMENT: (True, False, True),
    Method.ALCOHOL_FERMENT: (True, False, True), Method.PASTE: (True, False, True),
    Method.SALTED: (False, False, True),
    Method.BOILING_WATER: (True, False, True), Method.PRESSURE: (True, False, True),
    Method.JAM: (True, False, True), Method.FREEZER_JAM: (True, False, True),
    Method.FRIDGE_PICKLE: (True, False, True), Method.VINEGAR_PICKLE: (True, False, True),
    Method.FROZEN: (True, False, True),
    Method.CELLAR: (False, False, True), Method.FRESH: (False, False, True),
    Method.BOUGHT: (False, False, True),
    Method.IN_OIL: (True, True, True), Method.HOT_SMOKED: (True, True, True),
    Method.COLD_SMOKED: (True, True, True), Method.LIME: (True, True, True),
    Method.MEAL: (True, True, True),
}  # fmt: skip


@pytest.mark.parametrize("method", list(Method))
def test_of_plants_it_is_the_method_and_the_acid(method: Method) -> None:
    low, acid, packed = PLANTS[method]
    assert can_hurt(batch(method)) is low
    assert can_hurt(batch(method, Group.VEGETABLE, ACID)) is acid
    assert can_hurt(batch(method, vacuum="yes")) is packed
    assert can_hurt(batch(method, Group.VEGETABLE, ACID, vacuum="yes")) is acid
    assert can_hurt(batch(method, vacuum="no")) is low


FERMENTS = [Method.LACTIC, Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.SALTED]


@pytest.mark.parametrize("method", FERMENTS)
def test_a_ferment_or_a_cure_is_harmless_only_once_it_is_done(method: Method) -> None:
    assert can_hurt(batch(method, Group.FRUIT), in_progress=True)
    assert not can_hurt(batch(method, Group.FRUIT))


@pytest.mark.parametrize("method", [Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT])
def test_what_has_no_sugar_makes_no_alcohol_and_no_vinegar(method: Method) -> None:
    harmless = {Group.DRINK, Group.SWEET, Group.FRUIT, Group.GRAIN}
    for group in set(Group) - set(ANIMALS):
        assert can_hurt(batch(method, group)) is (group not in harmless)
        assert not can_hurt(batch(method, group, ACID))


def test_a_paste_of_what_is_low_in_acid_is_no_acid_ferment() -> None:
    assert can_hurt(batch(Method.PASTE))
    assert can_hurt(batch(Method.PASTE, Group.FRUIT, ACID), in_progress=True)
    assert not can_hurt(batch(Method.PASTE, Group.FRUIT, ACID))


@pytest.mark.parametrize("group", [one for one in Group if one not in ANIMALS])
def test_sugar_makes_harmless_what_it_dries_and_sugar_itself(group: Group) -> None:
    """Garlic in honey, a syrup of herbs: shut off from air, with water in it."""
    dried_by_it = group in (Group.FRUIT, Group.NUT, Group.GRAIN)
    assert can_hurt(batch(Method.SUGAR, group)) is not dried_by_it
    assert not can_hurt(batch(Method.SUGAR, group, LOW, "sugar"))
    assert not can_hurt(batch(Method.SUGAR, group, ACID))


@pytest.mark.parametrize(
    ("name", "hurts"),
    [
        ("milk liqueur", True), ("egg nog", True), ("cream of ginger", True), ("Bacon vodka", True),
        ("ginger liqueur", False), ("creamed roots", False), ("eggplant vodka", False),
    ],
)  # fmt: skip
def test_a_drink_that_no_table_knows_is_made_with_what_its_name_says(
    name: str, hurts: bool
) -> None:
    food = FoodFacts(name, Group.DRINK, ACID, known=False)
    bottle = replace(batch(Method.INFUSION), food=food)
    assert can_hurt(bottle) is hurts
    assert not can_hurt(replace(bottle, food=replace(food, known=True)))
    assert not can_hurt(replace(bottle, food=replace(food, group=Group.FRUIT)))


@pytest.mark.parametrize(
    ("food", "method"),
    [
        ("cream liqueur", Method.INFUSION), ("advocaat", Method.INFUSION),
        ("eggnog", Method.INFUSION), ("herbal syrups", Method.SUGAR), ("mint syrup", Method.SUGAR),
        ("infused honey", Method.SUGAR), ("rosemary honey", Method.SUGAR),
        ("garlic", Method.SUGAR), ("pesto", Method.IN_OIL), ("herb oil", Method.FLAVOURED_VINEGAR),
        ("gravy", Method.LACTIC), ("natto", Method.PASTE), ("lemon curd", Method.SUGAR),
        ("garlic", Method.RENDERED_FAT), ("canned beans", Method.FRESH),
    ],
)  # fmt: skip
def test_of_what_can_hurt_the_unknown_is_offered_in_no_place(food: str, method: Method) -> None:
    """Nothing is published for these on a shelf; what is unknown there is not usable."""
    for climate in Climate:
        for state in (State.SEALED, State.OPEN, State.IN_PROGRESS):
            made = Batch("b", "2A", facts_of(food), method, MADE)
            said = judge_fresh(made, state, Place("here", "here", climate), MADE, BOOK)
            assert said.verdict is not Verdict.UNKNOWN or not said.usable, f"{state} in {climate}"


def test_what_is_raw_is_harmless_only_as_a_whole_crop() -> None:
    for group in Group:
        for method in (Method.CELLAR, Method.FRESH):
            assert can_hurt(batch(method, group)) is (group not in CROPS)


@pytest.mark.parametrize(
    ("group", "size", "classes", "hurts"),
    [
        (Group.GRAIN, "tin", (), False), (Group.FAT, "jar", (), False),
        (Group.VEGETABLE, "bag", (), False), (Group.VEGETABLE, "", (), False),
        (Group.VEGETABLE, "2 tins", (), True), (Group.VEGETABLE, "JARS", (), True),
        (Group.VEGETABLE, "carton", (), True), (Group.VEGETABLE, "pouch", (), True),
        (Group.RELISH, "bag", (), True), (Group.DRINK, "bottle", (), True),
        (Group.RELISH, "bag", ("nut",), False),
    ],
)  # fmt: skip
def test_bought_food_is_harmless_dry_or_whole(
    group: Group, size: str, classes: tuple[str, ...], hurts: bool
) -> None:
    assert can_hurt(batch(Method.BOUGHT, group, LOW, *classes, size=size)) is hurts
    assert not can_hurt(batch(Method.BOUGHT, group, ACID, *classes, size=size))


def test_vacuum_packed_is_what_was_said_to_be() -> None:
    assert is_vacuum_packed(batch(Method.FROZEN, vacuum="yes"))
    assert not is_vacuum_packed(batch(Method.FROZEN, vacuum="no"))
    assert not is_vacuum_packed(batch(Method.FROZEN, blanched="yes"))


@pytest.mark.parametrize(
    ("group", "acidity", "size", "judged_as"),
    [
        (Group.VEGETABLE, LOW, "tins", Method.PRESSURE), (Group.FISH, LOW, "Can", Method.PRESSURE),
        (Group.FRUIT, ACID, "tin", Method.BOILING_WATER), (Group.MEAL, LOW, "box", Method.MEAL),
        (Group.MEAL, LOW, "tin", Method.PRESSURE), (Group.MEAT, LOW, "pack", Method.FRESH),
        (Group.GRAIN, LOW, "bag", Method.BOUGHT), (Group.FRUIT, ACID, "carton", Method.BOUGHT),
        (Group.VEGETABLE, LOW, "tinned", Method.BOUGHT),
    ],
)  # fmt: skip
def test_bought_food_is_judged_as_what_it_is(
    group: Group, acidity: Acidity, size: str, judged_as: Method
) -> None:
    assert kept_as(batch(Method.BOUGHT, group, acidity, size=size)) is judged_as
    assert kept_as(batch(Method.DRIED, group, acidity, size=size)) is Method.DRIED


@pytest.mark.parametrize(
    ("group", "acidity", "classes", "name", "raw"),
    [
        (Group.VEGETABLE, LOW, (), "carrots", True), (Group.FRUIT, LOW, (), "melons", True),
        (Group.HERB, LOW, (), "basil", True), (Group.FRUIT, ACID, (), "plums", False),
        (Group.VEGETABLE, LOW, ("nut",), "walnuts", False), (Group.GRAIN, LOW, (), "oats", False),
        # Sold dry, they stand without the cold.
        (Group.VEGETABLE, LOW, (), "dry beans", False),
        (Group.VEGETABLE, LOW, (), "chickpeas", False), (Group.HERB, LOW, (), "spices", False),
    ],
)  # fmt: skip
def test_raw_crops_bought_without_air_are_judged_as_ones_own(
    group: Group, acidity: Acidity, classes: tuple[str, ...], name: str, raw: bool
) -> None:
    one = batch(Method.BOUGHT, group, acidity, *classes, size="bag", vacuum="yes")
    one = replace(one, food=replace(one.food, name=name))
    assert kept_as(one) is (Method.FRESH if raw else Method.BOUGHT)
    loose = replace(one, process=())
    assert kept_as(loose) is Method.BOUGHT


# -- what stands against a batch -------------------------------------------------------------------


@pytest.mark.parametrize(
    ("by", "others"),
    [("us", False), ("Myself", False), ("OURS", False), ("", False), ("Sunniva", True),
     ("somebody else", True)],
)  # fmt: skip
def test_who_made_it(by: str, others: bool) -> None:
    assert by_others(batch(Method.PRESSURE, by=by)) is others
    assert not by_others(batch(Method.PRESSURE, seal=by))


@pytest.mark.parametrize(
    ("method", "acidity", "process", "unknown"),
    [
        (Method.PRESSURE, LOW, {"by": "Sunniva"}, True),
        (Method.BOILING_WATER, LOW, {"by": "Sunniva"}, True),
        (Method.PRESSURE, LOW, {"by": "us"}, False),
        (Method.PRESSURE, LOW, {"by": "Sunniva", "minutes": "20"}, True),
        (Method.PRESSURE, LOW, {"by": "Sunniva", "psi": "11"}, True),
        (Method.PRESSURE, LOW, {"by": "Sunniva", "minutes": "20", "psi": "11"}, False),
        (Method.BOILING_WATER, LOW, {"by": "Sunniva", "minutes": "20"}, False),
        (Method.PRESSURE, LOW, {"by": "Sunniva", "minutes": "unknown"}, True),
        (Method.PRESSURE, LOW, {"by": "Sunniva", "jar": "pint"}, True),
        (Method.PRESSURE, ACID, {"by": "Sunniva"}, False),
        (Method.FROZEN, LOW, {"by": "Sunniva"}, False),
    ],
)
def test_a_low_acid_jar_of_somebody_else_and_nobody_knows_how(
    method: Method, acidity: Acidity, process: dict[str, str], unknown: bool
) -> None:
    one = batch(method, Group.VEGETABLE, acidity, **process)
    assert bool(unknown_origin(one)) is unknown


WATER = Method.BOILING_WATER


@pytest.mark.parametrize(
    ("food", "method", "process", "said"),
    [
        # USDA AIB 539, guide 3: lemon juice or citric acid in either canner.
        ("tomatoes", WATER, {"minutes": "85"}, True),
        ("tomatoes", Method.PRESSURE, {"minutes": "25", "psi": "11"}, True),
        ("figs", WATER, {"minutes": "50"}, True),
        ("asian pears", WATER, {"minutes": "25"}, True),
        ("tomatillos", WATER, {"minutes": "50"}, True),
        ("salsa", WATER, {"minutes": "15"}, True),
        ("pickled beets", WATER, {"minutes": "35"}, True),
        ("tomatoes", WATER, {"minutes": "85", "acid": "unknown"}, True),
        ("tomatoes", WATER, {"minutes": "85", "vinegar": "none"}, True),
        ("tomatoes", WATER, {"minutes": "85", "process": "boiling-water"}, True),
        ("tomatoes", WATER, {"minutes": "85", "acid": "lemon"}, False),
        ("salsa", WATER, {"minutes": "15", "vinegar": "5%"}, False),
        ("salsa", WATER, {"minutes": "15", "process": "tested recipe"}, False),
        ("peaches", WATER, {"minutes": "30"}, False),
        ("tomatoes", Method.FROZEN, {}, False),
        ("tomatoes", Method.DRIED, {}, False),
    ],
)
def test_acid_of_which_nobody_said_anything(
    food: str, method: Method, process: dict[str, str], said: bool
) -> None:
    one = Batch("b", "2A", facts_of(food), method, MADE, "", tuple(process.items()))
    assert (NO_ACID_SAID in not_checked(one)) is said
    theirs = replace(one, process=(*one.process, ("by", "Sunniva")))
    assert bool(unknown_origin(theirs)) is said, "a jar of somebody else is not offered on a guess"


def test_where_nothing_of_a_process_is_recorded_acid_is_missing_beside_it() -> None:
    bare = replace(batch(WATER), food=facts_of("tomatoes"))
    assert not_checked(bare) == (NOT_CHECKED, NO_ACID_SAID)
    assert not_checked(replace(bare, food=facts_of("peaches"))) == (NOT_CHECKED,)
    assert unknown_origin(replace(bare, process=(("by", "Sunniva"),)))


def test_every_food_whose_tested_process_asks_for_acid_is_of_that_class() -> None:
    """The class in foods.csv and the column in process.csv say the same."""
    rows = load_processes()
    for food in load_tables().foods:
        asked = [row.acidify for row in rows if name_key(food.name) in row.names]
        sour = food.acidity is Acidity.ACID
        adds = any(re.search("lemon|citric|lime|vinegar", one) for one in asked) and not sour
        assert (ACID_ADDED in food.classes) is adds, food.name


def test_a_process_that_was_not_recorded_is_a_standing_reason_unless_it_is_in_doubt() -> None:
    assert not_checked(batch(Method.PRESSURE)) == (NOT_CHECKED,)
    assert not_checked(replace(batch(Method.PRESSURE), doubt=("too short",))) == ()
    full = batch(Method.PRESSURE, minutes="20", psi="11", altitude="unknown")
    assert not_checked(full) == (NO_ALTITUDE,)
    assert not_checked(batch(Method.DRIED)) == ()


def test_a_lid_that_never_sealed() -> None:
    seen = Seen(MADE, "Unsealed within a day of canning", Verdict.EAT_SOON)
    box = Container("b.1", "b", 1, State.SEALED, "larder", (), signs=(seen,))
    assert unsealed(batch(Method.JAM), box)
    assert not unsealed(batch(Method.FROZEN), box)
    later = replace(box, signs=(Seen(MADE, "unsealed later", Verdict.DO_NOT_TASTE),))
    assert not unsealed(batch(Method.JAM), later)


# -- saved within a day ----------------------------------------------------------------------------

START = MADE.toordinal() * DAY_MIN


def span(begin: float, end: float | None, climate: Climate, **more: object) -> Span:
    """Hours from midnight of the day made; None has no end yet."""
    first = START + round(begin * 60)
    last = FOREVER if end is None else START + round(end * 60)
    day = MADE + timedelta(days=int(begin // 24))
    plain = Span(first, last, day, "p", climate, 40.0, True, False, False, None, False,
                 False, True)  # fmt: skip
    return plain._replace(**more)  # type: ignore[arg-type]


ROOM, FRIDGE, FREEZER = Climate.ROOM, Climate.FRIDGE, Climate.FREEZER


@pytest.mark.parametrize(
    ("spans", "saved"),
    [
        ([span(10, 20, ROOM), span(20, None, FRIDGE)], True),
        ([span(10, None, FRIDGE)], True),
        ([span(10, 34, ROOM), span(34, None, FRIDGE)], True),
        ([span(10, 34.1, ROOM), span(34.1, None, FRIDGE)], False),
        ([span(0, 12, ROOM), span(12, 50, FRIDGE), span(50, None, FREEZER)], True),
        ([span(10, None, ROOM)], False),
        ([span(10, 20, ROOM), span(20, 30, FRIDGE), span(30, None, ROOM)], False),
        ([span(10, 20, ROOM), span(20, None, FRIDGE), span(20, 25, ROOM)], False),
        ([span(10, 20, ROOM), span(20, None, FRIDGE), span(20, 20, ROOM)], True),
        ([span(10, None, ROOM), span(20, None, FRIDGE)], False),
        # Made on one day, in the cold on the day after the next.
        ([span(48.5, None, FRIDGE)], False),
    ],
)
def test_a_doubtful_jar_is_saved_by_the_cold_within_a_day_and_while_it_stays(
    spans: list[Span], saved: bool
) -> None:
    """USDA AIB 539, as the services repeat it: 24 hours."""
    assert (rescued(batch(Method.PRESSURE), spans, BOOK) is not None) is saved
    assert rescued(replace(batch(Method.PRESSURE), made=None), spans, BOOK) is None


def test_once_saved_it_is_an_opened_jar_since_the_day_it_was_made() -> None:
    spans = [
        span(10, 11, ROOM, in_progress=True),
        span(11, 20, ROOM),
        span(20, 50, FRIDGE),
        span(50, None, FREEZER),
    ]
    found = rescued(batch(Method.PRESSURE), spans, BOOK)
    assert found is not None
    assert [(one.climate, one.opened, one.day) for one in found] == [
        (ROOM, False, MADE), (FRIDGE, True, MADE), (FREEZER, True, MADE + timedelta(days=2)),
    ]  # fmt: skip
    begun = [span(10, 20, ROOM, opened=True), span(20, None, FRIDGE)]
    kept = rescued(batch(Method.PRESSURE), begun, BOOK)
    assert kept is not None
    assert [one.opened for one in kept] == [True, True]


@pytest.mark.parametrize(
    ("food", "size", "hurts"),
    [
        ("carrots", "bag", False), ("mushrooms", "tray", False), ("carrots", "jar", True),
        ("mushrooms", "jar", True), ("carrots", "tin", True), ("beets", "pouch", True),
        ("snap beans", "jar", True), ("dry beans", "jar", True), ("dry beans", "bag", False),
        ("peaches", "jar", False), ("lettuces", "bag", True), ("cantaloupes", "tray", True),
    ],
)  # fmt: skip
def test_bought_crops_that_were_cut_are_no_more_harmless_than_whole_ones(
    food: str, size: str, hurts: bool
) -> None:
    """A jar of sliced mushrooms was shut off from the air like one of whole ones."""
    for prepared in ("sliced", "shelled", "peeled"):
        pack = Batch(
            "b", "2A", facts_of(food), Method.BOUGHT, MADE, size, (("prepared", prepared),)
        )
        assert can_hurt(pack) is hurts

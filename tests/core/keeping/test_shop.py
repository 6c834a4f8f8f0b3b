"""What stands for bought food: the date on its pack, published days, or nothing; and where."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.cases import Said
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.keeping.shop import Shop
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.warmth import Life
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import MADE, facts_of

BOOK = load_tables().book
SEALED, OPEN, THAWED = State.SEALED, State.OPEN, State.THAWED
#: Neither dry nor able to hurt: a sauce safe by its acid.
SAUCE = FoodFacts("something", Group.RELISH, Acidity.ACID)


def shop(
    food: str | FoodFacts, size: str = "", method: Method = Method.BOUGHT, **process: str
) -> Shop:
    facts = facts_of(food) if isinstance(food, str) else food
    return Shop(Batch("b", "2A", facts, method, MADE, size, tuple(process.items())), BOOK)


def printed(one: Shop, days: int = 9) -> Shop:
    return Shop(replace(one.batch, printed=MADE + timedelta(days)), BOOK)


def place(climate: Climate, warm: float) -> Span:
    return Span(
        0, 1000, MADE, "place", climate, warm, False, False, False, None, False, False, False
    )


LARDER, FRIDGE = place(Climate.PANTRY, 60.0), place(Climate.FRIDGE, 38.0)
FREEZER = place(Climate.FREEZER, 0.0)


def rule(food: str, kind: Kind = Kind.SAFETY) -> Rule:
    return Rule(
        "own", Method.BOUGHT, food, SEALED, frozenset({Climate.FRIDGE}), kind, 7, 7, 7, "days",
        None, Status.CURRENT, "As published.", "typed", Trust.READ,
    )  # fmt: skip


NOTHING = Said([], None, (), None, (), None, False, None, False, None)
COVERED = replace(NOTHING, covered=True)
WIDE = replace(NOTHING, wide=Life(rule("something", Kind.QUALITY)))
REFUSED = replace(NOTHING, refusal=rule("something", Kind.REFUSE))


def days_of(one: Shop) -> Said:
    return replace(WIDE, safety=(rule(one.batch.food.name),))


# -- where it may stand ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("one", "state", "stands"),
    [
        (shop("tuna", "tin"), SEALED, True), (shop("tuna", "tin"), OPEN, False),
        (shop("pesto", "jar"), SEALED, True), (shop("pesto", "jar"), OPEN, False),
        (shop("hummus", "tub"), SEALED, False), (shop("tuna", "tin"), THAWED, False),
        # The table for power cuts keeps butter out of the cold (foodsafety.gov), if it was bought.
        (shop("butter", "pack"), SEALED, True), (shop("butter", "pack"), OPEN, True),
        (shop("butter", "pack", Method.FRESH), SEALED, False),
        (shop("carrots", "bag", Method.FRESH), SEALED, False),
    ],
)  # fmt: skip
def test_whether_it_may_stand_out_of_the_cold(one: Shop, state: State, stands: bool) -> None:
    assert one.stands(LARDER, state) is stands
    assert one.stands(FRIDGE, state) is one.stands(FREEZER, state) is False
    rules = [rule("something", Kind.REFUSE), rule("something", Kind.QUALITY)]
    said = replace(NOTHING, found=rules)
    assert one.found(LARDER, state, said) == (rules[1:] if stands else rules)
    assert one.found(FRIDGE, state, said) == rules


@pytest.mark.parametrize(
    ("one", "perhaps"),
    [
        # A bag of carrots may be of cut ones, a jar of beets was perhaps sold cold.
        (shop("carrots", "bag"), True), (shop("beets", "jar"), True), (shop("rice", "bag"), True),
        (shop("carrots", "bag", sold="shelf"), False), (shop("carrots", "tin"), False),
        (shop("carrots", "bag", sold="SHELF"), False), (shop("spices", "bag"), False),
        (shop("honey", "jar"), False), (shop("pasta", "bag"), False), (shop("tuna", "tin"), False),
    ],
)  # fmt: skip
def test_a_shut_pack_on_a_shelf_is_held_cold_only_where_it_may_have_been_sold_so(
    one: Shop, perhaps: bool
) -> None:
    assert one.held_cold(FRIDGE, SEALED) is perhaps
    assert one.held_cold(LARDER, SEALED) is False


@pytest.mark.parametrize(
    ("one", "state", "larder"),
    [
        (shop("tuna", "tin"), OPEN, True), (shop("honey", "jar"), OPEN, False),
        (shop("hummus", "tub"), SEALED, True), (shop("hummus", "tub"), OPEN, True),
        (shop("pesto", "jar"), SEALED, False), (shop("pesto", "jar"), OPEN, True),
        (shop("lasagne", "", Method.MEAL), OPEN, False),
    ],
)  # fmt: skip
def test_what_is_kept_cold_or_was_opened_is_held_cold(
    one: Shop, state: State, larder: bool
) -> None:
    assert one.held_cold(LARDER, state) is larder
    assert one.held_cold(FRIDGE, state) is True


@pytest.mark.parametrize(
    ("one", "shut", "opened"),
    [
        (shop("hummus", "tub"), True, True), (shop("pesto", "jar"), False, True),
        (shop("tuna", "tin"), False, False), (shop("lasagne", "", Method.MEAL), False, False),
    ],
)  # fmt: skip
def test_what_has_two_hours_without_a_row_of_its_own(one: Shop, shut: bool, opened: bool) -> None:
    assert one.moist(SEALED) is shut
    assert one.moist(OPEN) is one.moist(THAWED) is opened


@pytest.mark.parametrize(
    ("one", "method"),
    [
        # Figures for raw and cooked food do not reach what stands on a shop's shelf.
        (shop("milk"), Method.FRESH), (shop("shelf-stable milk"), Method.BOUGHT),
        (shop("lasagne"), Method.MEAL), (shop("lasagne", "jar", sold="shelf"), Method.BOUGHT),
        (shop("tuna", "tin"), Method.PRESSURE), (shop("carrots", "bag"), Method.BOUGHT),
    ],
)  # fmt: skip
def test_whose_figures_speak_for_it(one: Shop, method: Method) -> None:
    assert one.method is method


@pytest.mark.parametrize(
    ("one", "heard"),
    [
        (shop("tuna", "tin"), (Method.BOUGHT, Method.FRESH)), (shop("carrots", "bag"), ()),
        (shop("carrots", "tin"), (Method.BOUGHT,)), (shop("shelf-stable milk"), (Method.FRESH,)),
        (shop("carrots", "jar", prepared="sliced"), (Method.BOUGHT,)),
        (shop("carrots", "bag", sold="shelf", vacuum="yes"), (Method.FRESH,)),
        (shop("lasagne"), (Method.BOUGHT,)), (shop("carrots", "bag", Method.FRESH), ()),
        (shop("tuna", "tin", Method.PRESSURE), ()),
    ],
)  # fmt: skip
def test_a_household_s_own_rule_is_heard_by_whatever_method_it_was_booked(
    one: Shop, heard: tuple[Method, ...]
) -> None:
    """By the food alone, whatever its pack, and never the method that speaks for it anyway."""
    assert one.heard == heard


# -- what stands for it ----------------------------------------------------------------------------


def test_nothing_stands_for_a_shut_pack_of_which_nobody_said_that_it_stood_on_a_shelf() -> None:
    for one in (shop("pesto", "jar"), shop("hummus", "tub")):
        for said in (COVERED, WIDE, days_of(one)):
            assert printed(one).speaks(LARDER, SEALED, said) is False
            assert one.speaks(LARDER, OPEN, days_of(one)) is True
    assert shop("pesto", "jar", sold="shelf").speaks(LARDER, SEALED, COVERED) is True


def test_of_what_cannot_hurt_any_figure_speaks() -> None:
    one = shop(SAUCE, "jar")
    assert not one.hurts
    for state in (SEALED, OPEN):
        for span in (LARDER, FRIDGE):
            assert one.speaks(span, state, NOTHING) is False
            assert one.speaks(span, state, COVERED) is True
            assert one.speaks(span, state, REFUSED) is True
            assert printed(one).speaks(span, state, NOTHING) is (state is SEALED)
            assert one.speaks(span, state, WIDE) is True, "a jar of a shelf, put by in the cold too"
    bag = shop(SAUCE, "bag")
    assert [bag.speaks(span, SEALED, WIDE) for span in (LARDER, FRIDGE)] == [True, False]
    assert bag.speaks(FRIDGE, OPEN, WIDE) is True, "its days once it is open are published"


def test_a_maker_says_nothing_of_a_tin_that_froze() -> None:
    one = printed(shop("tuna", "tin"))
    assert one.speaks(LARDER, SEALED, NOTHING) is True
    assert one.speaks(FREEZER, SEALED, days_of(one)) is False


def test_a_date_alone_is_believed_as_a_use_by_or_while_it_is_frozen() -> None:
    tub = shop("hummus", "tub")
    assert printed(tub).speaks(FRIDGE, SEALED, NOTHING) is False
    assert printed(tub).speaks(FREEZER, SEALED, NOTHING) is True
    assert tub.speaks(FREEZER, SEALED, NOTHING) is False
    dated = printed(shop("hummus", "tub", dated="use-by"))
    assert dated.speaks(FRIDGE, SEALED, NOTHING) is True
    assert dated.speaks(FRIDGE, OPEN, NOTHING) is False


def test_published_days_speak_for_what_can_hurt() -> None:
    one = shop("hummus", "tub")
    for state in (SEALED, OPEN, THAWED):
        assert one.speaks(FRIDGE, state, days_of(one)) is True
        assert one.speaks(FRIDGE, state, COVERED) is False


@pytest.mark.parametrize(
    ("one", "shelf"),
    [
        (shop("tuna", "tin"), True), (shop("tuna", "tin", vacuum="yes"), True),
        (shop("carrots", "bag", sold="shelf", vacuum="yes"), False),
        (shop("pesto", "jar", sold="shelf"), True),
    ],
)  # fmt: skip
def test_a_shut_pack_on_a_shelf_is_safe_while_it_is_whole(one: Shop, shelf: bool) -> None:
    """USDA FSIS, Shelf-Stable Food Safety: how good it is, is all that is published. What is low
    in acid and without air has no figure for a loose pack."""
    assert one.hurts
    assert one.speaks(LARDER, SEALED, COVERED) is shelf
    assert one.speaks(FRIDGE, SEALED, COVERED) is shelf
    assert one.speaks(LARDER, SEALED, WIDE) is shelf
    assert one.speaks(FRIDGE, SEALED, WIDE) is shelf, "it keeps no shorter where it is cooler"
    assert one.speaks(LARDER, SEALED, NOTHING) is False


def test_what_a_power_cut_does_not_harm_is_not_said_to_keep_open_out_of_the_cold() -> None:
    """foodsafety.gov keeps jam, pickles and olives after a cut; nobody says how long they stand."""
    for food in ("marmalades", "dill pickles", "olives"):
        for size in ("jar", "tin"):
            one = shop(food, size)
            assert one.stands(LARDER, OPEN)
            assert one.speaks(LARDER, OPEN, REFUSED) is False
            assert one.speaks(LARDER, OPEN, replace(REFUSED, covered=True)) is False
            assert one.speaks(FRIDGE, OPEN, COVERED) is True


def test_what_is_sold_as_a_powder_stands_where_its_open_pack_has_months() -> None:
    for food, size in (("powdered milk", "tin"), ("powdered milk", "bag"), ("soup mix", "packet"),
                       ("coffee creamer", "jar")):  # fmt: skip
        one = shop(food, size)
        assert one.stands(LARDER, OPEN), food
        assert one.speaks(LARDER, OPEN, WIDE) is True
        assert one.speaks(LARDER, OPEN, NOTHING) is one.stands(FRIDGE, OPEN) is False
    for food, size in (
        ("evaporated milk", "tin"), ("milk", "carton"), ("canned soup", "tin"),
        ("vegetables in oil", "jar"),
        ("infant formula", "tin"), ("mayonnaise", "jar"), ("dried mushrooms", "jar"),
    ):  # fmt: skip
        assert not shop(food, size, sold="shelf").stands(LARDER, OPEN), food
    assert not Shop(replace(shop("powdered milk", "box").batch, carried=True), BOOK).stands(
        LARDER, OPEN
    ), "what a household packed anew may be anything"


def test_the_days_of_just_this_food_end_it_before_the_longer_ones_of_its_class() -> None:
    baby = shop("baby food", "jar", sold="shelf")
    of_class = replace(rule("class:canned-low"), use=9)
    assert list(baby.last_days(OPEN, replace(WIDE, safety=(of_class,)))) == [
        rule("something", Kind.QUALITY)
    ]
    shorter = replace(of_class, use=6)
    assert list(baby.last_days(OPEN, replace(WIDE, safety=(shorter,)))) == []


def test_the_days_of_an_opened_pack_are_its_end_where_they_are_all_that_is_published() -> None:
    one = shop("pesto", "jar")
    assert list(one.last_days(OPEN, WIDE)) == [rule("something", Kind.QUALITY)]
    assert one.speaks(FRIDGE, OPEN, WIDE) is True
    for state, said in (
        (SEALED, WIDE), (THAWED, WIDE), (OPEN, NOTHING), (OPEN, days_of(one)),
    ):  # fmt: skip
        assert list(one.last_days(state, said)) == []
    assert one.speaks(FRIDGE, THAWED, WIDE) is one.speaks(FRIDGE, OPEN, NOTHING) is False
    assert list(shop(SAUCE, "jar").last_days(OPEN, WIDE)) == []
    assert list(shop("pesto", "jar", Method.MEAL).last_days(OPEN, WIDE)) == []


@pytest.mark.parametrize("food", ["pasta", "rice", "dry beans"])
def test_dry_goods_do_not_perish_once_they_are_open(food: str) -> None:
    bag = shop(food, "bag")
    for span in (LARDER, FRIDGE):
        assert bag.speaks(span, OPEN, WIDE) is True
        assert bag.speaks(span, OPEN, NOTHING) is bag.speaks(span, THAWED, WIDE) is False
    assert bag.speaks(LARDER, SEALED, WIDE) is True
    assert bag.speaks(FRIDGE, SEALED, WIDE) is False
    assert list(bag.last_days(OPEN, WIDE)) == []


def test_of_cooked_beans_and_rice_the_days_of_dry_ones_do_not_speak() -> None:
    for wet in (shop("dry beans", "jar"), shop("dry beans", "jar", prepared="shelled"),
                shop("rice", "pouch")):  # fmt: skip
        assert wet.hurts
        assert list(wet.last_days(OPEN, WIDE)) == []
        assert wet.speaks(FRIDGE, OPEN, WIDE) is wet.speaks(LARDER, OPEN, WIDE) is False


@pytest.mark.parametrize(
    ("one", "ends"),
    [
        # Low in acid and in oil, or fish that only salt keeps: a shut pack without a date.
        (shop("garlic in oil", "jar"), True), (shop("anchovies", "jar"), True),
        (shop("anchovy paste", "jar", sold="shelf"), True),
        (printed(shop("garlic in oil", "jar")), False), (shop("anchovies", "tin"), False),
        (shop("anchovy paste", "jar"), False), (shop("pesto", "jar", sold="shelf"), False),
        (shop("tuna", "tin"), False),
    ],
)  # fmt: skip
def test_a_shut_pack_without_a_date_ends_with_its_days_where_only_oil_or_salt_keeps_it(
    one: Shop, ends: bool
) -> None:
    assert bool(list(one.last_days(SEALED, WIDE))) is ends
    assert list(one.last_days(SEALED, NOTHING)) == list(one.last_days(SEALED, days_of(one))) == []
    assert list(one.last_days(THAWED, WIDE)) == []


def test_nothing_of_a_shop_is_asked_of_what_was_put_up_at_home() -> None:
    own = shop("hummus", "tub", Method.FRESH)
    assert own.speaks(LARDER, SEALED, WIDE) is False
    assert Shop(own.batch, Rulebook({})).stands(LARDER, SEALED) is False

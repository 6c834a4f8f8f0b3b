"""How a sum is read, and what a batch keeps of it."""

from __future__ import annotations

import json

import pytest

from pantry_tui.core.safety.record import read_details
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.calc import ALSO, KINDS, reckon, record
from pantry_tui.services.batchwork.calc.answer import Answer
from pantry_tui.services.batchwork.calc.sentence import Sentence
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry


def asked(
    kind: str, typed: str, altitude_ft: int | None = None, people: int | None = None
) -> Answer:
    return reckon(load_tables(), kind, typed, altitude_ft, people)


@pytest.mark.parametrize(
    ("typed", "grams"),
    [
        ("500 g", 500), ("0.5 kg", 500), ("1/2 kg", 500), ("½ kg", 500), ("1 1/2 kg", 1500),
        ("1½ kg", 1500), ("1 lb", 453.59237), ("16 ounces", 453.59237), ("1 stone", 6350.29318),
        ("1,000 g", 1000), ("2 kilos", 2000),
    ],
)  # fmt: skip
def test_weights_of_any_kitchen(typed: str, grams: float) -> None:
    found = Sentence(typed).weight()
    assert found is not None
    assert found.base == pytest.approx(grams)


@pytest.mark.parametrize(
    ("typed", "ml"),
    [
        ("1 l", 1000), ("5 dl", 500), ("33 cl", 330), ("1 cup", 236.588), ("1 metric cup", 250),
        ("1 pint", 473.176), ("1 uk pint", 568.261), ("1 imperial pint", 568.261),
        ("1 quart", 946.353), ("1 gallon", 3785.41), ("2 tbsp", 29.5735), ("3 teaspoons", 14.78676),
        ("8 fl oz", 236.588), ("1 uk gallon", 4546.09),
    ],
)  # fmt: skip
def test_volumes_of_any_kitchen(typed: str, ml: float) -> None:
    found = Sentence(typed).amount()
    assert found is not None
    assert found.base == pytest.approx(ml, rel=1e-5)


def test_the_order_of_words_is_free() -> None:
    for typed in ("500 g water 3 %", "3 % in 500 g water", "water 500g, 3%", "3 percent 500 g"):
        assert asked("brine", typed).first.answer == 15, typed


@pytest.mark.parametrize(
    "typed",
    ["1,5 l water 3 %", "1/0 l water 3 %", "500 g water", "3 %", "500 g water 3 % 7 days 2 ft",
     "500 g water 3 % moon cheese", "500 g water 0 %", "", "9000000 kg water 3 %"],
)  # fmt: skip
def test_what_cannot_be_read_is_asked_about(typed: str) -> None:
    with pytest.raises(BadInput) as told:
        asked("brine", typed)
    assert told.value.message.endswith(".")


def test_a_basket_without_a_published_weight_is_asked_by_the_pound() -> None:
    with pytest.raises(BadInput, match="give pounds"):
        asked("yield", "1 bushel rhubarb")


def test_other_words_mean_the_same_sums() -> None:
    assert set(ALSO.values()) <= set(KINDS)
    assert asked("dry-salt", "1 kg cabbage") == asked("drysalt", "1 kg cabbage")
    with pytest.raises(BadInput, match="no sum"):
        asked("alchemy", "1 kg lead")


@pytest.mark.parametrize("kind", KINDS)
def test_every_example_is_answered_with_formula_and_source(kind: str) -> None:
    found = asked(kind, KINDS[kind][2])
    assert found.first.answer is not None
    assert found.first.formula
    assert found.first.source
    json.dumps(found.as_data())


def test_the_altitude_of_the_household_counts_where_none_is_typed() -> None:
    assert asked("blanching", "snap beans", 5500).first.answer == 4
    assert asked("blanching", "snap beans 100ft", 5500).first.answer == 3
    assert "Altitude not said" in asked("blanching", "snap beans").notes[0]
    at_home = asked("boil", "", 5000).first.answer
    assert at_home == asked("boil", "5000ft").first.answer
    assert at_home != asked("boil", "0ft").first.answer


def test_packs_are_for_those_at_table() -> None:
    def packs(people: int) -> object:
        return asked("packs", "12 lb broccoli", people=people).first.answer

    assert (packs(2), packs(4), packs(8)) == (24, 12, 6)


def test_garlic_in_spirit_is_refused() -> None:
    with pytest.raises(Refused, match="low-acid"):
        asked("infusion", "500 ml 40 % 100 g garlic")


def test_a_cure_of_another_strength_has_no_table() -> None:
    with pytest.raises(Refused, match=r"6\.25"):
        asked("cure", "5 lb ground pork 10 %")
    too_much = asked("cure", "2 oz cure 5 lb ground pork")
    assert too_much.first.unit == "ppm"
    assert "do not use it" in too_much.cautions[0]


@pytest.mark.parametrize("kind", KINDS)
def test_what_a_batch_may_keep_is_a_record_that_is_understood(kind: str) -> None:
    found = asked(kind, KINDS[kind][2])
    assert read_details(found.record.items()).problems == ()


def test_a_sum_becomes_the_record_of_its_batch(larder: Pantry) -> None:
    made = put_up(larder, read(larder, "1 crock sauerkraut, lactic ferment, larder"))
    record(larder, made.code, asked("drysalt", "5 lb cabbage"))
    batch = next(iter(larder.stock.batches.values()))
    assert dict(batch.process)["salt"] == "2.25%"
    with pytest.raises(Refused, match="record"):
        record(larder, made.code, asked("boil", "0ft"))


@pytest.mark.parametrize(
    ("kind", "metric", "same"),
    [
        ("syrup", "light 7 1-litre jars", "light 7 quart jars"),
        ("syrup", "light 9 500 ml jars", "light 9 pint jars"),
        ("headspace", "jam 1 litre", "jam quart"),
        ("headspace", "plums 500 ml", "plums pint"),
        ("headspace", "freezing 500 ml wide mouth", "freezing pint wide mouth"),
    ],
)
def test_a_metric_jar_takes_the_figure_of_the_one_it_stands_for(
    kind: str, metric: str, same: str
) -> None:
    assert asked(kind, metric) == asked(kind, same)


@pytest.mark.parametrize(
    ("kind", "typed"), [("headspace", "jam 2 l"), ("syrup", "light 2 2 l jars")]
)
def test_a_jar_larger_than_any_in_the_tables_is_said(kind: str, typed: str) -> None:
    with pytest.raises(BadInput, match="larger than any"):
        asked(kind, typed)

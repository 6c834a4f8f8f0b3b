"""Canning processes against the publications; the figures stand in tests/published/processes."""

from __future__ import annotations

import csv
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.errors import BadInput, DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.process import read_not_recommended, read_processes
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.process import process
from tests.published.processes import Band, bands, by_other_names


def lines() -> Iterator[tuple[str, ...]]:
    for publication, block in by_other_names.TYPED.items():
        for line in block.strip().splitlines():
            yield (publication, *(part.strip() for part in line.split("|")))


def asked(food: str, jar: str, canner: str, pack: str | None = None, ft: int = 0) -> dict[str, Any]:
    return process(load_tables(), food, jar, canner, pack, ft)


@pytest.mark.parametrize(
    ("publication", "food", "pack", "jar", "canner", "ft", "minutes", "psi"), list(lines())
)
def test_the_process_is_the_published_one(
    publication: str, food: str, pack: str, jar: str, canner: str, ft: str, minutes: str, psi: str
) -> None:
    said = asked(food, jar, canner, pack, int(ft))
    assert said["answer"] == "process", (publication, said["reasons"])
    pressure = None if psi == "-" else int(psi)
    assert (said["minutes"], said["psi"]) == (int(minutes), pressure), said["options"]
    assert said["sources"]
    assert said["options"]
    assert said["reasons"]


BANDS = list(bands())


@pytest.mark.parametrize(
    "band", BANDS, ids=lambda b: f"{b.food}-{b.pack}-{b.jar}-{b.canner}-{b.low}"
)
def test_a_band_holds_from_edge_to_edge(band: Band) -> None:
    """1,000 ft is of the lower band, 1,001 of the higher; all pairs and no other are offered."""
    for ft in (band.low, band.high if band.high is not None else band.low + 1500):
        said = asked(band.food, band.jar, band.canner, band.pack, ft)
        assert said["answer"] == "process", (band.publication, said["reasons"])
        offered = {(one["minutes"], one["psi"]) for one in said["options"]}
        assert offered == band.pairs, (band.publication, ft)
        assert (said["minutes"] is None) == (len(band.pairs) > 1)
        assert (said["psi"] is None) == (band.canner == "boiling-water" or len(band.pairs) > 1)


def test_no_dial_band_is_published_above_8000_feet() -> None:
    for band in BANDS:
        if band.canner == "dial" and band.high == 8000:
            said = asked(band.food, band.jar, band.canner, band.pack, 8001)
            assert said["answer"] == "not published", band


def test_times_of_one_pair_never_go_with_the_pressure_of_another() -> None:
    several = [band for band in BANDS if len(band.pairs) > 1]
    assert len(several) >= 60
    for band in several:
        said = asked(band.food, band.jar, band.canner, band.pack, band.low)
        mixed = {(m, p) for m, _ in band.pairs for _, p in band.pairs} - band.pairs
        assert not mixed & {(one["minutes"], one["psi"]) for one in said["options"]}
        assert "lemon juice" in said["acidify"]


def test_enough_is_checked() -> None:
    assert sum(len(band.pairs) for band in BANDS) >= 1000
    assert len({band.food for band in BANDS}) >= 75


def test_without_a_pack_packs_of_one_process_are_one_answer() -> None:
    said = asked("runner beans", "quart", "dial", None, 1800)
    assert (said["minutes"], said["psi"], said["headspace_in"]) == (25, 11, 1.0)
    assert [one["pack"] for one in said["options"]] == ["hot or raw"]
    assert said["acidify"] is None


def test_several_forms_are_all_shown_and_none_is_chosen() -> None:
    said = asked("tomatoes", "pint", "boiling-water")
    assert said["minutes"] is None
    assert {one["minutes"] for one in said["options"]} == {40, 85}


def test_tomatoes_and_figs_are_acidified() -> None:
    """USDA AIB 539: per pint 1 Tbsp bottled lemon juice or 1/4 tsp citric acid, quart twice."""
    pint = asked("crushed tomatoes", "pint", "boiling-water")["acidify"]
    assert pint == "1 Tbsp bottled lemon juice or 1/4 tsp citric acid"
    for food in ("crushed tomatoes", "figs"):
        quart = asked(food, "quart", "boiling-water")["acidify"]
        assert quart == "2 Tbsp bottled lemon juice or 1/2 tsp citric acid"


#: USDA's dial tables end at 8,000 ft (PNW 421); jars, packs and canners that no table holds; and
#: what was recalled and never read, which is told and is no answer.
NOT_PUBLISHED = [
    ("runner beans", "pint", "dial", None, 8001), ("carrots", "quart", "dial", "hot", 9000),
    ("salmon", "pint", "dial", "raw", 8001), ("peaches", "quart", "dial", "hot", 10_000),
    ("tomato sauce", "pint", "dial", None, 8001), ("tuna", "pint", "dial", "hot", 8001),
    ("turkeys", "pint", "dial", None, 8001), ("citrus sections", "pint", "dial", "raw", 8001),
    ("apples", "quart", "boiling-water", "hot", 10_001),
    ("mushrooms", "quart", "dial", None, 0), ("peppers", "quart", "weighted", None, 0),
    ("chili con carne", "quart", "dial", None, 0), ("tuna", "quart", "dial", None, 0),
    ("cream style corn", "quart", "dial", None, 0), ("smoked salmon", "quart", "weighted", None, 0),
    ("peaches", "half-gallon", "boiling-water", None, 0),
    ("beets", "pint", "dial", "raw", 0),
    ("pears", "pint", "boiling-water", "raw", 0), ("ground beef", "pint", "dial", "raw", 0),
    ("citrus sections", "pint", "boiling-water", "hot", 0),
    ("blueberry pie filling", "pint", "boiling-water", "raw", 0),
    ("tomatillos", "pint", "dial", None, 0), ("grape jelly", "quart", "boiling-water", None, 0),
    ("figs", "pint", "dial", None, 0), ("strawberries", "pint", "boiling-water", None, 0),
    ("cod", "pint", "dial", None, 0),
    # Recalled, no text found (crushed tomatoes A and C, fish in quarts, choice salsa higher up ...)
    ("salmon", "quart", "dial", "raw", 0), ("salmon", "quart", "weighted", "raw", 1001),
    ("trout", "quart", "dial", "raw", 4000), ("smoked salmon", "pint", "dial", "raw", 0),
    ("smoked trout", "pint", "dial", "raw", 8000), ("crushed tomatoes", "quart", "dial", "hot", 0),
    ("crushed tomatoes", "quart", "dial", "hot", 6001),
    ("choice salsa", "pint", "boiling-water", "hot", 1001),
    ("choice salsa", "half-pint", "boiling-water", "hot", 6001),
    ("tomato paste salsa", "pint", "boiling-water", "hot", 0),
    ("jelly without added pectin", "pint", "boiling-water", "hot", 0),
    ("dilly beans", "pint", "boiling-water", "raw", 0),
    ("three-bean salad", "pint", "boiling-water", "hot", 1000),
    ("sauerkraut", "pint", "boiling-water", "hot", 1001),
    ("sauerkraut", "quart", "boiling-water", "raw", 6001),
    # Stock of chicken or turkey, and of beef, is published, and of no other meat or vegetable.
    *((food, jar, canner, None, 0)
      for food in ("ham stock", "pork stock", "lamb stock", "ham broth", "venison broth",
                   "duck stock", "rabbit stock", "fish stock", "vegetable stock")
      for jar in ("pint", "quart") for canner in ("dial", "weighted")),
]  # fmt: skip


@pytest.mark.parametrize(("food", "jar", "canner", "pack", "ft"), NOT_PUBLISHED)
def test_what_no_table_holds_is_not_published(
    food: str, jar: str, canner: str, pack: str | None, ft: int
) -> None:
    said = asked(food, jar, canner, pack, ft)
    assert said["answer"] == "not published"
    assert said["minutes"] is None
    assert said["psi"] is None
    assert said["options"] == []
    assert said["reasons"]


def test_tomatoes_in_juice_are_no_tomato_juice() -> None:
    """USDA AIB 539: a quart of tomatoes in juice takes 85 minutes, one of tomato juice 40."""
    whole = "Tomatoes, whole or halved, packed in tomato juice"
    for food in ("tomatoes in juice", whole, "halved tomatoes in juice"):
        assert asked(food, "quart", "boiling-water", "hot")["minutes"] == 85
    with pytest.raises(BadInput):
        asked("green tomatoes in juice", "quart", "boiling-water")


#: No text of these was found: food, jar, canner, pack, feet, minutes.
RECALLED = [
    ("smoked salmon", "pint", "dial", "raw", 0, 110), ("salmon", "quart", "dial", "raw", 0, 160),
    ("dilly beans", "pint", "boiling-water", "raw", 0, 5),
    ("choice salsa", "pint", "boiling-water", "hot", 1001, 20),
    ("crushed tomatoes", "quart", "dial", "hot", 0, 20),
    ("crushed tomatoes", "pint", "dial", "hot", 0, 15),
    ("tomato juice", "pint", "weighted", "hot", 0, 10),
]  # fmt: skip


@pytest.mark.parametrize(("food", "jar", "canner", "pack", "ft", "minutes"), RECALLED)
def test_a_recalled_figure_is_told_as_recalled_and_is_no_answer(
    food: str, jar: str, canner: str, pack: str, ft: int, minutes: int
) -> None:
    said = asked(food, jar, canner, pack, ft)
    assert any("Recalled" in one and f"{minutes} minutes" in one for one in said["reasons"])
    assert minutes not in {one["minutes"] for one in said["options"]}


REFUSED = {
    "K-State Research and Extension 2016, preserving pumpkin": ["pumpkin butter", "mashed pumpkin"],
    "Penn State Extension, mashed squash": ["mashed squash", "pureed squash", "squash puree"],
    "NCHFP, Preserving Food at Home": ["squash butter"],
    "Clemson Extension, summer squash": ["summer squash", "zucchini"],
    "University of Missouri Extension HES134": ["broccoli", "cauliflower"],
    "K-State Research and Extension 2019, preserving garlic": ["garlic"],
    "NCHFP, garlic in oil (2015)": ["garlic in oil"],
    "NCHFP, questions on canning": ["pesto", "herb oil", "bread", "cakes"],
    "Penn State Extension and USDA, foods not to can": ["pickled eggs", "milk", "butter", "cheese",
                                                        "chicken noodle soup", "eggs"],
    "University of Missouri nutrition educators": ["mashed potatoes", "leftovers"],
    "MSU Extension 1997": ["mashed sweet potatoes", "wild mushrooms", "snow peas"],
    "University of Arkansas Extension": ["white peaches"],
    "University of Maine Cooperative Extension": ["white nectarines", "elderberries"],
    "UC Master Food Preservers, Solano": ["bananas", "melons", "persimmons"],
    "from memory, the stricter choice": ["lard", "refried beans", "peanut butter", "celery",
                                         "spaghetti squash", "coconut milk"],
}  # fmt: skip


@pytest.mark.parametrize("food", [food for foods in REFUSED.values() for food in foods])
@pytest.mark.parametrize("canner", ["boiling-water", "dial", "weighted"])
def test_what_publications_advise_against_is_refused(food: str, canner: str) -> None:
    said = asked(food, "pint", canner)
    assert said["answer"] == "refused"
    assert said["minutes"] is None
    assert said["options"] == []
    assert any("Instead" in one for one in said["reasons"])
    assert said["sources"]


@pytest.mark.parametrize(
    "food",
    ["runner beans", "carrots", "beets", "sweet corn", "beef", "salmon", "chicken stock", "tuna",
     "vegetable soup", "mixed vegetables", "succotash", "spaghetti sauce without meat", "okra",
     "smoked salmon", "baked beans", "cream style corn"],
)  # fmt: skip
def test_low_acid_food_in_boiling_water_is_refused(food: str) -> None:
    """USDA AIB 539: low-acid food is canned under pressure only."""
    said = asked(food, "pint", "boiling-water")
    assert said["answer"] == "refused"
    assert "low-acid" in said["reasons"][0]


@pytest.mark.parametrize(
    "canner",
    ["open kettle", "open-kettle", "oven", "microwave", "dishwasher", "inverted jars", "none"],
)
@pytest.mark.parametrize("food", ["peaches", "runner beans", "strawberry jam"])
def test_ways_that_are_no_process_are_refused(food: str, canner: str) -> None:
    """USDA AIB 539 on open kettle and oven; K-State Extension 2017 on inverted jars."""
    said = asked(food, "pint", canner)
    assert said["answer"] == "refused"
    assert said["reasons"]
    assert said["minutes"] is None


@pytest.mark.parametrize(
    ("food", "jar", "canner", "pack", "named"),
    [("peeches", "pint", "dial", None, "peaches"), ("peaches", "bucket", "dial", None, "half-pint"),
     ("peaches", "pint", "pressure", None, "weighted"), ("peaches", "pint", "dial", "loose", "raw"),
     ("peaches", "pint", "steam", None, "boiling-water")],
)  # fmt: skip
def test_what_is_not_understood_names_what_would_be(
    food: str, jar: str, canner: str, pack: str | None, named: str
) -> None:
    with pytest.raises(BadInput, match=named):
        asked(food, jar, canner, pack)


@pytest.mark.parametrize(
    ("file", "row", "column", "value"),
    [("process.csv", 3, "minutes", "soon"), ("process.csv", 3, "minutes", "0"),
     ("process.csv", 6, "psi", "7"), ("process.csv", 2, "psi", "11"),
     ("process.csv", 3, "altitude_min_ft", "900"), ("process.csv", 3, "foods", "moon cheese"),
     ("process.csv", 3, "jar", "bucket"), ("process.csv", 3, "source_id", "hearsay"),
     ("pressure.csv", 2, "gauge", "guess"), ("not_recommended.csv", 2, "reason", ""),
     ("not_recommended.csv", 2, "trust", "sure")],
)  # fmt: skip
def test_a_bad_cell_is_named(tmp_path: Path, file: str, row: int, column: str, value: str) -> None:
    folder = Path(shutil.copytree(data_dir(), tmp_path / "data"))
    with (folder / file).open(encoding="utf-8", newline="") as handle:
        cells = list(csv.reader(handle))
    cells[row - 1][cells[0].index(column)] = value
    with (folder / file).open("w", encoding="utf-8", newline="") as handle:
        csv.writer(handle).writerows(cells)
    read = read_not_recommended if file == "not_recommended.csv" else read_processes
    with pytest.raises(DataError, match=f"{file} row {row}, column {column}"):
        read(folder, load_tables())


def test_a_smaller_jar_says_whose_time_it_takes_and_a_larger_one_has_none() -> None:
    said = asked("peaches", "12 oz", "boiling-water", "hot")
    assert any("full time of a pint" in one for one in said["reasons"])
    own = asked("peaches", "pint", "boiling-water")["reasons"]
    assert not any("full time" in one for one in own)
    assert asked("mushrooms", "24 oz", "dial")["answer"] == "not published"
    assert asked("chili con carne", "24 oz", "dial")["answer"] == "not published"
    with pytest.raises(BadInput, match="larger than any"):
        asked("peaches", "2 gallon", "boiling-water")


@pytest.mark.parametrize(
    ("food", "jar", "canner", "ft", "instead"),
    [
        ("mushrooms", "pint", "dial", 8500, "weighted"),
        ("mushrooms", "quart", "dial", 0, "half-pint or pint jars"),
        ("carrots", "quart", "dial", 9000, "weighted"),
        ("salmon", "quart", "dial", 0, "half-pint or pint jars"),
        ("chili con carne", "quart", "weighted", 0, "pint jars"),
        ("strawberries", "pint", "boiling-water", 0, "freeze"),
        ("turnips", "pint", "dial", 0, "freeze"),
    ],
)
def test_what_is_not_published_names_what_is(
    food: str, jar: str, canner: str, ft: int, instead: str
) -> None:
    said = asked(food, jar, canner, None, ft)
    assert said["answer"] == "not published"
    assert any("Instead:" in one and instead in one for one in said["reasons"]), said["reasons"]


@pytest.mark.parametrize("way", ["oven", "open kettle", "dishwasher", "microwave", "multi-cooker"])
def test_a_refused_way_names_a_safe_one(way: str) -> None:
    said = asked("peaches", "pint", way)
    assert said["answer"] == "refused"
    assert any("Instead" in one for one in said["reasons"])


def test_physics_stands_beside_the_published_row_and_never_for_it() -> None:
    """USDA: 10 psi at the sea is about 240 F. Without a row there is no physics either."""
    said = asked("snap beans", "pint", "weighted", "hot", 0)
    assert (said["minutes"], said["psi"]) == (20, 10)
    assert any("10 psi" in one and "239 °F" in one for one in said["physics"])
    assert all(one.startswith("Physics, not a process") for one in said["physics"])
    assert asked("mushrooms", "pint", "dial", None, 8500)["physics"] == []
    assert asked("pumpkin butter", "pint", "dial")["physics"] == []


@pytest.mark.parametrize(
    "food",
    ["wild mushrooms", "cream soup", "refried beans", "canned bread", "rice soup",
     "thickened stew", "potato puree", "elderberries", "butter", "artichokes", "lettuces"],
)  # fmt: skip
def test_more_that_publications_advise_against(food: str) -> None:
    for canner in ("boiling-water", "dial"):
        said = asked(food, "pint", canner)
        assert said["answer"] == "refused", food
        assert any("Instead" in one for one in said["reasons"]), food

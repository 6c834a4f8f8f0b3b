"""A slip of the pen in the name of a food is asked about, and never makes another food of it."""

from __future__ import annotations

import pytest

from tests.services.batchwork.test_line import read


@pytest.mark.parametrize(
    ("line", "typed", "meant"),
    [
        ("3 jars dill pickels", "dill pickels", "dill pickles"),
        ("3 500 ml jars runer beans, pressure canned", "runer beans", "runner beans"),
        ("chicken soop, freezer, 2 tubs", "chicken soop", "chicken soup"),
        ("beef stok, 2 tubs, freezer", "beef stok", "beef stock"),
        ("leek powdr, 1 jar", "leek powdr", "leek powder"),
        ("mint jely, 2 jars", "mint jely", "mint jelly"),
        ("4 jars green toamto chutney", "green toamto chutney", "green tomato chutney"),
        ("3 jars aple butter", "aple butter", "apple butter"),
    ],
)  # fmt: skip
def test_a_slip_is_asked_about_and_makes_no_other_food(line: str, typed: str, meant: str) -> None:
    reading = read(line)
    assert reading.food == ""
    assert reading.unread == ()
    [ask] = [one for one in reading.asks if one.about == "food"]
    assert ask.typed == typed
    assert meant in ask.choices


def test_the_answer_to_the_question_is_read_without_another() -> None:
    for line in ("3 jars dill pickels", "chicken soop, freezer, 2 tubs"):
        [ask] = [one for one in read(line).asks if one.about == "food"]
        mended = read(line.replace(ask.typed, ask.choices[0]))
        assert mended.food == ask.choices[0]
        assert not [one for one in mended.asks if one.about == "food"]


def test_a_food_of_ones_own_may_look_like_another() -> None:
    reading = read("3 jars aple butter, group=relish, acidity=acid, pressure canned")
    assert reading.food == "aple butter"
    assert reading.asks == ()


@pytest.mark.parametrize("line", ["2 jars zorble jam", "6 bags peas, lovely, freezer"])
def test_what_is_near_to_no_food_stays_as_it_was(line: str) -> None:
    assert not [one for one in read(line).asks if one.about == "food"]


def test_a_slip_elsewhere_in_the_line_leaves_the_food_alone() -> None:
    """ "Cellard" is near to collard, and is no part of the name of the onions."""
    reading = read("onions on strings, 2, cellard")
    assert (reading.food, reading.unread) == ("onions", ("cellard",))


def test_a_low_acid_berry_makes_a_cordial_of_its_own() -> None:
    """Elderberries are low in acid (pH 4.7 to 5.2: data/foods.csv), so theirs is no common one."""
    assert read("elderberry cordial, 3 bottles").food == "elderberry cordial"
    assert read("raspberry cordial, 3 bottles").food == "cordials"


@pytest.mark.parametrize(
    ("line", "vessel", "count"),
    [
        ("onions on strings, 2", "strings", 2),
        ("garlic in braids, 3", "braids", 3),
        ("apples in crates, 4", "crates", 4),
        ("carrots in boxes of sand, 3", "boxes", 3),
    ],
)
def test_what_it_lies_in_may_stand_behind_it(line: str, vessel: str, count: int) -> None:
    reading = read(line)
    assert (reading.container, reading.count, reading.unread) == (vessel, count, ())


@pytest.mark.parametrize(
    ("line", "count", "size"),
    [
        ("ground beef freezer, 3 packs, 900 g in all", 3, "300 g"),
        ("2 lb in all ground beef freezer, 4 packs", 4, "1/2 lb"),
        ("3 pumpkins, 6 kg altogether", 3, "2 kg"),
    ],
)
def test_a_weight_of_all_of_them_is_shared_out(line: str, count: int, size: str) -> None:
    reading = read(line)
    assert (reading.count, reading.size) == (count, size)
    assert not [one for one in reading.asks if one.about == "contents"]


def test_a_pile_that_is_counted_and_weighed_is_asked_about() -> None:
    [ask] = [one for one in read("12 onions, 2 kg in all").asks if one.about == "contents"]
    assert ask.choices == ("12", "2 kg")


@pytest.mark.parametrize("line", ["6 kg pumpkins", "25 lb savoy cabbage", "a pumpkin of 6 kg"])
def test_how_many_large_crops_a_weight_is_has_to_be_said(line: str) -> None:
    asks = [one for one in read(f"{line}, cellar-stored").asks if one.about == "contents"]
    assert len(asks) == 1
    for answer in asks[0].choices:
        again = read(f"{answer} {line.split()[-1]}, cellar-stored")
        assert not [one for one in again.asks if one.about == "contents"]


@pytest.mark.parametrize(
    "line", ["2 kg pumpkin", "3 pumpkins, 2 kg each", "1 crate pumpkins, 12 kg", "25 kg potatoes"]
)
def test_where_a_cut_is_no_matter_nothing_is_asked(line: str) -> None:
    asks = read(f"{line}, cellar-stored").asks
    assert not [one for one in asks if one.about == "contents"]

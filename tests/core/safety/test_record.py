"""What a person types about a process is understood, or refused by name; never stored unread."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.safety.measured import read_minutes, unsafe_way
from pantry_tui.core.safety.record import (
    KEYS,
    NO_ALTITUDE,
    NOT_CHECKED,
    Details,
    known,
    not_checked,
    read_details,
)
from pantry_tui.core.safety.values import HINTS, READERS
from pantry_tui.core.words import Method


@pytest.mark.parametrize(
    ("key", "value", "kept"),
    [
        ("mins", "5", ("minutes", "5")),
        ("Time", "twenty", ("minutes", "twenty")),
        ("pressure", "11 lb", ("psi", "11 lb")),
        ("method", "oven", ("process", "oven")),
        ("canner", "electric pressure canner", ("canner", "electric pressure canner")),
        ("lemon", "no", ("acid", "no")),
        ("lemon", "2 tbsp", ("acid", "lemon 2 tbsp")),
        ("citric-acid", "1/4 tsp", ("acid", "citric acid 1/4 tsp")),
        ("vinegar", "none", ("vinegar", "none")),
        ("sealed", "inversion", ("seal", "inversion")),
        ("elevation", "1,800 ft", ("altitude", "1,800 ft")),
        ("gift", "yes", ("by", "somebody else")),
        ("from", "Aunt Sunniva", ("by", "Aunt Sunniva")),
        ("psi", "unknown", ("psi", "unknown")),
        ("salt", "2.25%", ("salt", "2.25%")),
        ("blanched", "3 min", ("blanched", "3 min")),
    ],
)
def test_a_detail_is_kept_under_its_one_name(key: str, value: str, kept: tuple[str, str]) -> None:
    assert read_details([(key, value)]) == Details((kept,))


@pytest.mark.parametrize(
    ("key", "value", "named"),
    [
        ("minutes", "a while", "minutes=25"),
        ("minutes", "20ish", "minutes=25"),
        ("psi", "loud", "psi=11"),
        ("altitude", "a mile", "altitude=1800ft"),
        ("altitude", "99999ft", "altitude=1800ft"),
        ("canner", "cauldron", "canner=dial"),
        ("pack", "loosely", "pack=hot"),
        ("jar", "small", "jar=pint"),
        ("acid", "some", "acid=lemon"),
        ("vinegar", "strong stuff", "vinegar=5%"),
        ("seal", "perhaps", "seal=tight"),
        ("state", "happy", "state=sealed"),
        ("process", "as my mother did", "process=boiling-water"),
        ("minuets", "20", "near it: minutes"),
        ("colour", "red", "note="),
    ],
)
def test_what_is_not_understood_is_refused_by_name(key: str, value: str, named: str) -> None:
    found = read_details([(key, value)])
    assert found.pairs == ()
    assert key in found.problems[0]
    assert named in found.problems[0]


def test_a_key_said_twice_differently_is_asked_about() -> None:
    assert "twice" in read_details([("mins", "20"), ("time", "25")]).problems[0]
    assert read_details([("mins", "20"), ("time", "20")]).problems == ()
    both = read_details([("lemon", "no"), ("citric", "1/2 tsp")])
    assert both.pairs == (("acid", "citric acid 1/2 tsp"),)


@given(st.sampled_from(sorted(KEYS)), st.text(max_size=30))
def test_every_value_is_kept_or_named(key: str, value: str) -> None:
    found = read_details([(key, value)])
    assert len(found.pairs) + len(found.problems) == 1
    assert read_details(found.pairs) == found or found.problems


def test_every_key_has_a_reader_and_a_hint() -> None:
    assert set(READERS) == set(HINTS) == set(KEYS)


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("twenty", 20), ("twenty-five min", 25), ("an hour", 60), ("half an hour", 30),
     ("one hour and fifteen minutes", 75), ("a hundred minutes", 100), ("25 min at 11 psi", 25),
     ("25 or so", None), ("twenty jars", None)],
)  # fmt: skip
def test_minutes_in_words_are_read(text: str, minutes: float | None) -> None:
    assert read_minutes(text) == minutes


@pytest.mark.parametrize(
    "text",
    ["oven", "open kettle", "inversion", "turned upside down", "dishwasher", "pressure cooker",
     "electric multicooker", "electric pressure canner", "microwave", "paraffin"],
)  # fmt: skip
def test_words_that_mean_danger_are_known(text: str) -> None:
    assert unsafe_way(text)


def test_half_a_record_does_not_silence_the_caution() -> None:
    assert not_checked(Method.PRESSURE, ()) == (NOT_CHECKED,)
    assert not_checked(Method.PRESSURE, (("jar", "pint"), ("by", "Kaja"))) == (NOT_CHECKED,)
    (half,) = not_checked(Method.PRESSURE, (("minutes", "20"),))
    assert "psi" in half
    assert not_checked(Method.PRESSURE, (("minutes", "20"), ("psi", "11"))) == ()
    record = (("minutes", "20"), ("altitude", "unknown"))
    assert not_checked(Method.BOILING_WATER, record) == (NO_ALTITUDE,)
    assert not_checked(Method.DRIED, ()) == ()
    assert known((("mins", "5"), ("psi", "?"))) == {"minutes"}


@pytest.mark.parametrize(
    ("pairs", "kept"),
    [
        ([("acid", "none"), ("acid", "lemon")], None),
        ([("acid", "lemon"), ("acid", "none")], None),
        ([("acid", "none"), ("lemon", "2 tbsp")], None),
        ([("acid", "lemon"), ("lemon", "none")], None),
        ([("lemon", "1 tsp"), ("lemon", "2 tbsp")], None),
        ([("citric", "none"), ("lemon", "2 tbsp")], "lemon 2 tbsp"),
        ([("lemon", "2 tbsp"), ("citric", "none")], "lemon 2 tbsp"),
        ([("acid", "yes"), ("lemon", "1 tsp")], "lemon 1 tsp"),
        ([("lemon", "1 tsp"), ("acid", "yes")], "lemon 1 tsp"),
        ([("lemon", "1 tsp"), ("citric", "1/4 tsp")], "lemon 1 tsp"),
        ([("lemon", "none"), ("citric", "none")], "none"),
        ([("acid", "unknown"), ("lemon", "yes")], "lemon"),
        ([("lemon", "yes"), ("acid", "unknown")], "lemon"),
    ],
)
def test_of_two_acids_none_is_lost_and_the_contrary_is_asked_about(
    pairs: list[tuple[str, str]], kept: str | None
) -> None:
    details = read_details(pairs)
    if kept is None:
        assert "acid is said twice" in details.problems[0]
    else:
        assert (details.pairs, details.problems) == ((("acid", kept),), ())

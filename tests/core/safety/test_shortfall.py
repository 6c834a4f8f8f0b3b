"""How it is said that a process was too little, and which word of the record would settle it."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.shortfall import pair, unsaid

#: form, pack, jar, canner
QUART_HOT = ("beans", "hot", "quart", "dial")
PINT_HOT = ("beans", "hot", "pint", "dial")
PINT_RAW = ("beans", "raw", "pint", "dial")
QUART_WEIGHTED = ("beans", "hot", "quart", "weighted")


def test_where_no_reading_is_enough_nothing_would_settle_it() -> None:
    assert unsaid([QUART_HOT], []) == ""


def test_the_word_that_differs_is_named_with_both_its_values() -> None:
    said = unsaid([QUART_HOT], [PINT_HOT])
    assert said == " (quart); it is enough for pint: if so, say jar=pint"
    assert unsaid([QUART_HOT], [QUART_WEIGHTED]).endswith("say canner=weighted")
    assert unsaid([PINT_RAW], [PINT_HOT]).endswith("say pack=hot")


def test_of_several_the_nearest_is_named() -> None:
    assert unsaid([QUART_HOT], [PINT_RAW, PINT_HOT]).endswith("say jar=pint")
    assert unsaid([QUART_HOT, PINT_RAW], [PINT_HOT]).endswith("say jar=pint")


def test_where_two_words_differ_both_are_said() -> None:
    said = unsaid([QUART_HOT], [PINT_RAW])
    assert said == " (hot, quart); it is enough for raw, pint: if so, say pack=raw jar=pint"


@pytest.mark.parametrize(
    ("mine", "theirs", "named"),
    [
        ("turkey, with bones", "turkey, without bones",
         '(with bones); it is enough for without bones: if so, say form="without bones"'),
        ("beef strips", "beef", "(beef strips); it is enough for beef: if so, say form=beef"),
        ("whole red beans", "whole red", "(red beans); it is enough for red: if so, say form=red"),
    ],
)  # fmt: skip
def test_words_that_both_begin_with_are_left_out(mine: str, theirs: str, named: str) -> None:
    rest = ("hot", "quart", "dial")
    assert unsaid([(mine, *rest)], [(theirs, *rest)]) == f" {named}"


@pytest.mark.parametrize(
    ("minutes", "psi", "said"),
    [(25.0, 11.0, "25 minutes at 11 psi"), (25.0, None, "25 minutes"), (None, 11.0, "11 psi"),
     (7.5, 11.0221, "7.5 minutes at 11 psi"), (None, None, "")],
)  # fmt: skip
def test_time_and_pressure_without_what_is_not_known(
    minutes: float | None, psi: float | None, said: str
) -> None:
    assert pair(minutes, psi) == said


def test_the_nearest_is_the_one_that_differs_in_the_fewest_words() -> None:
    dial = ("beans", "raw", "quart", "dial")
    other, near = ("beans", "hot", "pint", "weighted"), ("beans", "raw", "quart", "weighted")
    assert unsaid([dial], [other, near]).endswith("say canner=weighted")
    assert unsaid([dial], [near, other]).endswith("say canner=weighted")
    far = ("beans", "hot", "pint", "dial")
    assert unsaid([far, dial], [near]).endswith(": if so, say canner=weighted")
    assert unsaid([dial, far], [near]).endswith(": if so, say canner=weighted")


@pytest.mark.parametrize(
    ("mine", "theirs", "said"),
    [
        ("beans", "beans in water", " (beans); it is enough for beans in water"),
        ("beans in water", "beans", " (beans in water); it is enough for beans"),
        ("beans whole", "beans cut", " (whole); it is enough for cut"),
        ("green beans whole", "green beans cut", " (whole); it is enough for cut"),
    ],
)
def test_the_words_that_both_begin_with_are_left_out(mine: str, theirs: str, said: str) -> None:
    rest = ("raw", "quart", "dial")
    assert unsaid([(mine, *rest)], [(theirs, *rest)]).startswith(f"{said}: if so")

"""Reading the words of a verb, and moments."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.cli import registry
from pantry_tui.cli.fields import each, flag, maybe, number, option, repeated, several, word, words
from pantry_tui.cli.parse import parse
from pantry_tui.cli.run import split
from pantry_tui.cli.verb import Verb
from pantry_tui.errors import BadInput
from pantry_tui.services import moments

DAY = date(2026, 11, 25)


class Try(Verb):
    place: str = words("a place")
    temp: str = word("a temperature")
    rh: int | None = number("--rh", "N", "humidity")
    note: str | None = option("--note", "TEXT", "a note", old=("--remark",))
    tag: tuple[str, ...] = repeated("--tag", "TAG", "tags")
    seen: tuple[str, ...] = several("--seen", "CODE=N", "counts")
    dry_run: bool = flag("--dry-run", "nothing")


class Loose(Verb):
    code: str | None = maybe("a code")
    rest: tuple[str, ...] = each("the rest")


def read(*typed: str) -> Try:
    return parse(Try, "try", typed)


def test_words_stand_by_their_order_whatever_stands_between() -> None:
    got = read("chest", "--rh", "80", "freezer", "--dry-run", "-5F")
    assert (got.place, got.temp, got.rh, got.dry_run) == ("chest freezer", "-5F", 80, True)
    assert (got.note, got.tag, got.seen) == (None, (), ())


def test_flags_take_values_in_every_usual_way() -> None:
    got = read(
        "a", "b", "--note=--x=1", "--tag", "1", "--tag=2", "--seen", "A=1", "B=2", "--rh", "1"
    )
    assert (got.note, got.tag, got.seen, got.rh) == ("--x=1", ("1", "2"), ("A=1", "B=2"), 1)
    assert read("a", "b", "--remark", "old").note == "old"
    assert read("a", "--", "--dry-run").temp == "--dry-run"


def test_what_need_not_be_there() -> None:
    assert parse(Loose, "loose", ()).code is None
    assert parse(Loose, "loose", ("7C", "x", "y")).rest == ("x", "y")


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ((), "PLACE"),
        (("fridge",), "PLACE"),
        (("  ", "5F"), "PLACE"),
        (("a", "b", "--rh", "many"), "many"),
        (("a", "b", "--rh"), "--rh"),
        (("a", "b", "--note", "--dry-run"), "--note"),
        (("a", "b", "--dry-run=no"), "--dry-run"),
        (("a", "b", "--dry"), "--dry"),
        (("a", "b", "--note", "1", "--note", "2"), "twice"),
    ],
)
def test_what_is_not_understood_is_named(typed: tuple[str, ...], named: str) -> None:
    with pytest.raises(BadInput, match=named):
        read(*typed)


def test_a_verb_is_frozen() -> None:
    got = read("a", "b")
    with pytest.raises(AttributeError):
        got.temp = "c"  # type: ignore[misc]


def test_global_flags_are_taken_from_anywhere_but_behind_two_dashes() -> None:
    told, left = split(["--json", "use", "--today=2026-11-25", "7C", "--store", "x.db", "--any"])
    assert told == {"--json": "yes", "--today": "2026-11-25", "--store": "x.db"}
    assert left == ["use", "7C", "--any"]
    assert split(["find", "--", "--json"]) == ({}, ["find", "--", "--json"])


def test_the_longest_name_is_the_verb() -> None:
    def found(line: str) -> tuple[str, int]:
        entry, length = registry.find(line.split())
        return (entry.name if entry else "", length)

    assert found("household") == ("household", 1)
    assert found("household away friday") == ("household away", 2)
    assert found("household substitute list") == ("household substitute list", 3)
    assert found("substitute list") == ("household substitute list", 2)
    assert found("substitute peaches with plums") == ("household substitute", 1)
    assert found("house") == ("", 0)


def test_names_old_and_new_are_all_different() -> None:
    names = [name for entry in registry.every() for name in (entry.name, *entry.old)]
    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("2026-11-25", (DAY, None)),
        ("2026-11-25 18:30", (DAY, 1110)),
        ("2026-11-25T07:05", (DAY, 425)),
    ],
)
def test_today_takes_an_hour(typed: str, meant: moments.Moment) -> None:
    assert moments.read_today(typed) == meant


@pytest.mark.parametrize(
    "typed", ["", "25 nov", "2026-02-30", "20261125", "2026-11-25 24:00", "٢٠٢٦-11-25"]
)
def test_a_today_that_is_none(typed: str) -> None:
    with pytest.raises(BadInput):
        moments.read_today(typed)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("yesterday", (date(2026, 11, 24), None)),
        ("yesterday 18:30", (date(2026, 11, 24), 1110)),
        ("24 nov 7:05", (date(2026, 11, 24), 425)),
        ("2026-11-24T23:59", (date(2026, 11, 24), 1439)),
        ("sat 18:30", (date(2026, 11, 21), 1110)),
        ("11:59", (DAY, 719)),
        ("12:00", (DAY, 720)),
        ("noon", (DAY, 720)),
        ("7 am", (DAY, 420)),
        ("midnight", (DAY, 0)),
        ("6pm yesterday", (date(2026, 11, 24), 1080)),
        ("Tue 24 Nov 2026 at 6 pm", (date(2026, 11, 24), 1080)),
        ("sunday evening", (date(2026, 11, 22), None)),
        ("2 hours ago", (DAY, 600)),
        ("13 hours ago", (date(2026, 11, 24), 1380)),
        ("an hour ago", (DAY, 660)),
    ],
)
def test_at_is_read_as_people_say_it(typed: str, meant: moments.Moment) -> None:
    assert moments.read_at(typed, (DAY, 720)) == meant


@pytest.mark.parametrize(
    "typed",
    [
        "12:01",
        "2026-11-26",
        "tomorrow",
        "24:00",
        "11:60",
        "18:30 24 nov",
        "6 pm",
        "at 6",
        "tuesday midnight",
        "wed 24 nov",
        "2 hours ago yesterday",
    ],
)
def test_at_is_a_moment_that_has_been(typed: str) -> None:
    with pytest.raises(BadInput):
        moments.read_at(typed, (DAY, 720))


def test_without_an_hour_the_whole_of_today_has_been() -> None:
    assert moments.read_at("23:00", (DAY, None)) == (DAY, 1380)

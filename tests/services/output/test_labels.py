"""Labels of any size: nothing that must stand there is cut off, and a gift says what it must."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from html import unescape
from math import hypot
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.safety.record import IN_PART, NOT_CHECKED
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.output import labels
from pantry_tui.services.output.fitting import (
    LEAST_TYPE,
    Piece,
    Size,
    fitted,
    least,
    read_size,
)
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places
from pantry_tui.services.stock.pick import batch_named

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge")):
            places.add(pantry, name, climate)
        for line in (
            "2 pint jars runner beans, pressure canned, 20 minutes at 11 psi, larder, 1 aug",
            "2 pint jars peaches, boiling-water canned, larder, 1 aug",
            "1 box lasagne, cooked meal, fridge, 1 nov",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


@pytest.mark.parametrize(
    ("typed", "size"),
    [
        ("60x40mm", Size(60, 40)),
        ("60 x 40 mm", Size(60, 40)),
        ("6×4cm", Size(60, 40)),
        ("2.5x1.5in", Size(63.5, 38.1)),
        ('2 x 1"', Size(50.8, 25.4)),
        ("round 50mm", Size(50, 50, True)),
        ("2in round", Size(50.8, 50.8, True)),
    ],
)
def test_a_size_is_read_in_millimetres_and_inches(typed: str, size: Size) -> None:
    assert read_size(typed) == size


@pytest.mark.parametrize("typed", ["", "60x40", "60mm", "5x5mm", "9x9in x", "round 60x40mm", "1m"])
def test_what_is_no_size_says_how_to_say_one(typed: str) -> None:
    with pytest.raises(BadInput) as refused:
        read_size(typed)
    assert "mm" in refused.value.message


WORDS = st.lists(
    st.text("abcdefgh ", min_size=1, max_size=40).filter(str.strip), min_size=1, max_size=6
)


@given(WORDS, st.integers(20, 120), st.integers(20, 120), st.booleans())
def test_no_word_is_cut_off_or_written_over_the_edge(
    words: list[str], wide: int, high: int, is_round: bool
) -> None:
    size = Size(wide, wide if is_round else high, is_round)
    pieces = [Piece(one, 1.7 if n == 0 else 1.0) for n, one in enumerate(words)]
    laid = fitted(pieces, size)
    if laid is None:
        assert fitted(pieces, least(pieces, size)) is not None
        return
    said = "".join("".join(line.split()) for line, _ in laid.lines)
    assert said == "".join("".join(one.split()) for one in words)
    assert laid.type_mm >= LEAST_TYPE
    tall = sum(scale for _, scale in laid.lines) * laid.type_mm * 1.2
    broad = max(len(line) * scale for line, scale in laid.lines) * laid.type_mm * 0.55
    if is_round:
        assert hypot(tall, broad) <= size.width
    else:
        assert tall <= size.height
        assert broad <= size.width


def test_what_may_be_left_out_goes_before_a_label_is_refused() -> None:
    pieces = [
        Piece("runner beans"),
        Piece("a method of so very many words that it has no room", optional=True),
    ]
    roomy, small = fitted(pieces, Size(60, 40)), fitted(pieces, Size(15, 15))
    assert roomy is not None
    assert small is not None
    assert "method" in " ".join(text for text, _ in roomy.lines)
    assert "method" not in " ".join(text for text, _ in small.lines)


def test_a_label_that_has_no_room_says_which_size_has(p: Pantry) -> None:
    found = labels.labels(p, ["2A"])
    with pytest.raises(BadInput) as refused:
        labels.html(found, Size(20, 15))
    named = re.search(r"take (\S+) or more", refused.value.message)
    assert named
    html = labels.html(found, read_size(named[1]))
    assert html.count('class="cut"') == 2
    for words in ("2A", "runner beans", "best by", "do not"):
        assert words in " ".join(re.sub(r"<[^>]*>", " ", html).split())


def test_a_gift_says_what_who_gets_it_must_know(p: Pantry) -> None:
    (one, _) = labels.labels(p, ["2A"], gift=True)
    html = unescape(re.sub(r"<[^>]*>", " ", labels.html([one], gift=True)))
    said = " ".join(html.split())
    for words in (
        "runner beans",
        "pressure canned, made Sat 1 Aug 2026",
        "best by",
        "Processed 20 minutes at 11 psi.",
        "Once opened: keep it in the fridge, discard after 3 days.",
        "Bulging or leaking: do not open.",
        "Made of ___",
        "From ___",
        "Lid code 2A",
    ):
        assert words in said


def test_a_lid_says_that_no_process_is_recorded_where_it_is_so(p: Pantry) -> None:
    assert NOT_CHECKED in labels.label_text(labels.labels(p, ["3A"]))
    cut = re.sub(r"<[^>]*>", " ", labels.html(labels.labels(p, ["3A"]), Size(60, 40)))
    assert NOT_CHECKED in " ".join(cut.split())
    assert NOT_CHECKED not in labels.label_text(labels.labels(p, ["2A"]))
    one = labels.labels(p, ["3A"])[0]
    assert labels.label_text([one]).count("No process recorded") == 1


@pytest.mark.parametrize(
    ("line", "doing"),
    [
        ("1 crock sauerkraut, lactic ferment, larder, yesterday", "lactic ferment, fermenting"),
        ("1 bottle sloe gin, alcohol infusion, larder, yesterday", "alcohol infusion, infusing"),
        ("1 demijohn apple cider, alcohol ferment, larder", "alcohol ferment, fermenting"),
    ],
)
def test_a_lid_of_what_is_at_work_says_so_and_promises_no_figure(
    p: Pantry, line: str, doing: str
) -> None:
    code = putup.put_up(p, putup.read(p, line)).code
    one = labels.labels(p, [code])[0]
    assert (one.method, one.best_by) == (doing, "")
    cut = re.sub(r"<[^>]*>", " ", labels.html([one], Size(70, 50)))
    assert doing in labels.label_text([one])
    assert doing in " ".join(cut.split())
    assert labels.labels(p, ["3A"])[0].method == "boiling-water canned"


@pytest.mark.parametrize(
    "line",
    [
        "2 pint jars beef, pressure canned, larder",
        "2 pint jars beef, pressure canned, larder, psi=11",
        "2 pint jars beef, pressure canned, larder, minutes=75",
        "2 pint jars beef, pressure canned, larder, minutes=75 psi=11 canner=dial pack=raw",
        "2 pint jars peaches, boiling-water canned, larder, pack=hot",
        "2 half-pint jars raspberry jam, jam, larder",
    ],
)
@pytest.mark.parametrize("gift", [False, True])
def test_a_label_says_of_the_process_what_every_screen_says(
    p: Pantry, line: str, gift: bool
) -> None:
    code = putup.put_up(p, putup.read(p, line)).code
    batch = p.batch(code)
    assert batch is not None
    standing = p.judge(p.containers_of(batch)[0]).standing
    said = labels.label_text(labels.labels(p, [code], gift=gift)[:1])
    for words in (NOT_CHECKED, IN_PART):
        mine = [one for one in standing if one.startswith(words)]
        assert said.count(words) == len(mine)
        assert all(one in said for one in mine)
    unchecked = any(one.startswith((NOT_CHECKED, IN_PART)) for one in standing)
    assert not (unchecked and "Processed" in said), "what is known in part is no process"


def test_what_was_thawed_or_opened_says_so_on_its_lid(p: Pantry) -> None:
    places.add(p, "chest", "freezer")
    putup.put_up(p, putup.read(p, "1 pack trout, frozen, chest, 1 nov"))
    assert "thawed" not in labels.label_text(labels.labels(p, ["5A"]))
    act.thaw(p, "5A")
    (thawed,) = labels.labels(p, ["5A"])
    assert thawed.method == "frozen, thawed"
    assert "Thaw in the fridge" not in thawed.caution
    act.open_(p, "2A")
    opened = next(one for one in labels.labels(p, ["2A"]) if one.method.endswith(", open"))
    assert "Keep cold." in opened.caution


def test_what_must_go_gets_no_gift_label_and_what_is_unfit_of_a_batch_is_left_out(
    p: Pantry,
) -> None:
    with pytest.raises(Refused, match="may not be given"):
        labels.labels(p, ["4A"], gift=True)
    act.use(p, "3A")
    act.use(p, "3A")
    with pytest.raises(Refused, match="none of it stands"):
        labels.labels(p, ["3A"], gift=True)


def test_on_a_roll_each_label_is_a_page_of_its_size(p: Pantry) -> None:
    html = labels.html(labels.labels(p, ["2A"]), Size(63.5, 38.1), roll=True)
    assert "@page{size:63.5mm 38.1mm;margin:0}" in html
    assert "<h1>" not in html


def test_what_is_open_and_in_doubt_is_not_told_to_stay_shut(p: Pantry) -> None:
    code = putup.put_up(p, putup.read(p, "1 pint jar beef, in oil, fridge, open")).code
    (told,) = labels.labels(p, [code])
    assert told.caution.startswith(labels.OPEN_IN_DOUBT)
    assert "do not open" not in told.caution


def test_what_must_not_be_eaten_says_why_on_its_lid(p: Pantry) -> None:
    signs.mark(p, "2A/1", "mould on food or lid")
    batch = p.batch("2A")
    assert batch is not None
    told = labels.labels(p, ["2A"])
    judged = [p.judge(one) for one in p.containers_of(batch)]
    assert judged[0].standing, "what would be said beside it of a sound jar"
    assert told[0].caution == f"DO NOT TASTE. {judged[0].reasons[0]}"
    assert "Mould" in told[0].caution
    assert told[1].caution == f"{labels.IN_DOUBT} {judged[1].reasons[0]}"
    assert "mould" in told[1].caution
    assert not any("Altitude" in one for one in (labels.label_text(told), told[0].caution))


@pytest.mark.parametrize("gift", [False, True])
def test_what_is_gone_gets_no_label_and_says_so(p: Pantry, gift: bool) -> None:
    for one in p.containers_of(batch_named(p, "2A")):
        act.discard(p, f"2A/{one.number}", why="past its date")
    with pytest.raises(Refused, match="none of it stands"):
        labels.labels(p, ["2A"], gift=gift)

"""Sheets, labels and the calendar: complete, escaped, and read back by a general library."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from datetime import date, timedelta
from html.parser import HTMLParser
from pathlib import Path

import pytest

from pantry_tui.core import dates
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import instead_of_day
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.demo import build_demo
from pantry_tui.services.output import calendar, labels, paper
from pantry_tui.services.output.door import PAGE, cells
from pantry_tui.services.output.stocktake import PEN
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.stock import act, outage, places, view

TODAY = date(2026, 11, 25)
HOSTILE = "beans; [/x], <b>\\ ünï " + "x" * 90


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder <i>", "pantry"), ("fridge", "fridge")):
            places.add(pantry, name, climate)
        putup.put_up(
            pantry,
            putup.from_flags(
                pantry,
                food=HOSTILE,
                method="dried",
                place="larder <i>",
                count=2,
                group="vegetable",
                acidity="low-acid",
            ),
        )
        putup.put_up(
            pantry,
            putup.read(pantry, "3 pint jars peaches, boiling-water canned, larder <i>, 1 aug"),
        )
        yield pantry


class Seen(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.text = ""

    def handle_starttag(self, tag: str, _attrs: object) -> None:
        self.tags.append(tag)

    def handle_data(self, data: str) -> None:
        self.text += data


def test_no_name_breaks_a_printed_page(p: Pantry) -> None:
    for text in (
        paper.sheet_html(paper.sheet(p, "due")),
        labels.label_html(labels.labels(p, ["2A", "3A"])),
    ):
        seen = Seen()
        seen.feed(text)
        assert HOSTILE.lower() in seen.text
        assert "i" not in seen.tags, "a name became markup"


def test_the_door_sheet_lists_what_is_open(p: Pantry) -> None:
    assert "Nothing." in paper.sheet_text(paper.sheet(p, "opened"))
    act.open_(p, "3A")
    text = paper.sheet_text(paper.sheet(p, "opened"))
    assert "peaches (open)" in text
    assert "28 Nov 2026" in text
    assert "peaches" in paper.sheet_text(paper.sheet(p, "fridge"))
    with pytest.raises(BadInput):
        paper.sheet(p, "nowhere")


def test_a_label_has_all_that_a_lid_needs(p: Pantry) -> None:
    found = labels.labels(p, ["3A"])
    assert len(found) == 3
    text = labels.label_text(found)
    for word in (
        "3A",
        "peaches",
        "boiling-water canned",
        "made Sat 1 Aug 2026",
        "best by Sun 1 Aug 2027",
        "do not open",
    ):
        assert word in text
    assert len(labels.labels(p)) == 5, (
        "without codes: what was booked today, whatever day it was made"
    )


def test_labels_without_codes_are_for_what_was_put_up_or_made_today(
    p: Pantry, tmp_path: Path
) -> None:
    p.close()
    with open_pantry(tmp_path / "store.db", TODAY + timedelta(days=1)) as tomorrow:
        with pytest.raises(BadInput, match="Nothing was put up today"):
            labels.labels(tomorrow)
        line = "2 pint jars plums, boiling-water canned, larder <i>, 1 aug"
        putup.put_up(tomorrow, putup.read(tomorrow, line))
        assert [one.food for one in labels.labels(tomorrow)] == ["plums", "plums"]


def test_the_week_is_a_page_for_the_kitchen_with_one_trip_to_fetch_it(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        wishes.pin(demo, "5F", TODAY + timedelta(days=2))
        page = paper.sheet(demo, "week")
        week = weeks.week(demo)
    eaten = Counter(take.code for take in week.take)
    assert sum(rows for _, rows in page.parts) == len(page.rows) >= sum(eaten.values())
    assert page.parts[0][0].startswith(dates.say(TODAY))
    (fetch,) = page.more
    places = [row[0].lower() for row in fetch.rows]
    assert places == sorted(places)
    named = [(row[0], row[1]) for row in fetch.rows]
    assert len(named) == len(set(named)), "a lid code once at each place"
    assert {row[1] for row in page.rows} == {code for _, code in named}
    several = next(row for row in fetch.rows if eaten[row[1]] > 1)
    assert "," in several[4]
    thawed = [row for row in fetch.rows if "freezer" in row[0]]
    assert thawed
    assert all(row[5] for row in thawed)
    later = Counter(take.code for take in week.to_come for day in take.days if day > take.day)
    assert later, "what is opened for several days"
    assert Counter(row[1] for row in page.rows if row[3] == "rest") == later
    heads = [head for head, _ in page.parts]
    at_table = {day for take in week.to_come for day in take.days} | {
        one.day for one in week.beside
    }
    assert all(
        head.startswith(dates.say(on)) for head, on in zip(heads, sorted(at_table), strict=True)
    )
    text = paper.sheet_text(page)
    assert text.index(page.title) < text.index(fetch.title)
    assert f"<h2>{fetch.title}</h2>" in paper.sheet_html(page)


def test_a_count_goes_round_with_a_pen(p: Pantry) -> None:
    act.open_(p, "3A")
    page = paper.sheet(p, "count")
    told = {(row[1], row[2], row[4]) for row in page.rows if row[1].startswith(("2A", "3A"))}
    assert ("3A", "peaches, boiling-water canned", "2") in told
    assert ("3A", "peaches, boiling-water canned (open)", "1") in told
    assert page.parts[-1] == ("Stands there, and is not on this sheet", 3)
    one = paper.sheet(p, "count fridge")
    assert one.title.startswith("Count of fridge")
    assert {row[1] for row in one.rows} == {"3A", PEN}
    assert '<table class="loose">' in paper.sheet_html(one)
    with pytest.raises(BadInput):
        paper.sheet(p, "count attic")


def test_a_door_sheet_stays_one_page_and_never_leaves_out_what_must_go(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "larder", "pantry")
        places.add(p, "fridge", "fridge")
        for n in range(70):
            said = f"1 pint jar plum jam, jam, larder, {TODAY - timedelta(days=400 + n):%d %b %Y}"
            putup.put_up(p, putup.read(p, said))
        for n in range(8):
            day = TODAY - timedelta(days=20 + n)
            putup.put_up(p, putup.read(p, f"1 box lasagne, cooked meal, fridge, {day:%d %b %Y}"))
        page = paper.sheet(p, "due")
        oldest = {row.code for row in view.due(p) if row.food == "plum jam"}
    assert len(page.rows) + len(page.parts) == PAGE
    assert dict(page.parts)["Must go: do not eat: 8"] == 8
    assert "Past best, still safe, not listed: 20 containers more." in page.notes
    listed = {row[1] for row in page.rows} & oldest
    assert listed == {code for code in oldest if code not in _newest(oldest, 20)}


def _newest(codes: set[str], number: int) -> set[str]:
    """Of batches that were booked from the newest to the oldest."""
    order = sorted(codes, key=lambda code: (len(code), code[1:], code[0]))
    return set(order[:number])


def test_no_paper_says_until_when_what_is_in_doubt_may_be_eaten(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        doubtful = [row for row in view.due(demo) if row.head == "unknown" and not row.usable]
        assert doubtful
        for row in doubtful:
            assert row.best_by, "it would have a day if it were not in doubt"
            door = next(one for one in paper.sheet(demo, "due").rows if one[1] == row.code)
            why = instead_of_day(row.why_no_last_day)
            assert door[-1] == f"{why}: do not eat"
            place = next(one for one in paper.sheet(demo, row.place).rows if one[0] == row.code)
            assert place[4:6] == ("none", why), "in the words of the due list"
            for one in labels.labels(demo, [row.code]):
                assert labels.IN_DOUBT in one.caution
                assert not one.best_by
                assert not one.discard_after
            with pytest.raises(Refused, match="may not be given"):
                labels.labels(demo, [row.code], gift=True)


def test_a_booked_power_cut_makes_a_sheet(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        with pytest.raises(Refused):
            paper.sheet(demo, "outage")
        where = demo.find_place("fridge")
        outage.book(demo, where, outage.cut_of(demo, where, *outage.lasting(demo, 10)))
        text = paper.sheet_text(paper.sheet(demo, "outage"))
    assert "discard" in text
    assert "food-safety authority" in text


def test_the_whole_demo_goes_on_paper(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        assert "local food-safety authority" in paper.sheet_text(paper.sheet(demo, "due"))


def test_no_paper_names_a_best_by_behind_the_day_it_must_go(p: Pantry) -> None:
    putup.put_up(p, putup.read(p, "2 pint jars salsa, boiling-water canned, larder <i>, 1 aug"))
    act.open_(p, "4A")
    opened = next(row for row in view.due(p) if row.code == "4A" and row.state == "open")
    assert opened.best_by
    assert opened.discard_after
    assert opened.discard_after < opened.best_by
    behind = f"{opened.best_by:%Y%m%d}"
    assert behind not in calendar.calendar(p)
    sheet = paper.sheet(p, "opened")
    assert [row[4] for row in sheet.rows] == ["none"]
    assert all("best by" not in labels.label_text([one]) for one in labels.labels(p, ["4A"])[:1])
    assert "discard after" in labels.label_text(labels.labels(p, ["4A"])[:1])


def test_what_must_go_is_no_date_ahead_and_its_label_says_so(p: Pantry) -> None:
    putup.put_up(p, putup.read(p, "1 box lasagne, cooked meal, fridge, 1 nov"))
    assert "lasagne" not in calendar.calendar(p)
    assert "DISCARD." in labels.label_text(labels.labels(p, ["4A"]))
    act.open_(p, "3A")
    first = paper.sheet(p, "due").rows[0]
    assert first[1] == "4A", "what must go stands on top of the sheet"


# -- the door --------------------------------------------------------------------------------------


def test_the_door_sheet_stands_under_heads_with_a_box_and_whole_dates(demo: Pantry) -> None:
    page = paper.sheet(demo, "due")
    assert sum(rows for _, rows in page.parts) == len(page.rows)
    assert page.parts[0][0].startswith("Must go: do not eat")
    listed = {row[1] for row in page.rows}
    due = view.due(demo)
    week = demo.today + timedelta(days=7)
    hid = [
        row
        for row in due
        if row.head == "later"
        and row.verdict is Verdict.SOUND
        and not (row.discard_after is not None and row.discard_after <= week)
    ]
    assert listed == {row.code for row in due if row not in hid}
    hidden = sum(row.count for row in hid)
    assert f"Later, not listed: {hidden} containers." in page.notes
    assert all(row[0] == "[ ]" for row in page.rows)
    for row in page.rows:
        assert "today" not in row[-1], "a sheet hangs for days"
        if row[-1].startswith(("eat by", "best by")):
            assert row[-1].split()[-1].isdigit(), "with its year"


def test_the_door_sheet_is_in_the_order_of_the_list_on_the_screen(demo: Pantry) -> None:
    page = paper.sheet(demo, "due")
    listed = [(row[1], row[2], row[4]) for row in page.rows]
    whole = [tuple(cells(row)) for row in view.due(demo)]
    assert listed == [(row[1], row[2], row[4]) for row in whole if row in page.rows]


def test_what_may_hurt_is_never_given_a_best_date_on_the_door(demo: Pantry) -> None:
    by_code = {row.code: row for row in view.due(demo) if row.verdict in UNFIT}
    page = paper.sheet(demo, "due")
    unfit = [row for row in page.rows if row[1] in by_code and row[-1] in set(Verdict)]
    assert {row[1] for row in unfit} == set(by_code)


def test_a_printed_door_sheet_draws_boxes_and_parts(demo: Pantry) -> None:
    page = paper.sheet(demo, "due")
    text = paper.sheet_html(page)
    assert text.count('class="box"') == len(page.rows)
    assert text.count('class="part"') == len(page.parts)
    plain = paper.sheet_text(page)
    assert all(f"\n\n{words}\n" in plain for words, _ in page.parts)


def test_the_sheet_of_what_is_open_begins_with_what_is_to_be_finished(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        found = paper.sheet(demo, "opened")
        open_ = [row for row in view.due(demo) if row.state in ("open", "thawed")]
    bad = {row.code for row in open_ if row.verdict in UNFIT}
    good = {row.code for row in open_ if row.usable}
    assert bad
    assert good
    order = [row[0] for row in found.rows]
    assert max(map(order.index, good)) < min(map(order.index, bad))
    text, page = paper.sheet_text(found), paper.sheet_html(found)
    assert text.index(f"\n{order[0]} ") < text.index("Must go: do not eat")
    assert page.index(f"<td>{order[0]}</td>") < page.index("Must go: do not eat")
    assert "local food-safety authority" in text

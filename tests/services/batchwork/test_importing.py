"""A household's own list: looked through first, booked all or none, every bad row named."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.importing import import_list
from pantry_tui.services.batchwork.mapped import look_at
from pantry_tui.services.batchwork.undated import TODAY, UNKNOWN
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, undo


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", units="metric")
    with open_pantry(tmp_path / "store.db", date(2026, 11, 26)) as pantry:
        places.add(pantry, "larder", "pantry")
        places.add(pantry, "freezer", "freezer")
        yield pantry


def written(tmp_path: Path, text: str, name: str = "list.csv", encoding: str = "utf-8") -> Path:
    path = tmp_path / name
    path.write_bytes(text.encode(encoding))
    return path


LIST = """Item;Qty;Container;Size;Where;Date;Remarks
plum jam;7;jars;500 ml;larder;13.9.2026;a bit "sweet"
peas;4;bags;0,5 kg;freezer;2.7.2026;
Crème fraîche;1;tub;250 ml;freezer;1.11.2026;
"""


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_a_list_comes_in_whole_in_any_usual_encoding(
    p: Pantry, tmp_path: Path, encoding: str
) -> None:
    found = import_list(p, written(tmp_path, LIST, encoding=encoding))
    assert (found.rows, found.batches, found.bad, found.asks) == (3, 3, [], [])
    assert found.columns["food"] == "Item"
    batches = sorted(p.stock.batches.values(), key=lambda one: one.code)
    assert [one.food.name for one in batches] == ["plum jam", "peas", "sour cream"]
    assert [one.made for one in batches] == [
        date(2026, 9, 13), date(2026, 7, 2), date(2026, 11, 1)
    ]  # fmt: skip
    undo.undo(p)
    assert not any(one.here for one in p.stock.containers.values())


def test_a_bad_row_is_named_and_nothing_is_booked(p: Pantry, tmp_path: Path) -> None:
    text = (
        LIST + "mystery goo;3;jars;500 ml;larder;1.1.2026;\nplum jam;1;jar;500 ml;attic;1.1.2026;\n"
    )
    found = import_list(p, written(tmp_path, text))
    assert [(one.line, one.column) for one in found.bad] == [(5, "Item"), (6, "Where")]
    assert not found.booked
    assert not p.stock.batches


def test_days_that_could_be_two_are_asked_once_for_the_column(p: Pantry, tmp_path: Path) -> None:
    text = "food,qty,size,place,date\nplum jam,7 jars,500 ml,larder,3/4/2026\n"
    path = written(tmp_path, text)
    asked = import_list(p, path)
    assert [ask.about for ask in asked.asks] == ["dates"]
    assert not p.stock.batches
    import_list(p, path, order="mdy")
    (batch,) = p.stock.batches.values()
    assert batch.made == date(2026, 3, 4)


def test_a_look_books_nothing(p: Pantry, tmp_path: Path) -> None:
    found = import_list(p, written(tmp_path, LIST), dry_run=True)
    assert (found.batches, found.booked) == (3, False)
    assert not p.stock.batches


def test_columns_that_nobody_can_guess_are_asked_and_said(p: Pantry, tmp_path: Path) -> None:
    path = written(tmp_path, "Stuff\tHow many\tSpot\nplum jam\t7 500 ml jars\tlarder\n", "l.tsv")
    assert [ask.about for ask in import_list(p, path).asks] == ["column"]
    found = import_list(p, path, columns="food=Stuff,place=Spot")
    assert found.batches == 1
    assert found.booked


@pytest.mark.parametrize(
    ("name", "text", "columns"),
    [("l.xyz", LIST, ""), ("l.csv", "Item\n", ""), ("l.csv", LIST, "food=Nothing"),
     ("l.csv", LIST, "taste=Item"), ("l.csv", "a\0b,c\n1,2\n", "")],
)  # fmt: skip
def test_what_is_no_list_is_said_in_one_sentence(
    p: Pantry, tmp_path: Path, name: str, text: str, columns: str
) -> None:
    with pytest.raises(BadInput):
        import_list(p, written(tmp_path, text, name), columns=columns)


HEAD = "food,qty,size,place,date\n"


def counted(p: Pantry, tmp_path: Path, cell: str) -> tuple[list[str], list[int]]:
    """What is wrong with a row of that count, or how many it books."""
    path = written(tmp_path, f"{HEAD}plum jam,{cell},500 ml,larder,13.9.2026\n")
    found = import_list(p, path)
    booked = [len(p.containers_of(one)) for one in p.stock.batches.values()]
    return [one.column for one in found.bad], booked


@pytest.mark.parametrize(
    "cell",
    ['"1,000"', "1.000", "1 000", "2.5", '"1,5"', "1 1/2", "3/4", "½", "1½", "", "?", "-", "0",
     "-3", "1000", "9" * 400, "n/a", "1e3"],
)  # fmt: skip
def test_no_count_is_made_into_another(p: Pantry, tmp_path: Path, cell: str) -> None:
    assert counted(p, tmp_path, cell) == (["qty"], [])


@pytest.mark.parametrize(("cell", "many"), [("7", 7), ("7.0", 7), ('"7,00"', 7), ("007", 7)])
def test_a_whole_count_is_booked_as_it_is(p: Pantry, tmp_path: Path, cell: str, many: int) -> None:
    assert counted(p, tmp_path, cell) == ([], [many])


@pytest.mark.parametrize(
    "text",
    [
        HEAD + 'plum jam,3,500 ml,larder,13.9.2026\nplum jam,2,"500 ml,larder,13.9.2026\n'
        "plum jam,4,500 ml,larder,13.9.2026\n",
        HEAD + 'plum jam,3,500 ml,larder,13.9.2026\nplum jam,2,"500 ml,larder,13.9.2026\n'
        'plum jam,4,500 ml,larder,13.9.2026"\n',
    ],
    ids=["never closed", "closed rows later"],
)
def test_an_open_quote_is_named_by_its_line(p: Pantry, tmp_path: Path, text: str) -> None:
    with pytest.raises(BadInput, match="line 3 opens a quote"):
        import_list(p, written(tmp_path, text))
    assert not p.stock.batches


def test_a_note_of_several_lines_is_one_note(p: Pantry, tmp_path: Path) -> None:
    text = 'food,qty,size,place,note\nplum jam,3,500 ml,larder,"with cloves\nand cinnamon"\n'
    import_list(p, written(tmp_path, text))
    (batch,) = p.stock.batches.values()
    assert batch.note == "with cloves and cinnamon"


def test_two_equal_headings_are_asked_about(p: Pantry, tmp_path: Path) -> None:
    text = "food,qty,Qty,size,place\nplum jam,3,5,500 ml,larder\n"
    path = written(tmp_path, text)
    (ask,) = import_list(p, path).asks
    assert (ask.about, ask.typed, ask.choices) == ("column", "count", ("2", "3"))
    with pytest.raises(BadInput, match="several columns"):
        import_list(p, path, columns="count=qty")
    import_list(p, path, columns="count=3")
    (batch,) = p.stock.batches.values()
    assert len(p.containers_of(batch)) == 5


def test_what_is_not_taken_is_listed(p: Pantry, tmp_path: Path) -> None:
    text = "food,qty,size,place,Oven,Photo,,\nplum jam,3,500 ml,larder,yes,a.jpg,odd,\n"
    text += "plum jam,3,500 ml,larder,,,,,more\n"
    found = import_list(p, written(tmp_path, text), dry_run=True)
    assert (found.noted, found.unused) == (["Oven"], ["Photo"])
    assert [(one.line, one.value) for one in found.beyond] == [(2, "odd"), (3, "more")]
    assert not found.bad


def test_a_spreadsheet_without_its_reader_says_what_to_install(
    p: Pantry, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    with pytest.raises(BadInput, match="pip install openpyxl"):
        import_list(p, written(tmp_path, "x", "list.xlsx"))


def test_a_spreadsheet_comes_in_as_its_list_does(p: Pantry, tmp_path: Path) -> None:
    sheets = pytest.importorskip("openpyxl", reason="the reader of spreadsheets is not installed")
    book = sheets.Workbook()
    book.active.append(["Item", "Qty", "Container", "Size", "Where", "Date"])
    book.active.append(["plum jam", 7, "jars", "500 ml", "larder", date(2026, 9, 13)])
    book.active.append(["peas", 4.0, "bags", "0.5 kg", "freezer", "2026-07-02"])
    book.save(tmp_path / "list.xlsx")
    found = import_list(p, tmp_path / "list.xlsx")
    assert (found.booked, found.batches, found.bad) == (True, 2, [])
    batches = {batch.food.name: batch for batch in p.batches()}
    assert batches["plum jam"].made == date(2026, 9, 13)
    assert len(p.containers_of(batches["peas"])) == 4


def test_what_only_calls_itself_a_spreadsheet_is_said(p: Pantry, tmp_path: Path) -> None:
    pytest.importorskip("openpyxl", reason="the reader of spreadsheets is not installed")
    with pytest.raises(BadInput, match="no spreadsheet"):
        import_list(p, written(tmp_path, "Item,Qty", "list.xlsx"))


def test_a_list_that_is_cut_within_a_character_says_what_to_do(p: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "cut.csv"
    rows = "food,count,method,place\n" + "plum jam,7 pint jars,jam,larder\n" * 3000
    for much in (rows, rows[:60]):
        path.write_bytes(much.encode("utf-16")[:-1])
        with pytest.raises(BadInput, match="save the list anew, as UTF-8"):
            import_list(p, path)
    with pytest.raises(BadInput, match="save the list anew, as UTF-8"):
        look_at(path)
    assert not p.batches()


def test_the_same_list_twice_is_asked_about(p: Pantry, tmp_path: Path) -> None:
    path = written(tmp_path, LIST)
    assert import_list(p, path).booked
    stands = len(p.batches())
    look = import_list(p, path, dry_run=True)
    assert (look.known, look.asks) == (look.rows, [])
    found = import_list(p, path)
    assert not found.booked
    assert [one.about for one in found.asks] == ["again"]
    assert len(p.batches()) == stands
    assert import_list(p, path, again=True).booked
    assert len(p.batches()) == 2 * stands
    undo.undo(p)
    undo.undo(p)
    assert import_list(p, path).booked, "what was taken back may come in again"


def test_a_list_of_which_little_was_there_is_not_asked_about(p: Pantry, tmp_path: Path) -> None:
    head, *rows = LIST.strip().splitlines()
    assert import_list(p, written(tmp_path, f"{head}\n{rows[0]}\n", "one.csv")).booked
    found = import_list(p, written(tmp_path, LIST))
    assert (found.known, found.booked) == (1, True)


COLUMNS = "Item,Method,Qty,Size,Container,Where,Date"
CANNED = "runner beans,pressure canned,7,500 ml,jars,larder,2026-11-20"


def recorded(p: Pantry) -> dict[str, str]:
    (batch,) = p.stock.batches.values()
    return dict(batch.process)


def test_the_details_of_a_process_come_into_the_record(p: Pantry, tmp_path: Path) -> None:
    text = f"{COLUMNS},Minutes,Pressure (psi),Canner type,Altitude (m)\n{CANNED},5,11,dial,450\n"
    found = import_list(p, written(tmp_path, text))
    assert found.booked
    assert not found.unused
    record = recorded(p)
    assert record["minutes"] == "5"
    assert record["psi"] == "11 psi"
    assert record["canner"] == "dial"
    assert record["altitude"] == "450m"
    (batch,) = p.stock.batches.values()
    assert "5 minutes at 11 psi is too little" in batch.doubt[0]


@pytest.mark.parametrize(
    ("heading", "cell", "expected"),
    [
        ("Processing time", "1:15", ("minutes", "1:15")),
        ("Lemon juice (tbsp)", "1", ("acid", "lemon 1 tbsp")),
        ("Vinegar %", "4", ("vinegar", "4%")),
        ("pH", "3,9", ("ph", "3,9")),
        ("salt", "2,25 %", ("salt", "2,25 %")),
        ("Elevation_ft", "3000", ("altitude", "3000ft")),
        ("Altitude", "1500", ("altitude", "1500m")),
    ],
)
def test_a_detail_is_read_as_its_heading_says(
    p: Pantry, tmp_path: Path, heading: str, cell: str, expected: tuple[str, str]
) -> None:
    assert import_list(p, written(tmp_path, f'{COLUMNS},{heading}\n{CANNED},"{cell}"\n')).booked
    name, value = expected
    assert recorded(p)[name] == value


def test_a_detail_that_is_not_understood_is_named_in_its_row(p: Pantry, tmp_path: Path) -> None:
    path = written(tmp_path, f"{COLUMNS},Time,Maker\n{CANNED},14h30 o'clock,\n")
    found = import_list(p, path)
    assert [(one.line, one.column, one.value) for one in found.bad] == [
        (2, "Time", "14h30 o'clock")
    ]
    assert "minutes=25" in found.bad[0].reason
    assert not p.stock.batches
    left = import_list(p, path, columns="out=Time")
    assert (left.booked, left.unused) == (True, ["Time"])


def test_an_empty_cell_says_nothing_of_a_detail(p: Pantry, tmp_path: Path) -> None:
    assert import_list(p, written(tmp_path, f"{COLUMNS},Minutes,PSI\n{CANNED},,-\n")).booked
    assert not {"minutes", "psi"} & recorded(p).keys()


@pytest.mark.parametrize(
    ("heading", "dated"),
    [("Use by", "use-by"), ("Expires", "use-by"), ("Best before", ""), ("BB", "")],
)
def test_the_heading_of_a_printed_date_says_of_which_kind_it_is(
    p: Pantry, tmp_path: Path, heading: str, dated: str
) -> None:
    text = f"food,method,qty,container,place,{heading}\nhummus,bought in,1,tub,larder,2026-12-05\n"
    import_list(p, written(tmp_path, text))
    (batch,) = p.stock.batches.values()
    assert batch.printed == date(2026, 12, 5)
    assert dict(batch.process).get("dated", "") == dated


def test_two_columns_of_one_detail_are_asked_about(p: Pantry, tmp_path: Path) -> None:
    path = written(tmp_path, f"{COLUMNS},Minutes,Time\n{CANNED},25,5\n")
    (ask,) = import_list(p, path).asks
    assert (ask.typed, ask.choices) == ("minutes", ("8", "9"))
    assert import_list(p, path, columns="minutes=9").booked
    assert recorded(p)["minutes"] == "5"


def test_a_detail_that_the_line_says_otherwise_is_refused(p: Pantry, tmp_path: Path) -> None:
    line = "7 500 ml jars runner beans pressure canned larder minutes=25"
    found = import_list(p, written(tmp_path, f"Line,Minutes\n{line},5\n"))
    assert "said twice" in found.bad[0].reason


def test_every_field_of_a_list_has_a_word_on_its_screen() -> None:
    from pantry_tui.app.listtext import WORDS
    from pantry_tui.services.batchwork.columns import FIELDS

    assert set(FIELDS) <= set(WORDS)


BARE = """Item;Qty;Container;Weight;Where;Date
peas;4;bags;500;freezer;13.9.2026
spinach;2;bags;1 lb;freezer;13.9.2026
"""


def test_a_number_without_its_unit_is_asked_about_once_and_never_guessed(
    p: Pantry, tmp_path: Path
) -> None:
    path = written(tmp_path, BARE)
    found = import_list(p, path)
    assert (found.booked, [(one.about, one.typed) for one in found.asks]) == (
        False, [("unit", "Weight: 500")]
    )  # fmt: skip
    assert "size=g" in found.asks[0].choices
    assert import_list(p, path, units="size=g").booked
    sizes = sorted(one.size for one in p.stock.batches.values())
    assert sizes == ["1 lb bags", "500 g bags"], "what has a unit keeps it"
    again = import_list(p, path, dry_run=True)
    assert again.asks == [], "as it was said of the last list with these headings"
    with pytest.raises(BadInput, match="no unit of a column"):
        import_list(p, path, units="size=stones")


@pytest.mark.parametrize("vessel", ["packs", "bags", "tubs", "Bags"])
def test_a_column_of_sizes_may_say_what_it_is_packed_in(
    p: Pantry, tmp_path: Path, vessel: str
) -> None:
    text = f"Food,Method,Qty,Size,Place\nbeef,frozen,2,{vessel},freezer\n"
    assert import_list(p, written(tmp_path, text)).booked
    assert [(b.size, len(p.containers_of(b))) for b in p.batches()] == [(vessel.lower(), 2)]


def test_one_unit_for_a_mixed_column_makes_no_pack_of_half_a_tonne(
    p: Pantry, tmp_path: Path
) -> None:
    text = "Food,Method,Qty,Weight,Place\nbeef,frozen,1,500,freezer\nbeef,frozen,1,2,freezer\n"
    path = written(tmp_path, text)
    found = import_list(p, path, units="size=kg")
    assert not found.booked
    assert [(one.line, one.reason) for one in found.bad] == [
        (2, "500 kg in one container cannot be: write how much each holds, with its unit.")
    ]
    assert import_list(p, path, units="size=g").booked


def test_the_unit_of_a_heading_is_that_of_its_bare_numbers(p: Pantry, tmp_path: Path) -> None:
    text = BARE.replace("Weight", "Weight (g)")
    assert import_list(p, written(tmp_path, text)).booked
    assert {one.size for one in p.stock.batches.values()} == {"1 lb bags", "500 g bags"}


def test_a_bare_temperature_is_asked_about(p: Pantry, tmp_path: Path) -> None:
    text = "Item;Qty;Size;Kept;Where;Date;Temperature\nplums;3;500 g;dried;larder;13.9.2026;60\n"
    path = written(tmp_path, text)
    assert [one.choices for one in import_list(p, path).asks] == [
        ("temperature=C", "temperature=F")
    ]
    assert import_list(p, path, units="temperature=F", dry_run=True).asks == []


def test_a_bare_altitude_is_asked_about_where_feet_are_usual(tmp_path: Path) -> None:
    """2,000 m read as feet would be checked for a third of its height; a household that reads °C
    means metres, the stricter of the two."""
    create(tmp_path / "us.db", units="us")
    path = written(tmp_path, f"{COLUMNS},Altitude\n{CANNED},2000\n")
    with open_pantry(tmp_path / "us.db", date(2026, 11, 26)) as us:
        places.add(us, "larder", "pantry")
        found = import_list(us, path)
        assert [one.choices for one in found.asks] == [("altitude=ft", "altitude=m")]
        assert not us.stock.batches
        assert import_list(us, path, units="altitude=m").booked
        assert recorded(us)["altitude"] == "2000m"


UNDATED = """Item,Qty,Place,Kept,State
turkey soup,1 box,fridge,cooked meal,
pesto,1 250 ml jar,fridge,in oil,
500 ml runner beans,1 jar,fridge,pressure canned,open
250 ml plum jam,3 jars,larder,jam,
dried pears,1 bag,larder,dried,
"milk, use by 2026-12-01",1 carton,fridge,bought in,
"turkey soup, today",1 box,fridge,cooked meal,
"250 ml plum jam, 2 sep 2026",3 jars,larder,jam,
"""


def test_a_row_without_a_day_never_counts_as_made_today_in_silence(
    p: Pantry, tmp_path: Path
) -> None:
    """Where a safety limit runs from the day, the row is as one that says `made unknown`."""
    places.add(p, "fridge", "fridge")
    path = written(tmp_path, UNDATED)
    looked = import_list(p, path, dry_run=True)
    assert looked.bad == []
    said = {one.line: one.reason for one in looked.no_day}
    assert said == {2: UNKNOWN, 3: UNKNOWN, 4: UNKNOWN, 5: TODAY, 6: TODAY, 7: TODAY}
    booked = import_list(p, path)
    assert booked.booked
    assert booked.no_day == looked.no_day
    days = [one.made for one in sorted(p.stock.batches.values(), key=lambda one: one.id)]
    today = date(2026, 11, 26)
    assert days == [None, None, None, today, today, today, today, date(2026, 9, 2)]


def test_an_empty_cell_under_a_day_is_a_day_that_nobody_knows(p: Pantry, tmp_path: Path) -> None:
    text = "Item,Qty,Place,Kept,Made\n250 ml plum jam,3 jars,larder,jam,\n"
    found = import_list(p, written(tmp_path, text))
    assert found.no_day == []
    (batch,) = p.stock.batches.values()
    assert batch.made is None


@pytest.mark.parametrize("cell", ["?", "unknown", "not sure", "??"])
@pytest.mark.parametrize("heading", ["Seal", "sealed"])
def test_a_seal_that_nobody_knows_is_not_sealed(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    row = "runner beans;3 500 ml jars;pressure canned;larder;2026-10-01"
    head = "Item;Qty;Method;Where;Date;Minutes;PSI"
    text = f"{head};{heading}\n{row};25;11;{cell}\n{row};25;11;tight\n"
    found = import_list(p, written(tmp_path, text))
    assert found.booked, found
    asked, tight = p.stock.batches.values()
    assert asked.doubt
    assert not tight.doubt


@pytest.mark.parametrize("cell", ["maybe", "probably", "yes?", "think so"])
def test_a_seal_that_may_be_is_refused(p: Pantry, tmp_path: Path, cell: str) -> None:
    row = "runner beans;3 500 ml jars;pressure canned;larder;2026-10-01;25;11"
    text = f"Item;Qty;Method;Where;Date;Minutes;PSI;Seal\n{row};{cell}\n"
    (bad,) = import_list(p, written(tmp_path, text)).bad
    assert (bad.column, bad.value) == ("Seal", cell)

"""Which column of a list is what: guessed, said, and remembered for the next list like it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.importing import import_list
from pantry_tui.services.batchwork.mapped import Taken, begin, keep, look_at
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, undo

TODAY = date(2026, 11, 26)
HEAD = ("Stuff", "Qty", "Size", "Spot", "When")
ROWS = "plum jam,3 jars,500 ml,larder,3/4/2026\n"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", units="metric")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "larder", "pantry")
        yield pantry


def a_list(tmp_path: Path, rows: str = ROWS, name: str = "list.csv") -> Path:
    path = tmp_path / name
    path.write_text(f"{','.join(HEAD)}\n{rows}", encoding="utf-8")
    return path


def test_what_was_said_counts_and_the_rest_is_guessed() -> None:
    taken = Taken(HEAD)
    assert taken.fields == {"count": 1, "size": 2}
    taken = taken.but(0, "food").but(3, "place")
    assert taken.fields == {"count": 1, "size": 2, "food": 0, "place": 3}
    assert taken.but(1, "").field_of(1) == ""


def test_a_field_goes_to_one_column_and_the_other_is_left_out() -> None:
    taken = Taken(HEAD).but(4, "count")
    assert taken.fields["count"] == 4
    assert (taken.field_of(1), taken.left_out) == ("", frozenset({1}))
    assert taken.but(1, "count").field_of(4) == ""
    assert Taken(HEAD).but(1, "note").fields == {"size": 2, "note": 1}


def test_no_food_and_equal_headings_are_asked_until_they_are_said() -> None:
    twice = Taken(("Item", "Qty", "Qty"))
    assert [(one.typed, one.choices) for one in twice.asks()] == [("count", ("2", "3"))]
    assert not twice.but(2, "count").asks()
    assert not twice.but(1, "").asks()
    assert not twice.but(2, "vessel").asks()
    assert [one.typed for one in Taken(HEAD).asks()] == ["food"]


def test_what_was_said_is_remembered_for_the_same_headings_alone(p: Pantry, tmp_path: Path) -> None:
    sheet = look_at(a_list(tmp_path))
    assert not begin(p, sheet).recalled
    keep(p, begin(p, sheet).but(0, "food").but(3, "").in_order("mdy"))
    again = begin(p, look_at(a_list(tmp_path, name="next year.csv")))
    assert (again.recalled, again.fields["food"], again.left_out) == (True, 0, frozenset({3}))
    assert again.order == "mdy"
    other = tmp_path / "other.csv"
    other.write_text("Stuff,Qty,Size,Spot\na,b,c,d\n", encoding="utf-8")
    assert not begin(p, look_at(other)).recalled


def test_it_is_remembered_beside_the_log_and_survives_undo(p: Pantry, tmp_path: Path) -> None:
    path = a_list(tmp_path)
    events = len(p.events)
    found = import_list(p, path, columns="food=Stuff,place=Spot,made=When", order="mdy")
    assert (found.booked, found.recalled) == (True, False)
    undo.undo(p)
    found = import_list(p, path)
    assert (found.booked, found.recalled) == (True, True)
    assert [one.made for one in p.stock.batches.values()][-1] == date(2026, 3, 4)
    assert len(p.events) > events
    with open_pantry(p.path, TODAY) as other:
        assert begin(other, look_at(path)).recalled


def test_a_look_remembers_nothing(p: Pantry, tmp_path: Path) -> None:
    path = a_list(tmp_path)
    import_list(p, path, columns="food=Stuff,place=Spot", dry_run=True)
    assert not begin(p, look_at(path)).recalled


def test_what_is_said_now_goes_over_what_was_said_then(p: Pantry, tmp_path: Path) -> None:
    sheet = look_at(a_list(tmp_path))
    keep(p, begin(p, sheet).but(0, "food").but(3, "note").but(4, ""))
    taken = begin(p, sheet, "place=Spot,made=When")
    assert taken.fields == {"count": 1, "size": 2, "food": 0, "place": 3, "made": 4}


def test_days_of_a_new_list_that_cannot_be_in_the_old_order_are_not_read_so(
    p: Pantry, tmp_path: Path
) -> None:
    keep(p, Taken(HEAD).but(0, "food").but(3, "place").but(4, "made").in_order("mdy"))
    rows = ROWS + "plum jam,3 jars,500 ml,larder,25/4/2026\n"
    import_list(p, a_list(tmp_path, rows))
    assert {one.made for one in p.stock.batches.values()} == {date(2026, 4, 3), date(2026, 4, 25)}
    mixed = rows + "plum jam,3 jars,500 ml,larder,4/25/2026\n"
    assert [one.about for one in import_list(p, a_list(tmp_path, mixed)).asks] == ["dates"]


@pytest.mark.parametrize(
    ("text", "name", "written"),
    [
        ("Item;Qty\njam;0,5 kg\n", "l.csv", ("UTF-8", "semicolons", "0,5")),
        ("Item,Qty\njam,1.5 l\n", "l.csv", ("UTF-8", "commas", "1.5")),
        ("Item\tDate\njam\t3.4.2026\n", "l.tsv", ("UTF-8", "tabs", "")),
        ("Item;Qty\njam;1.000\n", "l.csv", ("UTF-8", "semicolons", "")),
    ],
)
def test_how_a_list_is_written_is_found(
    tmp_path: Path, text: str, name: str, written: tuple[str, str, str]
) -> None:
    (tmp_path / name).write_text(text, encoding="utf-8")
    assert tuple(look_at(tmp_path / name).written) == written


@pytest.mark.parametrize(
    ("encoding", "said"),
    [("utf-8-sig", "UTF-8"), ("utf-16", "UTF-16"), ("cp1252", "Windows western (cp1252)")],
)
def test_its_characters_are_found(tmp_path: Path, encoding: str, said: str) -> None:
    (tmp_path / "l.csv").write_bytes("Item,Note\ncrème,à point\n".encode(encoding))
    sheet = look_at(tmp_path / "l.csv")
    assert (sheet.written.encoding, sheet.headings) == (said, ("Item", "Note"))
    assert sheet.first == ((2, ("crème", "à point")),)


def test_a_byte_of_no_code_page_is_read_as_latin(tmp_path: Path) -> None:
    (tmp_path / "l.csv").write_bytes(b"Item,Note\ncr\xe8me,\x81\n")
    assert look_at(tmp_path / "l.csv").written.encoding == "Latin-1"


def test_columns_without_a_heading_are_columns_too(p: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "l.csv"
    path.write_text("Item,Qty,,Where\nplum jam,3,500 ml,larder,with cloves\n", encoding="utf-8")
    sheet = look_at(path)
    assert (sheet.width, sheet.heading(2), sheet.heading(4)) == (5, "column 3", "column 5")
    taken = begin(p, sheet).but(2, "size").but(4, "note")
    found = import_list(p, path, taken=taken)
    assert (found.bad, found.beyond, found.booked) == ([], [], True)
    assert found.columns["note"] == "column 5"
    (batch,) = p.stock.batches.values()
    assert (batch.note, batch.size) == ("with cloves", "500 ml")


def test_what_is_left_out_is_not_said_to_be_beyond(p: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "l.csv"
    path.write_text("Item,Qty,Size,Where\nplum jam,3,500 ml,larder,odd\n", encoding="utf-8")
    sheet = look_at(path)
    assert len(import_list(p, path, taken=begin(p, sheet), dry_run=True).beyond) == 1
    without = begin(p, sheet).but(4, "")
    assert not import_list(p, path, taken=without, dry_run=True).beyond


@pytest.mark.parametrize(
    ("name", "text"),
    [("empty.csv", b""), ("blank.csv", b"\n \n,,\n"), ("head.csv", b"Item,Qty\n"),
     ("letter.doc", b"x"), ("quote.csv", b'Item,Qty\n"plum jam,3\n'),
     ("zero.csv", b"It\0em,Qty\na,b\n"), ("long.csv", b"Item\n" + b"x" * 200_000 + b"\n")],
)  # fmt: skip
def test_what_is_no_list_says_so_in_a_sentence(tmp_path: Path, name: str, text: bytes) -> None:
    (tmp_path / name).write_bytes(text)
    with pytest.raises(BadInput):
        look_at(tmp_path / name)


def test_a_folder_and_a_file_that_may_not_be_read_say_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with pytest.raises(BadInput, match="is a folder"):
        look_at(tmp_path)
    (tmp_path / "like.csv").mkdir()
    with pytest.raises(BadInput, match="is a folder"):
        look_at(tmp_path / "like.csv")
    path = a_list(tmp_path)

    def refused(*_args: object, **_named: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refused)  # a superuser may read what has no permission
    with pytest.raises(BadInput, match="Permission denied"):
        look_at(path)


def test_a_wide_list_of_long_cells_is_read(p: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "wide.csv"
    heads = ",".join(f"c{n}" for n in range(500))
    path.write_text(f"{heads}\n{','.join(['x' * 200] * 500)}\n", encoding="utf-8")
    sheet = look_at(path)
    assert sheet.width == 500
    assert begin(p, sheet).but(499, "food").fields == {"food": 499}

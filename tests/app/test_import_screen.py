"""A household's own list in the app: its columns put right, looked through, then booked."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.filenames import rest_of
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens import busy
from pantry_tui.app.screens.ask import Choose
from pantry_tui.app.screens.busy import Busy
from pantry_tui.app.screens.due import DueScreen
from pantry_tui.app.screens.fileline import FileLine
from pantry_tui.app.screens.importing import ImportScreen
from pantry_tui.app.screens.page import Decide, Page
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, view
from tests.app.screens import painted
from tests.app.test_snapshots import check

TODAY = date(2026, 11, 25)
SIZES = [(80, 24), (120, 40)]
LIST = """Item;Qty;Container;Size;Where;Date;Remarks;Oven
plum jam;7;jars;500 ml;larder;13.9.2026;a bit "sweet";yes
peas;4;bags;0,5 kg;freezer;2.7.2026;"two
lines";no
crème fraîche;1;tub;250 ml;freezer;1.11.2026;;
"""


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", units="metric")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "larder", "pantry")
        places.add(pantry, "freezer", "freezer")
        yield pantry


def written(tmp_path: Path, text: str, name: str = "stock.csv", encoding: str = "utf-8") -> Path:
    path = tmp_path / name
    path.write_bytes(text.encode(encoding))
    return path


async def name_it(pilot: Pilot[None], path: Path) -> None:
    """The file is typed where the app asks for it."""
    await pilot.press("f12", "7")
    assert isinstance(pilot.app.screen, FileLine)
    pilot.app.screen.query_one(Input).value = str(path)
    await pilot.press("enter")
    await pilot.pause()


def standing(p: Pantry) -> int:
    return sum(row.count for row in view.due(p))


def words(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("#words Static", Static).content)


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("SaidLine", Static).content)


def fields(pilot: Pilot[None]) -> dict[str, int]:
    assert isinstance(pilot.app.screen, ImportScreen)
    return pilot.app.screen.taken.fields


@pytest.mark.parametrize("size", SIZES)
async def test_a_list_is_guessed_looked_through_and_booked_in_one_undo(
    p: Pantry, tmp_path: Path, size: tuple[int, int]
) -> None:
    path = written(tmp_path, LIST)
    async with PantryApp(p).run_test(size=size) as pilot:
        await name_it(pilot, path)
        check(f"import-{size[0]}x{size[1]}", painted(pilot).replace("\u00a0", " "))
        await pilot.press("f")
        assert isinstance(pilot.app.screen, Decide)
        assert "3 batches" in words(pilot)
        assert "Kept in the note: Oven" in words(pilot)
        assert standing(p) == 0
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, DueScreen)
        assert "3 batches of stock.csv: z takes all of them back" in said(pilot)
        assert standing(p) == 12
        await pilot.press("z")
        assert standing(p) == 0


@pytest.mark.parametrize("size", SIZES)
async def test_a_column_is_put_right_and_esc_keeps_it_for_the_next_time(
    p: Pantry, tmp_path: Path, size: tuple[int, int]
) -> None:
    path = written(tmp_path, "Stuff,Qty,Size,Spot,Oven\nplum jam,3 jars,500 ml,larder,no\n")
    async with PantryApp(p).run_test(size=size) as pilot:
        await name_it(pilot, path)
        assert fields(pilot) == {"count": 1, "size": 2}
        await pilot.press("f")
        assert "No column is the food yet" in said(pilot)
        await pilot.press("enter")
        assert isinstance(pilot.app.screen, Choose)
        await pilot.press("1", "down", "down", "down", "enter", "5", "up", "up", "x")
        assert fields(pilot) == {"size": 2, "food": 0, "place": 3}
        await pilot.press("enter", *"how m", "enter")
        assert fields(pilot)["count"] == 1, "found by letters"
        await pilot.press("escape")
        assert isinstance(pilot.app.screen, DueScreen)
        assert "is kept for this list" in said(pilot)
        await name_it(pilot, path)
        assert fields(pilot) == {"size": 2, "food": 0, "place": 3, "count": 1}
        assert "as you said of the last list" in " ".join(painted(pilot).split())
        await pilot.press("f", "enter")
        await pilot.pause()
        assert standing(p) == 3


async def test_what_the_app_was_told_the_command_line_knows(
    p: Pantry, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    from pantry_tui.cli.run import main

    path = written(tmp_path, "Stuff,Qty,Size,Spot\nplum jam,3 jars,500 ml,larder\n")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, path)
        await pilot.press("enter", "1", "down", "down", "down", "enter", "5", "escape")
    call = ["--store", str(p.path), "--today", TODAY.isoformat(), "import", str(path)]
    assert main([*call, "--dry-run"]) == 0
    out = capsys.readouterr().out
    assert "food: Stuff" in out
    assert "as you said of the last list with these headings" in out


@pytest.mark.parametrize(("key", "made"), [("1", date(2026, 4, 3)), ("2", date(2026, 3, 4))])
async def test_days_that_could_be_two_are_asked_once(
    p: Pantry, tmp_path: Path, key: str, made: date
) -> None:
    rows = "plum jam,3 jars,500 ml,larder,3/4/2026\n" * 3
    path = written(tmp_path, f"food,qty,size,place,date\n{rows}")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, path)
        await pilot.press("f")
        assert isinstance(pilot.app.screen, Choose)
        assert "3 Apr 2026" in painted(pilot)
        assert "4 Mar 2026" in painted(pilot)
        await pilot.press("escape", "f", key)
        assert isinstance(pilot.app.screen, Decide)
        await pilot.press("enter")
        await pilot.pause()
        assert {one.made for one in p.batches()} == {made}


async def test_every_bad_row_is_named_and_nothing_is_booked(p: Pantry, tmp_path: Path) -> None:
    bad = (
        "plum jam;1,5;jars;500 ml;attic;13.9.2026;;\nmystery goo;1;jar;500 ml;larder;1.11.2026;;\n"
    )
    path = written(tmp_path, LIST + bad)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, path)
        await pilot.press("f")
        assert type(pilot.app.screen) is Page, "there is no key that books it"
        assert "line 6, Qty '1,5'" in words(pilot)
        assert "line 7, Item 'mystery goo'" in words(pilot)
        await pilot.press("enter")
        assert isinstance(pilot.app.screen, ImportScreen), "the columns are as they were"
        assert standing(p) == 0
        written(tmp_path, LIST)
        await pilot.press("f", "enter")
        await pilot.pause()
        assert standing(p) == 12, "the mended file is read anew"


async def test_the_unit_of_bare_numbers_is_asked_once(p: Pantry, tmp_path: Path) -> None:
    text = "Item,Qty,Container,Weight,Where\npeas,4,bags,500,freezer\nspinach,2,bags,250,freezer\n"
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, written(tmp_path, text))
        await pilot.press("f")
        await pilot.pause()
        assert "500 has no unit" in painted(pilot)
        await pilot.press("2")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        sizes = sorted(one.size for one in p.stock.batches.values())
        assert sizes[-2:] == ["250 g bags", "500 g bags"]


async def test_a_file_that_changed_after_the_look_books_nothing_unseen(
    p: Pantry, tmp_path: Path
) -> None:
    path = written(tmp_path, LIST)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, path)
        await pilot.press("f")
        written(tmp_path, LIST + "plum jam;none;;;;;;\n")
        await pilot.press("enter")
        await pilot.pause()
        assert standing(p) == 0
        assert "cannot be booked" in words(pilot)
        await pilot.press("escape", "f")
        path.unlink()
        await pilot.press("escape", "f")
        assert "Not done" in painted(pilot)


HOSTILE: dict[str, tuple[str, bytes]] = {
    "empty": ("stock.csv", b""),
    "only headings": ("stock.csv", b"Item,Qty\n"),
    "not a list": ("stock.doc", b"x"),
    "an open quote": ("stock.csv", b'Item,Qty\n"plum jam,3\n'),
    "no text": ("stock.csv", b"It\0em,Qty\na,b\n"),
}


@pytest.mark.parametrize("case", list(HOSTILE))
async def test_a_file_that_is_no_list_stays_to_be_mended(
    p: Pantry, tmp_path: Path, case: str
) -> None:
    name, text = HOSTILE[case]
    (tmp_path / name).write_bytes(text)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, tmp_path / name)
        assert isinstance(pilot.app.screen, FileLine)
        assert "Not done" in painted(pilot)
        assert pilot.app.screen.query_one(Input).value.endswith(name)


async def test_a_folder_no_file_and_a_spreadsheet_without_its_reader_say_what_to_do(
    p: Pantry, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    (tmp_path / "list.xlsx").write_bytes(b"PK")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, tmp_path)
        assert "is a folder" in " ".join(painted(pilot).split())
        for name, sentence in (("none.csv", "No such file"), ("list.xlsx", "pip install openpyxl")):
            pilot.app.screen.query_one(Input).value = str(tmp_path / name)
            await pilot.press("enter")
            assert sentence in " ".join(painted(pilot).split())


@pytest.mark.parametrize(
    ("text", "encoding"),
    [
        ("Item\n7 pint jars plum jam larder\n", "utf-8"),
        (",".join(f"c{n}" for n in range(500)) + "\n" + ",".join(["x"] * 500) + "\n", "utf-8"),
        (f"Item,{'h' * 200}\n{'y' * 200},{'z' * 200}\n", "utf-8-sig"),
        ("Item,Qty,Qty\nplum jam,1,2\n", "utf-16"),
        ("Item;Größe\nKürbis;[b]100%[/b]\n", "latin-1"),
    ],
    ids=["one column", "500 columns", "long cells", "equal headings", "latin"],
)
@pytest.mark.parametrize("size", [(40, 12), *SIZES])
async def test_a_strange_list_is_shown_within_the_screen(
    p: Pantry, tmp_path: Path, text: str, encoding: str, size: tuple[int, int]
) -> None:
    path = written(tmp_path, text, encoding=encoding)
    async with PantryApp(p).run_test(size=size) as pilot:
        await name_it(pilot, path)
        assert isinstance(pilot.app.screen, ImportScreen)
        assert all(len(line) == size[0] for line in painted(pilot).splitlines())
        await pilot.press("end", "enter", "0", "home", "enter", "1")
        assert fields(pilot)["food"] == 0


async def test_equal_headings_are_asked_before_a_row_is_read(p: Pantry, tmp_path: Path) -> None:
    path = written(tmp_path, "Item,Qty,Qty,Size,Where\nplum jam,1,2,500 ml,larder\n")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, path)
        await pilot.press("f")
        assert "Columns 2 and 3 have one heading" in said(pilot)
        await pilot.press("down", "x", "f", "enter")
        await pilot.pause()
        assert standing(p) == 2


# -- long lists -----------------------------------------------------------------------------------


async def over(pilot: Pilot[None], come: Callable[[], bool]) -> None:
    """Looks again and again; gives up after many looks."""
    for _ in range(2000):
        if come():
            return
        await pilot.pause(0.01)
    raise AssertionError("it never came")


async def test_a_long_list_says_how_far_it_is_and_is_booked_beside_the_screen(
    p: Pantry, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(busy, "SHORT", 0)
    monkeypatch.setattr(busy, "SAYS_EVERY", 0.0)
    far: list[int] = []
    monkeypatch.setattr(Busy, "say", lambda _self, line: far.append(line))
    path = written(tmp_path, LIST)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, path)
        await pilot.press("f")
        await over(pilot, lambda: isinstance(pilot.app.screen, Decide))
        assert far == [2, 4, 5], "the line with which a row ends"
        await pilot.press("enter")
        await over(pilot, lambda: isinstance(pilot.app.screen, DueScreen))
        assert standing(p) == 12
        assert len(far) > 3
        await pilot.press("z")
        assert standing(p) == 0, "it was done at this sitting: nothing is asked"


async def test_a_long_list_can_be_stopped_and_nothing_is_booked(
    p: Pantry, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(busy, "SHORT", 0)
    monkeypatch.setattr(busy, "SAYS_EVERY", 0.0)
    looking = True

    def stop(self: Busy, line: int) -> None:
        if line > 2 and not looking:
            self.action_stop()

    monkeypatch.setattr(Busy, "say", stop)
    path = written(tmp_path, LIST)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await name_it(pilot, path)
        await pilot.press("f")
        await over(pilot, lambda: isinstance(pilot.app.screen, Decide))
        looking = False
        await pilot.press("enter")
        await over(pilot, lambda: "Stopped: nothing is booked" in painted(pilot))
        assert isinstance(pilot.app.screen, ImportScreen)
        assert standing(p) == 0


# -- where it is found ----------------------------------------------------------------------------


async def test_it_is_in_the_palette_too_and_not_in_a_browser(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("colon", *"import a list", "enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, FileLine)
    async with PantryApp(p, served=True).run_test(size=(80, 24)) as pilot:
        pilot.app.action_by_name("list")  # type: ignore[attr-defined]
        await pilot.pause()
        assert isinstance(pilot.app.screen, DueScreen)
        assert "Not in a browser" in said(pilot)


async def test_tab_completes_the_name_of_the_file(p: Pantry, tmp_path: Path) -> None:
    path = written(tmp_path, LIST)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("f12", "7")
        line = pilot.app.screen.query_one(Input)
        line.value = str(tmp_path / "stoc")
        await pilot.press("tab")
        assert line.value == str(path)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, ImportScreen)


def test_names_are_completed_as_far_as_they_are_settled(tmp_path: Path) -> None:
    for name in ("stock.csv", "stocks.tsv", "letter.doc", ".hidden.csv"):
        (tmp_path / name).write_text("x")
    (tmp_path / "lists").mkdir()
    ends = (".csv", ".tsv")

    def rest(begun: str) -> str:
        return rest_of(f"{tmp_path}/{begun}", ends)

    assert rest("s") == "tock"
    assert rest("stock.") == "csv"
    assert rest("stock") == ".csv", "the first of several that have no more in common"
    assert rest("li") == "sts/"
    assert rest("le") == ""
    assert rest(".h") == "idden.csv"
    assert rest("none/") == ""
    assert rest_of("\0", ends) == ""

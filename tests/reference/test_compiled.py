"""The compiled tables are the tables, for as long as nothing that they rest on has changed."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any

import pytest

import pantry_tui
from pantry_tui.core.safety.process_names import name_key
from pantry_tui.core.words import Method
from pantry_tui.errors import DataError
from pantry_tui.paths import cache_folder, data_dir
from pantry_tui.reference import (
    compiled,
    federal,
    outage,
    process,
    reading,
    rules_fingerprint,
    signs,
    tables,
    yields,
)
from pantry_tui.reference.cache import Parts
from pantry_tui.reference.compiled import NOTHING, parts_of
from pantry_tui.reference.fingerprint import contents, listing

Spoil = Callable[[str, int, str, str], None]
ROOT = Path(__file__).resolve().parents[2]

#: A day on which no file of the test is new any more.
LATER = 4_000_000_000 * 10**9

TABLES: dict[str, tuple[Callable[[Mapping[str, Any]], Any], Callable[[Path, Any], Any]]] = {
    "tables": (tables.unpack_tables, lambda folder, _: reading.read_tables(folder)),
    "processes": (process.unpack_processes, process.read_processes),
    "not_recommended": (process.unpack_not_recommended, process.read_not_recommended),
    "signs": (signs.unpack_signs, signs.read_signs),
    "outage": (outage.unpack_outage, outage.read_outage),
    "yields": (yields.unpack_yields, yields.read_yields),
    "federal": (federal.unpack_federal, federal.read_federal),
}
LOADERS = {
    "tables": (tables, tables.load_tables),
    "processes": (process, process.load_processes),
    "not_recommended": (process, process.load_not_recommended),
    "signs": (signs, signs.load_signs),
    "outage": (outage, outage.load_outage),
    "yields": (yields, yields.load_yields),
}


def exact(value: Any) -> Any:
    """`value` with the type of every cell beside it: a word of an enum equals its text, 1 equals
    1.0 and True, and none may stand for another here."""
    if is_dataclass(value) and not isinstance(value, type):
        cells = {field.name: exact(getattr(value, field.name)) for field in fields(value)}
        cells.pop("keys", None)  # of Tables: known before only where it is compiled
        cells.pop("letters", None)
        return type(value), cells
    if isinstance(value, Mapping):
        return [(exact(key), exact(value[key])) for key in value]
    if isinstance(value, frozenset):
        return frozenset, frozenset(map(exact, value))
    if isinstance(value, Sequence) and not isinstance(value, str):
        return tuple(map(exact, value))
    return type(value), value


@pytest.fixture
def file(tmp_path: Path) -> str:
    return str(tmp_path / "cache" / "pantry-tui" / "reference")


@pytest.fixture(scope="module")
def shipped(tmp_path_factory: pytest.TempPathFactory) -> Parts:
    """The tables that ship with the program, out of their file."""
    path = str(tmp_path_factory.mktemp("cache") / "reference")
    parts_of(str(data_dir()), path, LATER)
    found = parts_of(str(data_dir()), path, LATER)
    assert found is not NOTHING
    return found


def frozen_rule(parts: Mapping[str, Any], at: int = 0) -> Any:
    return tables.unpack_tables(parts).rules[Method.FROZEN][at]


# -- the same rows -------------------------------------------------------------------------------


@pytest.mark.parametrize("name", TABLES)
def test_every_row_comes_back_as_it_was_read(shipped: Parts, name: str) -> None:
    unpack, read = TABLES[name]
    again, fresh = exact(unpack(shipped)), exact(read(data_dir(), tables.load_tables()))
    assert again == fresh
    assert len(repr(fresh)) > 5000  # so that two empty tables are not the same table


def test_every_name_finds_the_same_food_and_a_strange_one_the_same_near_ones(
    shipped: Parts,
) -> None:
    fresh, again = reading.read_tables(data_dir()), tables.unpack_tables(shipped)
    for food in fresh.foods:
        for name in (food.name, *food.aliases, f"{food.name}, sliced"):
            assert again.facts(name) == fresh.facts(name) is not None, name
    for strange in ("", "moon cheese", "tomatos", "bean", "brocoli"):
        assert again.facts(strange) == fresh.facts(strange)
        assert again.index.near(strange) == fresh.index.near(strange)


def test_the_processes_of_a_name_are_those_of_the_whole_table(shipped: Parts) -> None:
    every = process.unpack_processes(shipped)
    names = {row.food for row in every} | {food.name for food in tables.load_tables().foods}
    found = 0
    for name in (*sorted(names), "moon cheese", ""):
        rows = tuple(row for row in every if name_key(name) in row.names)
        assert process.unpack_processes_named(shipped, name) == rows
        assert process.processes_named(name) == rows
        found += len(rows)
    assert found >= len(every)


def test_processes_come_in_the_order_of_the_table(folder: Path, file: str) -> None:
    """Though its rows of one name do not stand together."""
    path = folder / "process.csv"
    head, *rows = path.read_text(encoding="utf-8").splitlines(keepends=True)
    path.write_text(head + "".join(rows[::2] + rows[1::2]), encoding="utf-8")
    parts, fresh = parts_of(str(folder), file, LATER), reading.read_tables(folder)
    every = process.read_processes(folder, fresh)
    assert process.unpack_processes(parts) == every
    name = every[0].food
    mine = tuple(row for row in every if name_key(name) in row.names)
    assert process.unpack_processes_named(parts, name) == mine


def test_what_is_not_asked_for_is_not_loaded(shipped: Parts) -> None:
    asked: list[str] = []

    class Watched(dict[str, Any]):
        def __getitem__(self, name: str) -> Any:
            asked.append(name)
            return shipped[name]

    all_of = tables.unpack_tables(Watched())
    assert all_of.facts("beef") is not None
    assert sorted(asked) == ["foods/b", "letters"]
    assert all_of.facts("green beans") is not None
    assert {"foods", "names"} < set(asked)
    assert not any(part.startswith("rules") for part in asked)
    asked.clear()
    assert all_of.book.of(Method.FROZEN)
    assert all_of.book.of(Method.FROZEN)
    assert sorted(asked) == ["rules", "rules/frozen"]
    asked.clear()
    assert process.unpack_processes_named(Watched(), "snap beans")
    assert len(asked) <= 4


def test_the_foods_are_a_sequence_like_any_other(shipped: Parts) -> None:
    rows, whole = tables.unpack_tables(shipped).foods, reading.read_tables(data_dir()).foods
    assert (rows[0], rows[-1], rows[2:5]) == (whole[0], whole[-1], whole[2:5])
    assert rows[-1] is rows[len(rows) - 1]
    with pytest.raises(IndexError):
        rows[len(whole)]


# -- never for changed data ----------------------------------------------------------------------


def test_a_changed_cell_is_seen(folder: Path, file: str, spoil: Spoil) -> None:
    before = parts_of(str(folder), file, LATER)
    assert frozen_rule(before).wording != "As the test says."
    row = next(
        number
        for number, line in enumerate((folder / "keeping.csv").read_text().splitlines(), start=1)
        if line.startswith(frozen_rule(before).id + ",")
    )
    spoil("keeping.csv", row, "wording", "As the test says.")
    after = parts_of(str(folder), file, LATER)
    assert frozen_rule(after).wording == "As the test says."
    assert after.fingerprint != before.fingerprint
    assert frozen_rule(parts_of(str(folder), file, LATER)).wording == "As the test says."
    assert frozen_rule(before, 1) == frozen_rule(after, 1)  # what was read before goes on


@pytest.mark.skipif(os.name == "nt", reason="Windows keeps no time of the last change of any kind")
def test_a_change_of_the_same_size_and_time_is_seen(folder: Path, file: str) -> None:
    path = folder / "sources.csv"
    before = parts_of(str(folder), file, LATER)
    times, text = path.stat(), path.read_bytes()
    path.write_bytes(text.replace(b"United", b"UNITED").replace(b"Storage", b"STORAGE"))
    os.utime(path, ns=(times.st_atime_ns, times.st_mtime_ns))
    assert (path.stat().st_size, path.stat().st_mtime_ns) == (times.st_size, times.st_mtime_ns)
    after = parts_of(str(folder), file, LATER)
    assert "STORAGE" in repr(after["sources"])
    assert "STORAGE" not in repr(before["sources"])


def test_a_new_time_alone_keeps_the_fingerprint(folder: Path, file: str) -> None:
    """So that a reinstalled program does not judge a whole store again."""
    before = parts_of(str(folder), file, LATER)
    key = listing(str(folder))[0]
    os.utime(folder / "foods.csv", ns=(1, 1))
    assert listing(str(folder))[0] != key
    assert parts_of(str(folder), file, LATER).fingerprint == before.fingerprint


def test_a_table_just_changed_is_not_compiled(folder: Path, file: str) -> None:
    """It may change again and show the same times."""
    newest = listing(str(folder))[1]
    assert parts_of(str(folder), file, newest + 10**9) is NOTHING
    assert not Path(file).exists()
    assert parts_of(str(folder), file, newest + 3 * 10**9) is not NOTHING


def test_another_program_makes_the_file_anew(
    folder: Path, file: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = parts_of(str(folder), file, LATER)
    old = Path(file).read_bytes()
    monkeypatch.setattr(pantry_tui, "__version__", "99.0")
    after = parts_of(str(folder), file, LATER)
    assert after.fingerprint != before.fingerprint
    assert Path(file).read_bytes() != old
    assert exact(tables.unpack_tables(after)) == exact(tables.unpack_tables(before))


@pytest.mark.parametrize("changed", ["core/keeping/limits.py", "reference/names.py"])
def test_changed_code_is_another_fingerprint(tmp_path: Path, changed: str) -> None:
    package, data = str(tmp_path / "pantry_tui"), str(data_dir())
    for room in ("core", "reference"):
        shutil.copytree(Path(pantry_tui.__file__).parent / room, tmp_path / "pantry_tui" / room)
    key, said = listing(data, package)[0], contents(data, package)
    assert (listing(data, package)[0], contents(data, package)) == (key, said)
    assert contents(data) == said  # wherever the program lies
    with (tmp_path / "pantry_tui" / changed).open("a") as handle:
        handle.write("\n")
    assert listing(data, package)[0] != key
    assert contents(data, package) != said


def test_a_change_while_it_is_compiled_leaves_no_file(
    folder: Path, file: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    compile_ = compiled._compile

    def changed_meanwhile(data: str) -> dict[str, Any]:
        (folder / "yields.csv").touch()
        return compile_(data)

    monkeypatch.setattr(compiled, "_compile", changed_meanwhile)
    assert parts_of(str(folder), file, LATER) is NOTHING
    assert list(Path(file).parent.iterdir()) == []


# -- bad cells -----------------------------------------------------------------------------------


def test_a_bad_cell_is_told_as_ever_and_hides_no_other_table(
    folder: Path, file: str, spoil: Spoil, monkeypatch: pytest.MonkeyPatch
) -> None:
    spoil("signs.csv", 4, "verdict", "probably fine")
    parts = parts_of(str(folder), file, LATER)
    assert "signs" not in parts
    assert exact(outage.unpack_outage(parts)) == exact(outage.load_outage())
    monkeypatch.setattr(signs, "compiled", lambda: parts)
    monkeypatch.setattr(signs, "data_dir", lambda: folder)
    with pytest.raises(DataError, match=r"signs\.csv row 4, column verdict: 'probably fine'"):
        signs.load_signs.__wrapped__()


def test_a_bad_cell_of_the_first_tables_is_told_as_ever(
    folder: Path, file: str, spoil: Spoil, monkeypatch: pytest.MonkeyPatch
) -> None:
    spoil("foods.csv", 5, "acidity", "sour")
    parts = parts_of(str(folder), file, LATER)
    monkeypatch.setattr(tables, "compiled", lambda: parts)
    monkeypatch.setattr(tables, "data_dir", lambda: folder)
    for _ in range(2):
        with pytest.raises(DataError, match=r"foods\.csv row 5, column acidity: 'sour'"):
            tables.load_tables.__wrapped__()


# -- without a file ------------------------------------------------------------------------------


@pytest.mark.parametrize("name", LOADERS)
def test_every_table_is_there_without_a_file(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    module, load = LOADERS[name]
    monkeypatch.setattr(module, "compiled", lambda: NOTHING)
    assert exact(load.__wrapped__()) == exact(load())


def test_the_processes_of_a_name_are_there_without_a_file(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(process, "compiled", lambda: NOTHING)
    found = process.processes_named.__wrapped__("snap beans")
    assert found == process.processes_named("snap beans") != ()


@pytest.mark.parametrize("where", ["", "beside", "/dev/null/no"])
def test_a_folder_that_cannot_be_written_is_done_without(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, where: str
) -> None:
    (tmp_path / "taken").write_text("no folder")
    monkeypatch.setenv("HOME", str(tmp_path / "taken"))
    monkeypatch.setenv("XDG_CACHE_HOME", where)
    monkeypatch.setattr(compiled, "compiled", compiled.compiled.__wrapped__)
    assert compiled.compiled() is NOTHING
    assert compiled.rules_fingerprint.__wrapped__() == contents(str(data_dir()))


def test_the_cache_folder_is_the_one_named_else_at_home(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("HOME", "/home/somebody")
    monkeypatch.setenv("XDG_CACHE_HOME", "/var/tmp/somewhere")
    assert cache_folder() == "/var/tmp/somewhere/pantry-tui"
    for passed_over in ("", "here/below"):
        monkeypatch.setenv("XDG_CACHE_HOME", passed_over)
        assert cache_folder() == "/home/somebody/.cache/pantry-tui"


def test_no_tables_at_all_is_one_sentence(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(compiled, "compiled", lambda: NOTHING)
    monkeypatch.setattr(compiled, "data_folder", lambda: str(tmp_path / "nowhere"))
    with pytest.raises(DataError, match="reinstall"):
        compiled.rules_fingerprint.__wrapped__()
    assert parts_of(str(tmp_path / "nowhere"), str(tmp_path / "file"), LATER) is NOTHING


# -- what a start loads --------------------------------------------------------------------------

PROBE = """
import sys, time
time.time_ns = lambda: 0
from pantry_tui.core.words import Method
from pantry_tui.reference import rules_fingerprint
from pantry_tui.reference.tables import load_tables
rule = load_tables().book.of(Method.FROZEN)[0]
print(load_tables().facts("green beans").name, load_tables().cite(rule), rules_fingerprint())
heavy = {"csv", "pathlib", "difflib", "hashlib", "tempfile", "json", "dateutil", "pickle"}
print(*sorted(heavy & {name.partition(".")[0] for name in sys.modules}))
"""


def probes(folder: Path) -> Iterator[list[str]]:
    while True:
        done = subprocess.run(
            [sys.executable, "-S", "-c", PROBE],
            cwd=ROOT,
            env={**os.environ, "XDG_CACHE_HOME": str(folder), "PYTHONPATH": str(ROOT)},
            capture_output=True,
            text=True,
            check=True,
        )
        yield done.stdout.splitlines()


def test_the_second_start_parses_nothing_and_answers_the_same(tmp_path: Path) -> None:
    run = probes(tmp_path)
    (answer, first), (again, second) = next(run), next(run)
    assert "csv" in first.split()
    assert second == ""
    assert answer == again
    assert answer.endswith(rules_fingerprint())

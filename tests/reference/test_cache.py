"""The file of the compiled tables: whole or not there, and never believed when it is neither."""

from __future__ import annotations

import os
import pickle
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.words import Climate, State
from pantry_tui.reference.cache import load, read, replace, written
from pantry_tui.reference.compiled import NOTHING, parts_of
from pantry_tui.reference.packing import Packing

ROOT = Path(__file__).resolve().parents[2]
KEY = b"0.2.0 foods.csv 12 34"
PARTS = {"rules/frozen": (("a", 1.5, None), ("b", 2, frozenset({"x"}))), "names": {("ä",): 3}}
TEXT = written(KEY, "f00d", PARTS)

PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(),
    lambda inner: st.lists(inner, max_size=4).map(tuple) | st.dictionaries(st.text(), inner),
)


@settings(max_examples=40)
@given(st.binary(), st.text(), st.dictionaries(st.text(), PLAIN))
def test_what_is_written_is_read(key: bytes, fingerprint: str, parts: dict[str, object]) -> None:
    found = read(written(key, fingerprint, parts), key)
    assert found is not None
    assert found.fingerprint == fingerprint
    assert repr(dict(found)) == repr(parts)


@given(st.binary())
def test_it_stands_for_nothing_else(key: bytes) -> None:
    assert (read(TEXT, key) is not None) == (key == KEY)


def test_no_flipped_bit_and_no_lost_end_is_believed() -> None:
    assert read(TEXT, KEY) is not None
    for at in range(len(TEXT)):
        for bit in (1, 128):
            flipped = bytes((*TEXT[:at], TEXT[at] ^ bit, *TEXT[at + 1 :]))
            assert read(flipped, KEY) is None, at
        assert read(TEXT[:at], KEY) is None, at
    assert read(TEXT + b"\0", KEY) is None


class Trap:
    """Makes a file where it is unpickled."""

    def __init__(self, path: str) -> None:
        self.path = path

    def __reduce__(self) -> tuple[object, ...]:
        return os.mkdir, (self.path,)


def foreign(tmp_path: Path) -> dict[str, bytes]:
    return {
        "empty": b"",
        "another program's": b"SQLite format 3\0" + bytes(5000),
        "pickle": pickle.dumps(Trap(str(tmp_path / "sprung"))),
        "cut": TEXT[: len(TEXT) // 2],
        "text": "Grüße\n".encode() * 1000,
    }


@pytest.mark.parametrize("kind", ["empty", "another program's", "pickle", "cut", "text"])
def test_a_foreign_file_is_passed_over_and_replaced(
    folder: Path, tmp_path: Path, kind: str
) -> None:
    later = 4_000_000_000 * 10**9
    path = tmp_path / "reference"
    parts_of(str(folder), str(path), later)
    right = path.read_bytes()
    path.write_bytes(foreign(tmp_path)[kind])
    found = parts_of(str(folder), str(path), later)
    assert found is not NOTHING
    assert len(found["foods"]) > 80
    assert not (tmp_path / "sprung").exists()
    assert len(path.read_bytes()) == len(right)
    assert parts_of(str(folder), str(path), later).fingerprint == found.fingerprint


def test_a_damaged_file_is_made_anew(folder: Path, tmp_path: Path) -> None:
    later = 4_000_000_000 * 10**9
    path = tmp_path / "reference"
    parts_of(str(folder), str(path), later)
    right = path.read_bytes()
    wrong = bytearray(right)
    wrong[len(wrong) // 2] ^= 4
    path.write_bytes(bytes(wrong))
    assert dict(parts_of(str(folder), str(path), later))
    assert path.read_bytes() != bytes(wrong)


# -- replacing -----------------------------------------------------------------------------------


def test_a_folder_in_the_file_s_stead_is_done_without(tmp_path: Path) -> None:
    (tmp_path / "reference" / "full").mkdir(parents=True)
    path = str(tmp_path / "reference")
    assert load(path, KEY) is None
    assert replace(path, lambda: TEXT) == TEXT  # made, though it cannot be put there
    assert [one.name for one in tmp_path.iterdir()] == ["reference"]


def test_where_nothing_can_be_written_nothing_is_made(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("no folder")

    def made() -> bytes:
        raise AssertionError("work done for nothing")

    assert replace(str(tmp_path / "taken" / "reference"), made) is None


def test_a_full_disk_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "reference"
    path.write_bytes(b"old")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    assert replace(str(path), lambda: TEXT) == TEXT
    assert [(one.name, one.read_bytes()) for one in tmp_path.iterdir()] == [("reference", b"old")]


@pytest.mark.parametrize("error", [KeyboardInterrupt, ValueError])
def test_what_fails_midway_leaves_nothing_behind(
    tmp_path: Path, error: type[BaseException]
) -> None:
    def fails() -> bytes:
        raise error

    with pytest.raises(error):
        replace(str(tmp_path / "reference"), fails)
    assert list(tmp_path.iterdir()) == []


WRITER = """
import sys
from pantry_tui.reference.cache import read, replace, written

path, own = sys.argv[1], sys.argv[2]
texts = {key: written(key.encode(), key, {"rows": (key,) * 50_000}) for key in ("one", "two")}
for _ in range(60):
    assert replace(path, lambda: texts[own]) == texts[own]
    with open(path, "rb") as handle:
        text = handle.read()
    found = read(text, b"one") or read(text, b"two")
    assert found is not None, "half a file"
    assert set(found["rows"]) == {found.fingerprint}
"""


def test_two_processes_never_leave_half_a_file(tmp_path: Path) -> None:
    path = tmp_path / "reference"
    running = [
        subprocess.Popen(
            [sys.executable, "-c", WRITER, str(path), own],
            cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            stderr=subprocess.PIPE,
            text=True,
        )
        for own in ("one", "two")
    ]
    said = [process.communicate(timeout=120)[1] for process in running]
    assert [process.returncode for process in running] == [0, 0], said
    assert [one.name for one in tmp_path.iterdir()] == ["reference"]


# -- packing -------------------------------------------------------------------------------------


class Row:
    __match_args__ = ("place", "states")

    def __init__(self, place: object, states: object) -> None:
        self.place, self.states = place, states


def test_a_packing_refuses_what_would_not_come_back() -> None:
    row = Row(Climate.FRIDGE, frozenset({State.OPEN}))
    whole = Packing(Row, place=Climate, states=State)
    back = whole.unpack(whole.pack(row))
    assert back.place is Climate.FRIDGE
    assert {type(state) for state in back.states} == {State}  # type: ignore[attr-defined]
    for lacking in (Packing(Row, place=Climate), Packing(Row, states=State)):
        with pytest.raises(TypeError, match="enum"):
            lacking.pack(row)
    with pytest.raises(TypeError, match="packed"):
        whole.pack(Row([], ()))

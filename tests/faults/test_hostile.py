"""Whatever is typed, imported, set or lies in the store file: a reading or one sentence, no
traceback, and nothing booked by half. `PANTRY_EXAMPLES=50` tries fifty times as much."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.amounts import exact_amount, read_altitude, read_amount, read_temperature
from pantry_tui.core.dates import read_coming, read_date
from pantry_tui.core.log.document import document, read_document
from pantry_tui.errors import PantryError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.safekeeping.backup import restore
from pantry_tui.services.safekeeping.transfer import import_log
from pantry_tui.services.safekeeping.verify import save, verify
from pantry_tui.services.stock import view
from pantry_tui.settings import read_settings, settings_file
from tests.examples import many

TODAY = date(2026, 11, 25)


@contextmanager
def one_sentence() -> Iterator[None]:
    """It goes well, or is refused in a sentence of bearable length."""
    said = "fine"
    try:
        yield
    except PantryError as error:
        said = error.message.strip()
    assert 0 < len(said) < 2_000


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Pantry]:
    path = tmp_path_factory.mktemp("hostile") / "pantry.db"
    build_demo(path, TODAY)
    with open_pantry(path, TODAY) as p:
        yield p


#: Pieces of lines that people type, so that chance comes near to sense.
PIECES = (
    "3", "7 pint jars", "peaches", "runner beans", "boiling-water canned", "frozen", "minutes=",
    "larder", "yesterday", "made unknown", "20 lb", "1/0", "1e9", "½", "-5", "=", ",", ";", "note=",
    "psi=11", "2026-02-30", "99999999999", "from 2 lb of 2A", "\x9b", "\u202e", "\ud800", "\x00",
    "🥕",
)  # fmt: skip
TEXT = st.text(max_size=200)
LINES = st.one_of(TEXT, st.lists(st.sampled_from(PIECES), max_size=12).map(" ".join))


@given(line=LINES)
@settings(max_examples=many(30))
def test_any_line_is_read_or_asked_about(shop: Pantry, line: str) -> None:
    before = len(shop.events)
    with one_sentence():
        putup.read(shop, line)
    assert len(shop.events) == before


@given(
    text=st.one_of(TEXT, st.sampled_from(PIECES), st.from_regex(r"-?\d{1,400}(/\d{0,9})? ?\w{0,4}"))
)
@settings(max_examples=many(100))
def test_any_amount_date_and_temperature_is_read_or_refused(text: str) -> None:
    for read in (read_amount, read_altitude, read_temperature):
        with one_sentence():
            read(text)
    for read_day in (read_date, read_coming):
        with one_sentence():
            read_day(text, TODAY)
    with suppress(ValueError):
        exact_amount(text)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | TEXT,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(TEXT, inner, max_size=4),
    max_leaves=12,
)


@given(data=st.data())
@settings(max_examples=many(6))
def test_a_log_with_anything_in_it_is_whole_or_refused(shop: Pantry, data: st.DataObject) -> None:
    """One part of one event becomes something else."""
    rows: dict[str, Any] = json.loads(document(shop.events))
    event = data.draw(st.sampled_from(rows["events"]))
    within = event["says"] if data.draw(st.booleans()) and event["says"] else event
    key = data.draw(st.sampled_from(sorted(within)))
    within[key] = data.draw(JSON)
    with tempfile.TemporaryDirectory() as folder:
        source, store = Path(folder) / "log.json", Path(folder) / "store.db"
        source.write_text(json.dumps(rows), encoding="utf-8")
        create(store)
        before = store.read_bytes()
        came = False
        with one_sentence():
            import_log(store, source, TODAY)
            came = True
        assert came or store.read_bytes() == before
        with open_pantry(store, TODAY) as p:
            view.due(p)
        assert verify(store, TODAY).ok


@given(text=st.one_of(TEXT, JSON.map(json.dumps), st.binary(max_size=300)))
@settings(max_examples=many(40))
def test_any_document_is_read_or_refused(text: str | bytes) -> None:
    with one_sentence():
        read_document(text if isinstance(text, str) else text.decode("utf-8", "replace"))


@given(
    text=st.one_of(TEXT, st.sampled_from(("[keys]\n", "[backups]\n", "backups = 3\n"))), more=JSON
)
@settings(max_examples=many(30))
def test_any_settings_are_read_or_said(text: str, more: object) -> None:
    settings_file().parent.mkdir(parents=True, exist_ok=True)
    line = f"folder = {json.dumps(more)}\n" if not isinstance(more, dict) else ""
    settings_file().write_bytes((text + line).encode("utf-8", "surrogatepass"))
    found = read_settings()
    assert found.backups.days >= 1
    assert all(len(one) < 2_000 for one in found.wrong)


@given(content=st.binary(max_size=3000), at=st.integers(0, 300_000))
@settings(max_examples=many(8))
def test_any_bytes_in_a_store_are_said(shop: Pantry, content: bytes, at: int) -> None:
    whole = shop.path.read_bytes()
    with tempfile.TemporaryDirectory() as folder:
        path, new = Path(folder) / "pantry.db", Path(folder) / "new.db"
        path.write_bytes(whole[:at] + content + whole[at + len(content) :])
        for do in (
            lambda: open_pantry(path, TODAY).close(),
            lambda: verify(path, TODAY),
            lambda: save(path, new),
            lambda: restore(new, path),
        ):
            with one_sentence():
                do()

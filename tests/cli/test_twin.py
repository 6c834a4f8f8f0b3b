"""Every command that only reads, and every paper, of the metric twin of the demo is free of pounds
and Fahrenheit; those of the demo itself of litres and °C."""

from __future__ import annotations

import contextlib
import io
import json
import re
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.cli import main
from pantry_tui.services.demo import build_demo
from tests.once import once, shared
from tests.twin import american, build_twin, metric

TODAY = date(2027, 1, 15)
READS = (
    "due", "shelves", "find pea", "jobs --within 90d", "log", "place list", "week", "outlook",
    "year", "losses", "household", "household days", "household appetite",
    "household dish list", "household substitute list", "jars", "timer", "added", "signs",
    "sheet due", "sheet opened", "sheet week", "sheet fridge", "sheet due --html",
    "labels 7A 9H 2M", "labels 7A --html", "count", "count fridge", "recall 3M", "help",
    "help first-evening", "help glut-of-beans", "help planning-the-winter", "help power-cut",
    "help stock-check", "help suspect-jar",
    "shelf-life frozen beef", "shelf-life dried apples", "shelf-life cellar-stored carrots",
    "shelf-life frozen peas --in freezer", "methods {kilos} carrots", "methods {kilos} tomatoes",
    "methods {kilos} cabbages", "methods {kilos} apples", "methods {kilos} ground beef",
    "process carrots --jar {quart} --canner dial", "process salsa --jar {pint} --canner weighted",
    "process tomatoes --jar {quart} --canner boiling-water",
    "calc drysalt {kilos} cabbage", "calc vinegar 5% equal parts", "calc drying {kilos} carrots",
    "calc conditioning apples", "calc blanching carrots", "calc yield {kilos} tomatoes",
    "calc headspace peaches --jar quart", "calc packs {kilos} broccoli",
    "calc cure {kilos} ground pork", "calc smoking trout", "calc boil {psi}",
)  # fmt: skip
KITCHEN = {
    "metric": {"kilos": "4 kg", "quart": "1litre", "pint": "500ml", "psi": "76kPa"},
    "us": {"kilos": "9 lb", "quart": "quart", "pint": "pint", "psi": "11 psi"},
}
#: Titles of publications, the name of a published recipe; how a key of a record is typed.
TITLES = (
    "meats at 37 F", "Chart at 70 F", "3,000 to 10,000 ft", "psi=", "--psi",
    "(6 cups tomatoes, 9 cups onions/peppers)", "units: us",
)  # fmt: skip
#: What the demo typed.
LITRES = ("1 litre bottle", "5 litre crock")


def _make(build: Any) -> Any:
    return lambda folder: build(folder / "store.db", TODAY)


@pytest.fixture(scope="module")
def stores(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    root = shared(tmp_path_factory)
    return {
        "metric": once(root, "twin", _make(build_twin)) / "store.db",
        "us": once(root, "us-demo", _make(build_demo)) / "store.db",
    }


def said(store: Path, *words: str) -> str:
    """What a command says, on either stream."""
    out = io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(out):
        main(["--store", str(store), "--today", TODAY.isoformat(), *words])
    return out.getvalue()


@pytest.mark.parametrize("line", READS)
def test_a_metric_household_reads_no_pounds(stores: dict[str, Path], line: str) -> None:
    text = said(stores["metric"], *line.format(**KITCHEN["metric"]).split())
    assert text
    assert american(text, *TITLES) == []


@pytest.mark.parametrize("line", READS)
def test_a_us_household_reads_no_litres(stores: dict[str, Path], line: str) -> None:
    text = said(stores["us"], *line.format(**KITCHEN["us"]).split())
    assert text
    assert metric(re.sub(r"<style>.*?</style>", "", text), *LITRES) == []


def test_every_batch_of_a_metric_household_is_told_in_metric(stores: dict[str, Path]) -> None:
    found = json.loads(said(stores["metric"], "due", "--json"))
    for code in sorted({row["code"] for row in found}):
        for verb in ("show", "record", "log"):
            text = said(stores["metric"], verb, code)
            assert american(text, *TITLES) == [], (verb, code)


def test_the_calendar_of_a_metric_household_is_metric(
    stores: dict[str, Path], tmp_path: Path
) -> None:
    said(stores["metric"], "calendar", str(tmp_path / "dates.ics"))
    text = (tmp_path / "dates.ics").read_text().replace("\n ", "")
    assert text.count("BEGIN:VEVENT") > 20
    assert american(text, *TITLES) == []


def test_sentences_of_json_follow_the_household_and_its_fields_do_not(
    stores: dict[str, Path],
) -> None:
    shelves = json.loads(said(stores["metric"], "shelves", "--json"))
    cellar = next(one for one in shelves if one["place"] == "cellar")
    assert cellar["temperature"].endswith(" F")
    sentences = [why for one in shelves for row in one["rows"] for why in row["reasons"]]
    assert any("°C" in one for one in sentences)
    assert american("\n".join(sentences), *TITLES) == []


def test_what_the_household_called_a_thing_stays_as_it_called_it(tmp_path: Path) -> None:
    store = tmp_path / "store.db"
    said(store, "init", "--units", "metric", "--altitude", "900m")
    said(store, "place", "add", "the 5 gallon shelf", "--climate", "pantry")
    words = ("--food", "apples", "--method", "dried", "--count", "3", "--size", "1 lb bags")
    where = ("--place", "the 5 gallon shelf", "--note", "from the 20 lb box")
    code = json.loads(said(store, "putup", *words, *where, "--json"))["code"]
    whole = said(store, "shelves") + said(store, "show", code) + said(store, "place", "list")
    assert "the 5 gallon shelf" in whole
    assert "from the 20 lb box" in whole
    assert "1 lb bag" in whole
    assert "altitude: 900 m" in said(store, "household")


def test_a_us_household_types_celsius_and_reads_fahrenheit(stores: dict[str, Path]) -> None:
    store = stores["us"].parent / "typed.db"
    store.unlink(missing_ok=True)
    store.write_bytes(stores["us"].read_bytes())
    assert "37.4 °F" in said(store, "reading", "fridge", "3C", "--since", "10m")


def test_a_place_without_its_climate_asks_for_it(stores: dict[str, Path]) -> None:
    text = said(stores["us"], "place", "add", "attic")
    assert "None" not in text
    assert "--climate" in text
    assert "pantry" in text

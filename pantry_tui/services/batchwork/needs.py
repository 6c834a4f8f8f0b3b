"""What a way of keeping a glut gives and asks for: jars and lids, salt, vinegar, hours, gear."""

from __future__ import annotations

from typing import NamedTuple

from pantry_tui.core.batchwork.balance import dried_g, full
from pantry_tui.core.batchwork.brine import dry
from pantry_tui.core.batchwork.kitchen import GRAMS
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.jars import JARS
from pantry_tui.core.words import Group, Method
from pantry_tui.reference.batchwork import DryingRow, Figure
from pantry_tui.reference.process import processes_named
from pantry_tui.reference.yields import Yield, load_yields
from pantry_tui.services.batchwork.calc.answer import Books, span, tidy
from pantry_tui.services.lookup.process import process

_POUND = float(GRAMS["lb"])
_LIDDED = (Method.BOILING_WATER, Method.PRESSURE, Method.VINEGAR_PICKLE, Method.JAM)
_GEAR = {
    Method.BOILING_WATER: "boiling-water canner, jar lifter",
    Method.PRESSURE: "pressure canner with a gauge that was tested",
    Method.VINEGAR_PICKLE: "boiling-water canner",
    Method.JAM: "boiling-water canner, wide pan",
    Method.DRIED: "dryer or oven at its air",
    Method.FROZEN: "bags or boxes, a freezer at 0 °F",
    Method.LACTIC: "crock or jar, a weight, scales for the salt",
    Method.HOT_SMOKED: "smoker, thermometer for the inside",
    Method.CELLAR: "a cold damp place and crates",
}


class Glut(NamedTuple):
    """What there is too much of; `pounds` None where no amount was said."""

    food: FoodFacts
    pounds: float | None


class Needs(NamedTuple):
    """What a way asks for, what is to be known of it, and where that is from."""

    needs: dict[str, str]
    reasons: tuple[str, ...]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]


def _yield(glut: Glut, method: Method, product: FoodFacts) -> Yield | None:
    """The yield of the product, where it is made of this crop."""
    row = load_yields().get((product.name, method))
    return row if row is not None and glut.food.name in (row.crop, row.food) else None


def _jars(glut: Glut, row: Yield) -> int:
    return full(glut.pounds or 0, row.per_pint * JARS[row.unit] / JARS["pint"])


def yields(books: Books, glut: Glut, method: Method, product: FoodFacts) -> str | None:
    """ "3 quart jars (3 to 3)"; the weight itself for what is stored whole; None where nothing
    is published or no amount was said."""
    if glut.pounds is None:
        return None
    if method is Method.CELLAR:
        return f"{tidy(glut.pounds):g} lb"
    row = _yield(glut, method, product)
    if row is None:
        return _dry_weight(books, glut, method) if product == glut.food else None
    least, most = full(glut.pounds, row.most), full(glut.pounds, row.least)
    vessel = "packs" if method is Method.FROZEN else "jars"
    weak = ", an estimate" if row.weak else ""
    return f"{_jars(glut, row)} {row.unit} {vessel} ({span(least, most)}{weak})"


def _dry_weight(books: Books, glut: Glut, method: Method) -> str | None:
    """By mass balance, where no yield in jars is known."""
    row = books.batch.drying.get(glut.food.name)
    rows = books.batch.about("target moisture", f"group:{glut.food.group}")
    if method is not Method.DRIED or row is None or row.water_percent is None or not rows:
        return None
    grams = dried_g((glut.pounds or 0) * _POUND, row.water_percent, rows[0].low)
    return f"{tidy(grams / _POUND):g} lb dry, from what is left after peeling"


class Case(NamedTuple):
    """A glut that is to become `product` by one method."""

    books: Books
    glut: Glut
    method: Method
    product: FoodFacts


def needs(books: Books, glut: Glut, method: Method, product: FoodFacts) -> Needs:
    """All that this way asks for, with the publications."""
    case = Case(books, glut, method, product)
    found = Needs({}, (), (), ())
    if (gear := _GEAR.get(method)) is not None:
        found.needs["gear"] = gear
    row = _yield(glut, method, product)
    if row is not None and glut.pounds is not None and method in _LIDDED:
        found.needs["jars"] = f"{_jars(glut, row)} {row.unit}"
        found.needs["lids"] = str(_jars(glut, row))
    if row is not None and row.wording:
        found = found._replace(reasons=(f"Yield: {row.wording}.",))
    if row is not None:
        found = found._replace(sources=(books.cite(row),))
    for more in (_canning, _salting, _drying, _freezing, _meat):
        found = more(case, found)
    return found


def _canning(case: Case, found: Needs) -> Needs:
    """The tested process for the commonest jar, at the altitude of the household."""
    if case.method not in _LIDDED:
        return found
    rows = processes_named(case.product.name)
    made = _yield(case.glut, case.method, case.product)
    usual = made.unit if made is not None else "pint"
    canners = ("dial", "weighted") if case.method is Method.PRESSURE else ("boiling-water",)
    for canner in canners:
        jars = {row.jar for row in rows if row.canner == canner}
        jar = next((one for one in (usual, "pint", "quart", "half-pint") if one in jars), None)
        if jar is None:
            continue
        said = process(
            case.books.tables, case.product.name, jar, canner, None, case.books.altitude_ft
        )
        times = list(
            dict.fromkeys(
                f"{one['minutes']} min" + (f" at {one['psi']} psi" if one["psi"] else "")
                for one in said["options"]
            )
        )
        if times:
            found.needs[f"process, {jar}, {canner}"] = " or ".join(times)
        if said["acidify"]:
            found.needs["acid"] = said["acidify"]
        why = tuple(one for one in said["reasons"][:1] if not times or "not said" in one)
        found = found._replace(
            reasons=(*found.reasons, *why), sources=(*found.sources, *said["sources"][:1])
        )
    if case.method is Method.VINEGAR_PICKLE:
        shares = case.books.batch.about("vinegar share", case.product.name)
        found.needs["vinegar"] = shares[0].wording if shares else "5 %, as its recipe prints"
    return found._replace(reasons=tuple(dict.fromkeys(found.reasons)))


def _salting(case: Case, found: Needs) -> Needs:
    """Salt by weight, where a share is published."""
    rows: tuple[Figure, ...] = ()
    if case.method is Method.LACTIC:
        rows = case.books.batch.about("salt", case.product.name, case.glut.food.name)
        if not rows:
            brine = case.books.batch.about("pickle brine", case.product.name)
            if brine:
                found.needs["salt"] = f"{brine[0].low:g} {brine[0].unit} {brine[0].wording}"
                return found._replace(sources=(*found.sources, case.books.cite(brine[0])))
            found.needs["salt"] = "no published share"
    if rows:
        share = f"{rows[0].low:g} to {rows[0].high:g} {rows[0].unit}"
        ounces = ""
        if case.glut.pounds is not None:
            ounces = f"{tidy(dry(case.glut.pounds * 16, rows[0].low)):g} oz: "
        found.needs["salt"] = ounces + share
        found = found._replace(sources=(*found.sources, case.books.cite(rows[0])))
    return found


def _drying(case: Case, found: Needs) -> Needs:
    row: DryingRow | None = case.books.batch.drying.get(case.glut.food.name)
    if case.method is not Method.DRIED or row is None or case.product != case.glut.food:
        return found
    found.needs["hours"] = (
        f"{span(row.hours_min, row.hours_max)} at {span(row.low_f, row.high_f)} °F"
    )
    if row.water_min is not None and row.water_max is not None:
        found.needs["blanch"] = f"{span(row.water_min, row.water_max)} min in water"
    found.needs["done when"] = row.end_test
    return found._replace(sources=(*found.sources, case.books.cite(row)))


def _freezing(case: Case, found: Needs) -> Needs:
    rows = [row for row in case.books.batch.blanching if row.food == case.glut.food.name]
    if case.method is not Method.FROZEN or not rows:
        return found
    row = rows[0]
    if row.cook:
        found.needs["blanch"] = row.cook
    elif row.water_min is not None and row.water_max is not None:
        minutes = span(row.water_min, row.water_max)
        found.needs["blanch"] = f"{minutes} min in water ({row.form})" if row.water_max else "none"
    elif row.steam_min is not None and row.steam_max is not None:
        found.needs["blanch"] = f"{span(row.steam_min, row.steam_max)} min in steam ({row.form})"
    return found._replace(sources=(*found.sources, case.books.cite(row)))


def _meat(case: Case, found: Needs) -> Needs:
    """Meat and fish have temperatures of their own, and cures only by a published table."""
    food, said = case.glut.food, list(found.cautions)
    if case.method is Method.DRIED and food.group is Group.MEAT:
        said += [
            f"Heat it to {one.low:g} °F {one.wording} ({case.books.cite(one)})."
            for one in case.books.batch.about("jerky", food.name)
        ]
    if case.method in (Method.SALTED, Method.HOT_SMOKED) and food.group in (Group.MEAT, Group.FISH):
        said.append("Cure salts only as their published table says: pantry-tui calc cure.")
    if case.method is Method.IN_OIL:
        said.append("In oil: refrigerator and days only; botulism gives no smell.")
    return found._replace(cautions=tuple(said))

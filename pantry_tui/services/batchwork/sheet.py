"""The put-up record of a batch: what its method needs to be trusted later, in the order in which it
happens, with the published value beside each field and what a wrong one means."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import ceil
from typing import NamedTuple

from pantry_tui.core.model import Batch
from pantry_tui.core.safety.jars import of_one_jar, read_jar
from pantry_tui.core.safety.measured import CANNERS, read_canner
from pantry_tui.core.safety.process import ProcessRow, standing
from pantry_tui.core.words import Group, Method
from pantry_tui.reference.batchwork import BatchTables, BlanchRow, load_batchwork
from pantry_tui.services.batchwork.calc.answer import span
from pantry_tui.services.batchwork.calc.boil import KPA
from pantry_tui.services.batchwork.checked import as_recorded, processes_of
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.recheck import strictest_altitude

_CANNED = ("altitude", "jar", "pack", "headspace", "acid")
#: What is asked for, in order.
FIELDS: dict[Method, tuple[str, ...]] = {
    Method.PRESSURE: ("altitude", "canner", "jar", "pack", "headspace", "acid", "minutes", "psi",
                      "seal"),
    Method.BOILING_WATER: (*_CANNED, "minutes", "seal"),
    Method.JAM: (*_CANNED, "sugar", "minutes", "seal"),
    Method.VINEGAR_PICKLE: ("altitude", "jar", "pack", "vinegar", "headspace", "minutes", "seal"),
    Method.FRIDGE_PICKLE: ("vinegar", "salt"),
    Method.LACTIC: ("salt", "temperature", "ph"),
    Method.VINEGAR_FERMENT: ("temperature", "ph"),
    Method.DRIED: ("blanched", "temperature"),
    Method.SALTED: ("salt", "cure", "temperature"),
    Method.HOT_SMOKED: ("salt", "cure", "temperature"),
    Method.COLD_SMOKED: ("salt", "cure", "temperature"),
    Method.FROZEN: ("blanched", "headspace", "vacuum"),
    Method.SUGAR: ("sugar",),
    Method.FREEZER_JAM: ("sugar",),
}  # fmt: skip


#: What an example of a record says, in order, where that is not all of `FIELDS` that has a value
#: here: those are for what no publication has one.
_EXAMPLE: dict[Method, tuple[str, ...]] = {
    Method.PRESSURE: ("minutes", "psi", "canner", "jar", "pack"),
    Method.BOILING_WATER: ("minutes", "jar", "pack"),
    Method.JAM: ("minutes", "jar"),
    Method.VINEGAR_PICKLE: ("vinegar", "minutes", "jar", "pack"),
    Method.LACTIC: ("salt", "temperature"),
}
_VALUES = {
    "minutes": "20", "psi": "11", "canner": "dial", "jar": "pint", "pack": "hot",
    "vinegar": "5%", "salt": "2.5%", "temperature": "140F", "ph": "4.1", "blanched": "3min",
    "headspace": "1/2in", "sugar": "60%",
}  # fmt: skip
_METRIC = {"psi": "76kPa", "jar": "500ml", "temperature": "60C", "headspace": "1cm"}
_METRIC_JAR = {"half-pint": "250ml", "pint": "500ml", "quart": "1l"}
#: Where the usual warmth is another one.
_WARM = {Method.LACTIC: ("70F", "21C"), Method.VINEGAR_FERMENT: ("70F", "21C")}


def example(p: Pantry, code: str) -> str:
    """A record of that food and method as this household types it: "minutes=10 jar=half-pint". Of
    a tested process it has the time, the pressure and the jar. Raises BadInput for an unknown
    code."""
    batch, metric = batch_named(p, code), p.bare_degree == "C"
    values = _VALUES | (_METRIC if metric else {})
    if batch.method in _WARM:
        values["temperature"] = _WARM[batch.method][metric]
    rows = _rows(_Case(p, batch, dict(batch.process)))
    if rows and p.altitude_ft is not None:
        row = max(rows, key=lambda one: one.minutes)
        jar = _METRIC_JAR.get(row.jar, row.jar) if metric else row.jar
        values |= {"minutes": f"{row.minutes}", "jar": jar.replace(" ", ""), "pack": row.pack}
        if row.psi:
            gauge = f"{ceil(row.psi * KPA)}kPa" if metric else f"{row.psi}"
            values |= {"psi": gauge, "canner": row.canner}
    keys = _EXAMPLE.get(batch.method) or FIELDS.get(batch.method, ("temperature",))
    return " ".join(f"{key}={values[key]}" for key in keys if values.get(key))


class Asked(NamedTuple):
    """One field of a record: what is published for it, what was written, and what is wrong."""

    key: str
    published: str
    said: str
    wrong: tuple[str, ...]


def fields(p: Pantry, code: str) -> list[Asked]:
    """All that the method of a batch asks for, in order. Raises BadInput for an unknown code."""
    batch = batch_named(p, code)
    record = dict(batch.process)
    case = _Case(p, batch, record)
    known: dict[str, str] = {}
    told: set[str] = set()
    found = []
    for key in FIELDS.get(batch.method, ()):
        wrong: tuple[str, ...] = ()
        if key in record:
            known[key] = record[key]
            now = _problems(p, batch, known)
            wrong = tuple(one for one in now if one not in told)
            told |= set(now)
        found.append(Asked(key, _published(case, key), record.get(key, ""), wrong))
    return found


def _problems(p: Pantry, batch: Batch, record: dict[str, str]) -> Sequence[str]:
    return as_recorded(p, batch, strictest_altitude(p, batch), record).problems


@booked
def write(p: Pantry, code: str, said: Sequence[tuple[str, str]]) -> Done:
    """Write fields into the record; what is wrong with it, and what that means, is answered."""
    return correct(p, code, process=said)


# -- what is published ----------------------------------------------------------------------------


class _Case(NamedTuple):
    """Whose published values are asked for."""

    p: Pantry
    batch: Batch
    record: dict[str, str]


def _published(case: _Case, key: str) -> str:
    """What is published for a field, in words."""
    told = _SAID.get(key) or _LOOKED_UP[key](case)
    return told or "no published figure"


def _rows(case: _Case) -> list[ProcessRow]:
    """The tested processes that the record leaves open, at the altitude."""
    p, batch, record = case
    canner = read_canner(record.get("canner", ""))
    pressure = batch.method is Method.PRESSURE
    ways = (canner,) if canner in CANNERS else ("dial", "weighted") if pressure else (CANNERS[0],)
    jar = read_jar(of_one_jar(record, batch.processed))
    pack = record.get("pack", "").casefold().removesuffix(" pack")
    found = [row for row in processes_of(batch.method, batch.food) if row.canner in ways]
    if any(row.jar == jar for row in found):
        found = [row for row in found if row.jar == jar]
    if any(row.pack == pack for row in found):
        found = [row for row in found if row.pack == pack]
    return standing([row for row in found if row.at(p.altitude_ft or 0)])


def _of_rows(pick: Callable[[ProcessRow], str]) -> Callable[[_Case], str]:
    def words(case: _Case) -> str:
        return " or ".join(dict.fromkeys(filter(None, map(pick, _rows(case)))))

    return words


def _pair(row: ProcessRow) -> str:
    """Time with its own pressure: one of them is never read without the other."""
    return f"{row.minutes} min" + (f" at {row.psi} psi ({row.canner})" if row.psi else "")


def _altitude(case: _Case) -> str:
    high = case.p.altitude_ft
    return "your household's was never said" if high is None else f"your household: {high:,} ft"


def _tables() -> BatchTables:
    return load_batchwork()


def _salt(case: _Case) -> str:
    return "; ".join(
        f"{span(row.low, row.high)} {row.unit}"
        for row in _tables().about("salt", case.batch.food.name)
    )


def _blanched(case: _Case) -> str:
    tables, food = _tables(), case.batch.food.name
    if case.batch.method is Method.DRIED:
        row = tables.drying.get(food)
        if row is None or row.water_min is None or row.water_max is None:
            return ""
        return f"{span(row.water_min, row.water_max)} min in water"
    return "; ".join(filter(None, (_form(row) for row in tables.blanching if row.food == food)))


def _form(row: BlanchRow) -> str:
    if row.cook:
        return f"{row.form}: {row.cook}"
    if row.water_min is None or not row.water_max:
        return ""
    return f"{row.form}: {span(row.water_min, row.water_max)} min"


def _warmth(case: _Case) -> str:
    tables, food = _tables(), case.batch.food
    if case.batch.method is Method.LACTIC:
        rows = tables.about("ferment time", food.name)
        return "; ".join(f"{span(r.low, r.high)} days {r.wording}" for r in rows)
    if case.batch.method is Method.DRIED:
        row = tables.drying.get(food.name)
        air = f"air {span(row.low_f, row.high_f)} °F" if row is not None else ""
        heat = tables.about("jerky", food.name) if food.group is Group.MEAT else ()
        return "; ".join(filter(None, (*(f"{r.low:g} °F {r.wording}" for r in heat), air)))
    rows = tables.about("smoking", food.name, f"group:{food.group}")
    return "; ".join(f"{r.low:g} °F {r.wording} (from memory)" for r in rows)


#: What is the same for every food.
_SAID = {
    "seal": "tight, checked after 12 to 24 hours",
    "vinegar": "5 % acetic acid or more",
    "sugar": "as its tested recipe",
    "ph": "4.6 or below, before it is eaten",
    "cure": "only as its published table: calc cure",
    "vacuum": "yes or no: another rule holds under vacuum",
}
_LOOKED_UP: dict[str, Callable[[_Case], str]] = {
    "altitude": _altitude,
    "canner": _of_rows(lambda row: row.canner),
    "jar": _of_rows(lambda row: row.jar),
    "pack": _of_rows(lambda row: row.pack),
    "headspace": _of_rows(lambda r: f"{r.headspace_in:g} in" if r.headspace_in is not None else ""),
    "acid": _of_rows(lambda row: row.adds_acid or "none is added"),
    "minutes": _of_rows(_pair),
    "psi": _of_rows(lambda row: _pair(row) if row.psi else ""),
    "salt": _salt,
    "temperature": _warmth,
    "blanched": _blanched,
}

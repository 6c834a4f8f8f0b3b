"""data/products.csv, read when it is asked for: what a crop becomes by a method, where that is
another food of the tables."""

from __future__ import annotations

from collections import defaultdict
from functools import cache
from typing import TYPE_CHECKING

from pantry_tui.core.words import Method
from pantry_tui.paths import data_dir
from pantry_tui.reference.csvrows import read_rows
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path

#: Products by (crop, method), in file order.
Products = dict[tuple[str, Method], tuple[str, ...]]


def read_products(folder: Path, tables: Tables) -> Products:
    """The table, checked. Raises DataError naming file, row and column."""
    known = {food.name for food in tables.foods}
    found: dict[tuple[str, Method], list[str]] = defaultdict(list)
    for row in read_rows(folder / "products.csv", ("crop", "method", "product")):
        crop, product = row.text("crop", need=True), row.text("product", need=True)
        for column, name in (("crop", crop), ("product", product)):
            if name not in known:
                raise row.bad(column, f"{name!r} is no food of foods.csv")
        found[crop, row.word("method", Method)].append(product)
    return {key: tuple(names) for key, names in found.items()}


@cache
def load_products() -> Products:
    """The table that ships with the program, once a process."""
    return read_products(data_dir(), load_tables())

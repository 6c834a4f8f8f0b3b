"""How many times its weight what is dry weighed fresh: a serving is reckoned of what is fresh."""

from __future__ import annotations

from pantry_tui.core.words import Group, Method, Role
from pantry_tui.services.pantry import Pantry

#: What no table has the water of. Estimates: common practice, no source.
_ESTIMATED = {
    Group.VEGETABLE: 9.0,
    Group.FRUIT: 5.0,
    Group.MEAT: 3.0,
    Group.FISH: 3.0,
    Group.MEAL: 4.0,
}
DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
#: Ripe and dry, pulses of the garden serve as grain does, 8 a pound and not 3. Estimate: common
#: practice, no source. The first are dry also where they were bought.
_PULSE = 8 / 3
_ALWAYS_DRY = frozenset({"dry beans", "chickpeas", "bambara nuts"})
_RIPE = frozenset({"shelling beans", "lima beans", "broad beans", "southern peas"})
_BEAN = "bean"
#: A food that says it: "dried mushrooms" are bought, too.
_SAYS = "dried "


def is_pulse(p: Pantry, name: str) -> bool:
    """Whether it is a ripe bean, pea or lentil: a side by itself, and a main can be cooked of
    it."""
    row = p.tables.index.named(name)
    if row is None or _BEAN not in row.classes:
        return False
    return name in _ALWAYS_DRY | _RIPE or (row.group is Group.GRAIN and row.role == Role.SIDE)


def is_ripe(name: str) -> bool:
    """Whether it is dry when it is ripe: its measures are of it dry in every table."""
    return name in _ALWAYS_DRY | _RIPE


def times_fresh(p: Pantry, name: str, group: Group, method: Method) -> float:
    """By the water published of the fresh crop (data/drying.csv) and of what is dry
    (data/figures.csv), else an estimate; 1 for what is not dried. Grain and pulses are weighed dry
    in every table, and herbs are no servings."""
    if group not in _ESTIMATED:
        return 1.0
    if name in _ALWAYS_DRY and method in DRY | {Method.BOUGHT}:
        return _PULSE
    if name in _RIPE and method in DRY:
        return _PULSE
    row, says = p.tables.index.named(name), name.startswith(_SAYS)
    if not says and method not in DRY and (row is None or row.says not in DRY):
        return 1.0
    # Only what is dry needs the tables of drying.
    from pantry_tui.core.batchwork.balance import dried_g
    from pantry_tui.reference.batchwork import load_batchwork

    crop = p.tables.index.find(name.removeprefix(_SAYS)) if says else None
    tables = load_batchwork()
    fresh = tables.drying.get(crop.name if crop else name)
    target = tables.about("target moisture", f"group:{group}")
    if fresh is None or fresh.water_percent is None or not target:
        return _ESTIMATED[group]
    return 1 / dried_g(1.0, fresh.water_percent, target[0].low)

"""How far the date on a pack is believed: alone, beside the published days, or not at all, where it
lies further ahead than on any pack of its kind."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.harm import can_hurt, is_tin, is_vacuum_packed, surely_vacuum_packed
from pantry_tui.core.keeping.rules import Rule, guessed
from pantry_tui.core.keeping.sold import Sold
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared import is_cut
from pantry_tui.core.safety.values import says
from pantry_tui.core.words import Climate, Group

#: Days from the day it was bought behind which a use-by was misread, or speaks of a tin: no pack of
#: its kind is dated further ahead. This program's choices (common practice, no source): mince,
#: meatballs, offal, raw fish and shellfish, sprouts, what is cut, sushi;
SOONEST_USE_BY = 14
#: raw poultry, and other raw meat; such meat under vacuum; what is cooked and ready to eat; all
#: else, as hot dogs, ham, smoked or pickled fish, milk, tofu.
RAW_USE_BY, VACUUM_USE_BY, COOKED_USE_BY, LONGEST_USE_BY = 21, 60, 30, 90
_SOONEST = frozenset({"ground-meat", "sprout"})
_SOONEST_NAMES = frozenset(
    {"rice balls", "mixed fruit", "meatballs", "liver", "kidneys", "hearts", "tripe"}
)
COOKED = frozenset(
    {
        "rotisserie chicken", "fried chicken", "cooked meat", "cooked fish", "cooked shellfish",
        "chicken nuggets", "pate", "rillettes", "brawn", "haggis", "seafood salad",
        "potted shrimp",
    }
)  # fmt: skip
#: Cured, dried, smoked, salted, pickled or cooked for keeping.
KEPT = frozenset(
    {
        "hot-smoked fish", "cold-smoked fish", "kippers", "smoked scad", "pickled fish",
        "pickled herring", "dried fish", "dried salted fish", "salt cod", "anchovies",
        "anchovy paste", "fish sauce", "shrimp paste", "fermented fish paste", "fish sticks",
        "fish stock", "surimi", "unagi", "canned tuna", "canned sardines", "canned seafood",
        "canned meat", "canned corned beef", "canned ham", "bacon bits", "biltong", "cooked bacon",
        "cooked sausages", "hot dogs", "lunch meats", "meat confit", "pemmican", "pork rinds",
        "pork roll", "smoked meat", "hard sausages", "summer sausages", "sujuk",
    }
)  # fmt: skip
KEPT_CLASSES = frozenset({"cured-meat", "jerky"})
#: Days further ahead than on any pack that only a refrigerator keeps, but for hard cheese and
#: butter; and on cooked food. This program's choice.
_FURTHEST, _COOKED_FURTHEST = 180, 60
#: Fish that was not heated in its jar, and a raw ham: salt keeps it (common practice, no source).
_SEMI_PRESERVED = frozenset(
    {"anchovies", "anchovy paste", "pickled herring", "pickled fish", "country hams"}
)
#: Past its date nothing of it is given to a child, also out of a tin that is whole (US FDA, infant
#: formula; USDA FSIS, Food Product Dating; from memory).
_NEVER_LATER = frozenset({"infant formula"})
_USE_BY = ("dated", "use-by")
_LONG = r"hard cheese|butter|powder|condensed|evaporated|shelf-stable|dried"


def is_last_safe(batch: Batch, sold: Sold) -> bool:
    """Whether the date on a pack is the last day on which it is safe: on what may be kept cold, and
    on what is low in acid and packed without air or in oil, as garlic is, is fish that only salt
    keeps, or can hurt and is dated use-by; but not on a tin, whose date speaks of its quality.
    Nothing is published that keeps such a jar for longer than its maker says."""
    if batch.food.name in _NEVER_LATER:
        return True
    if sold is Sold.SHELF:
        ends = is_vacuum_packed(batch) or (says(batch.process, *_USE_BY) and can_hurt(batch))
        low = not batch.food.is_acid and not is_tin(batch)
        return ends_with_its_days(batch) or (ends and low)
    return sold is not Sold.OWN


def ends_with_its_days(batch: Batch) -> bool:
    """Whether a shut pack, though it was sold on a shelf, is safe for no longer than its days: low
    in acid and in oil, which shuts the air off (also where only its name says so), fish that only
    salt keeps, or a raw ham (the stricter choice); no tin."""
    food = batch.food
    oil = "in-oil" in food.classes or re.search(r"(?i)\bin( \w+)? oil\b", food.name) is not None
    kept = oil or food.name in _SEMI_PRESERVED
    return kept and not food.is_acid and not is_tin(batch)


def date_stands_alone(batch: Batch, sold: Sold) -> bool:
    """Whether the date on a pack counts instead of the published days. On what only the cold keeps
    that is a use-by (USDA FSIS, Food Product Dating: such a date is followed, behind a sell-by or
    none the days of the chart count; UK FSA: eaten up to the use-by; both from memory), and one
    that a fresh pack can have; every other date counts beside those days."""
    if sold in (Sold.SHELF, Sold.OWN):
        return True
    if batch.printed is None or not says(batch.process, *_USE_BY):
        return False
    return batch.made is None or batch.printed - batch.made <= timedelta(days=furthest(batch))


def furthest(batch: Batch) -> int:
    """Days after which no use-by of its kind is believed."""
    food = batch.food
    if food.classes & _SOONEST or food.name in _SOONEST_NAMES or is_cut(batch):
        return SOONEST_USE_BY
    if food.group is Group.MEAL or food.name in COOKED:
        return COOKED_USE_BY
    raw = not (food.classes & KEPT_CLASSES or food.name in KEPT)
    if food.group is Group.FISH and raw:
        return SOONEST_USE_BY
    if food.group is Group.MEAT and raw:
        hung = surely_vacuum_packed(batch) and food.known and "poultry" not in food.classes
        return VACUUM_USE_BY if hung else RAW_USE_BY
    return LONGEST_USE_BY


def days_cover(safety: Sequence[Rule], food: FoodFacts) -> bool:
    """Whether published days surely speak for it."""
    return any(not guessed(rule, food) for rule in safety)


def too_far(batch: Batch, sold: Sold, spans: Sequence[Span]) -> str:
    """What is said of a printed date that cannot be, "" of any other."""
    if batch.printed is None or batch.made is None or not is_last_safe(batch, sold):
        return ""
    if re.search(_LONG, batch.food.name) or all(s.climate is not Climate.FRIDGE for s in spans):
        return ""
    most = _COOKED_FURTHEST if batch.food.group is Group.MEAL else _FURTHEST
    if batch.printed <= batch.made + timedelta(days=most):
        return ""
    return (
        f"The printed date, {dates.say(batch.printed)}, lies further ahead than that of any pack "
        "of its kind: look at it again, and correct it."
    )

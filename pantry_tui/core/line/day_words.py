"""Months, days of the week, seasons and feasts, as people write them."""

from __future__ import annotations

MONTHS = {
    name: number
    for number, names in enumerate(
        ("january jan", "february feb", "march mar", "april apr", "may", "june jun", "july jul",
         "august aug", "september sept sep", "october oct", "november nov", "december dec"),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
MONTH_WORDS = (
    "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"
)  # fmt: skip
DAYS = {
    name: number
    for number, names in enumerate(
        ("monday mon", "tuesday tue tues", "wednesday wed weds", "thursday thu thurs", "friday fri",
         "saturday sat", "sunday sun")
    )
    for name in names.split()
}  # fmt: skip
SEASONS = {"spring": 3, "summer": 6, "autumn": 9, "fall": 9, "winter": 12}
#: Day and month of feasts that never move.
FEASTS = {
    "christmas day": (25, 12), "christmas": (25, 12), "xmas": (25, 12), "christmas eve": (24, 12),
    "boxing day": (26, 12), "new year's day": (1, 1), "new year's eve": (31, 12),
    "new year": (1, 1), "michaelmas": (29, 9), "martinmas": (11, 11), "midsummer": (24, 6),
    "halloween": (31, 10), "candlemas": (2, 2), "st john's": (24, 6),
}  # fmt: skip
MOVING = frozenset(
    {"easter", "lent", "diwali", "thanksgiving", "harvest", "whitsun", "pancake day"}
)
VAGUE = {
    "last week": 14, "last month": 62, "the other day": 10, "recently": 30, "a while ago": 365,
    "last weekend": 14, "a few days ago": 10, "a few weeks ago": 60, "this week": 7,
    "this month": 31, "the weekend": 14, "this summer": 365, "last summer": 730,
    "last spring": 730, "last autumn": 730, "last winter": 730, "last fall": 730,
}  # fmt: skip

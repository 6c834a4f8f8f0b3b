"""Jams, pie fillings and pickles: processes, typed by hand (notation: see the package)."""

from __future__ import annotations

TYPED = {
    "NCHFP, strawberry jam (USDA HG Bulletin 56), carried by Maine Extension": """
        strawberry jam | hot | half-pint pint | boiling-water | 1000 5, 6000 10, up 15
    """,
    "University of Georgia Extension, So Easy to Preserve (page citing it)": """
        plum preserves | hot | half-pint pint | boiling-water | 1000 5, 6000 10, up 15
        grape jelly | hot | half-pint pint | boiling-water | 1000 5, 6000 10, up 15
        pickled onions | hot | pint | boiling-water | 1000 10, 6000 15, up 20
        pickled pepper rings | raw | pint | boiling-water | 1000 10, 6000 15, up 20
    """,
    "USDA AIB 539, Complete Guide to Home Canning, 2009 and 2015 (copy)": """
        apple pie filling | hot | pint quart | boiling-water | 1000 25, 3000 30, 6000 35, up 40
        fermented dill pickles | raw | pint | boiling-water | 1000 10, 6000 15, up 20
        fermented dill pickles | raw | quart | boiling-water | 1000 15, 6000 20, up 25
        pickled beets | hot | pint quart | boiling-water | 1000 30, 3000 35, 6000 40, up 45
        corn relish | hot | half-pint pint | boiling-water | 1000 15, 6000 20, up 25
    """,
    "Michigan State University Extension, Preserving Food Safely 1997 (USDA AIB 539 figures)": """
        blueberry pie filling | hot | pint quart | boiling-water | 1000 30, 3000 35, 6000 40, up 45
        quick dill pickles | raw | pint | boiling-water | 1000 10, 6000 15, up 20
        quick dill pickles | raw | quart | boiling-water | 1000 15, 6000 20, up 25
        bread-and-butter pickles | hot | pint quart | boiling-water | 1000 10, 6000 15, up 20
        reduced-sodium sweet pickles | hot | pint | boiling-water | 1000 10, 6000 15, up 20
        reduced-sodium dill pickles | raw | pint | boiling-water | 1000 15, 6000 20, up 25
        pickle relish | hot | half-pint pint | boiling-water | 1000 10, 6000 15, up 20
        pickled hot peppers | raw | half-pint pint | boiling-water | 1000 10, 6000 15, up 20
    """,
    "USDA AIB 539, Complete Guide to Home Canning, 1994 (copy)": """
        piccalilli | hot | half-pint pint | boiling-water | 1000 5, 6000 10, up 15
    """,
}

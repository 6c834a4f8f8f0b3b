"""Meat and poultry from a shop, counted from the day it was bought, opened or cooked."""

from __future__ import annotations

TYPED = {
    "USDA/HHS foodsafety.gov, Cold Food Storage Chart (seen in copies)": """
        bought in | hot dogs | sealed | fridge | safety | 2 weeks
        bought in | hot dogs | open | fridge | safety | 1 weeks
        bought in | lunch meats | sealed | fridge | safety | 3 days
        bought in | lunch meats | open | fridge | safety | 3 days
        bought in | bacon | sealed | fridge | safety | 1 weeks
        bought in | bacon | open | fridge | safety | 7 days
        bought in | turkey bacon | sealed | fridge | safety | 1 weeks
        bought in | cooked sausages | sealed | fridge | safety | 1 weeks
        bought in | cooked sausages | open | fridge | safety | 1 weeks
        bought in | corned beef | sealed | fridge | safety | 5 days
        bought in | rotisserie chicken | sealed | fridge | safety | 3 days
        bought in | rotisserie chicken | open | fridge | safety | 3 days
        bought in | fried chicken | sealed | fridge | safety | 3 days
        bought in | cooked meat | open | fridge | safety | 3 days
        bought in | chicken nuggets | sealed | fridge | safety | 3 days
        bought in | prosciutto | sealed | fridge | safety | 2 months
        bought in | prosciutto | open | fridge | safety | 2 months
        bought in | ground beef | open | fridge | safety | 1 days
        bought in | beef steaks | open | fridge | safety | 3 days
        bought in | chicken pieces | open | fridge | safety | 1 days
        bought in | liver | open | fridge | safety | 1 days
        bought in | sausages | open | fridge | safety | 1 days
        bought in | chorizo | open | fridge | safety | 1 days
    """,
    "University of Alaska Fairbanks Extension FNH-00221, vacuum-packed smoked fish": """
        bought in | cold-smoked fish | sealed | fridge | safety | 5 days
        bought in | hot-smoked fish | sealed | fridge | safety | 5 days
        bought in | kippers | sealed | fridge | safety | 5 days
    """,
    "USDA Cold Storage Chart (older edition)": """
        bought in | hard sausages | sealed | fridge | safety | 2 weeks
        bought in | summer sausages | sealed | fridge | safety | 3 months
    """,
    "University of Missouri Extension MP558, cured and smoked meat": """
        bought in | hard sausages | open | fridge | safety | 5 days
        bought in | summer sausages | open | fridge | safety | 5 days
        bought in | corned beef | open | fridge | safety | 5 days
    """,
    # Six weeks in a pantry: the two that are published for the cold stand there too.
    "USDA FSIS, Shelf-Stable Food Safety (seen in copies)": """
        bought in | hard sausages | sealed | pantry | safety | 2 weeks
        bought in | hard sausages | sealed | room | safety | 2 weeks
    """,
    "USDA FSIS, Ham Storage Chart (seen in copies)": """
        bought in | hams | open | fridge | safety | 3 days
        bought in | pastrami | open | fridge | safety | 3 days
    """,
    "University of Missouri Extension MP557, storing food in the cupboard": """
        bought in | ketchups | open | pantry | quality | 1 months
        bought in | chili sauce | open | room | quality | 1 months
        bought in | dill pickles | open | fridge | quality | 1 months
        bought in | pickled beets | open | fridge | quality | 1 months
    """,
    "National Center for Home Food Preservation, jams and jellies": """
        bought in | strawberry jam | open | fridge | quality | 1 months
        bought in | marmalades | open | fridge | quality | 1 months
        bought in | low-sugar jams | open | fridge | quality | 3 weeks
        boiling-water canned | low-sugar jams | open | fridge | quality | 3 weeks
    """,
    "USDA FSIS, Cornell and FMI, food storage data version 128 (2018)": """
        bought in | applesauce | open | fridge | safety | 7 days
        bought in | apple juice | open | fridge | quality | 5 days
        bought in | tomato juice | open | fridge | quality | 5 days
        boiling-water canned | cranberry sauce | open | fridge | quality | 1 weeks
        bought in | pate | sealed | fridge | safety | 1 days
        bought in | pate | open | fridge | safety | 1 days
        bought in | fresh pasta | sealed | fridge | safety | 1 days
        bought in | fresh pasta | open | fridge | safety | 1 days
        bought in | turkey bacon | open | fridge | safety | 7 days
        bought in | hearts | sealed | fridge | safety | 1 days
        fresh | hearts | open | fridge | safety | 1 days
        frozen | hearts | sealed | freezer | quality | 3 months
        bought in | kidneys | sealed | fridge | safety | 1 days
        fresh | kidneys | open | fridge | safety | 1 days
        frozen | kidneys | sealed | freezer | quality | 3 months
        bought in | tongue | sealed | fridge | safety | 1 days
        fresh | tongue | open | fridge | safety | 1 days
        frozen | tongue | sealed | freezer | quality | 3 months
        bought in | tripe | sealed | fridge | safety | 1 days
        fresh | tripe | open | fridge | safety | 1 days
        frozen | tripe | sealed | freezer | quality | 3 months
        bought in | giblets | sealed | fridge | safety | 1 days
        fresh | giblets | open | fridge | safety | 1 days
        frozen | giblets | sealed | freezer | quality | 3 months
    """,
    "Partnership for Food Safety Education, cold storage (2006)": """
        bought in | cod | open | fridge | safety | 1 days
    """,
}

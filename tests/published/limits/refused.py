"""Where food may not stand: refused, with the publication that says so."""

from __future__ import annotations

REFUSED = {
    "NCHFP, Curing and smoking review: meat cures and ages at 40 F at most": """
        salted | pork | working | room
        salted | hams | working | pantry
        salted | beef | working | cellar
    """,
    "NCHFP, Freezing: Garlic-in-Oil": """
        in oil | garlic | sealed | room
        in oil | garlic | sealed | pantry
        in oil | peppers | sealed | cellar
        in oil | basil | open | room
        in oil | pesto | sealed | pantry
    """,
    "USDA AIB 539: low-acid food needs a pressure canner": """
        boiling-water canned | runner beans | sealed | pantry
        boiling-water canned | carrots | sealed | pantry
        boiling-water canned | chicken soup | sealed | cellar
        boiling-water canned | beef | sealed | pantry
        boiling-water canned | salmon | sealed | pantry
    """,
    "USDA FSIS, Freezing and Food Safety: two hours out": """
        boiling-water canned | peaches | open | room
        pressure canned | runner beans | open | pantry
        frozen | ground beef | thawed | room
        cooked meal | stew | sealed | room
        fresh | beef | sealed | room
        fresh | trout | sealed | cellar
    """,
    "NCHFP, pickled eggs: never at room temperature": """
        fridge pickle | pickled eggs | sealed | room
        vinegar pickle | pickled eggs | sealed | pantry
    """,
    "Colorado State University Extension, pickles not processed": """
        fridge pickle | dill pickles | sealed | room
        fridge pickle | pickled beets | sealed | pantry
    """,
    "Michigan State University Extension: freezer jam not at room temperature": """
        freezer jam | strawberry jam | sealed | room
        freezer jam | strawberry jam | open | pantry
    """,
    "University of Alaska Fairbanks Extension FNH-00325: smoked fish kept cold": """
        hot smoked | salmon | sealed | room
        cold smoked | salmon | sealed | cellar
    """,
    "University of Maine Extension on water-glass and lime-water eggs": """
        lime-kept | eggs | sealed | cellar
        lime-kept | eggs | sealed | fridge
    """,
    "Michigan State University Extension, pickled fish": """
        fridge pickle | pickled fish | sealed | room
    """,
    "USDA FSIS, Ham Storage Chart": """
        salted | country hams | open | pantry
    """,
    "Colorado State University Extension, Understanding and Making Kimchi": """
        lactic ferment | kimchi | sealed | room
        lactic ferment | kimchi | sealed | cellar
        lactic ferment | kimchi | open | pantry
    """,
    "No tested process for these in vinegar (this project's reading, the stricter)": """
        vinegar pickle | garlic | sealed | room
        vinegar pickle | garlic | sealed | pantry
        vinegar pickle | garlic | sealed | cellar
        vinegar pickle | potatoes | sealed | pantry
        vinegar pickle | sweet potatoes | sealed | pantry
        vinegar pickle | mushrooms | sealed | room
        vinegar pickle | mushrooms | sealed | cellar
        vinegar pickle | pumpkins | sealed | pantry
        vinegar pickle | winter squash | sealed | pantry
    """,
    "USDA FSIS, Freezing and Food Safety: thawed food two hours out": """
        frozen | peas | thawed | room
        frozen | strawberries | thawed | pantry
        frozen | milk | thawed | room
        cooked meal | rice | thawed | room
        cooked meal | rice | sealed | room
        cooked meal | shrimp | open | pantry
        fresh | beef | thawed | room
        fresh | salmon | thawed | cellar
        cold smoked | salmon | thawed | room
        salted | hams | thawed | pantry
        fresh | milk | sealed | room
        fresh | cottage cheese | sealed | pantry
    """,
    "USDA/HHS foodsafety.gov, Cold Food Storage Chart: never freeze an egg in its shell": """
        fresh | eggs | sealed | freezer
    """,
}

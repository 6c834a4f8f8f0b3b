"""Cured, smoked, frozen and fresh food."""

from __future__ import annotations

TYPED = {
    # -- salted and smoked ---------------------------------------------------------------------
    "USDA FSIS, Ham Storage Chart": """
        salted | country hams | sealed | room | quality | 12 months
        salted | country hams | open | fridge | safety | 2 months
        salted | country hams | open | freezer | quality | 1 months
        salted | prosciutto | open | fridge | safety | 2 months
        salted | prosciutto | open | freezer | quality | 1 months
        salted | hams | sealed | fridge | safety | 5 days
        salted | hams | open | fridge | safety | 3 days
    """,
    "University of Missouri Extension MP558, cured and smoked meat (37 F)": """
        salted | corned beef | open | fridge 37F | safety | 5 days
        salted | dried beef | open | fridge 37F | safety | 10 days
        salted | hard sausages | open | fridge 37F | safety | 5 days
        salted | sausages | open | fridge 37F | safety | 2 days
        salted | summer sausages | open | fridge 37F | safety | 5 days
        hot smoked | sausages | sealed | fridge 37F | safety | 2 days
    """,
    "USDA Cold Storage Chart (older edition)": """
        salted | corned beef | sealed | fridge | safety | 5 days
        salted | summer sausages | sealed | fridge | quality | 3 months
        salted | summer sausages | sealed | freezer | quality | 1 months
        hot smoked | sausages | sealed | freezer | quality | 1 months
    """,
    "Michigan State University Extension, Preserving Food Safely, smoked fish": """
        hot smoked | trout | sealed | fridge 35F | safety | 14 days
        hot smoked | salmon | sealed | fridge 34F | safety | 14 days
        hot smoked | trout | sealed | freezer | quality | 2 months
        hot smoked | mackerel | sealed | freezer | quality | 2 months
    """,
    "University of Alaska Fairbanks Extension FNH-00325": """
        hot smoked | salmon | sealed | freezer | quality | 2 months
        cold smoked | salmon | sealed | freezer | quality | 2 months
    """,
    "UK Food Standards Agency/ACMSF, vacuum packing (ten-day rule)": """
        cold smoked | salmon | sealed | fridge | safety | 10 days
        cold smoked | trout | sealed | fridge | safety | 10 days
    """,
    "USDA FSIS, Smoking Meat and Poultry": """
        hot smoked | beef | sealed | fridge | safety | 4 days
        hot smoked | chickens | sealed | fridge | safety | 4 days
        hot smoked | turkeys | open | fridge | safety | 4 days
    """,
    # -- frozen --------------------------------------------------------------------------------
    "NCHFP, Freezer Shelf Life (So Easy to Preserve 6th ed.)": """
        frozen | peas | sealed | freezer | quality | 8 months
        frozen | runner beans | sealed | freezer | quality | 8 months
        frozen | pumpkin puree | sealed | freezer | quality | 8 months
        frozen | carrots | sealed | freezer | quality | 8 months
        frozen | spinach | sealed | freezer | quality | 8 months
        frozen | sweet corn | sealed | freezer | quality | 8 months
        frozen | onions | sealed | freezer | quality | 8 months
        frozen | leeks | sealed | freezer | quality | 8 months
        frozen | peppers | sealed | freezer | quality | 8 months
        frozen | strawberries | sealed | freezer | quality | 8 months
        frozen | raspberries | sealed | freezer | quality | 8 months
        frozen | blueberries | sealed | freezer | quality | 8 months
        frozen | peaches | sealed | freezer | quality | 8 months
        frozen | plums | sealed | freezer | quality | 8 months
        frozen | chickens | sealed | freezer | quality | 6 months
        frozen | turkeys | sealed | freezer | quality | 6 months
        frozen | bacon | sealed | freezer | quality | 1 months
        salted | hams | sealed | freezer | quality | 1 months
        lactic ferment | sauerkraut | sealed | freezer | quality | 8 months
        alcohol ferment | apple juice | sealed | freezer | quality | 8 months
    """,
    "Michigan State University Extension, Preserving Food Safely, freezing": """
        frozen | oranges | sealed | freezer | quality | 4 months
        frozen | lemons | sealed | freezer | quality | 4 months
    """,
    "University of Missouri Extension Quick Answers qafs338, freezer times": """
        frozen | ground beef | sealed | freezer | quality | 2 months
        frozen | ground lamb | sealed | freezer | quality | 2 months
        frozen | ground pork | sealed | freezer | quality | 1 months
        frozen | beef | sealed | freezer | quality | 6 months
        frozen | pork | sealed | freezer | quality | 3 months
        frozen | lamb | sealed | freezer | quality | 6 months
        frozen | liver | sealed | freezer | quality | 1 months
        frozen | sausages | sealed | freezer | quality | 1 months
        frozen | cod | sealed | freezer | quality | 3 months
        frozen | flounder | sealed | freezer | quality | 3 months
        frozen | salmon | sealed | freezer | quality | 2 months
        frozen | mackerel | sealed | freezer | quality | 2 months
        frozen | herrings | sealed | freezer | quality | 2 months
        frozen | oysters | sealed | freezer | quality | 4 months
        frozen | shrimp | sealed | freezer | quality | 3 months
    """,
    "USDA/HHS foodsafety.gov, Cold Food Storage Chart": """
        frozen | stew | sealed | freezer | quality | 2 months
        frozen | vegetable soup | sealed | freezer | quality | 2 months
        frozen | leftovers | sealed | freezer | quality | 2 months
        frozen | eggs | sealed | freezer | quality | 12 months
        frozen | peas | sealed | freezer | safety | none
        frozen | ground beef | sealed | freezer | safety | none
        frozen | leftovers | thawed | fridge | safety | 3 days
        frozen | stew | thawed | fridge | safety | 3 days
        frozen | eggs | thawed | fridge | safety | 0 days
        frozen | ground beef | sealed | fridge | safety | 1 days
        cooked meal | leftovers | sealed | fridge | safety | 3 days
        cooked meal | stew | open | fridge | safety | 3 days
        cooked meal | chicken soup | sealed | fridge | safety | 3 days
        cooked meal | chicken stock | sealed | fridge | safety | 3 days
        cooked meal | lasagne | sealed | freezer | quality | 2 months
        cooked meal | chicken soup | sealed | freezer | quality | 2 months
        cooked meal | beef stock | sealed | freezer | quality | 2 months
        cooked meal | leftovers | thawed | fridge | safety | 3 days
        fresh | eggs | sealed | fridge | safety | 5 weeks
        fresh | hard-cooked eggs | sealed | fridge | safety | 1 weeks
        fresh | eggs | open | fridge | safety | 2 days
        fresh | ground beef | sealed | fridge | safety | 1 days
        fresh | chickens | sealed | fridge | safety | 1 days
        fresh | beef | sealed | fridge | safety | 3 days
        fresh | lamb | sealed | fridge | safety | 3 days
        salted | bacon | open | fridge | safety | 7 days
        salted | bacon | sealed | freezer | quality | 1 months
    """,
    "FDA, What You Need to Know About Egg Safety": """
        fresh | eggs | sealed | fridge | quality | 3 weeks
    """,
    "Partnership for Food Safety Education/FSIS, Cold Food Storage": """
        fresh | salmon | sealed | fridge | safety | 1 days
        fresh | cod | sealed | fridge | safety | 1 days
        frozen | trout | sealed | fridge | safety | 1 days
    """,
    "Oklahoma State University, Safe Thawing": """
        frozen | ground beef | thawed | fridge | safety | 1 days
        frozen | ground pork | thawed | fridge | safety | 1 days
        frozen | salmon | thawed | fridge | safety | 1 days
        frozen | cod | thawed | fridge | safety | 1 days
        frozen | shrimp | thawed | fridge | safety | 1 days
        frozen | beef | thawed | fridge | safety | 3 days
        frozen | pork | thawed | fridge | safety | 3 days
        frozen | lamb | thawed | fridge | safety | 3 days
    """,
    "University of Illinois Extension, Thawing": """
        frozen | chickens | thawed | fridge | safety | 1 days
        frozen | turkeys | thawed | fridge | safety | 1 days
    """,
    "NC State Safe Plates, Storing Bread and Baked Products": """
        frozen | bread | sealed | freezer | quality | 2 months
        frozen | muffins | sealed | freezer | quality | 2 months
        frozen | cakes | sealed | freezer | quality | 2 months
        frozen | cookies | sealed | freezer | quality | 6 months
        frozen | bread dough | sealed | freezer | quality | 1 months
        frozen | bread dough | sealed | fridge | quality | 3 days
        frozen | bread dough | sealed | fridge | safety | 3 days
    """,
    "K-State Extension agent column, pies": """
        frozen | pies | sealed | freezer | quality | 4 months
    """,
    "Health Canada, dairy storage times": """
        frozen | butter | sealed | freezer | quality | 3 months
        frozen | milk | sealed | freezer | quality | 6 weeks
        frozen | cheese | sealed | freezer | quality | 8 weeks
        frozen | hard cheese | sealed | freezer | quality | 12 months
        fresh | butter | open | fridge | safety | 3 weeks
    """,
}

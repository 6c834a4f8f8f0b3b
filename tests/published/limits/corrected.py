"""What was looked up again in 2026, corrected or new; and what was found too lenient."""

from __future__ import annotations

TYPED = {
    # -- smoked fish -----------------------------------------------------------------------------
    "Michigan State University Extension, Preserving Food Safely 01600816: only below 36 F": """
        hot smoked | salmon | sealed | fridge 35F | safety | 14 days
        hot smoked | mackerel | open | fridge 35.9F | safety | 14 days
        hot smoked | eels | open | fridge 33F | safety | 14 days
        hot smoked | cod | sealed | fridge 35F | safety | 14 days
    """,
    "UK Food Standards Agency, ten-day rule at 3 to 8 C: from 36 F up": """
        hot smoked | salmon | sealed | fridge 36F | safety | 10 days
        hot smoked | salmon | sealed | fridge 38F | safety | 10 days
        hot smoked | trout | sealed | fridge 40F | safety | 10 days
        hot smoked | mackerel | open | fridge 37F | safety | 10 days
        hot smoked | herrings | open | fridge | safety | 10 days
        cold smoked | salmon | open | fridge | safety | 10 days
        cold smoked | mackerel | sealed | fridge 36F | safety | 10 days
    """,
    "Oklahoma State University, Safe Thawing: no closer figure, the strictest thawed limit": """
        frozen | peas | thawed | fridge | safety | 1 days
        frozen | runner beans | thawed | fridge | safety | 1 days
        frozen | spinach | thawed | fridge | safety | 1 days
        frozen | strawberries | thawed | fridge | safety | 1 days
        frozen | peaches | thawed | fridge | safety | 1 days
        frozen | milk | thawed | fridge | safety | 1 days
        frozen | hard cheese | thawed | fridge | safety | 1 days
        frozen | butter | thawed | fridge | safety | 1 days
        frozen | bread | thawed | fridge | safety | 1 days
        frozen | rice | thawed | fridge | safety | 1 days
        frozen | basil | thawed | fridge | safety | 1 days
        frozen | apple juice | thawed | fridge | safety | 1 days
        frozen | liver | thawed | fridge | safety | 1 days
        frozen | sausages | thawed | fridge | safety | 1 days
        frozen | ground lamb | thawed | fridge | safety | 1 days
        frozen | rabbits | thawed | fridge | safety | 1 days
        frozen | ducks | thawed | fridge | safety | 1 days
        frozen | bacon | thawed | fridge | safety | 1 days
        frozen | oysters | thawed | fridge | safety | 1 days
        frozen | tuna | thawed | fridge | safety | 1 days
        frozen | venison | thawed | fridge | safety | 3 days
        frozen | veal | thawed | fridge | safety | 3 days
        in oil | garlic | thawed | fridge | safety | 1 days
        in oil | pesto | thawed | fridge | safety | 1 days
        in oil | basil | thawed | fridge | safety | 1 days
        in oil | peppers | thawed | fridge | safety | 1 days
        salted | hams | thawed | fridge | safety | 1 days
        salted | salmon | thawed | fridge | safety | 1 days
        fresh | beef | thawed | fridge | safety | 1 days
        fresh | milk | thawed | fridge | safety | 1 days
        cold smoked | bacon | thawed | fridge | safety | 1 days
        hot smoked | salmon | thawed | fridge | safety | 1 days
        cold smoked | trout | thawed | fridge | safety | 1 days
    """,
    "USDA/HHS foodsafety.gov, Cold Food Storage Chart: once thawed, as leftovers": """
        frozen | vegetable soup | thawed | fridge | safety | 3 days
        frozen | chicken stock | thawed | fridge | safety | 3 days
        frozen | curry | thawed | fridge | safety | 3 days
        hot smoked | chickens | thawed | fridge | safety | 3 days
    """,
    # -- rice, shellfish, eggs -------------------------------------------------------------------
    "UK National Health Service on cooked rice (quoted)": """
        cooked meal | rice | sealed | fridge | safety | 1 days
        cooked meal | chicken and rice soup | sealed | fridge | safety | 1 days
        cooked meal | chicken and rice soup | open | fridge | safety | 1 days
        frozen | cooked rice | thawed | fridge | safety | 1 days
        frozen | cooked rice | sealed | fridge | safety | 1 days
        frozen | cooked rice | open | fridge | safety | 1 days
        frozen | biryani | thawed | fridge | safety | 1 days
        frozen | chicken and rice soup | thawed | fridge | safety | 1 days
        cooked meal | rice | open | fridge | safety | 1 days
        cooked meal | rice | thawed | fridge | safety | 1 days
        cooked meal | brown rice | sealed | fridge | safety | 1 days
        cooked meal | brown rice | open | fridge | safety | 1 days
        cooked meal | brown rice | thawed | fridge | safety | 1 days
    """,
    "USDA FSIS, Cornell University and FMI, food storage data 2018: cooked shellfish": """
        cooked meal | shrimp | sealed | fridge | safety | 3 days
        cooked meal | oysters | open | fridge | safety | 3 days
        cooked meal | shrimp | sealed | freezer | quality | 1 months
    """,
    "USDA/HHS foodsafety.gov, Cold Food Storage Chart: leftovers and hard-cooked eggs": """
        cooked meal | hard-cooked eggs | sealed | fridge | safety | 1 weeks
        cooked meal | hard-cooked eggs | open | fridge | safety | 1 weeks
        fresh | hard-cooked eggs | open | fridge | safety | 1 weeks
        cooked meal | curry | sealed | fridge | safety | 3 days
        cooked meal | chili con carne | sealed | fridge | safety | 3 days
        cooked meal | vegetable stock | open | fridge | safety | 3 days
        cooked meal | eggs | sealed | fridge | safety | 3 days
        cooked meal | chickens | sealed | fridge | safety | 3 days
        cooked meal | carrots | sealed | fridge | safety | 3 days
        cooked meal | pies | open | fridge | safety | 3 days
        frozen | lasagne | sealed | fridge | safety | 3 days
    """,
    # -- meat over cold smoke is raw meat ---------------------------------------------------------
    "USDA/HHS foodsafety.gov, Cold Food Storage Chart: raw meat (cold smoke does not cook)": """
        cold smoked | chickens | sealed | fridge | safety | 1 days
        cold smoked | ducks | open | fridge | safety | 1 days
        cold smoked | ground beef | sealed | fridge | safety | 1 days
        cold smoked | rabbits | sealed | fridge | safety | 1 days
        cold smoked | beef | sealed | fridge | safety | 3 days
        cold smoked | venison | open | fridge | safety | 3 days
        cold smoked | bacon | open | fridge | safety | 7 days
    """,
    "USDA FSIS, Ham Storage Chart: cold-smoked cured meat, and whole ham in the cold": """
        cold smoked | hams | sealed | fridge | safety | 5 days
        cold smoked | hams | open | fridge | safety | 3 days
        salted | country hams | sealed | fridge | safety | 12 months
        salted | country hams | sealed | fridge | quality | 12 months
    """,
    "University of Missouri Extension MP558, smoked sausage at 37 F": """
        cold smoked | sausages | sealed | fridge 37F | safety | 2 days
        cold smoked | sausages | open | fridge 37F | safety | 2 days
    """,
    "USDA FSIS, Shelf-Stable Food Safety: hard sausage, no longer in the cold": """
        salted | hard sausages | sealed | fridge | quality | 6 weeks
        salted | hard sausages | sealed | fridge | safety | 6 weeks
    """,
    # -- dairy ------------------------------------------------------------------------------------
    "University of Missouri Extension MP558, dairy at 37 F": """
        fresh | milk | sealed | fridge 37F | quality | 5 days
        fresh | milk | open | fridge 37F | quality | 5 days
        fresh | cream | sealed | fridge 37F | quality | 3 days
        fresh | cream | open | fridge 37F | quality | 3 days
        fresh | buttermilk | sealed | fridge 37F | quality | 3 days
        fresh | buttermilk | sealed | fridge 37F | safety | 3 days
        fresh | milk | sealed | fridge | safety | 5 days
        fresh | milk | open | fridge | safety | 5 days
        fresh | cream | sealed | fridge | safety | 3 days
        fresh | cream | open | fridge | safety | 3 days
        fresh | cottage cheese | sealed | fridge 37F | quality | 5 days
        fresh | cottage cheese | open | fridge 37F | safety | 5 days
        fresh | cream cheese | sealed | fridge 37F | quality | 2 weeks
        fresh | cream cheese | open | fridge 37F | safety | 2 weeks
        fresh | hard cheese | sealed | fridge 37F | quality | 1 months
        fresh | hard cheese | sealed | fridge 37F | safety | 2 months
        fresh | hard cheese | open | fridge 37F | quality | 3 weeks
        fresh | hard cheese | open | fridge 37F | safety | 4 weeks
    """,
    "University of Florida IFAS Extension, Nassau County, dairy storage": """
        fresh | yogurt | sealed | fridge | quality | 10 days
        fresh | yogurt | open | fridge | quality | 10 days
        fresh | yogurt | sealed | fridge | safety | 10 days
        fresh | cheese | open | fridge | quality | 1 weeks
        fresh | cheese | open | fridge | safety | 1 weeks
    """,
    "Health Canada, dairy storage times: butter": """
        fresh | butter | sealed | fridge | safety | 3 weeks
    """,
    # -- ferments and pickles ---------------------------------------------------------------------
    "Colorado State University Extension, Understanding and Making Kimchi": """
        lactic ferment | kimchi | sealed | fridge | quality | 1 weeks
        lactic ferment | kimchi | open | fridge | quality | 1 weeks
    """,
    "Michigan State University Extension 01600585, pickled fish: of shellfish it says nothing": """
        fridge pickle | pickled shellfish | sealed | fridge | safety | none
        fridge pickle | mussels | open | fridge | safety | none
        fridge pickle | shrimp | sealed | fridge | safety | none
        vinegar pickle | oysters | sealed | fridge | safety | none
        fridge pickle | salmon | sealed | fridge | safety | 4 weeks
    """,
    "Clemson Extension HGIC, dried vegetables: black garlic is aged by heat, and none of them": """
        dried | black garlic | sealed | pantry | quality | none
        dried | black garlic | sealed | room | quality | none
        dried | garlic | sealed | pantry | quality | 6 months
    """,
    "Colorado State University Extension, pickles: processed by a tested recipe, or kept cold": """
        vinegar pickle | beets | sealed | room | quality | 12 months
        vinegar pickle | cucumbers | sealed | pantry | quality | 12 months
        vinegar pickle | snap beans | sealed | pantry | quality | 12 months
        vinegar pickle | runner beans | sealed | cellar | quality | 12 months
        vinegar pickle | onions | sealed | pantry | quality | 12 months
        vinegar pickle | peppers | sealed | room | quality | 12 months
        vinegar pickle | chillies | sealed | fridge | quality | 12 months
        vinegar pickle | peaches | sealed | pantry | quality | 12 months
        vinegar pickle | garlic | sealed | fridge | quality | 2 months
        vinegar pickle | potatoes | sealed | fridge | quality | 2 months
        vinegar pickle | mushrooms | sealed | fridge | quality | 2 months
        vinegar pickle | carrots | sealed | fridge | quality | 2 months
        vinegar pickle | cauliflowers | sealed | fridge | quality | 2 months
        vinegar pickle | dill | sealed | fridge | quality | 2 months
        vinegar pickle | carrots | sealed | pantry | quality | none
        vinegar pickle | celery | sealed | room | quality | none
        vinegar pickle | asparagus | sealed | pantry | quality | none
        vinegar pickle | basil | sealed | room | quality | none
    """,
    "University of Missouri Extension MP557: opened pickles and relishes, quality alone": """
        boiling-water canned | dill pickles | open | fridge | safety | none
        boiling-water canned | pickled beets | open | fridge | quality | 1 months
        boiling-water canned | strawberry jam | open | fridge | safety | none
        boiling-water canned | chutney | open | fridge | quality | 1 months
        boiling-water canned | cider | sealed | room | quality | 9 months
        boiling-water canned | elderflower cordial | sealed | cellar | quality | 9 months
    """,
    "USDA FSIS, Shelf-Stable Food Safety: opened home-canned salsa and ketchup": """
        boiling-water canned | salsa | open | fridge | safety | 3 days
        boiling-water canned | ketchups | open | fridge | safety | 3 days
        boiling-water canned | peaches | open | fridge | safety | 3 days
        boiling-water canned | tomatoes | working | fridge | safety | 3 days
        pressure canned | runner beans | working | fridge | safety | 3 days
    """,
    "Extension column 2021: a jar that did not seal, within a day": """
        boiling-water canned | peaches | working | room | safety | 1 days
        pressure canned | carrots | working | room | safety | 1 days
        vinegar pickle | dill pickles | working | room | safety | 1 days
    """,
    # -- no shorter in a cooler place -------------------------------------------------------------
    "University of Missouri Extension MP557: nuts in the shell, in a warm room as well": """
        dried | walnuts | sealed | room | quality | 4 months
        dried | walnuts | sealed | cellar | quality | 4 months
    """,
    "University of Missouri Extension news, Making fruit leather: no longer in the cold": """
        dried | fruit leather | sealed | pantry | quality | 1 months
        dried | fruit leather | sealed | cellar | quality | 1 months
        dried | fruit leather | sealed | fridge | quality | 1 months
    """,
    "Utah State University Extension, Food Storage page: brown rice": """
        dried | brown rice | sealed | room | quality | 6 months
        dried | brown rice | sealed | cellar | quality | 6 months
    """,
    "Told as recalled, on weak pages alone: no date": """
        fresh | lemon curd | sealed | fridge | quality | none
        fresh | lemon curd | sealed | fridge | safety | none
    """,
}

"""Canned, jam, pickles, ferments, dried, oil and sugar."""

from __future__ import annotations

TYPED = {
    # -- canned --------------------------------------------------------------------------------
    "USDA FSIS, Shelf-Stable Food Safety, storage table": """
        boiling-water canned | peaches | sealed | pantry | quality | 12 months
        boiling-water canned | apples | sealed | room | quality | 12 months
        boiling-water canned | pears | sealed | pantry | quality | 12 months
        boiling-water canned | tomatoes | sealed | pantry | quality | 12 months
        boiling-water canned | crushed tomatoes | sealed | pantry | quality | 12 months
        pressure canned | runner beans | sealed | pantry | quality | 12 months
        pressure canned | carrots | sealed | room | quality | 12 months
        pressure canned | chicken soup | sealed | pantry | quality | 12 months
        boiling-water canned | peaches | open | fridge | safety | 3 days
        boiling-water canned | tomatoes | open | fridge | safety | 3 days
        boiling-water canned | crushed tomatoes | open | fridge | safety | 3 days
        boiling-water canned | apple juice | open | fridge | safety | 3 days
        pressure canned | vegetable soup | open | fridge | safety | 3 days
        sugar preserve | elderflower cordial | open | fridge | safety | 3 days
        salted | hard sausages | sealed | pantry | quality | 6 weeks
    """,
    "University of Missouri Extension MP557, Storing Food in the Cupboard, canned foods": """
        boiling-water canned | apple juice | sealed | pantry | quality | 9 months
        boiling-water canned | grape juice | sealed | pantry | quality | 9 months
        pressure canned | beef | open | fridge | safety | 2 days
        pressure canned | pork | open | fridge | safety | 2 days
        pressure canned | chickens | open | fridge | safety | 2 days
        pressure canned | salmon | open | fridge | safety | 2 days
        pressure canned | tuna | open | fridge | safety | 2 days
        pressure canned | runner beans | open | fridge | safety | 3 days
        pressure canned | carrots | open | fridge | safety | 3 days
        pressure canned | sweet corn | open | fridge | safety | 3 days
        pressure canned | beets | open | fridge | safety | 3 days
        boiling-water canned | dill pickles | open | fridge | quality | 1 months
        vinegar pickle | dill pickles | open | fridge | quality | 1 months
        vinegar pickle | pickled beets | open | fridge | quality | 1 months
        dried | spices | sealed | pantry | quality | 6 months
        dried | thyme | sealed | pantry | quality | 6 months
        dried | mint | sealed | pantry | quality | 6 months
        dried | oregano | sealed | pantry | quality | 6 months
        dried | walnuts | sealed | pantry | quality | 4 months
        dried | walnuts | open | fridge | quality | 2 weeks
        dried | dry beans | sealed | pantry | quality | 12 months
        dried | popcorn | sealed | pantry | quality | 2 years
        alcohol infusion | vanilla extract | sealed | pantry | quality | 24 months
        alcohol infusion | vanilla extract | open | pantry | quality | 12 months
        alcohol infusion | extracts | open | pantry | quality | 12 months
        sugar preserve | honey | sealed | pantry | quality | 12 months
        cellar-stored | potatoes | sealed | room | quality | 2 weeks
        cellar-stored | sweet potatoes | sealed | room | quality | 1 weeks
        cellar-stored | onions | sealed | room | quality | 2 weeks
    """,
    "Utah State University Extension EC 257": """
        pressure canned | beef | sealed | cellar | quality | 12 months
        pressure canned | salmon | sealed | cellar | quality | 12 months
        pressure canned | peas | sealed | cellar | quality | 12 months
        boiling-water canned | plums | sealed | cellar | quality | 12 months
        boiling-water canned | pickle relish | sealed | pantry | quality | 12 months
    """,
    # -- jam -----------------------------------------------------------------------------------
    "NCHFP FAQ, jams and jellies opened and unopened": """
        jam | strawberry jam | sealed | pantry | quality | 12 months
        jam | raspberry jam | sealed | room | quality | 12 months
        jam | blackcurrant jelly | sealed | cellar | quality | 12 months
        jam | low-sugar jams | sealed | pantry | quality | 12 months
        jam | strawberry jam | open | fridge | quality | 1 months
        jam | apple jelly | open | fridge | quality | 1 months
        jam | low-sugar jams | open | fridge | quality | 3 weeks
        freezer jam | strawberry jam | thawed | fridge | quality | 3 weeks
        freezer jam | strawberry jam | open | fridge | quality | 3 weeks
    """,
    "University of Georgia Extension FDNS-E-43-09, Uncooked Jams and Jellies": """
        freezer jam | strawberry jam | sealed | fridge | quality | 3 weeks
        freezer jam | raspberry jam | sealed | fridge | quality | 3 weeks
        freezer jam | strawberry jam | sealed | freezer | quality | 12 months
        freezer jam | peach jam | sealed | freezer | quality | 12 months
    """,
    # -- pickles -------------------------------------------------------------------------------
    "Colorado State University Extension, pickles": """
        fridge pickle | dill pickles | sealed | fridge | quality | 2 months
        fridge pickle | pickled beets | sealed | fridge | quality | 2 months
        fridge pickle | pickled onions | open | fridge | quality | 2 months
        vinegar pickle | dill pickles | sealed | pantry | quality | 12 months
        vinegar pickle | dilly beans | sealed | pantry | quality | 12 months
        vinegar pickle | pickled beets | sealed | cellar | quality | 12 months
        vinegar pickle | pickled onions | working | fridge | quality | 2 months
        flavoured vinegar | herb vinegar | sealed | pantry | quality | 3 months
        flavoured vinegar | raspberry vinegar | sealed | room | quality | 3 months
        flavoured vinegar | herb vinegar | sealed | fridge | quality | 6 months
    """,
    "NCHFP, pickled eggs": """
        fridge pickle | pickled eggs | sealed | fridge | quality | 3 months
        vinegar pickle | pickled eggs | sealed | fridge | quality | 3 months
        fridge pickle | pickled eggs | sealed | fridge | safety | 3 months
        fridge pickle | pickled eggs | open | fridge | safety | 3 months
        vinegar pickle | pickled eggs | sealed | fridge | safety | 3 months
    """,
    "Michigan State University Extension, Preserving Food Safely, pickled fish": """
        fridge pickle | pickled fish | sealed | fridge | safety | 4 weeks
        fridge pickle | pickled fish | open | fridge | safety | 4 weeks
    """,
    # -- ferments ------------------------------------------------------------------------------
    "Penn State Extension, sauerkraut storage": """
        lactic ferment | sauerkraut | sealed | fridge | quality | 3 months
        lactic ferment | sauerkraut | open | fridge | quality | 7 days
    """,
    "NCHFP/USDA, fermented dill pickles": """
        lactic ferment | dill pickles | sealed | fridge | quality | 4 months
    """,
    "No publication gives a number (house defaults: other ferments)": """
        lactic ferment | carrots | sealed | fridge | quality | none
        lactic ferment | cabbages | open | fridge | quality | none
        lactic ferment | fermented carrots | sealed | fridge | quality | none
        fermented paste | miso | sealed | fridge | quality | none
        vinegar ferment | vinegar | sealed | pantry | quality | none
        alcohol ferment | cider | sealed | cellar | quality | none
        alcohol ferment | mead | sealed | cellar | quality | none
        alcohol infusion | sloe gin | sealed | cellar | quality | none
        alcohol infusion | limoncello | sealed | pantry | quality | none
        freeze-dried | strawberries | sealed | pantry | quality | none
        in oil | garlic | sealed | freezer | quality | none
    """,
    # -- dried ---------------------------------------------------------------------------------
    "Clemson Extension HGIC, packaging and storing dried foods (60 F and 80 F)": """
        dried | carrots | sealed | pantry | quality | 6 months
        dried | runner beans | sealed | cellar | quality | 6 months
        dried | mushrooms | sealed | pantry | quality | 6 months
        dried | onions | sealed | pantry | quality | 6 months
        dried | tomatoes | sealed | pantry | quality | 6 months
        dried | carrots | sealed | room 80F | quality | 3 months
        dried | zucchini | sealed | room 80F | quality | 3 months
    """,
    "NCHFP/UGA, Packaging and Storing Dried Foods (60 F and 80 F)": """
        dried | apples | sealed | pantry | quality | 12 months
        dried | plums | sealed | cellar | quality | 12 months
        dried | pears | sealed | pantry | quality | 12 months
        dried | apricots | sealed | pantry | quality | 12 months
        dried | apples | sealed | room 80F | quality | 6 months
        dried | cherries | sealed | room 80F | quality | 6 months
        dried | apples | open | pantry | quality | none
    """,
    "University of Wyoming Extension, Making Safe Jerky": """
        dried | jerky | sealed | room | safety | 2 weeks
        dried | jerky | sealed | room | quality | 2 weeks
        dried | jerky | sealed | fridge | quality | 3 months
        dried | jerky | sealed | fridge | safety | 3 months
        dried | jerky | open | fridge | safety | 3 months
        dried | beef | open | pantry | safety | 2 weeks
        dried | beef | open | fridge | safety | 3 months
        dried | beef | sealed | fridge | safety | 3 months
        dried | jerky | sealed | freezer | quality | 12 months
    """,
    "University of Missouri Extension news, Making fruit leather": """
        dried | fruit leather | sealed | room | quality | 1 months
        dried | fruit leather | sealed | freezer | quality | 12 months
    """,
    "Kansas State University Extension, You Asked It: nuts": """
        dried | walnuts | sealed | fridge | quality | 12 months
    """,
    "Michigan State University Extension, Preserving Food Safely, nuts": """
        dried | walnuts | sealed | freezer | quality | 12 months
        frozen | walnuts | sealed | freezer | quality | 12 months
    """,
    "Utah State University Extension, Food Storage page": """
        dried | brown rice | sealed | pantry | quality | 6 months
    """,
    # -- in oil --------------------------------------------------------------------------------
    "NCHFP, Freezing: Garlic-in-Oil (reviewed 2015), days from mixing": """
        in oil | garlic | sealed | fridge | safety | 4 days
        in oil | garlic | open | fridge | safety | 4 days
        in oil | peppers | sealed | fridge | safety | 4 days
        in oil | mushrooms | sealed | fridge | safety | 4 days
    """,
    "NC State/NCHFP FAQ, herbs in oil and pesto": """
        in oil | basil | sealed | fridge | safety | 2 days
        in oil | herb oil | sealed | fridge | safety | 2 days
        in oil | rosemary | open | fridge | safety | 2 days
    """,
    "Michigan State University Extension, garlic in oil and pesto": """
        in oil | pesto | sealed | fridge | safety | 2 days
        in oil | pesto | sealed | freezer | quality | 2 months
        frozen | pesto | sealed | freezer | quality | 2 months
    """,
    # -- sugar ---------------------------------------------------------------------------------
    "Ohio State University Extension HYG-5522, maple syrup": """
        sugar preserve | maple syrup | sealed | fridge | quality | 12 months
    """,
    "Michigan State University Extension, Cupboard Storage Chart": """
        sugar preserve | molasses | sealed | pantry | quality | 12 months
        sugar preserve | molasses | open | pantry | quality | 6 months
        fresh | butter | sealed | fridge | quality | 2 weeks
    """,
}

"""Keeping limits, typed in by hand from the publications named above each block.

One line a figure: method | food | state | climate | kind | limit. The limit is the one in use:
the strictest of the current publications for safety; for quality the shorter end of the range,
except where the household defaults say otherwise. `none` means the publication gives no number.
"""

from __future__ import annotations

TYPED = {
    # -- canned ----------------------------------------------------------------------------------
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
        sugar preserve | elderflower cordial | sealed | pantry | quality | 12 months
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
    # -- jam -------------------------------------------------------------------------------------
    "NCHFP FAQ, jams and jellies opened and unopened": """
        jam | strawberry jam | sealed | pantry | quality | 12 months
        jam | raspberry jam | sealed | room | quality | 12 months
        jam | blackcurrant jelly | sealed | cellar | quality | 12 months
        jam | low-sugar jams | sealed | pantry | quality | 12 months
        jam | strawberry jam | open | fridge | quality | 1 months
        jam | apple jelly | open | fridge | quality | 1 months
        jam | low-sugar jams | open | fridge | quality | none
        freezer jam | strawberry jam | thawed | fridge | quality | 3 weeks
        freezer jam | strawberry jam | open | fridge | quality | 3 weeks
    """,
    "University of Georgia Extension FDNS-E-43-09, Uncooked Jams and Jellies": """
        freezer jam | strawberry jam | sealed | fridge | quality | 3 weeks
        freezer jam | raspberry jam | sealed | fridge | quality | 3 weeks
        freezer jam | strawberry jam | sealed | freezer | quality | 12 months
        freezer jam | peach jam | sealed | freezer | quality | 12 months
    """,
    # -- pickles ---------------------------------------------------------------------------------
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
    """,
    "Michigan State University Extension, Preserving Food Safely, pickled fish": """
        fridge pickle | pickled fish | sealed | fridge | safety | 4 weeks
        fridge pickle | pickled fish | open | fridge | safety | 4 weeks
    """,
    # -- ferments --------------------------------------------------------------------------------
    "Penn State Extension, sauerkraut storage": """
        lactic ferment | sauerkraut | sealed | fridge | quality | 3 months
        lactic ferment | sauerkraut | open | fridge | quality | 7 days
    """,
    "NCHFP/USDA, fermented dill pickles": """
        lactic ferment | dill pickles | sealed | fridge | quality | 4 months
    """,
    "No publication gives a number (house defaults: other ferments)": """
        lactic ferment | kimchi | sealed | fridge | quality | none
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
    # -- dried -----------------------------------------------------------------------------------
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
    # -- salted and smoked -----------------------------------------------------------------------
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
        hot smoked | trout | sealed | fridge | safety | 14 days
        hot smoked | salmon | sealed | fridge | safety | 14 days
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
    # -- frozen ----------------------------------------------------------------------------------
    "NCHFP, Freezer Shelf Life (So Easy to Preserve 6th ed.)": """
        frozen | peas | sealed | freezer | quality | 8 months
        frozen | runner beans | sealed | freezer | quality | 8 months
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
        frozen | basil | sealed | freezer | quality | 6 months
        frozen | parsley | sealed | freezer | quality | 6 months
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
    # -- in oil ----------------------------------------------------------------------------------
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
    """,
    # -- sugar -----------------------------------------------------------------------------------
    "Ohio State University Extension HYG-5522, maple syrup": """
        sugar preserve | maple syrup | sealed | fridge | quality | 12 months
    """,
    "Michigan State University Extension, Cupboard Storage Chart": """
        sugar preserve | molasses | sealed | pantry | quality | 12 months
        sugar preserve | molasses | open | pantry | quality | 6 months
        fresh | butter | sealed | fridge | quality | 2 weeks
    """,
    # -- cellar (at the published temperature) ---------------------------------------------------
    "USDA Handbook 66 (1954), vegetable holding table": """
        cellar-stored | beets | sealed | cellar 32F | quality | 7 weeks
        cellar-stored | kohlrabi | sealed | cellar 32F | quality | 4 weeks
        cellar-stored | winter radishes | sealed | cellar 32F | quality | 8 weeks
        cellar-stored | radishes | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | rutabagas | sealed | cellar 32F | quality | 8 weeks
        cellar-stored | onions | sealed | cellar 32F | quality | 28 weeks
        cellar-stored | cabbages | sealed | cellar 32F | quality | 12 weeks
        cellar-stored | chinese cabbages | sealed | cellar 32F | quality | 8 weeks
        cellar-stored | broccoli | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | spinach | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | lettuces | sealed | cellar 32F | quality | 2 weeks
        cellar-stored | rhubarb | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | peas | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | snap beans | sealed | cellar 46F | quality | 1 weeks
        cellar-stored | eggplants | sealed | pantry 52F | quality | 1 weeks
        cellar-stored | peppers | sealed | cellar 48F | quality | 1 weeks
    """,
    "USDA Agriculture Handbook 66 (2002 draft)": """
        cellar-stored | brussels sprouts | sealed | cellar 32F | quality | 3 weeks
        cellar-stored | endives | sealed | cellar 32F | quality | 2 weeks
        cellar-stored | celery | sealed | cellar 32F | quality | 5 weeks
        cellar-stored | asparagus | sealed | cellar 34F | quality | 14 days
        cellar-stored | sweet corn | sealed | cellar 32F | quality | 4 days
        cellar-stored | cucumbers | sealed | pantry 52F | quality | 10 days
        cellar-stored | persimmons | sealed | cellar 32F | quality | 3 months
        cellar-stored | nectarines | sealed | cellar 32F | quality | 14 days
        cellar-stored | plums | sealed | cellar 32F | quality | 14 days
        cellar-stored | raspberries | sealed | cellar 32F | quality | 2 days
        cellar-stored | lemons | sealed | pantry 52F | quality | 6 months
    """,
    "UC Davis Postharvest (Cantwell 2001), properties and recommended conditions": """
        cellar-stored | jerusalem artichokes | sealed | cellar 32F | quality | 4 months
        cellar-stored | garlic | sealed | cellar 32F | quality | 6 months
        cellar-stored | green onions | sealed | cellar 32F | quality | 3 weeks
        cellar-stored | artichokes | sealed | cellar 32F | quality | 2 weeks
        cellar-stored | fennel | sealed | cellar 34F | quality | 2 weeks
        cellar-stored | okra | sealed | cellar 48F | quality | 7 days
        cellar-stored | kiwifruit | sealed | cellar 32F | quality | 3 months
    """,
    "USDA fresh-fruit commercial storage table (Handbook 66)": """
        cellar-stored | grapes | sealed | cellar 32F | quality | 2 weeks
        cellar-stored | cranberries | sealed | cellar 38F | quality | 2 months
        cellar-stored | apricots | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | peaches | sealed | cellar 32F | quality | 2 weeks
        cellar-stored | blueberries | sealed | cellar 32F | quality | 2 weeks
        cellar-stored | blackberries | sealed | cellar 32F | quality | 2 days
        cellar-stored | strawberries | sealed | cellar 32F | quality | 5 days
        cellar-stored | gooseberries | sealed | cellar 32F | quality | 2 weeks
        cellar-stored | blackcurrants | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | elderberries | sealed | cellar 32F | quality | 1 weeks
        cellar-stored | figs | sealed | cellar 32F | quality | 7 days
        cellar-stored | oranges | sealed | cellar 32F | quality | 8 weeks
    """,
    "University of Nebraska-Lincoln Extension, storing garden produce": """
        cellar-stored | carrots | sealed | cellar 38F | quality | 4 months
        cellar-stored | potatoes | sealed | cellar 40F | quality | 5 months
        cellar-stored | winter squash | sealed | pantry 55F | quality | 2 months
        cellar-stored | acorn squash | sealed | cellar 45F | quality | 35 days
    """,
    "University of Minnesota Extension, storing vegetables": """
        cellar-stored | parsnips | sealed | cellar 36F | quality | 4 months
        cellar-stored | turnips | sealed | cellar 36F | quality | 4 months
    """,
    "ASHRAE Handbook 1998 values": """
        cellar-stored | leeks | sealed | cellar 32F | quality | 1 months
        cellar-stored | cauliflowers | sealed | cellar 32F | quality | 2 weeks
    """,
    "Iowa State University Extension, Hort News 2017": """
        cellar-stored | sweet potatoes | sealed | pantry 58F | quality | 4 months
    """,
}

#: What publications do not let stand there: method | food | state | climate.
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
}

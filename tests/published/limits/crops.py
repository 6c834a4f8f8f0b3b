"""Crops in a cellar, at the published temperature, and in a home fridge."""

from __future__ import annotations

TYPED = {
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
    # -- fridge: no figure of a cellar ----------------------------------------------------------
    "USDA FSIS, Cornell University and FMI, food storage data 2018: fresh crops": """
        cellar-stored | apples | sealed | fridge | quality | 4 weeks
        cellar-stored | apricots | sealed | fridge | quality | 2 days
        cellar-stored | artichokes | sealed | fridge | quality | 1 weeks
        cellar-stored | asparagus | sealed | fridge | quality | 3 days
        cellar-stored | beets | sealed | fridge | quality | 1 weeks
        cellar-stored | blackberries | sealed | fridge | quality | 3 days
        cellar-stored | blackcurrants | sealed | fridge | quality | 3 days
        cellar-stored | blueberries | sealed | fridge | quality | 1 weeks
        cellar-stored | broad beans | sealed | fridge | quality | 3 days
        cellar-stored | broccoli | sealed | fridge | quality | 3 days
        cellar-stored | brussels sprouts | sealed | fridge | quality | 3 days
        cellar-stored | cabbages | sealed | fridge | quality | 1 weeks
        cellar-stored | carrots | sealed | fridge | quality | 2 weeks
        cellar-stored | cauliflowers | sealed | fridge | quality | 3 days
        cellar-stored | celeriac | sealed | fridge | quality | 1 weeks
        cellar-stored | celery | sealed | fridge | quality | 1 weeks
        cellar-stored | chard | sealed | fridge | quality | 1 weeks
        cellar-stored | cherries | sealed | fridge | quality | 2 days
        cellar-stored | chillies | sealed | fridge | quality | 1 weeks
        cellar-stored | chinese cabbages | sealed | fridge | quality | 2 days
        cellar-stored | collards | sealed | fridge | quality | 1 days
        cellar-stored | cranberries | sealed | fridge | quality | 2 months
        cellar-stored | cucumbers | sealed | fridge | quality | 4 days
        cellar-stored | eggplants | sealed | fridge | quality | 4 days
        cellar-stored | garlic | sealed | fridge | quality | 3 days
        cellar-stored | ginger | sealed | fridge | quality | 2 weeks
        cellar-stored | gooseberries | sealed | fridge | quality | 7 days
        cellar-stored | grapefruits | sealed | fridge | quality | 10 days
        cellar-stored | grapes | sealed | fridge | quality | 1 weeks
        cellar-stored | green onions | sealed | fridge | quality | 1 weeks
        cellar-stored | kale | sealed | fridge | quality | 3 days
        cellar-stored | kiwifruit | sealed | fridge | quality | 3 days
        cellar-stored | kohlrabi | sealed | fridge | quality | 1 weeks
        cellar-stored | leeks | sealed | fridge | quality | 1 weeks
        cellar-stored | lemons | sealed | fridge | quality | 10 days
        cellar-stored | lettuces | sealed | fridge | quality | 3 days
        cellar-stored | lima beans | sealed | fridge | quality | 3 days
        cellar-stored | limes | sealed | fridge | quality | 10 days
        cellar-stored | melons | sealed | fridge | quality | 5 days
        cellar-stored | mushrooms | sealed | fridge | quality | 3 days
        cellar-stored | nectarines | sealed | fridge | quality | 3 days
        cellar-stored | okra | sealed | fridge | quality | 2 days
        cellar-stored | onions | sealed | fridge | quality | 2 months
        cellar-stored | oranges | sealed | fridge | quality | 10 days
        cellar-stored | parsnips | sealed | fridge | quality | 2 weeks
        cellar-stored | peaches | sealed | fridge | quality | 3 days
        cellar-stored | pears | sealed | fridge | quality | 3 days
        cellar-stored | peas | sealed | fridge | quality | 3 days
        cellar-stored | peppers | sealed | fridge | quality | 4 days
        cellar-stored | plums | sealed | fridge | quality | 3 days
        cellar-stored | radishes | sealed | fridge | quality | 10 days
        cellar-stored | raspberries | sealed | fridge | quality | 2 days
        cellar-stored | rhubarb | sealed | fridge | quality | 3 days
        cellar-stored | rutabagas | sealed | fridge | quality | 2 weeks
        cellar-stored | snap beans | sealed | fridge | quality | 3 days
        cellar-stored | snow peas | sealed | fridge | quality | 3 days
        cellar-stored | spinach | sealed | fridge | quality | 3 days
        cellar-stored | strawberries | sealed | fridge | quality | 2 days
        cellar-stored | sweet corn | sealed | fridge | quality | 1 days
        cellar-stored | turnips | sealed | fridge | quality | 2 weeks
        cellar-stored | watermelons | sealed | fridge | quality | 3 days
        cellar-stored | winter squash | sealed | fridge | quality | 1 months
        cellar-stored | zucchini | sealed | fridge | quality | 4 days
    """,
    "No figure for a refrigerator is in use (the cellar's is not lent)": """
        cellar-stored | potatoes | sealed | fridge | quality | none
        cellar-stored | sweet potatoes | sealed | fridge | quality | none
        cellar-stored | horseradish | sealed | fridge | quality | none
        cellar-stored | salsify | sealed | fridge | quality | none
        cellar-stored | winter radishes | sealed | fridge | quality | none
        cellar-stored | jerusalem artichokes | sealed | fridge | quality | none
        cellar-stored | quinces | sealed | fridge | quality | none
        cellar-stored | elderberries | sealed | fridge | quality | none
        cellar-stored | figs | sealed | fridge | quality | none
        cellar-stored | persimmons | sealed | fridge | quality | none
    """,
    "USDA Handbook 66 values, in a storage table that names no publication": """
        cellar-stored | celeriac | sealed | cellar 32F | quality | 6 months
        cellar-stored | horseradish | sealed | cellar 32F | quality | 10 months
        cellar-stored | ginger | sealed | pantry 55F | quality | 6 months
        cellar-stored | dry beans | sealed | cellar 50F | quality | 6 months
        cellar-stored | lima beans | sealed | cellar 41F | quality | 5 days
    """,
    "UC Davis Postharvest, in a table citing it": """
        cellar-stored | kale | sealed | cellar 32F | quality | 10 days
        cellar-stored | collards | sealed | cellar 32F | quality | 10 days
    """,
    "USDA Agriculture Handbook 66 (2002 draft), fruit and pods": """
        cellar-stored | pears | sealed | cellar 32F | quality | 60 days
        cellar-stored | apples | sealed | cellar 36F | quality | 2 months
        cellar-stored | tomatillos | sealed | pantry 50F | quality | 3 weeks
        cellar-stored | watermelons | sealed | pantry 59F | quality | 2 weeks
    """,
    "USDA Handbook 66 (1954), summer crops at their own warmth": """
        cellar-stored | runner beans | sealed | pantry 50F | quality | 1 weeks
        cellar-stored | green tomatoes | sealed | pantry 60F | quality | 1 weeks
        cellar-stored | tomatoes | sealed | pantry 55F | quality | 1 weeks
        cellar-stored | melons | sealed | pantry 50F | quality | 1 weeks
    """,
    "UC Davis Postharvest (Cantwell 2001), mushrooms": """
        cellar-stored | mushrooms | sealed | cellar 32F | quality | 7 days
    """,
    "Michigan State University Extension, PFS 01600025 and fall produce": """
        cellar-stored | potatoes | sealed | pantry 50F | quality | 1 months
        cellar-stored | onions | sealed | pantry 55F | quality | 1 months
    """,
}

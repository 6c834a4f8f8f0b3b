"""Fruit and fruit juices: processes, typed by hand (notation: see the package)."""

from __future__ import annotations

TYPED = {
    "USDA AIB 539, Complete Guide to Home Canning, 1994 (copy)": """
        apples | hot | pint quart | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        apples | hot | pint quart | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        apples | hot | pint quart | weighted | 1000 8@5, up 8@10
        apple butter | hot | half-pint pint | boiling-water | 1000 5, 6000 10, up 15
        apple butter | hot | quart | boiling-water | 1000 10, 6000 15, up 20
        cherries | hot | pint | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        cherries | hot raw | quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        cherries | raw | pint | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        oranges | raw | pint | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        oranges | raw | quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        oranges | raw | pint | weighted | 1000 8@5, up 8@10
        oranges | raw | quart | weighted | 1000 10@5, up 10@10
        peaches | hot | pint | boiling-water | 1000 20, 3000 25, 5000 30, 6001-up 35
        peaches | hot | quart | boiling-water | 1000 25, 3000 30, 5000 35, 6001-up 40
        peaches | raw | pint | boiling-water | 1000 25, 3000 30, 5000 35, 6001-up 40
        peaches | raw | quart | boiling-water | 1000 30, 3000 35, 5000 40, 6001-up 45
        peaches | hot raw | pint quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        peaches | hot raw | pint quart | weighted | 1000 10@5, up 10@10
        pears | hot | pint | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        pears | hot | quart | boiling-water | 1000 25, 3000 30, 6000 35, up 40
        pears | hot | pint quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        pears | hot | pint quart | weighted | 1000 10@5, up 10@10
        pineapples | hot | pint | boiling-water | 1000 15, 3000 20, 6000 20, up 25
        pineapples | hot | quart | boiling-water | 1000 20, 3000 25, 6000 30, up 35
    """,
    "Utah State University Extension, timetables for 3,000 to 10,000 ft (Riggs and Washburn)": """
        apples | hot | pint quart | boiling-water | 8001-10000 40
        applesauce | hot | pint | boiling-water | 8001-10000 30
        applesauce | hot | quart | boiling-water | 8001-10000 40
        apple juice | hot | pint quart | boiling-water | 8001-10000 20
        apricots | hot | quart | boiling-water | 3001-6000 35, up 40, 8001-10000 45
        apricots | raw | pint | boiling-water | 3001-6000 35, up 40, 8001-10000 45
        apricots | raw | quart | boiling-water | 3001-6000 40, up 45, 8001-10000 50
        apricots | hot | pint | boiling-water | 8001-10000 40
        raspberries | hot raw | pint | boiling-water | 8001-10000 30
        raspberries | hot raw | quart | boiling-water | 8001-10000 40
        cherries | hot | pint | boiling-water | 8001-10000 30
        cherries | hot | quart | boiling-water | 8001-10000 40
        cherries | raw | pint quart | boiling-water | 8001-10000 45
        fruit puree | hot | pint quart | boiling-water | 8001-10000 30
        grape juice | hot | pint quart | boiling-water | 8001-10000 20
        peaches | hot | pint | boiling-water | 8001-10000 40
        peaches | hot | quart | boiling-water | 8001-10000 45
        peaches | raw | pint | boiling-water | 8001-10000 45
        peaches | raw | quart | boiling-water | 8001-10000 50
        pears | hot | pint | boiling-water | 8001-10000 40
        pears | hot | quart | boiling-water | 8001-10000 45
        plums | hot raw | pint | boiling-water | 8001-10000 40
        plums | hot raw | quart | boiling-water | 8001-10000 45
    """,
    "Michigan State University Extension, Preserving Food Safely 1997 (USDA AIB 539 figures)": """
        applesauce | hot | pint | boiling-water | 1000 15, 3000 20, 6000 20, up 25
        applesauce | hot | quart | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        applesauce | hot | pint | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        applesauce | hot | pint | weighted | 1000 8@5, up 8@10
        applesauce | hot | quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        applesauce | hot | quart | weighted | 1000 10@5, up 10@10
        figs | hot | pint | boiling-water | 1000 45, 3000 50, 6000 55, up 60
        figs | hot | quart | boiling-water | 1000 50, 3000 55, 6000 60, up 65
        fruit puree | hot | pint quart | boiling-water | 1000 15, 6000 20, up 25
        fruit puree | hot | pint quart | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        fruit puree | hot | pint quart | weighted | 1000 8@5, up 8@10
        grape juice | hot | pint quart | boiling-water | 1000 5, 6000 10, up 15
        grape juice | hot | half-gallon | boiling-water | 1000 10, 6000 15, up 20
        oranges | raw | pint quart | boiling-water | 1000 10, 6000 15, up 20
        peaches | hot | pint | boiling-water | 5001-6000 35
        peaches | hot | quart | boiling-water | 5001-6000 40
        peaches | raw | pint | boiling-water | 5001-6000 40
        peaches | raw | quart | boiling-water | 5001-6000 45
        plums | hot raw | pint | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        plums | hot raw | quart | boiling-water | 1000 25, 3000 30, 6000 35, up 40
        rhubarb | hot | pint quart | boiling-water | 1000 15, 6000 20, up 25
        rhubarb | hot | pint quart | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        rhubarb | hot | pint quart | weighted | 1000 8@5, up 8@10
    """,
    "USDA AIB 539, Complete Guide to Home Canning, 2009 and 2015 (copy)": """
        tomatillos | hot | pint | boiling-water | 1000 40, 3000 45, 6000 50, up 55
        tomatillos | hot | quart | boiling-water | 1000 45, 3000 50, 6000 55, up 60
        apple juice | hot | pint quart | boiling-water | 1000 5, 6000 10
        apple juice | hot | half-gallon | boiling-water | 1000 10, 6000 15, up 20
        apricots | raw | pint | boiling-water | 1000 25, 3000 30
        apricots | raw | quart | boiling-water | 1000 30, 3000 35
        apricots | hot raw | pint quart | weighted | 1000 10@5, up 10@10
        cherries | hot | pint | weighted | 1000 8@5, up 8@10
        cherries | hot raw | quart | weighted | 1000 10@5, up 10@10
        cherries | raw | pint | weighted | 1000 10@5, up 10@10
        cranberry chutney | hot | half-pint | boiling-water | 1000 10, 6000 15, up 20
        nectarines | hot | pint | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        nectarines | hot | quart | boiling-water | 1000 25, 3000 30, 6000 35, up 40
        nectarines | raw | pint | boiling-water | 1000 25, 3000 30, 6000 35, up 40
        nectarines | raw | quart | boiling-water | 1000 30, 3000 35, 6000 40, up 45
        plums | hot raw | pint quart | weighted | 1000 10@5, up 10@10
    """,
    "NCHFP, standard tomato sauce and apricots (USDA AIB 539, 2015)": """
        apricots | hot | pint | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        apricots | hot | quart | boiling-water | 1000 25, 3000 30
    """,
    "University of Florida IFAS Extension FCS8276 (USDA figures)": """
        apricots | hot raw | pint quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        nectarines | hot raw | pint quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
    """,
    "University of Georgia Extension, So Easy to Preserve (page citing it)": """
        raspberries | hot raw | pint | boiling-water | 1000 15, 3000 20, 6000 20, up 25
        raspberries | hot | quart | boiling-water | 1000 15, 3000 20, 6000 20, up 25
        raspberries | raw | quart | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        raspberries | hot raw | pint | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        raspberries | hot | quart | dial | 2000 8@6, 4000 8@7, 6000 8@8, 8000 8@9
        raspberries | hot raw | pint | weighted | 1000 8@5, up 8@10
        raspberries | hot | quart | weighted | 1000 8@5, up 8@10
        raspberries | raw | quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
        raspberries | raw | quart | weighted | 1000 10@5, up 10@10
        cherries | hot | pint | boiling-water | 1000 15, 3000 20, 6000 20, up 25
        cherries | hot | quart | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        cherries | raw | pint quart | boiling-water | 1000 25, 3000 30, 6000 35, up 40
        grapes | hot | pint quart | boiling-water | 1000 10, 3000 15, 6000 15, up 20
        grapes | raw | pint | boiling-water | 1000 15, 3000 20, 6000 20, up 25
        grapes | raw | quart | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        plums | hot raw | pint quart | dial | 2000 10@6, 4000 10@7, 6000 10@8, 8000 10@9
    """,
    "NCHFP, canning and pickling pages (copies)": """
        asian pears | hot | pint | boiling-water | 1000 20, 3000 25, 6000 30, up 35
        asian pears | hot | quart | boiling-water | 1000 25, 3000 30, 6000 35, up 40
    """,
}

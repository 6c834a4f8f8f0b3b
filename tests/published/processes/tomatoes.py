"""Tomatoes, sauces and salsas: processes, typed by hand (notation: see the package)."""

from __future__ import annotations

TYPED = {
    "USDA AIB 539, Complete Guide to Home Canning, 2009 and 2015 (copy)": """
        crushed tomatoes | hot | pint | boiling-water | 1000 35, 3000 40, 6000 45, up 50
        crushed tomatoes | hot | pint quart | weighted | 1000 15@10, up 15@15
        crushed tomatoes | hot | quart | boiling-water | 1000 45, 3000 50, 6000 55, up 60
        tomatoes in water | hot raw | pint quart | dial | 2000 15@6/10@11, 4000 15@7/10@12
        tomatoes in water | hot raw | pint quart | dial | 4001-6000 15@8/10@13, 8000 15@9/10@14
        tomatoes in water | hot raw | pint quart | weighted | 1000 15@5/10@10/1@15, up 15@10/10@15
        tomatoes in juice | hot raw | pint quart | dial | 2000 40@6/25@11, 4000 40@7/25@12
        tomatoes in juice | hot raw | pint quart | dial | 4001-6000 40@8/25@13, 8000 40@9/25@14
        tomatoes in juice | hot raw | pint quart | weighted | 1000 40@5/25@10/15@15, up 40@10/25@15
        tomatoes without liquid | raw | pint quart | weighted | 1000 25@10, up 25@15
        tomato juice | hot | pint quart | dial | 2000 15@11, 4000 15@12, 6000 15@13, 8000 15@14
        tomato juice | hot | pint quart | weighted | 1000 15@10, up 15@15
        tomato sauce | hot | pint quart | dial | 2000 20@6/15@11, 4000 20@7/15@12
        tomato sauce | hot | pint quart | dial | 4001-6000 20@8/15@13, 8000 20@9/15@14
        spaghetti sauce without meat | hot | pint | dial | 2000 20@11, 4000 20@12
        spaghetti sauce without meat | hot | pint | dial | 4001-6000 20@13, 8000 20@14
        spaghetti sauce without meat | hot | pint | weighted | 1000 20@10, up 20@15
        spaghetti sauce without meat | hot | quart | dial | 2000 25@11, 4000 25@12
        spaghetti sauce without meat | hot | quart | dial | 4001-6000 25@13, 8000 25@14
        spaghetti sauce without meat | hot | quart | weighted | 1000 25@10, up 25@15
        ketchups | hot | pint | boiling-water | 1000 15, 6000 20, up 25
        tomatoes with okra | hot | pint | dial | 2000 30@11, 4000 30@12, 6000 30@13, 8000 30@14
        tomatoes with okra | hot | pint | weighted | 1000 30@10, up 30@15
        tomatoes with okra | hot | quart | dial | 2000 35@11, 4000 35@12, 6000 35@13, 8000 35@14
        tomatoes with okra | hot | quart | weighted | 1000 35@10, up 35@15
    """,
    "USDA AIB 539, Complete Guide to Home Canning, 1994 (copy)": """
        crushed tomatoes | hot | pint | dial | 2000 20@6, 4000 20@7, 6000 20@8, 8000 20@9
        tomato sauce | hot | pint | boiling-water | 1000 35, 3000 40, 6000 45, up 50
        tomato sauce | hot | quart | boiling-water | 1000 40, 3000 45, 6000 50, up 55
        chile salsa | hot | pint | boiling-water | 1000 15, 6000 20, up 25
    """,
    "Michigan State University Extension, Preserving Food Safely 1997 (USDA AIB 539 figures)": """
        tomatoes in water | hot raw | pint | boiling-water | 1000 40, 3000 45, 6000 50, up 55
        tomatoes in water | hot raw | quart | boiling-water | 1000 45, 3000 50, 6000 55, up 60
        tomatoes in juice | hot raw | pint quart | boiling-water | 1000 85, 3000 90, 6000 95, up 100
        tomatoes without liquid | raw | pint quart | boiling-water | 1000 85, 3000 90
        tomatoes without liquid | raw | pint quart | boiling-water | 3001-6000 95, up 100
        tomatoes without liquid | raw | pint quart | dial | 2000 40@6/25@11, 4000 40@7/25@12
        tomatoes without liquid | raw | pint quart | dial | 4001-6000 40@8/25@13, 8000 40@9/25@14
        tomato juice | hot | pint | boiling-water | 1000 35, 3000 40, 6000 45, up 50
        tomato juice | hot | quart | boiling-water | 1000 40, 3000 45, 6000 50, up 55
        tomato vegetable juice | hot | pint | boiling-water | 1000 35, 3000 40, 6000 45, up 50
        tomato vegetable juice | hot | pint quart | dial | 2000 20@6/15@11, 4000 20@7/15@12
        tomato vegetable juice | hot | pint quart | dial | 4001-6000 20@8/15@13, 8000 20@9/15@14
        tomato vegetable juice | hot | pint quart | weighted | 1000 20@5/15@10/10@15, up 20@10/15@15
        tomato vegetable juice | hot | quart | boiling-water | 1000 40, 3000 45, 6000 50, up 55
        meat sauce | hot | pint | dial | 2000 60@11, 4000 60@12, 6000 60@13, 8000 60@14
        meat sauce | hot | pint | weighted | 1000 60@10, up 60@15
        meat sauce | hot | quart | dial | 2000 70@11, 4000 70@12, 6000 70@13, 8000 70@14
        meat sauce | hot | quart | weighted | 1000 70@10, up 70@15
    """,
    "NCHFP, standard tomato sauce and apricots (USDA AIB 539, 2015)": """
        tomato sauce | hot | pint quart | weighted | 1000 20@5/15@10/10@15, up 20@10/15@15
    """,
    "NCHFP, choice salsa, as carried by an extension service": """
        choice salsa | hot | half-pint pint | boiling-water | 1000 15
    """,
}

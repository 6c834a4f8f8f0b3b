"""Vegetables: processes, typed by hand (notation: see the package)."""

from __future__ import annotations

TYPED = {
    "Michigan State University Extension, Preserving Food Safely 1997 (USDA AIB 539 figures)": """
        asparagus | hot raw | pint | dial | 2000 30@11, 4000 30@12, 6000 30@13, 8000 30@14
        asparagus | hot raw | pint | weighted | 1000 30@10, up 30@15
        asparagus | hot raw | quart | dial | 2000 40@11, 4000 40@12, 6000 40@13, 8000 40@14
        asparagus | hot raw | quart | weighted | 1000 40@10, up 40@15
        snap beans | hot raw | pint | dial | 2000 20@11, 4000 20@12, 6000 20@13, 8000 20@14
        snap beans | hot raw | pint | weighted | 1000 20@10, up 20@15
        snap beans | hot raw | quart | dial | 2000 25@11, 4000 25@12, 6000 25@13, 8000 25@14
        snap beans | hot raw | quart | weighted | 1000 25@10, up 25@15
        lima beans | hot raw | pint | dial | 2000 40@11, 4000 40@12, 6000 40@13, 8000 40@14
        lima beans | hot raw | pint | weighted | 1000 40@10, up 40@15
        lima beans | hot raw | quart | dial | 2000 50@11, 4000 50@12, 6000 50@13, 8000 50@14
        lima beans | hot raw | quart | weighted | 1000 50@10, up 50@15
        dry beans | hot | pint | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        dry beans | hot | pint | weighted | 1000 75@10, up 75@15
        dry beans | hot | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        dry beans | hot | quart | weighted | 1000 90@10, up 90@15
        beans in tomato sauce | hot | pint | dial | 2000 65@11, 4000 65@12, 6000 65@13, 8000 65@14
        beans in tomato sauce | hot | pint | weighted | 1000 65@10, up 65@15
        beans in tomato sauce | hot | quart | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        beans in tomato sauce | hot | quart | weighted | 1000 75@10, up 75@15
        baked beans | hot | pint | dial | 2000 65@11, 4000 65@12, 6000 65@13, 8000 65@14
        baked beans | hot | pint | weighted | 1000 65@10, up 65@15
        baked beans | hot | quart | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        baked beans | hot | quart | weighted | 1000 75@10, up 75@15
        beets | hot | pint | dial | 2000 30@11, 4000 30@12, 6000 30@13, 8000 30@14
        beets | hot | pint | weighted | 1000 30@10, up 30@15
        beets | hot | quart | dial | 2000 35@11, 4000 35@12, 6000 35@13, 8000 35@14
        beets | hot | quart | weighted | 1000 35@10, up 35@15
        sweet corn | hot raw | pint | dial | 2000 55@11, 4000 55@12, 6000 55@13, 8000 55@14
        sweet corn | hot raw | pint | weighted | 1000 55@10, up 55@15
        sweet corn | hot raw | quart | dial | 2000 85@11, 4000 85@12, 6000 85@13, 8000 85@14
        sweet corn | hot raw | quart | weighted | 1000 85@10, up 85@15
        mushrooms | hot | half-pint pint | dial | 2000 45@11, 4000 45@12, 6000 45@13, 8000 45@14
        mushrooms | hot | half-pint pint | weighted | 1000 45@10, up 45@15
        peas | hot raw | pint quart | dial | 2000 40@11, 4000 40@12, 6000 40@13, 8000 40@14
        peas | hot raw | pint quart | weighted | 1000 40@10, up 40@15
        peppers | hot | half-pint pint | dial | 2000 35@11, 4000 35@12, 6000 35@13, 8000 35@14
        peppers | hot | half-pint pint | weighted | 1000 35@10, up 35@15
        sweet potatoes | hot | pint | dial | 2000 65@11, 4000 65@12, 6000 65@13, 8000 65@14
        sweet potatoes | hot | pint | weighted | 1000 65@10, up 65@15
        sweet potatoes | hot | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        sweet potatoes | hot | quart | weighted | 1000 90@10, up 90@15
        spinach | hot | pint | dial | 2000 70@11, 4000 70@12, 6000 70@13, 8000 70@14
        spinach | hot | pint | weighted | 1000 70@10, up 70@15
        spinach | hot | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        spinach | hot | quart | weighted | 1000 90@10, up 90@15
    """,
    "USDA AIB 539, Complete Guide to Home Canning, 1994 (copy)": """
        carrots | hot raw | pint | dial | 2000 25@11, 4000 25@12, 6000 25@13, 8000 25@14
        carrots | hot raw | pint | weighted | 1000 25@10, up 25@15
        carrots | hot raw | quart | dial | 2000 30@11, 4000 30@12, 6000 30@13, 8000 30@14
        carrots | hot raw | quart | weighted | 1000 30@10, up 30@15
        cream style corn | hot | pint | dial | 2000 85@11, 4000 85@12, 6000 85@13, 8000 85@14
        cream style corn | hot | pint | weighted | 1000 85@10, up 85@15
        cream style corn | raw | pint | weighted | 1000 95@10, up 95@15
        succotash | hot raw | pint | dial | 2000 60@11, 4000 60@12, 6000 60@13, 8000 60@14
        succotash | hot raw | pint | weighted | 1000 60@10, up 60@15
        succotash | hot raw | quart | dial | 2000 85@11, 4000 85@12, 6000 85@13, 8000 85@14
        succotash | hot raw | quart | weighted | 1000 85@10, up 85@15
        okra | hot | pint | dial | 2000 25@11, 4000 25@12, 6000 25@13, 8000 25@14
        okra | hot | pint | weighted | 1000 25@10, up 25@15
        okra | hot | quart | dial | 2000 40@11, 4000 40@12, 6000 40@13, 8000 40@14
        okra | hot | quart | weighted | 1000 40@10, up 40@15
        potatoes | hot | pint | dial | 2000 35@11, 4000 35@12, 6000 35@13, 8000 35@14
        potatoes | hot | pint | weighted | 1000 35@10, up 35@15
        potatoes | hot | quart | dial | 2000 40@11, 4000 40@12, 6000 40@13, 8000 40@14
        potatoes | hot | quart | weighted | 1000 40@10, up 40@15
        pumpkins | hot | pint | dial | 2000 55@11, 4000 55@12, 6000 55@13, 8000 55@14
        pumpkins | hot | pint | weighted | 1000 55@10, up 55@15
        pumpkins | hot | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        pumpkins | hot | quart | weighted | 1000 90@10, up 90@15
    """,
    "USDA AIB 539, Complete Guide to Home Canning, 2009 and 2015 (copy)": """
        mixed vegetables | hot | pint | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        mixed vegetables | hot | pint | weighted | 1000 75@10, up 75@15
        mixed vegetables | hot | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        mixed vegetables | hot | quart | weighted | 1000 90@10, up 90@15
    """,
}

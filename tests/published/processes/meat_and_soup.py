"""Soups, stocks, meat, poultry and fish: processes, typed by hand (notation: see the package)."""

from __future__ import annotations

TYPED = {
    "Michigan State University Extension, Preserving Food Safely 1997 (USDA AIB 539 figures)": """
        vegetable soup | hot | pint | dial | 2000 60@11, 4000 60@12, 6000 60@13, 8000 60@14
        vegetable soup | hot | pint | weighted | 1000 60@10, up 60@15
        vegetable soup | hot | quart | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        vegetable soup | hot | quart | weighted | 1000 75@10, up 75@15
        seafood soup | hot | pint quart | dial | 2000 100@11, 4000 100@12, 6000 100@13, 8000 100@14
        seafood soup | hot | pint quart | weighted | 1000 100@10, up 100@15
        beef stock | hot | pint | dial | 2000 20@11, 4000 20@12, 6000 20@13, 8000 20@14
        beef stock | hot | pint | weighted | 1000 20@10, up 20@15
        beef stock | hot | quart | dial | 2000 25@11, 4000 25@12, 6000 25@13, 8000 25@14
        beef stock | hot | quart | weighted | 1000 25@10, up 25@15
        boneless chicken | hot raw | pint | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        boneless chicken | hot raw | pint | weighted | 1000 75@10, up 75@15
        boneless chicken | hot raw | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        boneless chicken | hot raw | quart | weighted | 1000 90@10, up 90@15
        chicken with bones | hot raw | pint | dial | 2000 65@11, 4000 65@12, 6000 65@13, 8000 65@14
        chicken with bones | hot raw | pint | weighted | 1000 65@10, up 65@15
        chicken with bones | hot raw | quart | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        chicken with bones | hot raw | quart | weighted | 1000 75@10, up 75@15
        ground beef | hot | pint | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        ground beef | hot | pint | weighted | 1000 75@10, up 75@15
        ground beef | hot | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        ground beef | hot | quart | weighted | 1000 90@10, up 90@15
        beef | hot raw | pint | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        beef | hot raw | pint | weighted | 1000 75@10, up 75@15
        beef | hot raw | quart | dial | 2000 90@11, 4000 90@12, 6000 90@13, 8000 90@14
        beef | hot raw | quart | weighted | 1000 90@10, up 90@15
        chili con carne | hot | pint | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        chili con carne | hot | pint | weighted | 1000 75@10, up 75@15
        salmon | raw | pint | dial | 2000 100@11, 4000 100@12, 6000 100@13, 8000 100@14
        salmon | raw | pint | weighted | 1000 100@10, up 100@15
    """,
    "USDA AIB 539, Complete Guide to Home Canning, 2009 and 2015 (copy)": """
        salmon | raw | half-pint | dial | 2000 100@11, 4000 100@12, 6000 100@13, 8000 100@14
        salmon | raw | half-pint | weighted | 1000 100@10, up 100@15
        smoked fish | raw | pint | weighted | 1000 110@10, up 110@15
        tuna | hot raw | half-pint pint | dial | 2000 100@11, 4000 100@12, 6000 100@13, 8000 100@14
        tuna | hot raw | half-pint pint | weighted | 1000 100@10, up 100@15
        clams | hot | half-pint | dial | 2000 60@11, 4000 60@12, 6000 60@13, 8000 60@14
        clams | hot | half-pint | weighted | 1000 60@10, up 60@15
        clams | hot | pint | dial | 2000 70@11, 4000 70@12, 6000 70@13, 8000 70@14
        clams | hot | pint | weighted | 1000 70@10, up 70@15
    """,
    "NCHFP, canning and pickling pages (copies)": """
        turkey without bones | hot raw | pint | dial | 2000 75@11, 4000 75@12
        turkey without bones | hot raw | pint | dial | 4001-6000 75@13, 8000 75@14
        turkey without bones | hot raw | pint | weighted | 1000 75@10, up 75@15
        turkey without bones | hot raw | quart | dial | 2000 90@11, 4000 90@12
        turkey without bones | hot raw | quart | dial | 4001-6000 90@13, 8000 90@14
        turkey without bones | hot raw | quart | weighted | 1000 90@10, up 90@15
        turkey with bones | hot raw | pint | dial | 2000 65@11, 4000 65@12, 6000 65@13, 8000 65@14
        turkey with bones | hot raw | pint | weighted | 1000 65@10, up 65@15
        turkey with bones | hot raw | quart | dial | 2000 75@11, 4000 75@12, 6000 75@13, 8000 75@14
        turkey with bones | hot raw | quart | weighted | 1000 75@10, up 75@15
    """,
    "NCHFP, smoked fish": """
        smoked fish | raw | half-pint | weighted | 1000 110@10, up 110@15
    """,
}

"""Processes asked for by the names people use: one line a process, typed by hand.

food | pack | jar | canner | altitude in feet | minutes | psi (- in boiling water).
"""

from __future__ import annotations

TYPED = {
    "Michigan State University Extension, Preserving Food Safely 1997 (USDA AIB 539 figures)": """
        runner beans | hot | pint | dial | 0 | 20 | 11
        snap beans | raw | pint | dial | 2000 | 20 | 11
        green beans | raw | pint | dial | 2001 | 20 | 12
        snap beans | hot | quart | dial | 4001 | 25 | 13
        snap beans | hot | quart | dial | 8000 | 25 | 14
        runner beans | raw | quart | weighted | 1000 | 25 | 10
        runner beans | raw | quart | weighted | 1001 | 25 | 15
        asparagus | hot | pint | dial | 1800 | 30 | 11
        asparagus | raw | quart | weighted | 5000 | 40 | 15
        lima beans | hot | pint | dial | 6001 | 40 | 14
        lima beans | raw | quart | weighted | 0 | 50 | 10
        dry beans | hot | pint | dial | 1001 | 75 | 11
        dry beans | hot | quart | weighted | 1001 | 90 | 15
        baked beans | hot | quart | dial | 4000 | 75 | 12
        beets | hot | pint | dial | 0 | 30 | 11
        beets | hot | quart | weighted | 1001 | 35 | 15
        carrots | hot | pint | dial | 3000 | 25 | 12
        carrots | raw | quart | weighted | 1000 | 30 | 10
        okra | hot | quart | dial | 2000 | 40 | 11
        peas | raw | quart | weighted | 2500 | 40 | 15
        peppers | hot | half-pint | dial | 0 | 35 | 11
        mushrooms | hot | half-pint | weighted | 1001 | 45 | 15
        mushrooms | hot | pint | dial | 6000 | 45 | 13
        sweet potatoes | hot | quart | dial | 0 | 90 | 11
        potatoes | hot | quart | dial | 2001 | 40 | 12
        spinach | hot | pint | weighted | 0 | 70 | 10
        chili con carne | hot | pint | dial | 6001 | 75 | 14
        figs | hot | pint | boiling-water | 1000 | 45 | -
        figs | hot | quart | boiling-water | 6001 | 65 | -
        plums | raw | pint | boiling-water | 1001 | 25 | -
        plums | hot | quart | boiling-water | 1000 | 25 | -
        rhubarb | hot | quart | boiling-water | 1001 | 20 | -
        applesauce | hot | pint | boiling-water | 1000 | 15 | -
        applesauce | hot | quart | boiling-water | 1001 | 25 | -
        applesauce | hot | quart | dial | 2001 | 10 | 7
        applesauce | hot | pint | weighted | 1001 | 8 | 10
        grape juice | hot | half-gallon | boiling-water | 1001 | 15 | -
        grape juice | hot | quart | boiling-water | 1000 | 5 | -
        pickle relish | hot | pint | boiling-water | 6000 | 15 | -
        peaches | hot | pint | boiling-water | 5001 | 35 | -
        peaches | raw | quart | boiling-water | 6000 | 45 | -
    """,
    "Smaller jars: NCHFP, Jar Size Choices; MSU Extension; K-State 2022, odd-sized jars": """
        runner beans | hot | half-pint | dial | 0 | 20 | 11
        snap beans | raw | 12 oz | weighted | 1001 | 20 | 15
        carrots | hot | half-pint | dial | 2001 | 25 | 12
        beets | hot | 12-oz jars | weighted | 0 | 30 | 10
        peaches | hot | 12 oz | boiling-water | 0 | 20 | -
        peaches | hot | half-pint | boiling-water | 1001 | 25 | -
        peaches | hot | 24 oz | boiling-water | 0 | 25 | -
        peaches | hot | 28 oz | boiling-water | 1001 | 30 | -
        pears | hot | 1 1/2 pint | boiling-water | 0 | 25 | -
        mushrooms | hot | 4 oz | dial | 0 | 45 | 11
        mushrooms | hot | 12 oz | dial | 4001 | 45 | 13
        strawberry jam | hot | 4 oz | boiling-water | 0 | 5 | -
        strawberry jam | hot | 12 oz | boiling-water | 1001 | 10 | -
        duck without bones | hot | half-pint | dial | 0 | 75 | 11
    """,
    "USDA AIB 539 by what cooks call it": """
        whole tomatoes in tomato juice | hot | quart | boiling-water | 0 | 85 | -
        whole tomatoes in juice | raw | pint | boiling-water | 0 | 85 | -
        tomatoes packed in their own juice | hot | pint | boiling-water | 1001 | 90 | -
        whole tomatoes in water | hot | quart | boiling-water | 0 | 45 | -
        halved tomatoes in juice | hot | quart | boiling-water | 6001 | 100 | -
        raw packed whole tomatoes | raw | quart | boiling-water | 0 | 85 | -
        yellow wax beans | hot | pint | dial | 0 | 20 | 11
        jalapenos | hot | half-pint | dial | 0 | 35 | 11
        new potatoes | hot | pint | dial | 0 | 35 | 11
        shelled peas | raw | pint | weighted | 0 | 40 | 10
        black-eyed peas | hot | pint | dial | 0 | 75 | 11
        stew meat | hot | quart | dial | 0 | 90 | 11
        pork strips | raw | pint | weighted | 1001 | 75 | 15
        chicken breasts | hot | pint | dial | 0 | 75 | 11
        chicken drumsticks | hot | pint | dial | 0 | 65 | 11
        turkey stock | hot | quart | dial | 0 | 25 | 11
        peach halves | hot | quart | boiling-water | 0 | 25 | -
        pear halves | hot | pint | boiling-water | 0 | 20 | -
        pineapple chunks | hot | pint | boiling-water | 0 | 15 | -
        apple slices | hot | quart | boiling-water | 0 | 20 | -
        mustard greens | hot | pint | dial | 0 | 70 | 11
        butternut squash cubes | hot | quart | dial | 0 | 90 | 11
    """,
    "USDA AIB 539, Complete Guide to Home Canning": """
        crushed tomatoes | hot | pint | boiling-water | 1000 | 35 | -
        crushed tomatoes | hot | pint | boiling-water | 1001 | 40 | -
        crushed tomatoes | hot | pint | boiling-water | 3001 | 45 | -
        crushed tomatoes | hot | quart | boiling-water | 6001 | 60 | -
        tomatoes in water | raw | pint | boiling-water | 1000 | 40 | -
        tomatoes in water | raw | quart | boiling-water | 1001 | 50 | -
        tomatoes in tomato juice | hot | quart | boiling-water | 0 | 85 | -
        tomatoes without liquid | raw | pint | boiling-water | 6001 | 100 | -
        tomato juice | hot | quart | boiling-water | 1000 | 40 | -
        tomato sauce | hot | pint | boiling-water | 6000 | 45 | -
        peaches | hot | pint | boiling-water | 1000 | 20 | -
        peaches | raw | quart | boiling-water | 1001 | 35 | -
        peaches | hot | quart | boiling-water | 5000 | 35 | -
        peaches | hot | pint | dial | 4001 | 10 | 8
        peaches | raw | quart | weighted | 1000 | 10 | 5
        pears | hot | quart | boiling-water | 1000 | 25 | -
        pears | hot | quart | boiling-water | 1001 | 30 | -
        apples | hot | quart | boiling-water | 1000 | 20 | -
        apples | hot | pint | dial | 2000 | 8 | 6
        cherries | raw | pint | dial | 0 | 10 | 6
        pickled beets | hot | pint | boiling-water | 1000 | 30 | -
        pickled beets | hot | quart | boiling-water | 1001 | 35 | -
        piccalilli | hot | half-pint | boiling-water | 1001 | 10 | -
        whole kernel corn | hot | pint | dial | 0 | 55 | 11
        sweet corn | raw | quart | weighted | 1001 | 85 | 15
        cream style corn | hot | pint | dial | 2001 | 85 | 12
        pumpkins | hot | pint | dial | 0 | 55 | 11
        winter squash | hot | quart | weighted | 1001 | 90 | 15
        mixed vegetables | hot | quart | dial | 0 | 90 | 11
        vegetable soup | hot | quart | dial | 2001 | 75 | 12
        beef | raw | pint | dial | 2000 | 75 | 11
        venison | hot | quart | weighted | 1001 | 90 | 15
        ground beef | hot | quart | dial | 8000 | 90 | 14
        chicken with bones | raw | quart | dial | 0 | 75 | 11
        chicken without bones | raw | quart | dial | 0 | 90 | 11
        chicken stock | hot | pint | weighted | 1000 | 20 | 10
        salmon | raw | pint | dial | 2000 | 100 | 11
        trout | raw | half-pint | weighted | 1001 | 100 | 15
        meat sauce | hot | quart | dial | 0 | 70 | 11
    """,
    "Utah State University Extension, timetables above 3,000 ft": """
        apples | hot | pint | boiling-water | 8001 | 40 | -
        peaches | raw | quart | boiling-water | 9000 | 50 | -
        pears | hot | quart | boiling-water | 10000 | 45 | -
        apricots | hot | quart | boiling-water | 3001 | 35 | -
        raspberries | raw | quart | boiling-water | 8001 | 40 | -
    """,
    "University of Georgia Extension, So Easy to Preserve": """
        raspberries | raw | quart | boiling-water | 1000 | 20 | -
        blueberries | hot | pint | boiling-water | 1001 | 20 | -
        cherries | raw | pint | boiling-water | 1000 | 25 | -
        grapes | raw | quart | boiling-water | 6001 | 35 | -
    """,
    "University of Florida IFAS FCS8276 (canning fruit under pressure)": """
        apricots | hot | pint | dial | 2001 | 10 | 7
        nectarines | raw | quart | dial | 8000 | 10 | 9
    """,
    "NCHFP, apricots and strawberry jam": """
        apricots | hot | pint | boiling-water | 1001 | 25 | -
        strawberry jam | hot | half-pint | boiling-water | 1000 | 5 | -
        strawberry jam | hot | pint | boiling-water | 1001 | 10 | -
    """,
}

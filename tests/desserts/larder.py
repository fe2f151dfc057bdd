"""Planning composition of the demo kitchen's ingredients, per 100 g.

Typical values for planning, as a kitchen would note them from its suppliers' sheets:
water, fat, sugars, protein, other; then sucrose, glucose and fructose, lactose or other
sugar. `other` (fibre, starch, ash, acid) is reckoned at 3 kcal/g, a planning convention.
"""

from demould.larder.ingredient import Composition, Ingredient

Row = tuple[float, float, float, float, float, float, float, float]

PLANNING: dict[str, Row] = {
    "cream 35 %": (58.9, 35, 3, 2.2, 0.9, 0, 0, 3),
    "whole milk 3.5 %": (87.8, 3.5, 4.7, 3.3, 0.7, 0, 0, 4.7),
    "whole yoghurt 3.8 %": (87, 3.8, 4.7, 3.8, 0.7, 0, 0, 4.7),
    "white couverture 35 %": (1, 35, 56, 6, 2, 46, 0, 10),
    "milk couverture 40 %": (1, 38, 45, 8, 8, 38, 0, 7),
    "dark couverture 66 %": (1, 40, 33, 8, 18, 33, 0, 0),
    "cocoa butter": (0, 100, 0, 0, 0, 0, 0, 0),
    "hazelnut paste": (2.5, 63, 4.5, 14, 16, 4.2, 0.3, 0),
    "sunflower kernel paste": (2, 56, 3, 21, 18, 2.7, 0.3, 0),
    "wheat wafer flakes": (2.5, 7, 30, 8, 52.5, 27, 1, 2),
    "roasted buckwheat groats": (5, 3, 1, 12, 79, 0.8, 0.2, 0),
    "butter 82 %": (16, 82, 0.6, 0.7, 0.7, 0, 0, 0.6),
    "blackcurrant purée": (83, 0.3, 8.5, 1.2, 7, 0.9, 7.6, 0),
    "pear, peeled and cored": (84, 0.1, 10, 0.4, 5.5, 1.3, 8.7, 0),
    "sugar": (0, 0, 100, 0, 0, 100, 0, 0),
    "pectin NH": (8, 0, 0, 0, 92, 0, 0, 0),
    "verjuice": (93, 0, 3, 0.3, 3.7, 0, 3, 0),
    "citric acid solution 50 %": (50, 0, 0, 0, 50, 0, 0, 0),
    "gelatin 200 bloom": (12, 0, 0, 86, 2, 0, 0, 0),
    "water": (100, 0, 0, 0, 0, 0, 0, 0),
    "glucose syrup DE40": (20, 0, 32, 0, 48, 0, 15, 17),
    "inulin": (4, 0, 8, 0, 88, 4, 4, 0),
    "salt": (0, 0, 0, 0, 100, 0, 0, 0),
    "black cocoa 11 %": (4, 11, 1, 22, 62, 1, 0, 0),
    "cocoa powder 22 %": (4, 22, 1, 21, 52, 1, 0, 0),
    "whole egg": (76, 9.6, 0.7, 12.6, 1.1, 0, 0.7, 0),
    "egg yolk": (50.5, 27, 0.5, 16, 6, 0, 0.5, 0),
    "egg white": (88, 0.1, 0.7, 10.6, 0.6, 0, 0.7, 0),
    "wheat flour": (13.5, 1.1, 1, 10.5, 73.9, 0.6, 0.1, 0.3),
    "oat flour": (10, 7, 1, 13, 69, 0.9, 0.1, 0),
    "rye flour": (13, 1.7, 1.5, 8.5, 75.3, 1.2, 0.2, 0.1),
    "baking powder": (5, 0, 0, 0, 95, 0, 0, 0),
    "honey": (17, 0, 80, 0.3, 2.7, 1.5, 74, 4.5),
    "sweetened condensed milk": (26.5, 8.5, 55, 8, 2, 44, 0, 11),
    "rhubarb, trimmed": (93, 0.2, 1.1, 0.7, 5, 0.1, 1, 0),
    "plum purée": (85, 0.2, 10, 0.7, 4.1, 1.6, 8.4, 0),
    "dried plum": (31, 0.4, 38, 2.2, 28.4, 0.2, 37.8, 0),
    "almonds, roasted": (3, 52, 5, 21, 19, 4.7, 0.3, 0),
    "candied orange peel": (20, 0.2, 72, 0.3, 7.5, 40, 27, 5),
    "dried apricot": (31, 0.5, 53, 3.4, 12.1, 8, 45, 0),
    "orange-flower water": (100, 0, 0, 0, 0, 0, 0, 0),
    "brown butter": (0.5, 98, 0, 0.8, 0.7, 0, 0, 0),
    "thyme": (65, 1.7, 0, 5.6, 27.7, 0, 0, 0),
    "roasted chicory": (5, 1, 20, 5, 69, 10, 10, 0),
    "smoked tea": (7, 2, 5, 20, 66, 5, 0, 0),
}
GELLING = ("pectin NH", "gelatin 200 bloom")
DENSITIES = {"cream 35 %": 0.99, "water": 0.998}


def find(id_: str) -> Ingredient:
    """Look an ingredient up as a kitchen's own larder would."""
    water, fat, _, protein, other, sucrose, glucose_fructose, lactose = PLANNING[id_]
    return Ingredient(
        id=id_,
        name=id_,
        category="gelling" if id_ in GELLING else "",
        per_100g=Composition(
            water=water,
            fat=fat,
            protein=protein,
            sucrose=sucrose,
            glucose=glucose_fructose / 2,
            fructose=glucose_fructose / 2,
            lactose=lactose,
            other_carb=other,
        ),
        density_g_ml=DENSITIES.get(id_),
        source="planning table",
    )

"""Meadow Domes: yoghurt-honey mousse, rhubarb centre, thyme sponge, white glaze."""

from demould.mise.component import Sheet, Tray, WholeBatches
from demould.mise.dessert import Dessert, Glaze
from demould.mise.shape import Cylinder
from tests.desserts.build import component, formula, layer, stated

MOUSSE = component(
    "mousse",
    formula(
        "180 whole yoghurt 3.8 %",
        "45 honey",
        "15 sugar",
        "4 verjuice",
        "5.2 gelatin 200 bloom",
        "26 water",
        "210 cream 35 %",
    ),
    1.02,
    whipped=stated(0.65, "g/ml", "whipped density of the mousse"),
    lost=6,
)
CENTRE = component(
    "centre",
    formula("216 rhubarb, trimmed", "43 sugar", "2.7 pectin NH", "15.5 water"),
    1.09,
    away=4,
    lost=5,
)
SPONGE = component(
    "sponge",
    formula(
        "150 whole egg",
        "105 sugar",
        "95 wheat flour",
        "40 butter 82 %",
        "30 whole milk 3.5 %",
        "10 honey",
        "2 thyme",
    ),
    0.40,
    away=10,
    making=WholeBatches(),
    sheet=Sheet(
        tray=Tray(length_mm=400, width_mm=300),
        gap=stated(2, "mm", "between cuts"),
    ),
)
GLAZE = component(
    "glaze",
    formula(
        "70 water",
        "140 sugar",
        "120 glucose syrup DE40",
        "80 cream 35 %",
        "45 sweetened condensed milk",
        "20 inulin",
        "9 gelatin 200 bloom",
        "45 water",
        "130 white couverture 35 %",
    ),
    1.25,
    away=3,
    making=WholeBatches(),
)

MEADOW_DOMES = Dessert(
    key="meadow-domes",
    name="Meadow Domes",
    mould="dome",
    layers=(
        layer("mousse"),
        layer("centre", "small dome"),
        layer("mousse"),
        layer("sponge", Cylinder(diameter_mm=60, height_mm=8)),
    ),
    finish=(
        Glaze(
            component="glaze",
            film=stated(1.7, "mm", "film of the glaze"),
            pour=stated(2.5, "", "poured, times what stays"),
        ),
    ),
    components=(MOUSSE, CENTRE, SPONGE, GLAZE),
)

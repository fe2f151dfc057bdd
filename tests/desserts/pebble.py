"""River Pebble: buckwheat ganache, blackcurrant-pear centre, crisp base, stone dip."""

from demould.mise.component import Component, InSteps
from demould.mise.dessert import Dessert, Dip, OnPlate, Spray
from demould.mise.shape import Oval
from tests.desserts.build import assumed, component, formula, layer, stated

BASE = Oval(
    length_mm=60, width_mm=42, small_length_mm=60, small_width_mm=42, height_mm=5
)

GANACHE = component(
    "ganache",
    formula(
        "280 cream 35 %; made up",
        "45 roasted buckwheat groats; strained out",
        "3.6 gelatin 200 bloom",
        "18 water",
        "190 white couverture 35 %",
        "400 cream 35 %",
        "1 salt",
    ),
    1.03,
    kind="whipped ganache",
    whipped=assumed(0.62, "g/ml", 0.57, 0.66, "whipped density of the ganache"),
    lost=4,
    fixed=40,
    whip=True,
)
CENTRE = component(
    "centre",
    formula(
        "380 blackcurrant purée",
        "160 pear, peeled and cored",
        "50 sugar",
        "35 sugar",
        "6.5 pectin NH",
        "10 verjuice",
    ),
    1.10,
    away=4,
    lost=2,
    fixed=20,
)
CRISP = component(
    "base",
    formula(
        "70 milk couverture 40 %",
        "90 hazelnut paste",
        "110 wheat wafer flakes",
        "30 roasted buckwheat groats",
        "15 brown butter",
        "1 salt",
    ),
    0.95,
    lost=10,
)
DIP = component(
    "dip",
    formula("330 white couverture 35 %", "270 cocoa butter", "8 black cocoa 11 %"),
    1.06,
)
SPRAY = component(
    "spray",
    formula("60 cocoa butter", "40 white couverture 35 %"),
    1.00,
    making=InSteps(of=stated(20, "g", "steps of the spray")),
)
SAUCE = component(
    "sauce", formula("300 blackcurrant purée", "45 sugar", "55 water"), 1.08, lost=5
)
COMPONENTS: tuple[Component, ...] = (GANACHE, CENTRE, CRISP, DIP, SPRAY, SAUCE)

RIVER_PEBBLE = Dessert(
    key="river-pebble",
    name="River Pebble",
    mould="pebble",
    layers=(
        layer("ganache"),
        layer("centre", "oval insert"),
        layer("ganache"),
        layer("base", BASE),
    ),
    finish=(
        Dip(
            component="dip",
            film=stated(0.8, "mm", "film of the dip"),
            clearance=stated(15, "mm", "clear of the bottom"),
            heel=stated(10, "g", "heel of the pot"),
        ),
        Spray(
            component="spray",
            film=stated(0.10, "mm", "film of the spray"),
            lands=stated(50, "%", "share that lands"),
        ),
    ),
    plate=(
        OnPlate(what="sauce", amount=stated(15, "g", "sauce"), component="sauce"),
        OnPlate(what="toasted groats", amount=stated(2, "g", "groats")),
    ),
    components=COMPONENTS,
)

"""Cases the machine's door is tried with."""

from collections.abc import Mapping

Raw = Mapping[str, object]

SILICONE: Raw = {"thickness_mm": 2, "k": 0.2, "density": 1150, "cp": 1300}
P1: Raw = {
    "schema": "demould-cold-case/1",
    "id": "P1",
    "model": "reference-a",
    "shape": {"kind": "sphere", "diameter_mm": 48},
    "insert": {"kind": "sphere", "diameter_mm": 24, "bottom_mm": 12},
    "materials": {"body": "mousse", "insert": "insert"},
    "wall": SILICONE,
    "open": [],
    "start_c": 6,
    "air": -20,
    "h": 12,
    "humidity": None,
    "ask": {"core_c": [0, -2, -5, -10, -15], "heat_j_at_s": [14000], "until_s": 14000},
    "accuracy": "default",
}
P2: Raw = {
    **P1,
    "id": "P2",
    "wall": None,
    "air": -30,
    "h": 20,
    "ask": {"core_c": [0, -2, -5, -10, -15], "heat_j_at_s": [7000], "until_s": 7000},
}
THAW: Raw = {
    **P1,
    "id": "thaw",
    "shape": {"kind": "sphere", "diameter_mm": 56},
    "insert": {"kind": "sphere", "diameter_mm": 32, "bottom_mm": 12},
    "wall": None,
    "start_c": -18,
    "air": 4,
    "h": 6,
    "humidity": {"relative": 0.70, "h_convective": 2.5},
    "ask": {"core_c": [-10, -5, -2, 0, 2], "until_s": 40000},
}

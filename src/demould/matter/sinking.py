r"""How stiff a filling must be to carry what is laid into it.

A body rests on a paste with a yield stress when its weight under buoyancy does not
shear it. For a sphere the limit is
:math:`\tau = 0.06\,g\,d\,\Delta\rho` (near the 0.048 to 0.061 found for spheres in
pastes that yield); said by the height that the body has over the area it rests on
(two thirds of the diameter for a sphere) it is
:math:`\tau = 0.09\,g\,\Delta\rho\,V/A`, taken here for any body.

References
----------
.. [1] A. N. Beris, J. A. Tsamopoulos, R. C. Armstrong and R. A. Brown, Creeping motion
   of a sphere through a Bingham plastic, J. Fluid Mech. 158 (1985) 219-244: a sphere
   stops at 0.048 (from memory).
"""

GRAVITY = 9.81
SHARE = 0.09


def needed_pa(volume_ml: float, resting_on_mm2: float, heavier_g_ml: float) -> float:
    """Yield stress that carries a body `heavier_g_ml` denser than the filling [Pa].

    Floating bodies are held down by as much: the sign of the difference is left out.

    >>> round(needed_pa(14.137, 706.86, 0.48), 1)  # a ball of 30 mm
    8.5
    """
    if resting_on_mm2 <= 0:
        raise ValueError(
            f"a body resting on {resting_on_mm2:g} mm2; it must be more than 0"
        )
    height_m = volume_ml * 1000 / resting_on_mm2 / 1000
    return SHARE * GRAVITY * abs(heavier_g_ml) * 1000 * height_m

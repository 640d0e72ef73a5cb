"""Where the tables of loss, leakage, impedance and ripple multipliers end: unknown there, though no input is."""

from collections.abc import Callable, Mapping
from typing import Any

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[Any]
Columns = Mapping[str, Array]
Unknown = Callable[[Columns], Array]


def _outside(name: str, *bands: tuple[float, float]) -> Unknown:
    """Where an input lies in none of the bands, whose ends belong to them."""
    return lambda columns: ~np.any([(low <= columns[name]) & (columns[name] <= high) for low, high in bands], axis=0)


LOSS_V = {
    "standard 85 °C": (6.3, 450),
    "standard 105 °C": (6.3, 450),
    "low impedance 105 °C": (10, 100),
    "85 °C at 100 Hz": (6.3, 450),
    "bipolar 105 °C": (6.3, 100),
    "bipolar 85 °C": (6.3, 100),
    "high voltage long life": (160, 450),
}
COLD = [f"{kind} 85 °C at -{cold} °C" for kind in ("standard", "bipolar") for cold in (25, 40)]
ABOVE_100_V = (np.nextafter(100, 200), np.inf)


def _radial(columns: Columns) -> Array:
    volts, capacitance = columns["rated_v"], columns["capacitance_f"]
    low = (volts >= 6.3) & (volts <= 100) & (capacitance <= 1e-3)
    high = (volts >= 160) & (volts <= 400) & (capacitance >= 10e-6) & (capacitance <= 150e-6)
    return ~(low | high) | (columns["frequency_hz"] < 60)


def _from_50_hz(*bands: tuple[float, float]) -> Unknown:
    voltage = _outside("rated_v", *bands)
    return lambda columns: voltage(columns) | (columns["frequency_hz"] < 50)


ENDS_OF_TABLES: Mapping[str, Unknown] = {
    **{
        f"{law} {kind}": _outside("rated_v", ends)
        for law in ("tan_delta_limit", "esr_limit_ohm", "esr_estimate_ohm")
        for kind, ends in LOSS_V.items()
    },
    **{f"cold_impedance_limit {kind}": _outside("rated_v", (6.3, 100)) for kind in COLD},
    "leakage_limit_a up to 100 V": _outside("rated_v", (0, 100)),
    "leakage_limit_a up to 100 V after 1 minute": _outside("rated_v", (0, 100)),
    "leakage_limit_a above 100 V": _outside("rated_v", ABOVE_100_V),
    "leakage_limit_a above 100 V after 2 minutes": _outside("rated_v", ABOVE_100_V),
    "leakage_limit_a 160 to 450 V": _outside("rated_v", (160, 450)),
    "usual_inductance_henry": _outside("diameter_mm", (8, 18)),
    "axial_multiplier": _from_50_hz((6.3, 16), (25, 40), (63, 100)),
    "snap_in_multiplier": _from_50_hz((10, 25), (40, 100), ABOVE_100_V),
    "radial_multiplier": _radial,
}

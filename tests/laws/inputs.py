"""Random inputs for each law: by the name of the input, else by the unit that ends its name."""

import random
from collections.abc import Callable, Mapping

Draw = Callable[[random.Random], float]

# Sizes fall on the bounds of the tables as often as between them.
INPUTS: Mapping[str, Draw] = {
    "a": lambda r: r.choice([-1.0, 0.0, 1.0, r.uniform(-2, 2)]),
    "b": lambda r: r.choice([-1.0, 0.0, 1.0, r.uniform(-2, 2)]),
    "x": lambda r: r.choice([0.0, 6.3, 10.0, 16.0, 25.0, 35.0, 40.0, r.uniform(0, 45)]),
    "base_life_h": lambda r: r.choice([1e3, 2e3, 5e3, 1e4]),
    "life_h": lambda r: 10 ** r.uniform(3, 6),
    "rated_c": lambda r: r.choice([85.0, 105.0, 125.0]),
    "working_c": lambda r: r.uniform(20, 90),
    "rated_rise_k": lambda r: r.choice([3.5, 5.0, 10.0]),
    "rise_k": lambda r: r.uniform(0, 20),
    "ripple_a": lambda r: r.choice([0.0, r.uniform(0, 3)]),
    "rated_ripple_a": lambda r: r.uniform(0.05, 3),
    "with_ripple": lambda r: r.choice([0.0, 1.0]),
    "hours_a_day": lambda r: r.choice([1.0, 8.0, 24.0]),
    "ceiling_y": lambda r: r.choice([10.0, 15.0]),
    "frequency_multiplier": lambda r: r.choice([0.75, 1.0, 1.57, 2.0]),
    "core_ratio": lambda r: r.uniform(1, 1.64),
    "surface_cm2": lambda r: r.uniform(1, 100),
    "tan_delta": lambda r: r.uniform(0.001, 0.3),
    "leakage_factor": lambda r: r.choice([0.0, 0.01, r.uniform(0.002, 0.2)]),
    "plus_a": lambda r: r.choice([0.0, r.uniform(0, 2e-5)]),
    "floor_a": lambda r: r.choice([0.0, 3e-6, r.uniform(0, 1e-3)]),
    "esr_ohm": lambda r: 10 ** r.uniform(-3, 3),
    "frequency_hz": lambda r: r.choice([20.0, 50.0, 100.0, 120.0, 1e4, 1e5, 10 ** r.uniform(1, 5)]),
    "capacitance_f": lambda r: r.choice([47e-6, 1e-3, 2e-3, *(10 ** r.uniform(-9, -1) for _ in range(6))]),
    "resistance_ohm": lambda r: 10 ** r.uniform(0, 6),
    "corner_hz": lambda r: 10 ** r.uniform(-2, 3),
    "loss_db": lambda r: r.uniform(0.01, 6),
    "tolerance_low_pct": lambda r: -r.uniform(0, 50),
    "full_wave": lambda r: r.choice([0.0, 1.0]),
    "old_rating_v": lambda r: r.choice([6.3, 6.4, 25.0, 63.0, 64.0]),
    "lowest_v": lambda r: r.choice([-0.5, 0.0, r.uniform(-20, 20)]),
    "highest_v": lambda r: r.choice([0.0, 0.5, r.uniform(0, 50)]),
    "peak_v": lambda r: r.choice([0.0, 0.5, 1.0, r.uniform(0, 5)]),
    "fault_v": lambda r: r.choice([0.0, -24.0, 24.0]),
    "sigma_pct": lambda r: r.uniform(0.1, 30),
    "start_v": lambda r: r.choice([0.0, 60.0, r.uniform(0, 500)]),
    "after_s": lambda r: r.choice([0.0, 10 ** r.uniform(-6, 4)]),
    "threshold_v": lambda r: r.choice([10.0, 60.0]),
    "rated_v": lambda r: r.choice([6.3, 16.0, 63.0, 100.0, 450.0, r.uniform(1, 120), r.uniform(1, 500)]),
    "multiplier_at_rated": lambda r: r.choice([0.95, 1.0, 1.02]),
    "inductance_henry": lambda r: r.uniform(5e-9, 50e-9),
    "need_v": lambda r: r.choice([2.5, 6.3, 63.0, 1250.0, r.uniform(1, 2000)]),
    "old_v": lambda r: r.choice([3.0, 6.4, 12.0, 64.0, 350.0, 1250.0, r.uniform(1, 2000)]),
    "diameter_mm": lambda r: r.choice([5.0, 6.3, 16.0, 20.0, 40.0, r.uniform(3, 60)]),
    "size_mm": lambda r: r.uniform(1, 50),
    "nominal_mm": lambda r: r.uniform(1, 50),
    "plus_mm": lambda r: r.choice([0.5, 1.0]),
    "along_mm": lambda r: r.uniform(1, 50),
    "across_mm": lambda r: r.uniform(1, 50),
    "lead_diameter_mm": lambda r: r.choice([0.45, 0.5, 0.6, 0.8, 1.0, 1.2, r.uniform(0.3, 2)]),
    "lead_max_mm": lambda r: r.choice([0.55, 0.85, r.uniform(0.3, 2)]),
    "hole_diameter_mm": lambda r: r.choice([0.8, 1.0, 1.3, r.uniform(0.4, 2)]),
    "offset_mm": lambda r: r.choice([0.0, 0.25, 0.3, 1.54, 1.6, 2.6, r.uniform(0, 4)]),
    "shift_along_mm": lambda r: r.choice([0.0, r.uniform(-4, 4)]),
    "shift_across_mm": lambda r: r.choice([0.0, r.uniform(-4, 4)]),
    "tall_mm": lambda r: r.choice([11.0, 20.0, r.uniform(5, 60)]),
    "side_mm": lambda r: r.uniform(1, 30),
    "away_mm": lambda r: r.choice([0.0, r.uniform(-4, 4)]),
    "spare_along_mm": lambda r: r.choice([-6.0, 0.0, 6.0, r.uniform(-20, 40)]),
    "spare_across_mm": lambda r: r.choice([-6.0, 0.0, 6.0, r.uniform(-20, 40)]),
    "rim_mm": lambda r: r.choice([0.0, 8.0, r.uniform(1, 30)]),
    "cans": lambda r: float(r.randint(1, 5)),
    "headroom_mm": lambda r: r.uniform(5, 60),
    "free_diameter_mm": lambda r: r.uniform(5, 60),
    "spacing_mm": lambda r: r.choice([2.0, 2.5, 5.0, 7.5, 10.0, 10.2, 20.3, 27.5]),
    "hole_spacing_mm": lambda r: r.choice([2.5, 5.0, 5.08, 7.62, 10.16, 30.0]),
    "pieces": lambda r: float(r.randint(1, 300)),
    "minimum": lambda r: r.choice([1.0, 5.0, 100.0]),
    "pack": lambda r: r.choice([1.0, 3.0, 5.0, 7.0, 10.0]),
    "from_quantity": lambda r: r.choice([1.0, 10.0, 100.0]),
    "unit_price": lambda r: round(r.uniform(0, 5), 4),
    "activation_ev": lambda r: r.uniform(0.3, 1.2),
    "exponent": lambda r: r.choice([2.5, 7.0, 8.0, 9.0, 13.1]),
    "halving_k": lambda r: r.choice([8.0, 10.0]),
    "derating_pct": lambda r: r.choice([1.25, 1.35]),
}

# An input that needs no sizes of its own takes these, by the unit that ends its name.
BY_UNIT: Mapping[str, Draw] = {
    "f": lambda r: 10 ** r.uniform(-9, -1),
    "v": lambda r: r.choice([6.3, 25.0, 63.0, 450.0, r.uniform(1, 500)]),
    "a": lambda r: r.uniform(0.05, 3),
    "ohm": lambda r: 10 ** r.uniform(0, 6),
    "hz": lambda r: r.choice([50.0, 100.0, 120.0, 1e3, 1e5]),
    "mm": lambda r: r.choice([5.0, 10.0, r.uniform(1, 50)]),
    "c": lambda r: r.uniform(20, 125),
    "k": lambda r: r.uniform(0, 20),
    "h": lambda r: 10 ** r.uniform(3, 6),
    "y": lambda r: r.uniform(1, 20),
    "pct": lambda r: r.uniform(0, 50),
}
# The words that an input in words takes; each is tried.
WORDS: Mapping[str, tuple[str, ...]] = {
    "loss_class": (
        *("standard 85 °C", "standard 105 °C", "low impedance 105 °C", "85 °C at 100 Hz"),
        *("bipolar 105 °C", "bipolar 85 °C", "high voltage long life"),
    ),
    "leakage_class": (
        *("up to 100 V", "up to 100 V after 1 minute", "3 minutes through 1000 ohm", "above 100 V"),
        *("above 100 V after 2 minutes", "160 to 450 V", "bipolar 105 °C", "bipolar 85 °C", "common bipolar"),
    ),
    "cold_class": (
        *("standard 85 °C at -25 °C", "standard 85 °C at -40 °C"),
        *("bipolar 85 °C at -25 °C", "bipolar 85 °C at -40 °C"),
    ),
    "ripple_class": ("85 °C low-cost", "85 °C", "105 °C"),
    "hole_level": ("A", "B", "C"),
    "box_size": tuple(f"{way} {end}" for way in ("along", "across", "tall", "lead") for end in ("least", "most")),
    "build": ("SMD", "radial", "snap-in", "block", "axial", "screw"),
}


def draw(name: str) -> Draw:
    """How an input of that name is drawn; KeyError where nothing says it."""
    return INPUTS[name] if name in INPUTS else BY_UNIT[name.rpartition("_")[2]]

"""What in a line contradicts itself or can't be: its columns, the condition, what was found, and the sentence."""

from subsearch.catalog.typed import DRAWER

CONTRADICTIONS = {  # term: the columns it concerns, what is wrong, what was found, the sentence
    "polarity": (
        ("polarity",),
        "polarity = 'polar' and list_contains($without_polarity, technology)",
        "polarity || ', ' || technology",
        "format('The line says polar, but a {} part has no polarity. Correct the one that is wrong.', technology)",
    ),
    "rated_c": (
        ("rated_c", "temperatures"),
        "lowest_c >= rated_c",
        "lowest_c || ' to ' || rated_c || ' °C'",
        "format('The lower category temperature, {} °C, is not below the upper one, {} °C. Look whether they were "
        "exchanged.', lowest_c, rated_c)",
    ),
    "lead_spacing_mm": (
        ("lead_spacing_mm",),
        "shape in ('can', 'box') and lead_spacing_mm >= along_mm",
        "lead_spacing_mm || ' mm, body ' || along_mm || ' mm'",
        "format('The leads would leave the {} {} mm apart, outside its {} mm. A spacing after forming belongs in a "
        'column "Delivered spacing".\', shape, lead_spacing_mm, along_mm)',
    ),
    "along_mm": (
        ("size", "diameter_mm", "length_mm"),
        "shape = 'axial' and along_mm < across_mm",
        "along_mm || ' mm long, ' || across_mm || ' mm thick'",
        "format('The line says axial, but its body would be {} mm long and {} mm thick. Look whether the length was "
        "written first; a size is diameter by length, like 10x16.', along_mm, across_mm)",
    ),
    "life_h": (
        ("life_h",),
        "life_at_c <> rated_c",
        "life_h || ' h at ' || life_at_c || ' °C, rated ' || rated_c || ' °C'",
        "format('The life is stated at {} °C, but the upper category temperature is {} °C, for which the catalog keeps "
        "it. Correct the one that is wrong, or leave the life out.', life_at_c, rated_c)",
    ),
    "currency": (
        ("currency", "unit_price"),
        "len(currencies) > 1",
        "array_to_string(currencies, ', ')",
        "format('The line states prices in {}. Correct the currency that is wrong.', "
        "array_to_string(currencies, ' and '))",
    ),
    "unit_price": (
        ("unit_price",),
        f"supplier <> '{DRAWER}' and len(list_filter(prices, lambda b: b.price = 0)) > 0",
        "'0'",
        f"'A price of 0 is nobody''s offer. Write the price, or load what is your own as the supplier \"{DRAWER}\".'",
    ),
    "shape": (
        ("shape", "style"),
        "shape in ('can', 'axial') and size_3_mm is not null",
        "shape || ', three sizes'",
        "format('The line says {}, but its size has three extents as a box has. Correct the one that is wrong.', "
        "shape)",
    ),
}

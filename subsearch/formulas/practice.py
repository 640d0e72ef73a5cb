"""Where the trade begins to be careful: bounds of common practice, each with its source."""

STORED_Y = 3  # years on the shelf after which a part is tested first, and a wet one reformed. Source: shelf life
TWICE = 2.0  # times the old capacitance above which what follows from it is looked up. Source: twice the old value
LONG_FILM_MM = 15.0  # longest side above which a film body picks up hum in a sensitive stage. Source: long film body
USED_BEFORE = "pulled"  # the condition of parts that are not used again. Source: parts from used equipment

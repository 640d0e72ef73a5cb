"""A second answer to every search, in plain Python with Decimal: slow, exact and independent of the first."""

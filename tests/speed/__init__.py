"""Speed, measured on purpose: seeded catalogs of any size, and each goal against the best rival in the same run.

    PYTHONPATH=tests python -m speed.bench_find [OFFERS ...]

Nothing here runs with the ordinary tests but `test_speed.py`, which asks for equal answers on a small catalog.
"""

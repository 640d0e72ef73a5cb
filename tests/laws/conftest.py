"""The same examples every time, without a clock: a slow or unlucky machine can't turn a law red."""

from hypothesis import settings

settings.register_profile("steady", deadline=None, derandomize=True, max_examples=200)
settings.load_profile("steady")

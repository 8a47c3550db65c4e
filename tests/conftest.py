"""One profile for property tests: the same examples on every run, on any machine."""

from hypothesis import settings

settings.register_profile("ci", derandomize=True, deadline=None, max_examples=60)
settings.load_profile("ci")

"""What holds for every test: its examples, and what is kept between runs."""

import gc
import os
import sys

from hypothesis import settings

# the same examples on every run, on any machine
settings.register_profile("ci", derandomize=True, deadline=None, max_examples=60)
settings.load_profile("ci")

# tests and sources are compiled once, not by every worker and every process it starts
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)


def pytest_collection_finish() -> None:
    """As the app does: what is loaded is no longer searched for waste."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)

"""Clothwright: from a client's measures and an order to a proven pattern.

Python users start at `clothwright.api`.
"""

__version__ = "0.1.0"

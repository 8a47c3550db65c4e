"""Bodies from published size tables, kept as found in `tables` with their sources."""

import csv
from collections.abc import Mapping
from functools import cache
from importlib import resources

from clothwright.body.measures import measures
from clothwright.units import Unit

_TABLES = {
    "misses": ("misses-inch.csv", Unit.IN),
    "medium height": ("medium-height-cm.csv", Unit.CM),
}
"""Name of a table as typed: its file and unit."""

_CODES = {
    "head girth": "HEAD",
    "neck base girth": "N",
    "mid-neck girth": "NK",
    "chest/bust girth": "B",
    "under-bust girth": "UB",
    "upper-chest girth": "HB",
    "waist girth (straight)": "W",
    "bust": "B",
    "waist": "W",
    "hips": "H",
    "back width": "XB",
    "chest": "XC",
    "shoulder": "SH",
    "neck size": "N",
}
"""Rows that are one of our measures; the others are left out."""


@cache
def size_tables() -> Mapping[str, Mapping[str, Mapping[str, float]]]:
    """Values in cm by table, size and code of the measure."""
    out: dict[str, dict[str, dict[str, float]]] = {}
    for name, (file, unit) in _TABLES.items():
        text = (
            resources.files("clothwright.body")
            .joinpath("tables", file)
            .read_text(encoding="utf-8")
        )
        rows = list(csv.reader(text.splitlines()[1:]))
        sizes: dict[str, dict[str, float]] = {s: {} for s in rows[0][1:]}
        for row in rows[1:]:
            code = _CODES.get(row[0])
            if code is None:
                continue
            assert code in measures()
            for size, value in zip(rows[0][1:], row[1:], strict=True):
                sizes[size][code] = float(value) * unit.cm
        out[name] = sizes
    return out

"""The demo's orders, drafted and finished once."""

from functools import cache
from importlib import resources
from pathlib import Path

from clothwright.order import Pattern, draft, pattern, read_order

ORDERS = (
    "peplum-top",
    "zip-top",
    "panelled-top",
    "sleeved-top",
    "bishop-blouse",
    "straight-skirt",
    "trousers",
    "sheath-dress",
    "knit-top",
)


@cache
def made(name: str) -> Pattern:
    with resources.as_file(resources.files("clothwright.demo")) as folder:
        return pattern(draft(read_order(Path(folder) / f"{name}.toml")))

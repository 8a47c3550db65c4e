"""Estimates of measures that were not taken, in two rule sets.

*handbook*: common practice, and fits on the 260 women of the public bdims data (our
notes on measures, §7, with their corrections C5, C6 and C23). *survey*: fitted on one
half of the public 2012 survey of 1,986 women, σ measured on the other (corrections
§4); where the survey has none, the handbook's stands. The survey took the armscye depth
at the body's armpit, about 2.6 cm above the depth that the block drafts from: its rule
adds that, so that AS has one use. Bust, waist and hip are never estimated.
"""

import math
import tomllib
from enum import Enum
from functools import cache
from importlib import resources
from typing import Any

from clothwright.body.body import Body
from clothwright.body.measures import measures
from clothwright.rules import Kind, Numbers, Rule, RuleTable
from clothwright.rules.formula import read_formula
from clothwright.units import Unit


class RuleSet(Enum):
    """Where estimates come from."""

    HANDBOOK = "handbook"
    SURVEY = "survey"


@cache
def estimates(ruleset: RuleSet) -> RuleTable:
    """The page of estimates: the survey's where it has one, else the handbook's."""
    text = (
        resources.files("clothwright.body")
        .joinpath("estimates.toml")
        .read_text(encoding="utf-8")
    )
    pages = tomllib.loads(text)
    rows: dict[str, dict[str, Any]] = dict(pages["handbook"])
    if ruleset is RuleSet.SURVEY:
        rows |= pages["survey"]
    names = {name: name for name in (*measures(), *rows)}
    page = RuleTable(f"estimates, {ruleset.value}")
    for key, row in rows.items():
        page.add(_rule(key, row, names))
    page.rule(
        "SW",
        measures()["SW"].name,
        kind=Kind.BODY,
        sigma=1.5,
        source="measures §7",
        formula="2·SH·cos SS + 2·(N/5 − 0.3 cm) + 1.5 cm",
        key="SW",
    )(_shoulders)
    return page


def _rule(key: str, row: dict[str, Any], names: dict[str, str]) -> Rule:
    kind = Kind.ANGLE if key == "SS" else Kind.BODY
    read = read_formula(
        str(row["formula"]), f"estimates.toml, {key}", Unit.CM, names, kind
    )
    shown = str(row["formula"]).replace("*", "·").replace(" - ", " − ")
    return Rule(
        key,
        row.get("symbol", key),
        measures()[key].name if key in measures() else row["name"],
        kind,
        row["source"],
        read.needs,
        read.compute,
        shown,
        sigma=row.get("sigma"),
    )


def _shoulders(SH: float, SS: float, N: float) -> float:
    return 2 * SH * math.cos(math.radians(SS)) + 2 * (N / 5 - 0.3) + 1.5


_WANTED = {
    "HT": "whatever is estimated from it",
    "B": "a bodice or a dress",
    "W": "whatever is fitted to the waist",
    "H": "a skirt or trousers",
}
"""Measures that others rest on, and what cannot be drafted without them."""


def lacking(body: Body) -> tuple[tuple[str, str], ...]:
    """Codes of measures that were neither taken nor can be estimated from what was, and
    what they are wanted for."""
    numbers = Numbers(estimates(RuleSet.SURVEY).rules, body.given())
    without = numbers.missing(numbers.keys())
    return tuple(
        (code, use)
        for code, use in _WANTED.items()
        if code in without or code not in numbers
    )

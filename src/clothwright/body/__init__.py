"""The body: measures, how sure they are, and whether they can be true.

Terminology
    taken      measured on the client, with date and hand.
    estimated  a rule's guess from other measures, with a standard deviation σ.
    frame bust Bf, the bust that the frame would have with a medium cup: HB + 5 cm.
    cup        c, bust less high bust.
"""

from clothwright.body.body import (
    Body,
    BodyError,
    MeasureValue,
    body_from_tables,
    one_line,
    read_body,
)
from clothwright.body.estimates import RuleSet, estimates, lacking
from clothwright.body.measures import BUST, Measure, measures
from clothwright.body.plausibility import check_body

__all__ = [
    "BUST",
    "Body",
    "BodyError",
    "Measure",
    "MeasureValue",
    "RuleSet",
    "body_from_tables",
    "check_body",
    "estimates",
    "lacking",
    "measures",
    "one_line",
    "read_body",
]

"""The centre back of a top that opens elsewhere: whole, and on the fold."""

from clothwright.rules import RuleTable

CLOSED = RuleTable("centre back without an opening")


@CLOSED.rule(
    "bd net", "back waist dart", source="blocks A4", key="bd_net", formula="bd"
)
def _bd_net(bd: float) -> float:
    return bd


@CLOSED.rule(
    "x(CB)",
    "centre back at the waist",
    source="blocks A1",
    key="x_back",
    formula="none",
)
def _x_back() -> float:
    return 0.0


@CLOSED.rule("gap", "gap of the back", source="blocks A1", key="gap", formula="none")
def _no_gap() -> float:
    return 0.0

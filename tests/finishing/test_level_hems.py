"""Hems of panels turned up alike (truing 9): a torso whose sides flare."""

import pytest

from bodies import P92, THEA, ansur_women
from clothwright.body import Body
from clothwright.features.bodice.torso import Torso
from clothwright.features.roles import Role
from clothwright.order import draft, pattern
from clothwright.order.pattern import finishing_of
from clothwright.paper import Sheet
from orders import closed_back, order

BODIES = (P92, THEA, *ansur_women()[7::240])


def torso_top(flare: float | None, body: Body = P92) -> tuple[Sheet, dict[str, Role]]:
    """A torso in panels, and what the hems of its shell are."""
    above = (f for f in closed_back() if f.kind not in ("waist seam", "peplum"))
    d = draft(order(body, (*above, Torso(flare=flare))))
    assert not pattern(d).failed
    plan = finishing_of(d).allowances
    hems = [p for p in d.sheet.pieces.values() if p.has("hem")]
    return d.sheet, {p.code: plan.role(p, "hem") for p in hems}


@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
@pytest.mark.parametrize(
    ("flare", "role"), [(6.5, Role.TURNED), (12.0, Role.HEM), (None, Role.DEEP_HEM)]
)
def test_all_panels_are_turned_up_as_the_one_that_bends_most(
    flare: float | None, role: Role, body: Body
) -> None:
    """Eased flat is what 2·h·Φ leaves under 5 in 100: 4 cm to 9.5° of a half, 2.5 to
    15°; the centre panels of a torso do not bend at all, and meet the side ones."""
    sheet, hems = torso_top(flare, body)
    bends = {c: sum(sheet.edge(c, "hem").path.turning()) for c in hems}
    assert bends["FC"] < 1.0 and bends["BC"] < 1.0
    assert set(hems.values()) == {role}

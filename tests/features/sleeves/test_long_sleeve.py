"""Sleeves to the elbow and below it (blocks B9 to B12, corrections C10).

Bodies are the check values' standard ones and the demo's clients, drafted whole.
"""

from pathlib import Path

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE
from clothwright.body import Body
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.findings import Severity
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.order.draft import Workroom
from clothwright.order.file import order_from_table
from clothwright.units import Unit
from orders import order, sleeved_features

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)


def made(body: Body, *swaps: Feature, unit: Unit = Unit.CM) -> Draft:
    return draft(order(body, sleeved_features(*swaps), unit=unit))


def codes(d: Draft, severity: Severity) -> set[str]:
    return {f.code for f in d.findings if f.severity is severity}


def fitted(elbow: Elbow = Elbow.DART, **more: object) -> SetInSleeve:
    return SetInSleeve(reach=Reach.WRIST, elbow=elbow).model_copy(update=more)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("elbow", list(Elbow))
def test_the_cap_top_to_the_wrist_is_the_arm(body: Body, elbow: Elbow) -> None:
    """S7: AL within 0.1; along the bent centre line where the elbow is shaped. The
    elbow lies at SE − h + 0.5 below the biceps line (B9)."""
    d = made(body, fitted(elbow))
    assert not d.failed and not pattern(d, words=False).failed, d.failures()
    n, p = d.numbers, d.sheet.points
    if elbow is Elbow.STRAIGHT:
        assert p["Hf"].y - p["T"].y == pytest.approx(n.AL, abs=MM)
        return
    assert p["Es"].y == pytest.approx(n.SE - n.h_cap + 0.5)
    along = distance(p["T"], p["Es"]) + distance(p["Es"], p["Hc"])
    assert along == pytest.approx(n.AL, abs=MM)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("reach", [Reach.THREE_QUARTER, Reach.WRIST])
def test_the_elbow_dart_takes_in_what_the_back_is_longer(
    body: Body, reach: Reach
) -> None:
    """1.5 to 2.5 at the wrist (B11); S2: the seams equal with the dart sewn; its legs
    equal, its length at most 8 and half of the back elbow width."""
    d = made(body, fitted(reach=reach))
    n, sheet = d.numbers, d.sheet
    if reach is Reach.WRIST:
        assert 1.5 <= n.elbow_in <= 2.5
    walks = {w.seam.code: w for w in d.report.walks}
    assert walks["S25"].ease == pytest.approx(0.0, abs=0.01 * MM)
    assert walks["elbow dart"].ease == pytest.approx(0.0, abs=0.01 * MM)
    low, high = sheet.edge("SL", "dart elbow low"), sheet.edge("SL", "dart elbow high")
    mouth = distance(low.path.start, high.path.end)
    assert mouth == pytest.approx(n.elbow_in, abs=0.2 * MM)
    assert low.length <= 8.1
    assert n.elbow_depth <= n.We / 4 + 1e-9
    # the mouth begins at the level of the elbow
    assert high.path.end.y == pytest.approx(n.y_E)


@pytest.mark.parametrize("body", BODIES)
def test_what_is_eased_at_the_elbow(body: Body) -> None:
    """At most 1.2, within 5 cm above and below the elbow (B11)."""
    d = made(body, fitted(Elbow.EASE))
    n = d.numbers
    assert 0.3 < n.elbow_ease <= 1.2
    seam = next(w for w in d.report.walks if w.seam.code == "S25")
    assert seam.ease == pytest.approx(n.elbow_ease, abs=0.01 * MM)
    assert seam.holds
    assert seam.seam.zone is not None
    assert seam.seam.zone[1] - seam.seam.zone[0] == pytest.approx(10.0, abs=MM)
    assert "SL8" not in codes(d, Severity.WARN)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("elbow", [Elbow.DART, Elbow.EASE])
def test_widths_and_square_ends(body: Body, elbow: Elbow) -> None:
    """Biceps UA + e, elbow at least EL + 2.5 (B12), wrist by B10;
    the hem square to both seams and to the centre line; cap and hem run on (S3)."""
    d = made(body, fitted(elbow))
    n, p = d.numbers, d.sheet.points
    assert distance(p["Ef"], p["Eb"]) >= n.EL + 2.5 - 1e-6
    hem = d.sheet.edge("SL", "hem").path
    wanted = max(n.WR + 3.5, n.HD + 0.5)
    assert wanted <= hem.length < wanted + 0.6
    assert hem.length >= n.HD
    angles = {a.joint.name: a for a in d.report.angles}
    assert angles["sleeve hem over the seam"].parts == pytest.approx([90, 90], abs=0.1)
    assert sum(angles["cap under the arm"].parts) == pytest.approx(180, abs=0.1)
    at = hem.direction_at_length(hem.length_to_point(p["Hc"]))
    assert degrees_between(at, p["Hc"] - p["Es"]) == pytest.approx(90.0, abs=0.1)
    assert p["Hc"].x > 1.0 if elbow is Elbow.DART else p["Hc"].x > 0.5


def test_a_bent_sleeve_reaches_below_the_elbow() -> None:
    with pytest.raises(OrderError, match="length of .* or more"):
        made(P92, SetInSleeve(elbow=Elbow.DART))
    assert not made(P92, SetInSleeve(elbow=Elbow.DART, length=40)).failed


@pytest.mark.parametrize("body", BODIES)
def test_reaches_grow(body: Body) -> None:
    lengths = [made(body, SetInSleeve(reach=r)).numbers.lh for r in Reach]
    assert lengths == sorted(lengths)
    assert lengths[-1] == pytest.approx(made(body).numbers.AL)


def test_a_hem_the_hand_does_not_pass_is_doubted() -> None:
    assert "SL4" in codes(made(P92, fitted(wrist=17.0)), Severity.WARN)
    assert "SL4" in codes(made(P92, fitted(Elbow.STRAIGHT, taper=8.0)), Severity.WARN)
    assert "SL4" not in codes(made(P92, fitted()), Severity.WARN)
    assert "SL7" in codes(made(P92, SetInSleeve(length=66.0)), Severity.WARN)
    assert "SL8" in codes(
        draft(
            order(
                P92,
                sleeved_features(fitted(Elbow.EASE)),
                house='unit = "cm"\n[rules]\nswing = 1.9',
            )
        ),
        Severity.WARN,
    )


def test_the_former_name_of_a_short_sleeve_still_holds() -> None:
    table = {
        "unit": "cm",
        "measures": {"B": 92},
        "feature": [{"kind": "short sleeve", "length": 21, "taper": 1}],
    }
    (feature,) = order_from_table(table, "old.toml", Path()).features
    assert feature == SetInSleeve(length=21.0, taper=1.0)


def test_changes_redraw_as_a_fresh_draft_would() -> None:
    room = Workroom()
    for sleeve in (
        fitted(),
        fitted(wrist=24.0),
        fitted(length=45.0),
        fitted(Elbow.EASE),
        fitted(Elbow.STRAIGHT),
        SetInSleeve(reach=Reach.ELBOW),
    ):
        o = order(P92, sleeved_features(sleeve))
        kept, fresh = room.draft(o), draft(o)
        assert [e.name for e in kept.sheet.piece("SL").edges] == [
            e.name for e in fresh.sheet.piece("SL").edges
        ]
        for e in fresh.sheet.piece("SL").edges:
            assert kept.sheet.length("SL", e.name) == pytest.approx(e.length, abs=1e-9)


def test_what_is_set_in_vain_is_said() -> None:
    assert "SL13" in codes(made(P92, fitted(taper=1.0)), Severity.NOTE)
    assert "SL13" in codes(made(P92, SetInSleeve(wrist=22.0)), Severity.NOTE)
    used = (fitted(wrist=22.0), SetInSleeve(taper=1.5))
    assert all("SL13" not in codes(made(P92, s), Severity.NOTE) for s in used)


@pytest.mark.parametrize(("body", "elbow"), [(P92, 29.3), (P116, 35.2)])
def test_the_elbow_of_the_check_values(body: Body, elbow: float) -> None:
    """EL + 2.5, where straight seams leave less (corrections C10)."""
    n = made(body, fitted()).numbers
    assert n.We == pytest.approx(elbow, abs=0.05)
    straight = n.Wb + (n.Ww - n.Wb) * n.y_E / (n.AL - n.h_cap)
    assert straight < n.We

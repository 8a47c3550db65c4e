"""The empire seam: cut below the bust, no darts in its midriff (transformations 1)."""

from itertools import product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.empire import EmpireSeam
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.yokes import FrontYoke
from clothwright.features.linings.lining import Mode
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from orders import closed_back, cut_faults, order, swapped


def divided(
    *more: Feature, dart: Feature | None = None, lining: Mode | None = None
) -> tuple[Feature, ...]:
    features = closed_back(lines="darts", lining=lining)
    if dart is not None:
        features = swapped(features, dart, place_of="side dart")
    return (*features, *more)


DARTS: tuple[Feature | None, ...] = (
    None,
    BustDart(),
    BustDart(to=DartPlace.WAIST),
    BustDart(to=DartPlace.ARMHOLE, share=0.5, second=DartPlace.WAIST),
)


@pytest.mark.parametrize(
    ("dart", "body"), list(product(DARTS, (P80, P92, P116, BRIDA, YSOLDE, THEA)))
)
def test_the_midriff_has_no_dart(dart: Feature | None, body: Body) -> None:
    """Side and waist as before the cut, both sides of the seam of one length, the dart
    above it drawn in by what was ordered (0.6 in front, 0.3 behind; 1.5 to 2.5 in all,
    1.8), the seam in one line over the taped dart."""
    plain = draft(order(body, divided(EmpireSeam(front=0.0, back=0.0), dart=dart)))
    made = draft(order(body, divided(EmpireSeam(), dart=dart)))
    whole = draft(order(body, divided(dart=dart)))
    assert not made.failed, made.failures()
    n, sheet = made.numbers, made.sheet
    for code, new, waist in (("F", "FM", "waist side"), ("B", "BM", "waist side")):
        midriff = sheet.piece(new)
        assert not any("leg" in e.name for e in midriff.edges)
        for name in ("waist", waist):
            if midriff.has(name):
                wanted = whole.sheet.length(code, name)
                assert midriff.edge(name).length == pytest.approx(wanted, abs=1e-6)
        upper = sheet.piece(code)
        total = sum(e.length for e in upper.edges if e.name.startswith("under"))
        assert midriff.edge("under").length == pytest.approx(total, abs=1e-3)
        segments = midriff.edge("under").path.segments
        for s, t in zip(segments, segments[1:], strict=False):
            assert distance(s.end_direction, t.start_direction) < 0.08
    for code, legs, more in (
        ("F", ("leg cf", "leg side"), n.ce_f),
        ("B", ("leg side", "leg cb"), n.ce_b),
    ):
        mouths = [
            distance(f.edge(legs[0]).path.start, f.edge(legs[1]).path.end)
            for f in (plain.sheet.piece(code), sheet.piece(code))
            if f.has(legs[0])
        ]
        if mouths:
            assert mouths[1] - mouths[0] == pytest.approx(more, abs=0.01)
    for code in ("S4", "S5", "S6"):
        old, again = whole.sheet.seam(code), sheet.seam(code)
        assert sheet.chain_length(again.left) == pytest.approx(
            whole.sheet.chain_length(old.left), abs=0.01
        )
    assert not cut_faults(made)
    making_order(made)


@pytest.mark.parametrize("mode", [Mode.TO_EDGE, Mode.BELOW_FACING])
@pytest.mark.parametrize("dart", DARTS)
def test_a_lining_hangs_whole_inside(mode: Mode, dart: Feature | None) -> None:
    made = draft(order(P92, divided(EmpireSeam(), dart=dart, lining=mode)))
    assert not made.failed, made.failures()
    assert "L.F" in made.sheet.pieces
    assert "L.FM" not in made.sheet.pieces
    assert not cut_faults(made)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (divided(EmpireSeam(), FrontYoke()), "across once only"),
        (
            divided(
                EmpireSeam(),
                dart=BustDart(to=DartPlace.WAIST, taken_up=TakenUp.GATHERS),
            ),
            "lead it to the waist as a dart",
        ),
        (divided(EmpireSeam(depth=14.0)), "make it less deep"),
        (divided(EmpireSeam(depth=4.0)), "make it deeper"),
    ],
)
def test_what_it_does_not_go_with(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))

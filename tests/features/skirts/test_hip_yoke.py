"""Hip yoke of a straight skirt (transformations §1.5): seams, girths, real bodies."""

import pytest
from shapely.geometry import LineString, Polygon

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.skirts.about import YOKES
from clothwright.features.skirts.centre_pleat import CentrePleat
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.hip_yoke import TO_SIDE, HipYoke
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.skirt_zip import Where as Zip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import Waistband
from clothwright.making import making_order
from clothwright.order import OrderError, draft, pattern
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import order
from verdict import verdict

MM = 0.1
PLAIN = (StraightSkirt(), SkirtZip(), Waistband(), Vent())
KINDS: dict[str, tuple[Feature, ...]] = {
    "banded, lined": (*PLAIN, HipYoke(), SkirtLining()),
    "faced, zip in the side": (
        StraightSkirt(flare=4.0),
        SkirtZip(where=Zip.SIDE),
        WaistFacing(),
        HipYoke(depth=8.0),
    ),
    "with a pleat": (*PLAIN, HipYoke(), CentrePleat()),
}
BODIES = (P80, P92, P116, BRIDA, THEA, YSOLDE)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_it_passes_and_its_cut_lines_hold(kind: str, body: Body) -> None:
    made = draft(order(body, KINDS[kind]))
    assert not made.failed, made.failures()
    done = pattern(made, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(made.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
        assert piece.cuts


def test_inches() -> None:
    made = draft(order(BRIDA, KINDS["with a pleat"], unit=Unit.IN))
    assert not made.failed, made.failures()


@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_waist_hip_and_seam_are_as_before(body: Body) -> None:
    """The waist is in the yoke alone, without darts; the yoke's seam is walked even;
    hip and side stay; what was left of the darts went to the side, at most 1 cm."""
    made = draft(order(body, KINDS["banded, lined"]))
    n, sheet = made.numbers, made.sheet
    waist = sum(sheet.length(y, "waist") for y in YOKES.values())
    assert waist == pytest.approx((n.W + n.Ew) / 2, abs=0.1 * MM)
    for code, yoke in YOKES.items():
        half = sheet.piece(code)
        assert not any(e.name.startswith(("dart", "waist")) for e in half.edges)
        even = sheet.length(yoke, "foot of yoke")
        assert half.edge("yoke").length == pytest.approx(even, abs=0.2)
    level = LineString([(-60, n.WH), (160, n.WH)])
    hip = sum(
        Polygon(sheet.piece(c).outline.flatten(0.005)).intersection(level).length
        for c in (FRONT, BACK)
    )
    assert hip == pytest.approx((n.H_S + n.Eh) / 2, abs=0.2 * MM)
    before = draft(
        order(body, (*PLAIN, HipYoke(), SkirtLining())[:4])
    ).sheet  # whose darts are longer
    side = sheet.length("SYF", "side") + sheet.length(FRONT, "side")
    assert side == pytest.approx(before.length(FRONT, "side"), abs=MM)
    assert TO_SIDE == 1.0


def test_the_band_and_the_sides_run_over_the_yoke() -> None:
    made = draft(order(THEA, KINDS["banded, lined"]))
    sheet = made.sheet
    for code in ("S30.1", "S30.2"):
        assert {r.piece for r in sheet.seam(code).left} <= set(YOKES.values())
    side = sheet.seam("S34")
    assert [r.piece for r in side.left] == ["SYF", FRONT]
    assert [r.piece for r in side.right] == ["SYB", BACK]
    assert [r.piece for r in sheet.seam("S35").left] == ["SYB", BACK]
    # the lining hangs whole behind it, its darts laid as pleats
    assert sheet.piece(f"L.{FRONT}").has("dart centre")
    assert "hip yoke cut off" in "\n".join(steps_text(made))
    titles = [op.title for op in making_order(made).operations]
    assert titles.index("Sew the front hip yoke seam") < titles.index(
        "Sew the skirt side seams"
    )


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((*PLAIN, HipYoke(), SkirtPockets()), "set pocket"),
        ((*PLAIN[:2], ContourBand(), HipYoke()), "shaped band is such a yoke"),
        (
            (StraightSkirt(back_dart=15.0, back_dart_side=14.0), *PLAIN[1:], HipYoke()),
            "goes to the side: make the darts",
        ),
        ((StraightSkirt(front_dart=6.0), *PLAIN[1:], HipYoke()), "make it less deep"),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


def test_real_women() -> None:
    """Every 45th woman of the survey: passed, or refused in words about the body."""
    women = ansur_women()[::45]
    assert len(women) >= 20
    passed = 0
    for body in women:
        it = verdict(order(body, KINDS["banded, lined"], estimates=RuleSet.SURVEY))
        passed += not it.refusals
        for words in it.refusals:
            assert "make" in words.lower() or "easure" in words, words
    assert passed >= len(women) - 2

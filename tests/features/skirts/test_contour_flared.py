"""Contour bands of circle and gored skirts (transformations §8)."""

import math

import pytest
from shapely.geometry import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.skirts.circle_skirt import CircleSkirt
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.contour_flared import GORE_BAND
from clothwright.features.skirts.gathered_skirt import GatheredSkirt
from clothwright.features.skirts.godets import Godets
from clothwright.features.skirts.gored_skirt import GoredSkirt, Gores
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.skirt_zip import Where as Zip
from clothwright.features.skirts.waistband import Waistband
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import order
from verdict import verdict

MM = 0.1
KINDS: dict[str, tuple[Feature, ...]] = {
    "half circle": (CircleSkirt(), SkirtZip(), ContourBand()),
    "full circle, zip in the side": (
        CircleSkirt(fullness=1.0),
        SkirtZip(where=Zip.SIDE),
        ContourBand(depth=7.0),
    ),
    "by its hem": (CircleSkirt(hem=200.0), SkirtZip(), ContourBand()),
    "six gores": (GoredSkirt(), SkirtZip(), ContourBand()),
    "four gores, lined": (
        GoredSkirt(gores=Gores.FOUR),
        SkirtZip(),
        ContourBand(),
        SkirtLining(),
    ),
    "twelve gores, godets": (
        GoredSkirt(gores=Gores.TWELVE),
        SkirtZip(),
        ContourBand(depth=8.0),
        Godets(),
    ),
}
CIRCLES = ("half circle", "full circle, zip in the side", "by its hem")


def made(kind: str, body: Body = THEA, unit: Unit = Unit.CM) -> Draft:
    return draft(order(body, KINDS[kind], unit=unit))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_it_passes_and_its_cut_lines_hold(kind: str, body: Body) -> None:
    d = made(kind, body, Unit.IN if body is BRIDA else Unit.CM)
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)
    titles = [op.title for op in making_order(d).operations]
    assert "Face the shaped band with its second cut" in titles


@pytest.mark.parametrize("kind", CIRCLES)
@pytest.mark.parametrize("body", [P80, P116, THEA], ids=lambda b: b.client)
def test_the_band_of_a_circle_is_the_books_arc(kind: str, body: Body) -> None:
    """§8: top W and its ease, below it Wb2 at depth d, r = W·d/(Wb2 − W); the skirt
    begins at Wb2, less what the bias yields, and is shorter by d."""
    d = made(kind, body)
    n, sheet = d.numbers, d.sheet
    waist = n.W + n.Ew
    top = 2 * (sheet.length("WCF", "waist") + sheet.length("WCB", "waist"))
    foot = 2 * sum(sheet.length(c, "foot of band") for c in ("WCF", "WCB"))
    assert top == pytest.approx(waist, abs=0.1 * MM)
    assert n.r_band == pytest.approx(waist * n.h_contour / (foot - waist), rel=1e-3)
    by_body = max(0.5, (n.HH + 1.0 - waist) * n.h_contour / n.WHH)
    assert foot - waist == pytest.approx(by_body, abs=0.1 * MM)
    below = 2 * (sheet.length("SF", "waist") + sheet.length("SB", "waist"))
    assert below == pytest.approx(foot - n.by_S, abs=0.1 * MM)
    long = sheet.length("SF", "cf") + sheet.length("WCF", "cf")
    assert long == pytest.approx(n.L, abs=0.1 * MM)
    hem = 2 * (sheet.length("SF", "hem") + sheet.length("SB", "hem"))
    assert hem == pytest.approx(n.hem_S, abs=0.5 * MM)
    if kind == "by its hem":
        assert hem == pytest.approx(200.0 - n.by_S, abs=0.5 * MM)
        share = (200.0 - n.w_foot) / (2 * math.pi * (n.L - n.h_contour))
        assert n.f == pytest.approx(share)


@pytest.mark.parametrize("kind", [k for k in KINDS if "gores" in k])
@pytest.mark.parametrize("body", [P80, P116, THEA], ids=lambda b: b.client)
def test_half_the_band_of_gores_is_as_long_as_half_of_them(
    kind: str, body: Body
) -> None:
    """Above as their waists, below stretch by stretch as their tops; the gores lose its
    depth."""
    d = made(kind, body)
    n, sheet = d.numbers, d.sheet
    assert 2 * sheet.length(GORE_BAND, "waist") == pytest.approx(n.W + n.Ew, abs=0.1)
    half = round(n.gores) // 2
    top = sheet.length("SG", "waist")
    for i in range(1, half + 1):
        assert sheet.length(GORE_BAND, f"foot {i}") == pytest.approx(top, abs=0.1 * MM)
        assert {r.piece for r in sheet.seam(f"S39.{i}").runs()} == {"SG", GORE_BAND}
    assert not any(s.code == f"S39.{half + 1}" for s in sheet.seams)
    deep = sheet.piece(GORE_BAND).edge("fold").length
    assert deep == pytest.approx(n.h_contour)
    middle = sheet.piece("SG").outline.bounds()
    assert middle[3] - middle[1] == pytest.approx(n.L - n.h_contour, abs=0.8)
    cuts = next(
        p for p in pattern(d, words=False).drawn.pieces if p.code == GORE_BAND
    ).cuts
    assert cuts[0].how == "2 on fold"
    assert any(
        k.left == pytest.approx(n.z_S - n.h_contour) for k in sheet.seam("S37").notches
    )


def test_the_zip_of_a_circle_begins_in_the_band() -> None:
    d = made("half circle")
    n = d.numbers
    seam = d.sheet.seam("S35")
    assert [r.piece for r in seam.left] == ["WCB", "SB"]
    assert any(k.left == pytest.approx(n.z_S) for k in seam.notches)
    cb = d.sheet.edge("SB", "cb").path
    down = cb.length - cb.length_to_point(d.sheet.points["Zb"])
    assert down == pytest.approx(n.z_S - n.h_contour, abs=0.1 * MM)
    assert "cm of it in the band" in "\n".join(steps_text(d))


def test_without_a_shaped_band_a_circle_is_as_before() -> None:
    d = draft(order(THEA, (CircleSkirt(), SkirtZip(), Waistband())))
    assert "w_foot" not in d.numbers
    assert d.numbers.r_hem == pytest.approx(d.numbers.r_circle + d.numbers.L)


def test_a_gathered_skirt_has_none() -> None:
    with pytest.raises(OrderError, match="the top of a straight, a gored or a circle"):
        draft(order(THEA, (GatheredSkirt(), SkirtZip(), ContourBand())))


WOMEN = ansur_women()[::90]


@pytest.mark.parametrize("kind", ["half circle", "six gores"])
def test_real_women(kind: str) -> None:
    """Every 90th woman of the survey: passed, or refused as with a straight band, but
    one fuller at the waist than below."""
    assert len(WOMEN) >= 10
    plain = tuple(Waistband() if f.kind[:7] == "contour" else f for f in KINDS[kind])
    for body in WOMEN:
        it = verdict(order(body, KINDS[kind], estimates=RuleSet.SURVEY))
        bare = verdict(order(body, plain, estimates=RuleSet.SURVEY))
        own = [r for r in it.refusals if "no wider at the foot" not in r]
        assert set(own) <= set(bare.refusals), (body.client, it.refusals)

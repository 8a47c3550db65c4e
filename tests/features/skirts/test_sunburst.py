"""Sunburst pleats, as a skirt and on a bodice (transformations §10; blocks G1, G2)."""

import math

import pytest

from bodies import P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import Point, distance
from clothwright.features import Feature
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.linings.lining import Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.notions import Article
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.skirts.dress_skirt import Cut, DressSkirt, Front
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.pleated_skirt_rules import Panels
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.sunburst_skirt import SunburstSkirt
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft, pattern
from features.skirts.test_wrap_dress import dress as wrap_dress
from orders import closed_back, order, sound, swapped

MM = 0.1
BODIES = pytest.mark.parametrize(
    "body", [P92, P116, THEA, YSOLDE], ids=lambda b: b.client
)


def skirt(*more: Feature, of: SunburstSkirt | None = None) -> tuple[Feature, ...]:
    usual = (of or SunburstSkirt(), SkirtZip(), Waistband())
    return tuple(({f.kind: f for f in usual} | {f.kind: f for f in more}).values())


def dress(of: DressSkirt | None = None, lines: str = "darts") -> tuple[Feature, ...]:
    made = of or DressSkirt(cut=Cut.SUNBURST)
    return swapped(closed_back(lines=lines), made, place_of="peplum")


@BODIES
def test_the_angle_in_the_cloth_is_the_pleated_one_times_the_ratio(body: Body) -> None:
    """§10; the radius is as G1 has it, w/(2πf), of the pleated waist: the pleats run to
    the centre of the arcs."""
    d = sound(body, skirt())
    n, panel = d.numbers, d.sheet.piece("SG")
    w = n.W + n.Ew
    r = w / (2 * math.pi * 0.33)
    waist, hem = panel.edge("waist").path, panel.edge("hem").path
    for at in (0.0, 0.3, 0.5, 1.0):
        p = waist.at_length(at * waist.length)
        assert distance(p, Point(0.0, 0.0)) == pytest.approx(r, abs=0.1 * MM)
        q = hem.at_length(at * hem.length)
        assert distance(q, Point(0.0, 0.0)) == pytest.approx(r + 60.0, abs=0.1 * MM)
    assert 4 * waist.length == pytest.approx(3 * w, abs=0.1 * MM)
    closed = w + 2 * math.pi * 0.33 * 60.0
    assert 4 * hem.length == pytest.approx(3 * closed, abs=0.1 * MM)
    assert n.phi_S == pytest.approx(360 * 0.33 * 3 / 4)


def test_the_pleated_waist_goes_into_the_band() -> None:
    d = sound(P92, skirt())
    n = d.numbers
    for i in range(1, 5):
        s = d.sheet.seam(f"S30.{i}")
        band, cloth = (d.sheet.chain_length(c) for c in (s.left, s.right))
        assert cloth == pytest.approx(3 * (n.W + n.Ew) / 4)
        assert s.ease.plan == pytest.approx(cloth - band, abs=0.1 * MM)


@BODIES
@pytest.mark.parametrize("lines", ["darts", "armhole"])
def test_on_a_bodice_each_half_is_its_waist(body: Body, lines: str) -> None:
    d = sound(body, dress(lines=lines))
    sheet = d.sheet
    for code in ("S5", "S6"):
        s = sheet.seam(code)
        bodice, cloth = (sheet.chain_length(c) for c in (s.left, s.right))
        assert cloth == pytest.approx(3 * bodice, abs=0.5 * MM)
    sides = [sheet.length(c, "side") for c in ("PF", "PB")]
    assert sides[0] == pytest.approx(sides[1])
    assert sides[0] == pytest.approx(62.0)


def test_the_waist_eased_onto_it_is_less() -> None:
    eased = tuple(
        f.model_copy(update={"ease": 0.5}) if f.kind == "waist seam" else f
        for f in dress()
    )
    d = sound(P92, eased)
    cloth = sum(d.sheet.length(c, "waist") for c in ("PF", "PB"))
    assert cloth == pytest.approx(3 * (d.numbers.w / 2 - 0.5), abs=0.5 * MM)


@pytest.mark.parametrize("features", [skirt(), dress()], ids=["skirt", "dress"])
def test_the_pleater_is_told_in_making_order_and_cutting_sheet(
    features: tuple[Feature, ...],
) -> None:
    """Sewn flat and hemmed before, set on after."""
    d = sound(THEA, features)
    made = making_order(d)
    titles = [op.title for op in made.operations]
    sewn_on = "Set the waistband" if "Set the waistband" in titles else "Sew the waist"
    seams = {"Sew the panel seams", "Sew the skirt side seams"}
    done = [
        next(t for t in titles if t in seams),
        "Hem the skirt before it is pleated",
        "Give the skirt to the pleater",
        sewn_on,
    ]
    assert [t for t in titles if t in done] == done
    assert not [t for t in titles if "level the hem" in t]
    bought = {one.article for one in cutting_sheet(made).notions}
    assert Article.PLEATING in bought
    notes = [k for f in d.order.features for k in f.notes(d.numbers, d.sheet, str)]
    assert "3 of cloth to 1 pleated" in "".join(notes)


@pytest.mark.parametrize("mode", [Mode.TO_EDGE, Mode.BELOW_FACING])
@pytest.mark.parametrize("body", [P92, YSOLDE], ids=lambda b: b.client)
def test_its_lining_is_the_segment_as_the_pleats_lie(body: Body, mode: Mode) -> None:
    """G1, G2: the waist's own radius and angle, w and w + 2πf·L round."""
    lined = closed_back(lines="darts", lining=mode)
    of = DressSkirt(cut=Cut.SUNBURST)
    d = sound(body, swapped(lined, of, place_of="peplum"))
    n, sheet = d.numbers, d.sheet
    for edge, aim in (
        ("waist", n.w_P),
        ("hem", n.w_P + 2 * math.pi * 0.33 * (62.0 - 1.5)),
    ):
        found = 2 * sum(sheet.length(c, edge) for c in ("L.PF", "L.PB"))
        assert found == pytest.approx(aim, abs=0.5 * MM)
    for code in ("LS5", "LS6"):
        assert not sheet.seam(code).gathered
        assert abs(sheet.seam(code).ease.plan) < 0.5


def test_real_women() -> None:
    women = ansur_women()[::120]
    assert len(women) >= 8
    passed = 0
    for i, body in enumerate(women):
        features = skirt() if i % 2 else dress()
        asked = order(body, features, estimates=RuleSet.SURVEY)
        passed += not pattern(draft(asked), words=False).failed
    assert passed >= len(women) - 1


def test_what_is_refused_is_said() -> None:
    few = SunburstSkirt(panels=Panels.TWO, fullness=0.4)
    crossing = DressSkirt(cut=Cut.SUNBURST, front=Front.WRAPS)
    wide = DressSkirt(cut=Cut.SUNBURST, fullness=0.8)
    off = ("concealed zip", "facing", "sleeveless armhole")
    buttoned = tuple(f for f in dress() if f.kind not in off)
    buttoned += SleevedArmhole(), SetInSleeve(), ButtonStand(), NeckFacing()
    faced = tuple(f for f in skirt(WaistFacing()) if f.kind != "waistband")
    cased = SunburstSkirt(), ElasticWaist()
    for features, said in (
        (skirt(of=few), "in more panels"),
        (dress(wide), "choose a smaller share of a circle"),
        (wrap_dress(crossing), 'set front = "on the fold"'),
        (buttoned, "do not go on into edges that open"),
        (faced, "sunburst pleats are set into a band"),
        (cased, "an elastic waist must pass the hip"),
        (skirt(Flounce()), "pressed in with its pleats"),
    ):
        with pytest.raises(OrderError, match=said):
            draft(order(THEA, features))


def test_what_is_of_no_use_is_said() -> None:
    d = sound(THEA, dress(DressSkirt(cut=Cut.SUNBURST, gathers=2.0)))
    assert any(f.code == "Q5" and "gathers" in str(f) for f in d.findings)
    d = sound(THEA, dress(DressSkirt(pleating=2.0)))
    assert any(f.code == "Q5" and "pleating" in str(f) for f in d.findings)

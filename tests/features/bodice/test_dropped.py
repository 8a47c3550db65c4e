"""A torso with a seam below the waist (blocks D7; transformations 1.9)."""

import math
from dataclasses import replace

import pytest

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.blocks.torso_width import width_at
from clothwright.body import Body, MeasureValue
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.dropped import open_legs
from clothwright.features.bodice.dropped_rules import clear_of_seam, eased, run_out
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.bodice.torso import Below, Torso
from clothwright.features.bodice.torso_widths import half_at
from clothwright.features.linings.lining import Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.skirts.dress_skirt import Cut, DressSkirt
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft, pattern
from clothwright.paper import Sheet
from clothwright.truing import Towards, dart_cap
from features.bodice.test_torso import MM, in_one, side
from making.test_order import complete
from orders import order, sound

SEAMS = (6.0, 9.0, 14.0, 19.0)
LINES = ("darts", "armhole", "shoulder", "mixed")
FLARED = DressSkirt(length=45.0)
GATHERED = DressSkirt(length=45.0, cut=Cut.GATHERED)


def hung(seam: float, skirt: Feature, *, lines: str = "darts") -> tuple[Feature, ...]:
    return in_one(Torso(seam=seam, below=Below.HUNG), skirt, lines=lines)


def along_seam(sheet: Sheet, first: str) -> float:
    """The seam on the pieces whose codes begin so, half, cm."""
    return sum(
        e.length
        for p in sheet.pieces.values()
        if p.code.startswith(first)
        for e in p.edges
        if e.name in ("waist", "waist side")
    )


# -- its rules -------------------------------------------------------------------------
def test_what_is_left_of_a_panel_is_plumb_at_both_ends() -> None:
    """A cubic whose handles are plumb and 0.4 of its depth: half is left half way, all
    at the waist, nothing from the end on (exact)."""
    assert eased(4.0, 13.5, 0.0) == pytest.approx(4.0)
    assert eased(4.0, 13.5, 6.75) == pytest.approx(2.0)
    assert eased(4.0, 13.5, 13.5) == eased(4.0, 13.5, 20.0) == 0.0
    near = eased(4.0, 13.5, 0.01)
    assert 4.0 - near < 0.01 * 4.0 / 13.5  # plumb: less than a straight line loses


@pytest.mark.parametrize(
    ("usual", "wide", "seam", "ends"),
    [
        (13.5, 4.0, 9.0, 13.5),  # 1.33 cm are left at the seam: it passes
        (13.5, 4.0, 11.0, 9.5),  # 0.74 cm: ended 1.5 cm above
        (9.5, 3.25, 8.0, 6.5),
        (9.5, 3.25, 11.0, 9.5),  # ends 1.5 cm above as it is
        (9.5, 3.25, 10.0, 8.5),
        (9.5, 1.3, 6.0, 9.5),  # under 5 cm long it would pucker
    ],
)
def test_where_a_dart_runs_out(
    usual: float, wide: float, seam: float, ends: float
) -> None:
    """Under 1 cm at the seam it ends above it (common practice, no source)."""
    assert run_out(usual, wide, seam) == pytest.approx(ends)


@pytest.mark.parametrize(
    ("end", "seam", "most", "is_"),
    [(19.0, 9.0, 60.0, 19.0), (19.0, 18.0, 60.0, 21.0), (19.0, 20.0, 22.0, 17.0)],
)
def test_a_zip_does_not_end_at_the_seam(
    end: float, seam: float, most: float, is_: float
) -> None:
    assert clear_of_seam(end, seam, most) == is_


# -- cut across ------------------------------------------------------------------------
@pytest.mark.parametrize("lines", LINES)
@pytest.mark.parametrize("seam", SEAMS)
@pytest.mark.parametrize("body", [P92, P116, THEA], ids=lambda b: b.client)
def test_its_own_skirt(body: Body, seam: float, lines: str) -> None:
    """D1: waist and hip are body and ease, as without a seam. D2: the sides are of one
    length above and below it. Both edges of the seam are one line, as long as the rules
    say; with no blouse the torso cut is as long as the torso whole."""
    cut = sound(body, in_one(Torso(seam=seam, blouse=0.0), lines=lines))
    n, sheet = cut.numbers, cut.sheet
    whole = sound(body, in_one(lines=lines)).sheet
    assert 2 * half_at(n, sheet, 0.0) == pytest.approx(n.W + 4.0, abs=0.1 * MM)
    assert 2 * half_at(n, sheet, n.WH) == pytest.approx(n.H + n.Eh, abs=0.1 * MM)
    for half in "FB":
        aim = n[f"w_{half}"]
        assert along_seam(sheet, half) == pytest.approx(aim, abs=0.01 * MM)
        assert along_seam(sheet, f"P{half}") == pytest.approx(aim, abs=0.01 * MM)
        both = side(sheet, half) + side(sheet, f"P{half}")
        assert both == pytest.approx(side(whole, half), abs=0.5 * MM)
    assert side(sheet, "F") == pytest.approx(side(sheet, "B"), abs=0.01 * MM)
    assert side(sheet, "PF") == pytest.approx(side(sheet, "PB"), abs=0.3 * MM)
    assert {"S4", "S5", "S6", "S7", "S21"} <= {s.code for s in sheet.seams}


@pytest.mark.parametrize("lines", LINES)
@pytest.mark.parametrize("seam", SEAMS)
def test_the_rules_read_the_paper(seam: float, lines: str) -> None:
    """Between the lines of the torso that is not cut the seam would measure what the
    rules say, but for its blend: the side need hardly be moved for it."""
    n = sound(THEA, in_one(Torso(seam=seam), lines=lines)).numbers
    whole = sound(THEA, in_one(lines=lines))
    ends = {"lb_T": n.lb_T, "lf_T": n.lf_T}
    if lines == "darts":  # as long as the cut one's
        more = Torso(back_dart=ends["lb_T"], front_dart=max(ends["lf_T"], 5.0))
        whole = sound(THEA, in_one(more, lines=lines))
    if lines != "mixed":
        there = width_at(whole.sheet, n.yW + seam)
        assert n.w_F + n.w_B == pytest.approx(there, abs=MM)


@pytest.mark.parametrize("body", [P92, THEA, YSOLDE], ids=lambda b: b.client)
def test_a_dart_passes_the_seam(body: Body) -> None:
    """Its legs are equal, widest at the waist, and go on in the skirt from the very
    ends that they have at the seam."""
    d = sound(body, in_one(Torso(seam=6.0, blouse=0.0)))
    n, sheet = d.numbers, d.sheet
    for code, half, dart in (("B", "back", n.bd_net), ("F", "front", n.fd)):
        if n.dd > (n.lb_T if code == "B" else n.lf_T):
            continue
        first, second = open_legs(sheet, code)
        assert first.length == pytest.approx(second.length, abs=0.01 * MM)
        wide = distance(first.segments[0].end, second.segments[-1].start)
        assert wide == pytest.approx(dart)
        left = distance(first.start, second.end)
        long, down = n.lb_T if code == "B" else n.lf_T, first.start.y - n.yW
        assert left == pytest.approx(dart * (1 - down / long), abs=0.1 * MM)
        lower = sheet.piece(f"P{code}")
        legs = [lower.edge(f"dart {k}").path for k in ("centre", "side")]
        ends = {p for leg in legs for p in (leg.start, leg.end)}
        assert {first.start, second.end} <= ends
        names = {s.code for s in sheet.seams}
        assert {f"{half} waist dart", f"skirt {half} dart"} <= names


def test_the_edges_are_square_to_what_they_meet() -> None:
    """Truing 4: sides, darts and centres meet the seam at 90°."""
    sheet = sound(P92, in_one(Torso(seam=8.0, blouse=0.0))).sheet
    square = pytest.approx(90.0, abs=0.6)
    b, pb = sheet.piece("B"), sheet.piece("PB")
    for name in ("side", "waist side", "leg cb", "waist"):
        assert b.interior_angle(name) == square, name
    for name in ("cb", "waist", "dart side", "waist side"):
        assert pb.interior_angle(name) == square, name


def test_a_seam_just_above_the_hip_is_square_below_too() -> None:
    """4 mm of the side's curve are left below the seam, less than a line of its own:
    what replaces it leaves the seam as the curve did, 1.1° off plumb."""
    torso = Torso(seam=18.95, front_wider=0.8, hip_ease=5.7)
    sheet = sound(ansur_whole()[931], in_one(torso)).sheet
    for code, corner in (("PF", "side"), ("PB", "waist")):
        assert sheet.piece(code).interior_angle(corner) == pytest.approx(90.0, abs=0.3)
    assert math.isclose(
        sheet.length("PF", "side"), sheet.length("PB", "side"), abs_tol=MM
    )


def test_the_cap_of_a_dart_that_narrows_to_its_mouth() -> None:
    """Folded at its lower part: where the seam is square to the legs the cap is hollow,
    its peak the leg times 1/cos of half the angle from where they would meet (truing
    3.3, exact, with the point beyond the mouth)."""
    d = sound(P92, in_one(Torso(seam=6.0, blouse=0.0)))
    b = d.sheet.piece("B")
    first, second = open_legs(d.sheet, "B")
    end = d.sheet.points["Pd2"]
    cap = dart_cap(b, "leg side", "leg cb", Towards.SECOND)
    leg, half = distance(first.start, end), distance(first.start, second.end) / 2
    peak = leg / math.cos(math.asin(half / leg))
    assert distance(cap.peak, end) == pytest.approx(peak, abs=0.2 * MM)
    assert cap.peak.y < first.start.y  # hollow: up into the dart


@pytest.mark.parametrize("blouse", [0.6, 2.0, 4.0])
def test_the_torso_is_longer_to_blouse_over(blouse: float) -> None:
    """D7: 0.6 to 4 longer; the centres by just so much, the seam as long as before, the
    waist where it was, and the skirt as it was."""
    flat, full = (
        sound(THEA, in_one(Torso(seam=12.0, blouse=b))).sheet for b in (0.0, blouse)
    )
    for code, edge in (("F", "cf"), ("B", "cb")):
        more = full.length(code, edge) - flat.length(code, edge)
        assert more == pytest.approx(blouse, abs=0.1 * MM)
    for half in "FB":
        assert along_seam(full, half) == pytest.approx(along_seam(flat, half))
        low, was = side(full, f"P{half}"), side(flat, f"P{half}")
        assert low == pytest.approx(was, abs=0.5 * MM)
    assert side(full, "F") == pytest.approx(side(full, "B"), abs=0.01 * MM)
    assert full.points["wb"] == flat.points["wb"]


# -- a skirt sewn on -------------------------------------------------------------------
@pytest.mark.parametrize("skirt", [FLARED, GATHERED], ids=lambda s: s.cut.value)
@pytest.mark.parametrize("seam", SEAMS)
def test_a_skirt_of_its_own(seam: float, skirt: DressSkirt) -> None:
    """G1, G10: its waist is the seam, less what a flared one yields, or g times it."""
    d = sound(YSOLDE, hung(seam, skirt, lines="armhole"))
    n, sheet = d.numbers, d.sheet
    top = sheet.length("PF", "waist") + sheet.length("PB", "waist")
    net = along_seam(sheet, "F") + along_seam(sheet, "B")
    if skirt.gathered:
        assert top == pytest.approx(n.g * net, abs=0.1 * MM)
        assert sheet.length("PF", "cf") == 45.0
    else:
        assert top == pytest.approx(net - n.by / 2, abs=0.1 * MM)
        assert n.r == pytest.approx(2 * top / (2 * math.pi * n.f), abs=0.1 * MM)
    assert not any(p.has("hem") for p in (sheet.piece("FC"), sheet.piece("BS")))


def test_the_skirt_clears_the_body_from_its_seam_down() -> None:
    """13.5, with the flare counted from the seam."""
    d = sound(P116, hung(16.0, DressSkirt(fullness=0.25)))
    found = [f for f in d.findings if f.code == "Q2"]
    n = d.numbers
    at_hip = n.w_P + 2 * math.pi * 0.25 * (n.WH - 16.0)
    assert bool(found) == (at_hip < n.H + 2.0)


@pytest.mark.parametrize("k", [0, 150, 331, 512, 640, 770, 940])
@pytest.mark.parametrize("below", list(Below))
def test_real_bodies(below: Below, k: int) -> None:
    """ANSUR's women get it, lined and finished, with its making order and cutting
    sheet."""
    body, seam = ansur_whole()[k], (7.0, 12.0, 18.0)[k % 3]
    more: tuple[Feature, ...] = (Torso(seam=seam, below=below),)
    more += (FLARED,) if below is Below.HUNG else (Vent(),)
    lines = LINES[k % 4]
    d = sound(body, in_one(*more, lines=lines, lining=Mode.TO_EDGE))
    making = making_order(d)
    complete(making)
    cutting_sheet(making)
    assert not [
        f for f in pattern(d, words=False).findings if f.severity.name == "REFUSE"
    ]


@pytest.mark.parametrize("seam", [7.0, 15.0])
def test_a_zip_in_the_side(seam: float) -> None:
    """Its notches: where it begins on S4; where it ends, on S4 above the seam or on S7
    below."""
    usual = in_one(Torso(seam=seam, below=Below.HUNG), FLARED)
    kept = tuple(f for f in usual if f.kind != "concealed zip")
    d = draft(order(THEA, (*kept, UnderarmZip())))
    ends = {
        code: [k.left for k in d.sheet.seam(code).notches if k.ticks == 2]
        for code in ("S4", "S7")
    }
    n = d.numbers
    assert [len(v) for v in ends.values()] == ([2, 0] if n.z < n.dd else [1, 1])
    if n.z > n.dd:
        assert ends["S7"] == [pytest.approx(n.z - n.dd)]
    else:
        wb = d.sheet.edge("B", "side").path.length_to_point(d.sheet.points["wb"])
        assert ends["S4"][1] == pytest.approx(wb + n.z)


def test_the_zip_of_the_back_is_measured_from_the_waist() -> None:
    d = sound(THEA, hung(9.0, FLARED))
    n, seam = d.numbers, d.sheet.seam("S21")
    at = d.sheet.edge("B", "cb").path.reversed().length_to_point(d.sheet.points["CBz"])
    round_it = n.z + n.blouse  # which goes past the seam, and round the blouse
    assert seam.notches[0].left - at == pytest.approx(round_it, abs=0.1 * MM)
    making = making_order(d)
    (zip_,) = (
        op for op in making.operations if "zip" in op.title and "Put" in op.title
    )
    assert any("the waist seams meet" in s for s in zip_.says)


@pytest.mark.parametrize(("ends", "cloth"), [(9.5, 13.5), (7.0, 7.0)])
def test_a_zip_is_measured_on_the_body(ends: float, cloth: float) -> None:
    """As that of every top: what is round at its end is the garment at that level. In
    the cloth one that passes the seam goes round the blouse too."""
    blousing = Torso(seam=9.0, blouse=4.0)
    d = draft(order(P92, in_one(blousing, ConcealedZip(below_waist=ends))))
    (told,) = (f for f in d.findings if f.code == "Z2")
    assert told.data["girth"] == pytest.approx(2 * half_at(d.numbers, d.sheet, ends))
    seam = d.sheet.seam("S21")
    at = d.sheet.edge("B", "cb").path.reversed().length_to_point(d.sheet.points["CBz"])
    assert min(abs(k.left - at - cloth) for k in seam.notches) < 0.1 * MM


@pytest.mark.parametrize("blouse", [0.0, 0.6, 4.0])
@pytest.mark.parametrize("below", Below)
def test_one_rule_says_where_it_ends(below: Below, blouse: float) -> None:
    """Transformations 7: HL − 2, on the body, however much the torso blouses."""
    torso = Torso(seam=9.0, blouse=blouse, below=below)
    more = (FLARED,) if below is Below.HUNG else ()
    n = draft(order(THEA, in_one(torso, *more))).numbers
    assert n.z == pytest.approx(n.WH - 2.0)
    whole = draft(order(THEA, in_one(Torso()))).numbers
    assert n.z == pytest.approx(whole.z)


def test_a_button_stand_runs_over_the_seam() -> None:
    usual = in_one(Torso(seam=14.0, below=Below.HUNG), GATHERED)
    out = ("concealed zip", "facing", "sleeveless armhole")
    kept = tuple(f for f in usual if f.kind not in out)
    d = sound(
        P92, (*kept, SleevedArmhole(), SetInSleeve(), ButtonStand(), NeckFacing())
    )
    assert {"S70", "S71", "S72"} <= {s.code for s in d.sheet.seams}
    assert d.sheet.piece("PF").has("stand")
    complete(making_order(d))


# -- what it says ----------------------------------------------------------------------
@pytest.mark.parametrize(
    ("features", "said"),
    [
        (in_one(Torso(seam=28.0)), "cm at most"),
        (in_one(Torso(seam=9.0), FLARED), 'below = "sewn on"'),
        (hung(9.0, FittedDressSkirt()), 'set below = "straight"'),
        (in_one(Torso(seam=9.0, below=Below.HUNG)), "nothing hangs on the waist seam"),
    ],
)
def test_refusals(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError) as e:
        draft(order(P80, features))
    assert said in str(e.value)


def test_numbers_that_mean_nothing_are_told() -> None:
    d = draft(order(THEA, in_one(Torso(blouse=2.0))))
    said = [str(f) for f in d.findings if f.code == "Q5"]
    assert len(said) == 1 and "blouse" in said[0] and 'give it a "seam"' in said[0]
    more = Torso(seam=9.0, length=60.0, flare=2.0, below=Below.HUNG)
    d = draft(order(THEA, in_one(more, FLARED)))
    said = [str(f) for f in d.findings if f.code == "Q5"]
    assert len(said) == 2
    assert all("the skirt has its own" in s for s in said)  # it has a seam


@pytest.mark.parametrize(("high_hip", "seam"), [(93.0, 12.0), (93.0, 14.0)])
def test_a_seam_too_tight_over_the_body(high_hip: float, seam: float) -> None:
    """1 cm of room at least is wanted, as over the high hip (D6): 0.8 is too little,
    1.1 enough."""
    values = {**P92.values, "HH": MeasureValue("HH", high_hip, "")}
    tight = Torso(seam=seam, hip_ease=0.0)
    d = draft(order(replace(P92, values=values), in_one(tight)))
    n = d.numbers
    wide = 2 * along_seam(d.sheet, "F") + 2 * along_seam(d.sheet, "B")
    body = n.HH + (n.H - n.HH) * (seam - n.WHH) / (n.WH - n.WHH)
    assert wide - body == pytest.approx(0.8 if seam == 12.0 else 1.1, abs=0.1)
    assert ("D9" in {f.code for f in d.findings}) is (seam == 12.0)


def test_its_words() -> None:
    said = Torso(seam=9.0).said()
    assert "{seam} below the waist" in said and "{blouse}" in said
    assert "{length}" not in Torso(seam=9.0, below=Below.HUNG).said()


def test_a_skirt_sewn_to_no_seam_is_said() -> None:
    """It used to be left unsaid that nothing is sewn on."""
    says = 'has no use for below = "sewn on"'
    for whole, told in (
        (Torso(length=60.0, below=Below.HUNG), True),
        (Torso(length=60.0), False),
        (Torso(length=60.0, seam=8.0), False),
    ):
        made = draft(order(THEA, in_one(whole)))
        assert any(says in str(f) for f in made.findings) is told

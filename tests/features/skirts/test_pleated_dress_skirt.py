"""The pleated skirt whose folded waist is a bodice's (transformations §10)."""

from dataclasses import replace

import pytest

from bodies import P92, P116, THEA, YSOLDE, ansur_whole, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.linings.jump_pleat import JumpPleat
from clothwright.features.linings.lining import Mode
from clothwright.features.skirts.pleated_dress_drawing import pleats_of_half
from clothwright.features.skirts.pleated_dress_skirt import Cut, PleatedDressSkirt
from clothwright.features.skirts.pleated_skirt import Shape
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.order import OrderError, draft, pattern
from clothwright.paper import EdgeKind, LineKind
from clothwright.truing import walk
from orders import closed_back, main_features, order, sound, swapped

MM, INCH = 0.1, 2.54
SLIM = Body.of({"HT": 165.0, "B": 88.0, "HB": 83.0, "W": 54.0, "H": 108.0})
SKIRTS = (
    PleatedDressSkirt(),
    PleatedDressSkirt(shape=Shape.BOX),
    PleatedDressSkirt(shape=Shape.BOX, gap=3.0, depth=1.5),
    PleatedDressSkirt(depth=2.5, face=6.0, stitched=12.0),
)


def dress(
    skirt: PleatedDressSkirt, *more: Feature, lines: str = "darts"
) -> tuple[Feature, ...]:
    return (*swapped(closed_back(lines=lines), skirt, place_of="peplum"), *more)


@pytest.mark.parametrize("skirt", SKIRTS, ids=lambda s: f"{s.shape.name} {s.depth}")
@pytest.mark.parametrize("body", [P92, P116, THEA, YSOLDE], ids=lambda b: b.client)
def test_the_folded_waist_is_the_bodice_s(body: Body, skirt: PleatedDressSkirt) -> None:
    """Half by half, so that the sides meet; and nothing is doubted of the pleats."""
    d = sound(body, dress(skirt))
    sheet = d.sheet
    for code in ("S5", "S6"):
        seam = sheet.seam(code)
        assert len(seam.right) > 3
        left, right = (sheet.chain_length(c) for c in (seam.left, seam.right))
        assert left == pytest.approx(right, abs=0.1 * MM)
    sides = [sheet.length(c, "side") for c in ("PF", "PB")]
    assert sides[0] == pytest.approx(sides[1], abs=0.3 * MM)
    said = [str(f) for f in d.findings]
    assert not [s for s in said if "pleat" in s or "skirt" in s or "Waist" in s], said


@pytest.mark.parametrize("box", [False, True])
def test_touching_pleats_take_three_times_the_length(*, box: bool) -> None:
    """§10: u = v, of box pleats u = v/2, use 3 times the finished length; where the
    halves' faces differ the smaller one is the depth of both."""
    d = sound(P92, dress(PleatedDressSkirt(shape=Shape.BOX if box else Shape.KNIFE)))
    n, sheet = d.numbers, d.sheet
    narrow, wide = sorted(("F", "B"), key=lambda k: n[f"pv_{k}"])
    hem = {k: sheet.length(f"P{k}", "hem") for k in ("F", "B")}
    assert hem[narrow] == pytest.approx(3 * n[f"x_S{narrow}"], abs=0.1 * MM)
    assert hem[wide] < 3 * n[f"x_S{wide}"] + 0.1 * MM
    for k in ("F", "B"):
        assert hem[k] == pytest.approx(n[f"cloth_{k}"], abs=0.1 * MM)
    assert 2 * (n.x_SF + n.x_SB) == pytest.approx(n.H_S + 5.0)


@pytest.mark.parametrize("skirt", SKIRTS, ids=lambda s: f"{s.shape.name} {s.depth}")
def test_every_fold_is_laid_two_depths_away(skirt: PleatedDressSkirt) -> None:
    """Below the hip a fold and its placement line lie 2u apart, and what is left of the
    hem with all of that folded away is the hip."""
    d = sound(P92, dress(skirt))
    n, sheet = d.numbers, d.sheet
    for code, key in (("PF", "F"), ("PB", "B")):
        piece = sheet.piece(code)
        at = {k.name: k.path.end.x for k in piece.lines if "pleat" in k.name}
        folds = [
            k for k in at if k.endswith("fold") and k.split(",")[0] + ", to here" in at
        ]
        assert folds
        away = 0.0
        for fold in folds:
            apart = abs(at[fold] - at[fold.replace("fold", "to here")])
            assert apart == pytest.approx(2 * n.pu, abs=0.1 * MM)
            away += apart
        if skirt.shape is Shape.KNIFE:
            away += n.pu  # the half pleat at the side
        seen = sheet.length(code, "hem") - away
        assert seen == pytest.approx(n[f"x_S{key}"], abs=0.2 * MM)
        arrows = [k for k in piece.lines if k.kind is LineKind.ARROW]
        assert len(arrows) == len(folds)
        for k in arrows:  # knife pleats lie towards the back on both sides
            if skirt.shape is Shape.KNIFE:
                assert k.path.end.x < k.path.start.x


def test_the_zip_runs_down_the_middle_of_a_face() -> None:
    d = sound(THEA, dress(PleatedDressSkirt()))
    n, sheet = d.numbers, d.sheet
    back = sheet.piece("PB")
    assert back.edge("cb").kind is EdgeKind.SEAM
    assert sheet.edge("PF", "cf").kind is EdgeKind.FOLD
    half = (n.pv_B - n.pt_B) / 2
    assert back.edge("waist 1").length == pytest.approx(half, abs=0.5 * MM)
    assert [r.piece for r in sheet.seam("S21").left] == ["B", "PB"]
    titles = [op.title for op in making_order(d).operations]
    places = [titles.index(t) for t in ("Hem the skirt", "Lay the pleats")]
    assert places == sorted(places)
    assert places[1] < titles.index("Sew the waist")


def test_the_high_hip_is_measured_as_the_pleats_lie() -> None:
    """At the hip the laid pleats are the hip and its ease, at the waist the waist."""
    d = sound(YSOLDE, dress(PleatedDressSkirt()))
    n = d.numbers
    halves = [pleats_of_half(n, k, box=False) for k in ("F", "B")]
    hip = 2 * sum(k.width_at(n.WH - 0.01) for k in halves)
    assert hip == pytest.approx(n.H_S + n.Eh, abs=MM)
    waist = 2 * sum(k.width_at(0.1) for k in halves)
    assert waist == pytest.approx(n.w, abs=5 * MM)


@pytest.mark.parametrize("mode", [Mode.TO_EDGE, Mode.BELOW_FACING])
@pytest.mark.parametrize("skirt", SKIRTS[:2], ids=lambda s: s.shape.name)
def test_its_lining_hangs_straight(skirt: PleatedDressSkirt, mode: Mode) -> None:
    """As wide as the hip, not pleated: what that is more than the waist goes into the
    lining of the bodice in small pleats."""
    lined = closed_back(lines="darts", lining=mode)
    d = sound(P92, swapped(lined, skirt, place_of="peplum"))
    n, sheet = d.numbers, d.sheet
    for code, key, seam in (("L.PF", "F", "LS5"), ("L.PB", "B", "LS6")):
        assert sheet.length(code, "hem") == pytest.approx(n[f"x_S{key}"])
        assert sheet.length(code, "side") == pytest.approx(60.0 - 1.5)
        s = sheet.seam(seam)
        assert s.gathered
        bodice, cloth = (sheet.chain_length(c) for c in (s.left, s.right))
        assert bodice == pytest.approx(n[f"w_S{key}"], abs=1.5 * MM)
        assert cloth - bodice == pytest.approx(s.ease.plan, abs=1.5 * MM)
    titles = [op.title for op in making_order(d).operations]
    assert titles.count("Hem the lining") == 1


def test_real_women() -> None:
    women = ansur_women()[::80]
    assert len(women) >= 10
    passed = 0
    for i, body in enumerate(women):
        asked = order(
            body,
            dress(SKIRTS[i % 4], lines=("darts", "armhole", "shoulder")[i % 3]),
            estimates=RuleSet.SURVEY,
        )
        passed += not pattern(draft(asked), words=False).failed
    assert passed >= len(women) - 1


def test_what_is_refused_is_said() -> None:
    open_back = swapped(main_features(), PleatedDressSkirt(), place_of="peplum")
    with pytest.raises(OrderError, match="through a zip at its back"):
        draft(order(THEA, open_back))
    lined = closed_back(lines="darts", lining=Mode.TO_EDGE)
    hung = swapped(lined, PleatedDressSkirt(), place_of="peplum")
    with pytest.raises(OrderError, match="its lining hangs free"):
        draft(order(THEA, (*hung, JumpPleat())))
    for skirt, said in (
        (PleatedDressSkirt(gap=2.0), "knife pleats lie edge to edge"),
        (PleatedDressSkirt(face=1.5, hip_ease=16.0), "choose wider pleats"),
    ):
        with pytest.raises(OrderError, match=said):
            draft(order(SLIM, dress(skirt)))


def test_deep_pleats_are_doubted() -> None:
    d = sound(THEA, dress(PleatedDressSkirt(depth=8.0)))
    assert {f.code for f in d.findings} >= {"PL2"}


BREADTHS = [
    PleatedDressSkirt(front=Cut.BREADTHS),
    PleatedDressSkirt(front=Cut.BREADTHS, shape=Shape.BOX),
    PleatedDressSkirt(front=Cut.BREADTHS, shape=Shape.BOX, gap=3.0, depth=1.5),
    PleatedDressSkirt(front=Cut.BREADTHS, depth=2.5, face=6.0, stitched=12.0),
]


@pytest.mark.parametrize("skirt", BREADTHS, ids=lambda s: f"{s.shape.name} {s.depth}")
@pytest.mark.parametrize(
    "body", [P92, P116, THEA, YSOLDE, *ansur_women()[::400]], ids=lambda b: b.client
)
def test_three_breadths_are_the_front_seamed_in_inner_folds(
    body: Body, skirt: PleatedDressSkirt
) -> None:
    """Together they are the front in one (exact), none wider than half of it but for a
    pleat; the seam is plumb below the hip and hidden: it lies half way between fold and
    placement line, a depth from each."""
    rules = RuleSet.SURVEY
    d = draft(order(body, dress(skirt), estimates=rules))
    whole = skirt.model_copy(update={"front": Cut.WHOLE})
    plain = draft(order(body, dress(whole), estimates=rules))
    assert d.failures() == plain.failures()
    n, sheet = d.numbers, d.sheet
    centre, beside = (sheet.piece(c) for c in ("PF", "PFX"))
    assert abs(centre.area) + abs(beside.area) == pytest.approx(
        abs(plain.sheet.piece("PF").area)
    )
    hems = [p.edge("hem").length for p in (centre, beside)]
    assert sum(hems) == pytest.approx(n.cloth_F)
    unit = n.cloth_F / (n.pn_F + 0.5)
    assert abs(2 * hems[0] - hems[1]) < 1.6 * unit
    seam = sheet.seam("S135")
    a, b = (sheet.chain_length(c) for c in (seam.left, seam.right))
    assert a == pytest.approx(b, abs=0.01 * MM)
    x = centre.edge("breadth").path.end.x, centre.edge("breadth").path.start.x
    folds = [
        abs(k.path.end.x - centre.edge("hem").path.end.x)
        for p in (centre, beside)
        for k in p.lines
        if k.name.endswith((", fold", ", to here"))
    ]
    assert sum(abs(f - n.pu) < 0.3 * MM for f in folds) >= 2, (folds, x)
    done = pattern(d)
    assert not set(done.drawn.failures) - set(pattern(plain).drawn.failures)
    cuts = {p.code: p.cuts[0].how for p in done.drawn.pieces}
    assert cuts["PF"] == "1 on fold"
    assert cuts["PFX"] == "2 (1 pair)"
    titles = [op.title for op in making_order(d).operations]
    sewn_at = titles.index("Sew the front breadth seams")
    assert sewn_at < titles.index("Hem the skirt") < titles.index("Lay the pleats")


def test_a_front_wider_than_the_cloth_is_told_what_to_do() -> None:
    """154 cm of front with touching pleats (P92) on a cloth of 140 cm: Q3 names the
    breadths; in three nothing is doubted."""

    def doubted(skirt: PleatedDressSkirt) -> list[str]:
        plain = order(P92, dress(skirt))
        cloth = plain.shell.model_copy(update={"width": 142.0, "selvedge": 1.0})
        on_it = replace(plain, cloths={**plain.cloths, "shell": cloth})
        return [str(f) for f in draft(on_it).findings if f.code == "Q3"]

    (said,) = doubted(PleatedDressSkirt())
    assert 'front = "in three breadths"' in said
    assert not doubted(BREADTHS[0])


@pytest.mark.parametrize(("k", "apart"), [(0, False), (152, True)])
def test_folds_that_do_not_sew_are_told_by_the_pleats(k: int, *, apart: bool) -> None:
    """The two lines of a fold may differ by 1/16 in, as the legs of a dart; beyond, as
    by the 2 mm of woman 152, the width of the pleats is told, not the paper alone."""
    d = draft(order(ansur_whole()[k], dress(PleatedDressSkirt(face=7.3))))
    folds = [walk(d.sheet, s) for s in d.sheet.seams if s.code.startswith("S54")]
    assert (max(abs(w.ease) for w in folds) > INCH / 16) == apart
    assert any(w.severity is Severity.REFUSE for w in folds) == apart
    assert any(f.code == "PL4" for f in d.findings) == apart

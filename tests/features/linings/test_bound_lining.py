"""Linings whose edges are caught in bindings (transformations 3 and 6): traced as the
shell, net, basted to it and bound with it. Shapely judges what lies on what."""

import pytest
from shapely.geometry import LineString, Polygon

from bodies import BODIES, P92, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.bodice.extended_shoulder import ExtendedShoulder
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.neck_binding import NeckBinding
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.openings.bound_cut_out import BoundCutOut
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.sleeves.raglan import Raglan
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import draft, pattern
from clothwright.paper import SeamKind
from features.linings.test_binding import bound, made, refused
from making.test_order import complete
from order.test_sides import TWO, lopsided
from orders import cut_faults, order, sleeved_features
from verdict import unsound, verdict

MM = 0.1
TO_BOUND = Lining(mode=Mode.BOUND)

STYLES: dict[str, tuple[Feature, ...]] = {
    "darts": bound(TO_BOUND),
    "panels": bound(
        TO_BOUND, front=FrontShape.BOAT, back=BackShape.BOAT, lines="armhole"
    ),
    "square": bound(TO_BOUND, front=FrontShape.SQUARE),
    "ring": bound(
        UnderarmZip(),
        TO_BOUND,
        front=FrontShape.SCOOP,
        back=BackShape.SCOOP,
        without=("concealed zip",),
    ),
    "run on over the arm": bound(
        TO_BOUND, ExtendedShoulder(), without=("sleeveless armhole",)
    ),
    "sleeves": tuple(
        f for f in sleeved_features(NeckBinding(), TO_BOUND) if f.kind != "neck facing"
    ),
    "below a facing": bound(NeckFacing(), Lining(), without=("neck binding",)),
    "below a facing, panels": bound(
        NeckFacing(), Lining(), lines="armhole", without=("neck binding",)
    ),
    "beside a stand": bound(
        NeckFacing(),
        Lining(),
        ButtonStand(),
        without=("neck binding", "concealed zip"),
    ),
}


@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
@pytest.mark.parametrize("style", STYLES)
def test_every_body_gets_it(style: str, body: Body) -> None:
    """All seams walk, the pattern is finished, each edge that is bound is the lining's
    too, of one length (shapely), and all is sewn once."""
    d = made(STYLES[style], body)
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    complete(making_order(d))
    caught = [s for s in d.sheet.seams if s.code.startswith("LE")]
    neck, arms = "VN" in d.sheet.pieces, "VA" in d.sheet.pieces
    wanted = ["LE1", "LE2"] * neck + ["LE3", "LE4"] * arms
    assert [s.code for s in caught] == wanted
    for s in caught:
        assert s.kind is SeamKind.LAPPED
        shell, lining = (
            sum(LineString(d.sheet.run_path(r).flatten(0.001)).length for r in side)
            for side in (s.left, s.right)
        )
        if style == "sleeves" or style.startswith(("below", "beside")):
            assert lining == pytest.approx(shell, abs=MM)
        else:
            assert lining == pytest.approx(shell, abs=0.01)


@pytest.mark.parametrize("style", STYLES)
def test_women_of_the_survey(style: str) -> None:
    """10 of the 993: each passes, or is refused by a number with what to do."""
    passed = 0
    for woman in ansur_women()[::100]:
        asked = order(woman, STYLES[style], estimates=RuleSet.SURVEY)
        it = verdict(asked)
        assert list(unsound(asked, it)) == []
        passed += not it.refusals
    assert passed >= 5


def test_the_lining_is_the_shell_with_slack_at_the_waist() -> None:
    """It covers the shell and has nothing beside it but 0.5 cm below the waist (first
    garment 15)."""
    sheet = made(STYLES["darts"]).sheet
    for code in ("F", "B"):
        shell, lining = (
            Polygon(sheet.piece(c).outline.flatten(0.002)) for c in (code, f"L.{code}")
        )
        assert shell.difference(lining).area == pytest.approx(0, abs=0.2)
        beyond = lining.difference(shell)
        waist = sum(
            e.length for e in sheet.piece(code).edges if e.name.startswith("waist")
        )
        assert beyond.area / waist == pytest.approx(0.5, abs=0.1)


def test_it_is_cut_net_where_it_is_bound() -> None:
    it = pattern(made(STYLES["darts"]))
    drawn = next(p for p in it.drawn.pieces if p.code == "L.F")
    cut = LineString(drawn.cut_line.flatten(0.002))
    piece = it.draft.sheet.piece("L.F")
    for name, wide in (("neck", 0.0), ("armhole", 0.0), ("shoulder", 1.5)):
        middle = piece.edge(name).path
        at = LineString(middle.flatten(0.01)).interpolate(0.5, normalized=True)
        assert cut.distance(at) == pytest.approx(wide, abs=0.2 * MM), name


def test_basted_before_it_is_bound() -> None:
    """The lining is whole and in the shell, whose zip is in; then both are bound."""
    for style in ("darts", "below a facing"):
        making = making_order(made(STYLES[style]))
        titles = [op.title for op in making.operations]
        arms = titles.index("Bind the armholes")
        (baste,) = (i for i, w in enumerate(titles) if w.startswith("Baste the lining"))
        assert titles.index("Put in the concealed zip") < titles.index(
            "Close the lining"
        )
        assert titles.index("Close the lining") < baste < arms
        assert arms < titles.index("Catch the lining in at the waist")
    sheet = cutting_sheet(making_order(made(STYLES["darts"])))
    assert {"L.F", "L.B"} <= {p.code for p in sheet.cloths["lining"]}


def test_sides_that_differ() -> None:
    d = made(STYLES["darts"], lopsided(ansur_women()[5], TWO))
    assert not d.failed, d.failures()
    assert {"LE1", "LE1-L"} <= {s.code for s in d.sheet.seams}


def test_what_is_refused_in_words() -> None:
    stand = bound(TO_BOUND, ButtonStand(), without=("concealed zip",))
    raglan = (*STYLES["sleeves"], Raglan())
    for features, says in (
        (stand, "a button stand has a facing behind it"),
        (raglan, "sleeves cut in one with the shoulder or the body"),
        (bound(TO_BOUND, without=("neck binding",)), 'add a "neck binding"'),
        (bound(Lining()), 'set its mode = "to the bound edges"'),
        (
            bound(TO_BOUND, BoundCutOut(), front=FrontShape.SCOOP, back=BackShape.BOAT),
            "a bound cut-out is not lined yet",
        ),
    ):
        assert says in refused(features), says


def test_a_roll_that_has_no_use_is_told() -> None:
    d = draft(order(P92, bound(Lining(mode=Mode.BOUND, roll=0.4))))
    (told,) = (f for f in d.findings if f.code == "Q5")
    assert told.severity is Severity.NOTE
    assert "lining to the bound edges" in str(told)

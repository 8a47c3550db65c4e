"""A hem faced in its own shape (transformations 6: the mirror of the hem, 4 to 8 deep).
Shapely judges distances."""

import pytest
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as Spot

from bodies import BRIDA, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.bodice.torso import Torso
from clothwright.features.collars.capelet import Capelet
from clothwright.features.collars.jabot import Jabot
from clothwright.features.linings.lining import Mode
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.open_zip import OpenZip
from clothwright.features.operations import Stitch
from clothwright.features.skirts.circle_skirt import CircleSkirt
from clothwright.features.skirts.dress_skirt import DressSkirt
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.gored_skirt import GoredSkirt
from clothwright.features.skirts.hem_facing import FACED, HemFacing
from clothwright.features.skirts.pleated_skirt import PleatedSkirt
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.features.skirts.waistband import Waistband
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.order.figures import figures
from clothwright.paper import EdgeKind
from clothwright.truing import walk
from making.test_order import complete
from orders import closed_back, cut_faults, order
from verdict import unsound, verdict

MM = 0.1
BODIES = (P92, P116, BRIDA, YSOLDE, THEA)
BANDED = SkirtZip(), Waistband()


def dressed(
    *more: Feature, without: tuple[str, ...] = (), lining: Mode | None = None
) -> tuple[Feature, ...]:
    features = closed_back(lines="darts", lining=lining)
    kept = (f for f in features if f.kind not in without)
    return (*kept, *more, HemFacing())


PEPLUM = ("peplum",)
STYLES: dict[str, tuple[Feature, ...]] = {
    "straight": (StraightSkirt(), *BANDED, HemFacing()),
    "flared": (StraightSkirt(flare=6.0), *BANDED, HemFacing(depth=4.0)),
    "half circle": (CircleSkirt(), *BANDED, HemFacing()),
    "full circle": (CircleSkirt(fullness=1.0), *BANDED, HemFacing(depth=8.0)),
    "gores": (GoredSkirt(), *BANDED, HemFacing()),
    "lined gores": (GoredSkirt(), *BANDED, SkirtLining(), HemFacing()),
    "peplum": dressed(),
    "dress": dressed(DressSkirt(), without=PEPLUM),
    "lined dress": dressed(DressSkirt(), without=PEPLUM, lining=Mode.BELOW_FACING),
    "straight dress": dressed(FittedDressSkirt(), without=PEPLUM),
    "torso": dressed(Torso(), without=("peplum", "waist seam")),
}


def made(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    d = draft(order(body, features))
    assert not d.failed, d.failures()
    return d


def line(d: Draft, piece: str, edge: str) -> LineString:
    return LineString(d.sheet.edge(piece, edge).path.flatten(0.002))


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_it_is_the_lower_part_of_the_piece(style: str, body: Body) -> None:
    """As deep as ordered all along, within the piece, of its hem's length; every seam
    walks and the pattern is cut."""
    d = made(STYLES[style], body)
    assert not cut_faults(d)
    assert making_order(d).operations
    deep, sheet = d.numbers.hem_facing, d.sheet
    seams = [s for s in sheet.seams if s.code.startswith("S144")]
    assert len(seams) >= 2
    for seam in seams:
        assert walk(sheet, seam).holds, seam.code
    shells = [c for c in FACED if c in sheet.pieces and FACED[c][0] in sheet.pieces]
    shells = [c for c in shells if sheet.piece(c).has("hem")]
    assert shells
    for code in shells:
        facing = FACED[code][0]
        hem, free = line(d, facing, "hem"), line(d, facing, "free")
        gaps = [hem.distance(Spot(p)) for p in free.coords]
        assert max(gaps) == pytest.approx(deep, abs=1.0 * MM)
        assert min(gaps) == pytest.approx(deep, abs=1.0 * MM)
        assert hem.equals_exact(line(d, code, "hem"), 0.01)
        whole = Polygon(sheet.piece(code).outline.flatten(0.002))
        part = Polygon(sheet.piece(facing).outline.flatten(0.002))
        assert part.is_valid
        assert whole.buffer(0.1 * MM).contains(part)


@pytest.mark.parametrize("style", STYLES)
def test_women_of_the_survey(style: str) -> None:
    passed = 0
    for woman in ansur_women()[::120]:
        asked = order(woman, STYLES[style], estimates=RuleSet.SURVEY)
        it = verdict(asked)
        assert list(unsound(asked, it)) == []
        passed += not it.refusals
    assert passed >= 5


@pytest.mark.parametrize("style", ["half circle", "dress", "torso"])
def test_both_carry_the_allowance_of_a_faced_edge(style: str) -> None:
    """1.0 at the hem of shell and facing (18); a lining's hem stays a hem."""
    it = pattern(made(STYLES[style]), words=False)
    for code, (facing, _) in FACED.items():
        for piece in (code, facing):
            if piece not in it.draft.sheet.pieces or not it.draft.sheet.piece(
                piece
            ).has("hem"):
                continue
            drawn = next(p for p in it.drawn.pieces if p.code == piece)
            cut = LineString(drawn.cut_line.flatten(0.002))
            net = it.draft.sheet.edge(piece, "hem").path
            middle = Spot(net.at_length(net.length / 2))
            assert cut.distance(middle) == pytest.approx(1.0, abs=0.3 * MM)


def test_the_hem_is_faced_and_not_turned_up() -> None:
    for style in ("half circle", "peplum", "straight dress", "torso"):
        d = made(STYLES[style])
        making = making_order(d)
        titles = [op.title for op in making.operations]
        joined, faced = (
            titles.index(t)
            for t in ("Join the pieces of the hem facing", "Face the hem")
        )
        felled = titles.index("Neaten the hem facing and fell it by hand")
        assert joined < faced < felled
        assert not [t for t in titles if t.startswith("Hem the")]
        complete(making)
        once = sum(
            making.garment.edge_length(r) for r in making.operations[felled].edges
        )
        stitched = making.stitched(making.operations[felled])
        assert stitched[Stitch.HAND] == pytest.approx(once)
        assert stitched[Stitch.OVEREDGE] == pytest.approx(once)


def test_a_lining_is_cut_as_if_the_hem_were_turned_up() -> None:
    """Traced before the hem is faced: its pieces are those of the same dress."""
    faced = made(STYLES["lined dress"])
    plain = made(tuple(f for f in STYLES["lined dress"] if f.kind != "hem facing"))
    for code, piece in plain.sheet.pieces.items():
        if code.startswith("L."):
            mine = faced.sheet.piece(code)
            assert [e.name for e in mine.edges] == [e.name for e in piece.edges]
            assert [e.kind for e in mine.edges] == [e.kind for e in piece.edges]
            assert mine.area == pytest.approx(piece.area)


@pytest.mark.parametrize("falls", (Capelet(), Jabot()))
def test_what_falls_from_the_neck_keeps_its_own_hem(falls: Feature) -> None:
    d = made(dressed(falls))
    (own,) = (p for p in d.sheet.pieces.values() if p.code in ("CO", "JA"))
    assert own.edge("hem").kind is EdgeKind.FINISHED
    assert {c for c in d.sheet.pieces if c.startswith("HF")} == {"HFF", "HFB"}


def test_its_number_is_told() -> None:
    d = made(STYLES["half circle"])
    assert figures(d)["numbers"]["hem facing"]


def test_what_is_refused_in_words() -> None:
    facing = HemFacing()
    for features, says in (
        ((StraightSkirt(), *BANDED, Vent(), facing), "leave one of the two off"),
        ((StraightSkirt(), *BANDED, Flounce(), facing), "ends one way only"),
        ((PleatedSkirt(), *BANDED, facing), "neither pleated nor in panels"),
        (
            dressed(ButtonStand(), without=("concealed zip",)),
            "a button stand has a facing down to the hem",
        ),
        (
            dressed(OpenZip(), without=("concealed zip",)),
            "a centre that opens down to the hem has a facing",
        ),
        ((CircleSkirt(length=15.0), *BANDED, HemFacing(depth=15.0)), "less deep"),
    ):
        with pytest.raises(OrderError) as e:
            draft(order(P92, features))
        assert says in str(e.value), says

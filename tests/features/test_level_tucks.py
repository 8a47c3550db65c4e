"""Tucks along a hem, of a sleeve and of a skirt (transformations 10): each takes twice
its depth of cloth, and lies no nearer to the next than it is deep."""

from collections.abc import Callable
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import Path, Point
from clothwright.features import Feature
from clothwright.features.linings.jump_pleat import JumpPleat
from clothwright.features.linings.lining import Lining
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.skirts.dress_skirt import Cut, DressSkirt
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.gathered_skirt import GatheredSkirt, Tiers
from clothwright.features.skirts.hem_tucks import HemTucks
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip, Where
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.features.sleeves.sleeve_tucks import SleeveTucks
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import Piece
from making.test_order import complete
from orders import cut_faults, order, sleeved_features

MM = 0.1
ELBOW = SetInSleeve(reach=Reach.ELBOW)
SLEEVE = SleeveTucks(count=4, depth=0.5, apart=0.9, above=3.0)
SKIRT = HemTucks(count=3, depth=1.2, apart=2.0, above=7.0)


def sound(body: Body, *features: Feature) -> Draft:
    made = draft(order(body, features))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    complete(making_order(made))
    return made


def skirt(*more: Feature, tiers: Tiers = Tiers.ONE) -> tuple[Feature, ...]:
    zipped = SkirtZip(where=Where.SIDE)
    return (GatheredSkirt(tiers=tiers), zipped, Waistband(), *more)


def dress(*more: Feature) -> tuple[Feature, ...]:
    top = (f for f in sleeved_features() if f.kind != "peplum")
    return (*top, DressSkirt(cut=Cut.GATHERED), *more)


def high(piece: Piece) -> float:
    box = piece.outline.bounds()
    return box[3] - box[1]


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
def test_a_sleeve_takes_twice_the_depth_of_each(body: Body) -> None:
    """Exact: 4 tucks of 0.5 cm make it 4 cm longer; cap and hem stay, and both edges of
    the seam under the arm, which slopes, grow alike."""
    plain = sound(body, *sleeved_features(ELBOW))
    made = sound(body, *sleeved_features(ELBOW, SLEEVE))
    a, b = plain.sheet.piece("SL"), made.sheet.piece("SL")
    assert high(b) - high(a) == pytest.approx(4.0, abs=1e-6)
    for e in a.edges:
        grown = b.edge(e.name).length - e.length
        if e.name.startswith("underarm"):
            assert 4.0 - 1e-6 <= grown < 4.1
        else:
            assert grown == pytest.approx(0.0, abs=1e-6)
    assert made.numbers.lh == plain.numbers.lh


def test_folded_the_seam_is_the_seam_it_was() -> None:
    """Across its fold each place of the edge has its like, so that the folded tuck ends
    in the seam though that slopes."""
    one = SleeveTucks(count=1, depth=1.5, above=3.0)
    made = sound(P92, *sleeved_features(SetInSleeve(length=34.0, taper=4.0), one))
    piece = made.sheet.piece("SL")
    fold = next(k.path.start.y for k in piece.lines if k.name == "fold of a tuck 1")
    for name in ("underarm front", "underarm back"):
        for off in (0.3, 0.8, 1.49):
            xs = [_across(piece, name, y) for y in (fold - off, fold + off)]
            assert xs[0] == pytest.approx(xs[1], abs=1e-6)
        assert _across(piece, name, fold) != pytest.approx(
            _across(piece, name, fold - 1.5), abs=MM
        )


def _across(piece: Piece, name: str, y: float) -> float:
    level = Path.line(Point(-999.0, y), Point(999.0, y))
    path = piece.edge(name).path
    return path.at_length(path.meets(level)[0][0]).x


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
@pytest.mark.parametrize("of", [skirt, dress])
def test_a_skirt_takes_twice_the_depth_of_each(
    of: Callable[..., tuple[Feature, ...]], body: Body
) -> None:
    """Exact: 3 tucks of 1.2 cm make every piece with a hem 7.2 cm longer and no wider;
    the length asked for stays."""
    plain, made = sound(body, *of()), sound(body, *of(SKIRT))
    hems = [c for c in ("SF", "SB", "PF", "PB") if c in plain.sheet.pieces]
    assert len(hems) == 2
    for code in hems:
        a, b = plain.sheet.piece(code), made.sheet.piece(code)
        assert high(b) - high(a) == pytest.approx(7.2, abs=1e-6)
        for edge in ("hem", "waist"):
            assert b.edge(edge).length == pytest.approx(a.edge(edge).length, abs=1e-6)
    assert made.numbers.L == plain.numbers.L


def test_they_lie_as_said_when_folded() -> None:
    """The lowest fold hangs 7 cm above the hem, each other 2 cm above the stitching of
    the next."""
    made = sound(P92, *skirt(SKIRT))
    piece = made.sheet.piece("SF")
    at = {k.name: k.path.start.y for k in piece.lines}
    hem = piece.edge("hem").path.start.y
    for k in (1, 2, 3):
        wide = (
            at[f"stitch line of a tuck {2 * k}"]
            - at[f"stitch line of a tuck {2 * k - 1}"]
        )
        assert wide == pytest.approx(2.4, abs=1e-6)
        middle = (
            at[f"stitch line of a tuck {2 * k}"]
            + at[f"stitch line of a tuck {2 * k - 1}"]
        ) / 2
        assert at[f"fold of a tuck {k}"] == pytest.approx(middle, abs=1e-6)
    assert hem - at["stitch line of a tuck 2"] == pytest.approx(7.0 + 1.2, abs=1e-6)
    for k in (1, 2):
        gap = (
            at[f"stitch line of a tuck {2 * k - 1}"]
            - at[f"stitch line of a tuck {2 * k + 2}"]
        )
        assert gap == pytest.approx(1.2 + 2.0, abs=1e-6)


def test_a_zip_ends_where_it_did() -> None:
    """Notches above the tucks stay; what lies below moves down with the paper."""
    plain, made = sound(P92, *skirt()), sound(P92, *skirt(SKIRT))
    a, b = plain.sheet.seam("S34"), made.sheet.seam("S34")
    stitched = 65.0 - 7.0 - 1.2 - 2 * (1.2 + 2.0)
    for one, two in zip(a.notches, b.notches, strict=True):
        if one.left < stitched:
            assert two == one
    assert made.sheet.chain_length(b.left) - plain.sheet.chain_length(
        a.left
    ) == pytest.approx(7.2, abs=1e-6)


@pytest.mark.parametrize(
    "features",
    [
        (GatheredSkirt(), ElasticWaist(), SKIRT),
        skirt(HemTucks(count=2, depth=0.5, apart=0.8), tiers=Tiers.THREE),
        skirt(SKIRT, Flounce()),
        (GatheredSkirt(), SkirtZip(), Waistband(), SKIRT, SkirtPockets()),
        dress(SKIRT, Lining()),
        dress(SKIRT, Lining(), JumpPleat()),
        sleeved_features(SLEEVE, ELBOW, PuffedCap()),
        sleeved_features(SLEEVE, ELBOW, Lining()),
    ],
)
def test_it_goes_with_what_hangs_on_a_skirt(features: tuple[Feature, ...]) -> None:
    with_tucks = sound(THEA, *features)
    plain = sound(
        THEA, *(f for f in features if f.kind not in ("hem tucks", "sleeve tucks"))
    )
    for code, piece in plain.sheet.pieces.items():
        if code.startswith("L."):
            assert with_tucks.sheet.piece(code) == piece


def test_they_are_sewn_flat_before_the_seams() -> None:
    making = making_order(sound(P92, *sleeved_features(ELBOW, SLEEVE)))
    titles = [o.title for o in making.operations]
    at = titles.index("Sew the tucks of the sleeves")
    assert making.operations[at].count == 8.0
    assert at < next(i for i, t in enumerate(titles) if "Sew the sleeve" in t)
    skirts = making_order(sound(P92, *skirt(SKIRT)))
    sewn = next(
        o for o in skirts.operations if o.title == "Sew the tucks above the hem"
    )
    wide = sum(skirts.draft.sheet.length(c, "hem") for c in ("SF", "SB"))
    assert sewn.length == pytest.approx(3 * 2 * wide, abs=MM)


def test_real_women_get_them() -> None:
    for body in Random(31).sample(ansur_whole(), 5):
        sound(body, *sleeved_features(SleeveTucks()))
        sound(body, *skirt(HemTucks()))


def test_a_sleeve_left_out_goes_to_the_wrist() -> None:
    made = sound(P92, *sleeved_features(SleeveTucks()))
    assert made.numbers.lh == pytest.approx(made.numbers.AL)
    for end in ((SleeveTucks(),), (GatheredHem(), Cuff())):  # nothing was raised
        found = sound(P92, *sleeved_features(*end)).findings
        assert not [f for f in found if f.code == "SL1" and f.place == "lh"]


@pytest.mark.parametrize(
    ("features", "code"),
    [
        (skirt(HemTucks(depth=2.0, apart=1.5)), "HT1"),
        (sleeved_features(ELBOW, SleeveTucks(depth=0.8, apart=0.5)), "ST1"),
    ],
)
def test_tucks_that_lie_on_each_other_are_refused(
    features: tuple[Feature, ...], code: str
) -> None:
    made = draft(order(P92, features))
    told = next(f for f in made.findings if f.code == code)
    assert told.severity is Severity.REFUSE


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (
            sleeved_features(SetInSleeve(length=20.0), SleeveTucks()),
            r'reach up \d+\.\d cm too far: make them \(count of "sleeve tucks"\) fewer',
        ),
        (skirt(HemTucks(count=6, depth=4.0, apart=5.0)), "reach up"),
        (
            sleeved_features(GatheredHem(), Cuff(), SleeveTucks()),
            "sleeve's own hem|plain",
        ),
        (dress(SKIRT, ButtonStand()), "facing down to the hem"),
        (
            (
                *(f for f in sleeved_features() if f.kind != "peplum"),
                DressSkirt(),
                SKIRT,
            ),
            "tucks lie level along a straight hem",
        ),
    ],
)
def test_what_has_no_room_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))

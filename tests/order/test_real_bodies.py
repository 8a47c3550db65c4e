"""The main garment, a sleeved top and skirts on women of two public surveys, evenly
taken; `make survey` asks every woman of them.

Each drafts, or is refused with a sentence that names a measure; at least 97 of 100
pass every check; no net outline and no cut line crosses itself (shapely judges).
"""

import pytest
from shapely.geometry import Polygon

from bodies import ansur_women, bdims_women
from clothwright.body import Body, RuleSet
from clothwright.body.measures import measures
from clothwright.features import Feature
from clothwright.features.block import Block, Depth
from clothwright.features.skirts.circle_skirt import CircleSkirt
from clothwright.features.skirts.gathered_skirt import GatheredSkirt
from clothwright.features.skirts.gored_skirt import GoredSkirt
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.sleeves.bell_sleeve import BellSleeve
from clothwright.features.sleeves.cap_sleeve import CapSleeve
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.flutter_sleeve import FlutterSleeve
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.leg_of_mutton import LegOfMutton
from clothwright.features.sleeves.petal_sleeve import PetalSleeve
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_band import SleeveBand
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.features.sleeves.two_piece_sleeve import TwoPieceSleeve
from clothwright.order import Draft, OrderError, draft, pattern
from orders import main_features, order, sleeved_features, straight_skirt

MM = 0.1


MAIN = main_features(pointed=False)


def _all(
    bodies: tuple[Body, ...], rules: RuleSet, features: tuple[Feature, ...]
) -> tuple[list[Draft], list[str]]:
    made, refused = [], []
    for body in bodies:
        try:
            made.append(draft(order(body, features, estimates=rules)))
        except OrderError as e:
            refused.append(str(e))
    return made, refused


def _judge(
    bodies: tuple[Body, ...], rules: RuleSet, features: tuple[Feature, ...] = MAIN
) -> None:
    made, refused = _all(bodies, rules, features)
    codes = set(measures()) | {m.name for m in measures().values()}
    for sentence in refused:
        assert any(c in sentence for c in codes), sentence
    passed = sum(not d.failed for d in made)
    assert passed >= 0.97 * len(bodies)
    assert made
    for d in made:
        for piece in d.sheet.pieces.values():
            assert Polygon(piece.outline.flatten(0.02)).is_valid, piece.code


def test_bdims() -> None:
    _judge(bdims_women()[::4], RuleSet.HANDBOOK)


@pytest.mark.parametrize("part", range(2))
def test_ansur(part: int) -> None:
    _judge(ansur_women()[part * 4 :: 8], RuleSet.SURVEY)


def test_bdims_with_sleeves() -> None:
    _judge(bdims_women()[1::4], RuleSet.HANDBOOK, sleeved_features())


def test_bdims_with_sleeves_on_a_measured_armhole() -> None:
    features = sleeved_features(Block(depth=Depth.MEASURED))
    _judge(bdims_women()[::6], RuleSet.SURVEY, features)


def test_bdims_in_a_straight_skirt() -> None:
    _judge(bdims_women()[2::4], RuleSet.HANDBOOK, straight_skirt())


def test_ansur_in_a_straight_skirt() -> None:
    _judge(ansur_women()[::15], RuleSet.SURVEY, straight_skirt())


@pytest.mark.parametrize(
    "block",
    [StraightSkirt(flare=6.0), CircleSkirt(), GoredSkirt(), GatheredSkirt()],
    ids=lambda f: f.kind,
)
def test_bdims_in_other_skirts(block: Feature) -> None:
    _judge(bdims_women()[::5], RuleSet.HANDBOOK, (block, SkirtZip(), Waistband()))


WRIST = SetInSleeve(reach=Reach.WRIST)
BENT = SetInSleeve(reach=Reach.WRIST, elbow=Elbow.DART)
SLEEVES: dict[str, tuple[Feature, ...]] = {
    "shaped by a dart": (BENT,),
    "eased": (SetInSleeve(reach=Reach.WRIST, elbow=Elbow.EASE),),
    "puffed into a band": (PuffedCap(), GatheredHem(), SleeveBand()),
    "bishop": (WRIST, GatheredHem(), Cuff()),
    "bell": (WRIST, BellSleeve()),
    "leg of mutton": (BENT, LegOfMutton()),
    "two pieces": (WRIST, TwoPieceSleeve()),
    "petals": (PetalSleeve(),),
    "cap": (CapSleeve(),),
    "flutter": (FlutterSleeve(),),
}


@pytest.mark.parametrize("style", SLEEVES)
def test_ansur_with_every_sleeve(style: str) -> None:
    """A part of the survey: every thirty-third woman, each sleeve."""
    _judge(ansur_women()[::33], RuleSet.SURVEY, sleeved_features(*SLEEVES[style]))


@pytest.mark.parametrize("part", range(4))
def test_cut_lines(part: int) -> None:
    """The cut line never crosses itself and holds the net outline."""
    features = main_features() if part % 2 else sleeved_features()
    for body in bdims_women()[part // 2 * 5 :: 40]:
        d = draft(order(body, features))
        for drawn in pattern(d, words=False).drawn.pieces:
            cut = Polygon(drawn.cut_line.flatten(0.002))
            net = Polygon(d.sheet.piece(drawn.code).outline.flatten(0.002))
            assert cut.is_valid, drawn.code
            assert cut.buffer(0.1 * MM).contains(net), drawn.code

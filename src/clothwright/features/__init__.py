"""Style features. One file each; this list is where a feature is registered."""

from collections.abc import Mapping
from typing import Any

from clothwright.features.armhole import SleevelessArmhole
from clothwright.features.back_princess import BackArmholePrincess
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.bell_sleeve import BellSleeve
from clothwright.features.block import Block
from clothwright.features.bust_dart import BustDart
from clothwright.features.by_hand import ByHand
from clothwright.features.cap_sleeve import CapSleeve
from clothwright.features.circle_skirt import CircleSkirt
from clothwright.features.concealed_zip import ConcealedZip
from clothwright.features.contour_band import ContourBand
from clothwright.features.cuff import Cuff
from clothwright.features.dress_skirt import DressSkirt
from clothwright.features.empire import EmpireSeam
from clothwright.features.facing import Facing
from clothwright.features.fitting import Fitting
from clothwright.features.flounce import Flounce
from clothwright.features.flutter_sleeve import FlutterSleeve
from clothwright.features.fly import Fly
from clothwright.features.front_princess import FrontArmholePrincess
from clothwright.features.gathered_hem import GatheredHem
from clothwright.features.gathered_skirt import GatheredSkirt
from clothwright.features.godets import Godets
from clothwright.features.gored_skirt import GoredSkirt
from clothwright.features.leg_of_mutton import LegOfMutton
from clothwright.features.lining import Lining
from clothwright.features.loops import Loops
from clothwright.features.neck_facing import NeckFacing
from clothwright.features.necklines import BackNeckline, Neckline
from clothwright.features.open_back import LowOpenBack
from clothwright.features.peplum import Peplum
from clothwright.features.petal_sleeve import PetalSleeve
from clothwright.features.pleats import Pleats
from clothwright.features.puffed_cap import PuffedCap
from clothwright.features.set_in_sleeve import SetInSleeve
from clothwright.features.shoulder import Tightening
from clothwright.features.shoulder_princess import ShoulderPrincess
from clothwright.features.side_dart import BackWaistDart, SideDart
from clothwright.features.skirt_lining import SkirtLining
from clothwright.features.skirt_zip import SkirtZip
from clothwright.features.sleeve_band import SleeveBand
from clothwright.features.sleeved_armhole import SleevedArmhole
from clothwright.features.straight_skirt import StraightSkirt
from clothwright.features.trouser_pockets import Pockets
from clothwright.features.trouser_zip import SideZip
from clothwright.features.trousers import Trousers
from clothwright.features.turn_ups import TurnUps
from clothwright.features.two_piece_sleeve import TwoPieceSleeve
from clothwright.features.under_panel import UnderPanel
from clothwright.features.vent import Vent
from clothwright.features.waist import WaistSeam
from clothwright.features.waist_facing import WaistFacing
from clothwright.features.waistband import Waistband
from clothwright.features.yokes import BackYoke, FrontYoke

FEATURES: tuple[type[Feature], ...] = (
    Block,
    Fitting,
    SleevelessArmhole,
    SleevedArmhole,
    Neckline,
    BackNeckline,
    Tightening,
    FrontArmholePrincess,
    BackArmholePrincess,
    ShoulderPrincess,
    SideDart,
    BustDart,
    BackWaistDart,
    FrontYoke,
    BackYoke,
    EmpireSeam,
    LowOpenBack,
    Loops,
    UnderPanel,
    ConcealedZip,
    SetInSleeve,
    CapSleeve,
    FlutterSleeve,
    PuffedCap,
    LegOfMutton,
    BellSleeve,
    PetalSleeve,
    TwoPieceSleeve,
    GatheredHem,
    SleeveBand,
    Cuff,
    WaistSeam,
    Peplum,
    DressSkirt,
    Facing,
    NeckFacing,
    Lining,
    StraightSkirt,
    CircleSkirt,
    GoredSkirt,
    GatheredSkirt,
    Vent,
    SkirtZip,
    Trousers,
    Pleats,
    Fly,
    SideZip,
    Pockets,
    TurnUps,
    Waistband,
    ContourBand,
    WaistFacing,
    SkirtLining,
    Godets,
    Flounce,
    ByHand,
)
"""Every feature that an order may name, in the order in which they are told."""

KINDS: dict[str, type[Feature]] = {f.model_fields["kind"].default: f for f in FEATURES}
"""The same by the word that an order names."""

FORMER: dict[str, str] = {"short sleeve": "set-in sleeve"}
"""Former names of features, which older orders still use."""


def by_its_name(row: Mapping[str, Any]) -> dict[str, Any]:
    """What an order says of a feature, under the name that the feature has now."""
    kind = row.get("kind")
    now = FORMER.get(kind, kind) if isinstance(kind, str) else kind
    return {**row, "kind": now} if "kind" in row else dict(row)


__all__ = ["FEATURES", "KINDS", "by_its_name", "Feature", "Number", "Rank", "Stage"]

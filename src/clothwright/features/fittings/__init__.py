"""Alterations after a fitting. One file per idea; this list is where each is
registered."""

from typing import Annotated, get_args

from pydantic import Field

from clothwright.features.fittings.back import BroadBack, NarrowBack, RoundBack
from clothwright.features.fittings.base import Alteration
from clothwright.features.fittings.bust import FullBust, SmallBust
from clothwright.features.fittings.bust_point import LowerBustPoint, RaiseBustPoint
from clothwright.features.fittings.front_armhole import (
    CloseFrontArmhole,
    ScoopFrontArmhole,
)
from clothwright.features.fittings.front_neck import CloseFrontNeck
from clothwright.features.fittings.shoulders import (
    ForwardShoulders,
    SlopingShoulders,
    SquareShoulders,
)
from clothwright.features.fittings.skirt_balance import AnyBalance
from clothwright.features.fittings.skirt_hips import AnyHips
from clothwright.features.fittings.sleeve_arm import AnyArm
from clothwright.features.fittings.sleeve_cap import AnyCap
from clothwright.features.fittings.sway_back import SwayBack
from clothwright.features.fittings.trouser_legs import AnyLeg
from clothwright.features.fittings.trouser_rise import AnyRise
from clothwright.features.fittings.waist_length import LongWaist, ShortWaist

ALTERATIONS: tuple[type[Alteration], ...] = (
    CloseFrontNeck,
    CloseFrontArmhole,
    ScoopFrontArmhole,
    FullBust,
    SmallBust,
    LowerBustPoint,
    RaiseBustPoint,
    SlopingShoulders,
    SquareShoulders,
    ForwardShoulders,
    RoundBack,
    NarrowBack,
    BroadBack,
    SwayBack,
    LongWaist,
    ShortWaist,
    *get_args(AnyCap),
    *get_args(AnyArm),
    *get_args(AnyHips),
    *get_args(AnyBalance),
    *get_args(AnyRise),
    *get_args(AnyLeg),
)
"""Every alteration that an order may name, in the order in which they are told."""

BY_WORD: dict[str, type[Alteration]] = {
    a.model_fields["do"].default: a for a in ALTERATIONS
}

AnyAlteration = Annotated[
    CloseFrontNeck
    | CloseFrontArmhole
    | ScoopFrontArmhole
    | FullBust
    | SmallBust
    | LowerBustPoint
    | RaiseBustPoint
    | SlopingShoulders
    | SquareShoulders
    | ForwardShoulders
    | RoundBack
    | NarrowBack
    | BroadBack
    | SwayBack
    | LongWaist
    | ShortWaist
    | AnyCap
    | AnyArm
    | AnyHips
    | AnyBalance
    | AnyRise
    | AnyLeg,
    Field(discriminator="do"),
]

__all__ = ["ALTERATIONS", "BY_WORD", "Alteration", "AnyAlteration"]

"""Estimates of measures that were not taken, in two rule sets.

*handbook*: common practice, and fits on the 260 women of the public bdims data (our
notes on measures, §7, with their corrections C5, C6 and C23). *survey*: fitted on one
half of the public 2012 survey of 1,986 women, σ measured on the other (corrections
§4); where the survey has none, the handbook's stands. σ is one standard deviation
about the estimate for one woman, cm. Bust, waist and hip are never estimated.
"""

import math
from enum import Enum
from functools import cache

from clothwright.rules import Kind, RuleTable

AS_BODY_TO_BLOCK = 2.6
"""The survey's armscye depth is taken at the body's armpit, about this much above the
depth that the block drafts from (corrections §4); added so that AS has one use."""


class RuleSet(Enum):
    """Where estimates come from."""

    HANDBOOK = "handbook"
    SURVEY = "survey"


HANDBOOK = RuleTable("estimates, handbook")
SURVEY = RuleTable("estimates, survey")
_SURVEY = "corrections §4 (2012 survey)"


@HANDBOOK.rule(
    "Bf", "frame bust", kind=Kind.BODY, source="measures §6.1", formula="HB + 5 cm"
)
def Bf(HB: float) -> float:
    return HB + 5


@HANDBOOK.rule("c", "cup", kind=Kind.BODY, source="measures §6.2", formula="B − HB")
def c(B: float, HB: float) -> float:
    return B - HB


@HANDBOOK.rule(
    "HB",
    "high bust",
    key="HB",
    kind=Kind.BODY,
    sigma=2.5,
    source="measures §7",
    formula="B − (4 + 0.05·(B − 80))",
)
def _hb(B: float) -> float:
    return B - (4 + 0.05 * (B - 80))


@HANDBOOK.rule(
    "HH",
    "high hip",
    key="HH",
    kind=Kind.BODY,
    sigma=2.5,
    source="measures §7",
    formula="W + 0.68·(H − W)",
)
def _hh(W: float, H: float) -> float:
    return W + 0.68 * (H - W)


@HANDBOOK.rule(
    "UB",
    "underbust",
    key="UB",
    kind=Kind.BODY,
    sigma=2.5,
    source="measures §7",
    formula="0.84·HB + 4.5",
)
def _ub(HB: float) -> float:
    return 0.84 * HB + 4.5


@HANDBOOK.rule(
    "N",
    "neck base",
    key="N",
    kind=Kind.BODY,
    sigma=1.5,
    source="measures §7",
    formula="0.20·Bf + 19",
)
def _n(Bf: float) -> float:
    return 0.20 * Bf + 19


@HANDBOOK.rule(
    "NK",
    "collar neck",
    key="NK",
    kind=Kind.BODY,
    sigma=1.5,
    source="corrections C23",
    formula="N − 3.5",
)
def _nk(N: float) -> float:
    return N - 3.5


@HANDBOOK.rule(
    "HEAD",
    "head",
    key="HEAD",
    kind=Kind.BODY,
    sigma=1.5,
    source="corrections C23",
    formula="56",
)
def _head() -> float:
    return 56.0


@HANDBOOK.rule(
    "NWB",
    "nape to waist",
    key="NWB",
    kind=Kind.BODY,
    sigma=2.0,
    source="measures §7",
    formula="0.235·HT + 0.025·Bf",
)
def _nwb(HT: float, Bf: float) -> float:
    return 0.235 * HT + 0.025 * Bf


@HANDBOOK.rule(
    "SBW",
    "back length from neck shoulder",
    key="SBW",
    kind=Kind.BODY,
    sigma=0.6,
    source="measures §7",
    formula="NWB + 0.28·(N/5 − 0.3), rise 1.7 to 2.5",
)
def _sbw(NWB: float, N: float) -> float:
    return NWB + max(1.7, min(2.5, 0.28 * (N / 5 - 0.3)))


@HANDBOOK.rule(
    "AS",
    "armscye depth",
    key="AS",
    kind=Kind.BODY,
    sigma=1.3,
    source="measures §7",
    formula="0.10·Bf + 12.2 + 0.03·(HT − 165)",
)
def _as(Bf: float, HT: float) -> float:
    return 0.10 * Bf + 12.2 + 0.03 * (HT - 165)


@HANDBOOK.rule(
    "NFW",
    "front waist length",
    key="NFW",
    kind=Kind.BODY,
    sigma=1.5,
    source="measures §7",
    formula="NWB + 2.8 + 0.4·(c − 5)",
)
def _nfw(NWB: float, c: float) -> float:
    return NWB + 2.8 + 0.4 * (c - 5)


@HANDBOOK.rule(
    "NBP",
    "bust depth",
    key="NBP",
    kind=Kind.BODY,
    sigma=1.6,
    source="corrections C5",
    formula="0.20·Bf + 0.05·HT + 0.4·(c − 5)",
)
def _nbp(Bf: float, HT: float, c: float) -> float:
    return 0.20 * Bf + 0.05 * HT + 0.4 * (c - 5)


@HANDBOOK.rule(
    "BPS",
    "bust span",
    key="BPS",
    kind=Kind.BODY,
    sigma=1.5,
    source="measures §7",
    formula="0.20·B + 1",
)
def _bps(B: float) -> float:
    return 0.20 * B + 1


@HANDBOOK.rule(
    "BUB",
    "bust radius",
    key="BUB",
    kind=Kind.BODY,
    sigma=1.2,
    source="corrections C23",
    formula="7.5 + 0.2·(c − 5)",
)
def _bub(c: float) -> float:
    return 7.5 + 0.2 * (c - 5)


@HANDBOOK.rule(
    "CFL",
    "centre front length",
    key="CFL",
    kind=Kind.BODY,
    sigma=1.2,
    source="measures §7",
    formula="NFW − (0.2·N + 0.6)",
)
def _cfl(NFW: float, N: float) -> float:
    return NFW - (0.2 * N + 0.6)


@HANDBOOK.rule(
    "SH",
    "shoulder",
    key="SH",
    kind=Kind.BODY,
    sigma=1.0,
    source="measures §7",
    formula="0.04·Bf + 8.7",
)
def _sh(Bf: float) -> float:
    return 0.04 * Bf + 8.7


@HANDBOOK.rule(
    "SS",
    "shoulder slope",
    key="SS",
    kind=Kind.ANGLE,
    sigma=3.0,
    source="measures §7",
    formula="21.5°",
)
def _ss() -> float:
    return 21.5


@HANDBOOK.rule(
    "XB",
    "across back",
    key="XB",
    kind=Kind.BODY,
    sigma=2.1,
    source="measures §7",
    formula="0.25·Bf + 12.4",
)
def _xb(Bf: float) -> float:
    return 0.25 * Bf + 12.4


@HANDBOOK.rule(
    "XC",
    "across chest",
    key="XC",
    kind=Kind.BODY,
    sigma=2.1,
    source="measures §7",
    formula="0.26·Bf + 9.4",
)
def _xc(Bf: float) -> float:
    return 0.26 * Bf + 9.4


@HANDBOOK.rule(
    "SW",
    "shoulder to shoulder",
    key="SW",
    kind=Kind.BODY,
    sigma=1.5,
    source="measures §7",
    formula="2·SH·cos SS + 2·(N/5 − 0.3) + 1.5",
)
def _sw(SH: float, SS: float, N: float) -> float:
    return 2 * SH * math.cos(math.radians(SS)) + 2 * (N / 5 - 0.3) + 1.5


@HANDBOOK.rule(
    "AG",
    "armhole",
    key="AG",
    kind=Kind.BODY,
    sigma=2.0,
    source="corrections C6",
    formula="0.42·Bf + 1.5",
)
def _ag(Bf: float) -> float:
    return 0.42 * Bf + 1.5


@HANDBOOK.rule(
    "UA",
    "upper arm",
    key="UA",
    kind=Kind.BODY,
    sigma=1.8,
    source="measures §7, corrections C12",
    formula="0.32·Bf + 0.2",
)
def _ua(Bf: float) -> float:
    return 0.32 * Bf + 0.2


@HANDBOOK.rule(
    "EL",
    "elbow",
    key="EL",
    kind=Kind.BODY,
    sigma=1.2,
    source="measures §7",
    formula="0.92·UA − 0.5",
)
def _el(UA: float) -> float:
    return 0.92 * UA - 0.5


@HANDBOOK.rule(
    "FA",
    "forearm",
    key="FA",
    kind=Kind.BODY,
    sigma=0.8,
    source="measures §7, corrections C12",
    formula="0.54·(UA − 1.2) + 8.6",
)
def _fa(UA: float) -> float:
    return 0.54 * (UA - 1.2) + 8.6


@HANDBOOK.rule(
    "WR",
    "wrist",
    key="WR",
    kind=Kind.BODY,
    sigma=0.65,
    source="measures §7",
    formula="0.088·HB + 7.5",
)
def _wr(HB: float) -> float:
    return 0.088 * HB + 7.5


@HANDBOOK.rule(
    "HD",
    "hand",
    key="HD",
    kind=Kind.BODY,
    sigma=1.0,
    source="measures §7",
    formula="WR + 5.5",
)
def _hd(WR: float) -> float:
    return WR + 5.5


@HANDBOOK.rule(
    "AL",
    "sleeve length",
    key="AL",
    kind=Kind.BODY,
    sigma=1.8,
    source="measures §7",
    formula="0.355·HT",
)
def _al(HT: float) -> float:
    return 0.355 * HT


@HANDBOOK.rule(
    "SE",
    "shoulder to elbow",
    key="SE",
    kind=Kind.BODY,
    sigma=0.8,
    source="measures §7",
    formula="0.58·AL",
)
def _se(AL: float) -> float:
    return 0.58 * AL


@HANDBOOK.rule(
    "UL",
    "underarm to wrist",
    key="UL",
    kind=Kind.BODY,
    sigma=1.5,
    source="corrections C23",
    formula="AL − 15.5",
)
def _ul(AL: float) -> float:
    return AL - 15.5


@HANDBOOK.rule(
    "WH",
    "hip depth",
    key="WH",
    kind=Kind.BODY,
    sigma=1.2,
    source="measures §7",
    formula="0.125·HT",
)
def _wh(HT: float) -> float:
    return 0.125 * HT


@HANDBOOK.rule(
    "WHH",
    "high hip depth",
    key="WHH",
    kind=Kind.BODY,
    sigma=1.0,
    source="measures §7 (HH)",
    formula="WH/2: the level at which the high hip is estimated",
)
def _whh(WH: float) -> float:
    return WH / 2


@HANDBOOK.rule(
    "WK",
    "waist to knee",
    key="WK",
    kind=Kind.BODY,
    sigma=1.8,
    source="measures §7",
    formula="0.35·HT",
)
def _wk(HT: float) -> float:
    return 0.35 * HT


@HANDBOOK.rule(
    "WF",
    "waist to floor",
    key="WF",
    kind=Kind.BODY,
    sigma=2.0,
    source="measures §7",
    formula="0.63·HT",
)
def _wf(HT: float) -> float:
    return 0.63 * HT


@HANDBOOK.rule(
    "BR",
    "crotch depth",
    key="BR",
    kind=Kind.BODY,
    sigma=1.3,
    source="measures §7",
    formula="0.113·HT + 0.10·H",
)
def _br(HT: float, H: float) -> float:
    return 0.113 * HT + 0.10 * H


@HANDBOOK.rule(
    "IL",
    "inseam",
    key="IL",
    kind=Kind.BODY,
    sigma=2.5,
    source="measures §7",
    formula="0.465·HT",
)
def _il(HT: float) -> float:
    return 0.465 * HT


@HANDBOOK.rule(
    "CRL",
    "crotch length",
    key="CRL",
    kind=Kind.BODY,
    sigma=2.5,
    source="measures §7",
    formula="2·BR + 0.12·H",
)
def _crl(BR: float, H: float) -> float:
    return 2 * BR + 0.12 * H


@HANDBOOK.rule(
    "TH",
    "thigh",
    key="TH",
    kind=Kind.BODY,
    sigma=2.0,
    source="measures §7",
    formula="0.60·H",
)
def _th(H: float) -> float:
    return 0.60 * H


@HANDBOOK.rule(
    "MT",
    "mid thigh",
    key="MT",
    kind=Kind.BODY,
    sigma=1.5,
    source="measures §7",
    formula="0.88·TH",
)
def _mt(TH: float) -> float:
    return 0.88 * TH


@HANDBOOK.rule(
    "KN",
    "knee",
    key="KN",
    kind=Kind.BODY,
    sigma=1.8,
    source="measures §7",
    formula="0.28·H + 8.2",
)
def _kn(H: float) -> float:
    return 0.28 * H + 8.2


@HANDBOOK.rule(
    "CA",
    "calf",
    key="CA",
    kind=Kind.BODY,
    sigma=1.95,
    source="measures §7",
    formula="0.26·H + 10",
)
def _ca(H: float) -> float:
    return 0.26 * H + 10


@HANDBOOK.rule(
    "AN",
    "ankle",
    key="AN",
    kind=Kind.BODY,
    sigma=1.15,
    source="measures §7",
    formula="0.125·H + 9.3",
)
def _an(H: float) -> float:
    return 0.125 * H + 9.3


@HANDBOOK.rule(
    "SD",
    "underarm to waist",
    key="SD",
    kind=Kind.BODY,
    sigma=1.0,
    source="measures §7",
    formula="NWB − AS − 0.5",
)
def _sd(NWB: float, AS: float) -> float:
    return NWB - AS - 0.5


@SURVEY.rule(
    "Bf survey",
    "frame bust of the survey",
    key="Bf_survey",
    kind=Kind.BODY,
    source=_SURVEY,
    formula="HB + 2.5 cm: the survey took the high bust nearer to the bust",
)
def _frame(HB: float) -> float:
    return HB + 2.5


@SURVEY.rule(
    "HB",
    "high bust",
    key="HB",
    kind=Kind.BODY,
    sigma=2.5,
    source=_SURVEY,
    formula="B − (2 + 0.17·(B − 92))",
)
def _hb_survey(B: float) -> float:
    return B - (2 + 0.17 * (B - 92))


@SURVEY.rule(
    "UB",
    "underbust",
    key="UB",
    kind=Kind.BODY,
    sigma=2.4,
    source=_SURVEY,
    formula="0.80·B + 4",
)
def _ub_survey(B: float) -> float:
    return 0.80 * B + 4


@SURVEY.rule(
    "N",
    "neck base",
    key="N",
    kind=Kind.BODY,
    sigma=1.5,
    source=_SURVEY,
    formula="0.15·Bf + 0.085·HT + 9.1",
)
def _n_survey(Bf_survey: float, HT: float) -> float:
    return 0.15 * Bf_survey + 0.085 * HT + 9.1


@SURVEY.rule(
    "AS",
    "armscye depth",
    key="AS",
    kind=Kind.BODY,
    sigma=1.3,
    source=_SURVEY,
    formula="0.045·Bf + 0.046·HT + 7.1, and 2.6 from armpit to block depth",
)
def _as_survey(Bf_survey: float, HT: float) -> float:
    return 0.045 * Bf_survey + 0.046 * HT + 7.1 + AS_BODY_TO_BLOCK


@SURVEY.rule(
    "NBP",
    "bust depth",
    key="NBP",
    kind=Kind.BODY,
    sigma=1.6,
    source=_SURVEY,
    formula="0.24·B + 0.05·HT − 3.1, 0.4 for each cm of cup",
)
def _nbp_survey(B: float, HT: float, c: float) -> float:
    return 0.24 * B + 0.05 * HT - 3.1 + (0.4 - 0.24) * (c - 5)


@SURVEY.rule(
    "BPS",
    "bust span",
    key="BPS",
    kind=Kind.BODY,
    sigma=1.5,
    source=_SURVEY,
    formula="0.20·B + 0.2",
)
def _bps_survey(B: float) -> float:
    return 0.20 * B + 0.2


@SURVEY.rule(
    "SH",
    "shoulder",
    key="SH",
    kind=Kind.BODY,
    sigma=1.0,
    source=_SURVEY,
    formula="0.055·HT + 3.4",
)
def _sh_survey(HT: float) -> float:
    return 0.055 * HT + 3.4


@SURVEY.rule(
    "XB",
    "across back",
    key="XB",
    kind=Kind.BODY,
    sigma=2.1,
    source=_SURVEY,
    formula="0.19·Bf + 18.0",
)
def _xb_survey(Bf_survey: float) -> float:
    return 0.19 * Bf_survey + 18.0


@SURVEY.rule(
    "NWB",
    "nape to waist",
    key="NWB",
    kind=Kind.BODY,
    sigma=2.0,
    source=_SURVEY,
    formula="0.20·HT + 0.04·Bf + 4.4",
)
def _nwb_survey(HT: float, Bf_survey: float) -> float:
    return 0.20 * HT + 0.04 * Bf_survey + 4.4


@SURVEY.rule(
    "WR",
    "wrist",
    key="WR",
    kind=Kind.BODY,
    sigma=0.6,
    source=_SURVEY,
    formula="0.05·HT + 0.043·HB + 3.4",
)
def _wr_survey(HT: float, HB: float) -> float:
    return 0.05 * HT + 0.043 * HB + 3.4


@SURVEY.rule(
    "IL",
    "inseam",
    key="IL",
    kind=Kind.BODY,
    sigma=2.5,
    source=_SURVEY,
    formula="0.475·HT",
)
def _il_survey(HT: float) -> float:
    return 0.475 * HT


@SURVEY.rule(
    "CA",
    "calf",
    key="CA",
    kind=Kind.BODY,
    sigma=1.95,
    source=_SURVEY,
    formula="0.28·H + 8.4",
)
def _ca_survey(H: float) -> float:
    return 0.28 * H + 8.4


@SURVEY.rule(
    "KN",
    "knee",
    key="KN",
    kind=Kind.BODY,
    sigma=1.8,
    source=_SURVEY,
    formula="0.28·H + 8.8",
)
def _kn_survey(H: float) -> float:
    return 0.28 * H + 8.8


@SURVEY.rule(
    "TH",
    "thigh",
    key="TH",
    kind=Kind.BODY,
    sigma=1.9,
    source=_SURVEY,
    formula="0.70·H − 9.8",
)
def _th_survey(H: float) -> float:
    return 0.70 * H - 9.8


@SURVEY.rule(
    "UA",
    "upper arm",
    key="UA",
    kind=Kind.BODY,
    sigma=1.8,
    source=_SURVEY,
    formula="0.14·Bf + 0.215·H − 4.6",
)
def _ua_survey(Bf_survey: float, H: float) -> float:
    return 0.14 * Bf_survey + 0.215 * H - 4.6


@SURVEY.rule(
    "AG",
    "armhole",
    key="AG",
    kind=Kind.BODY,
    sigma=2.0,
    source=_SURVEY,
    formula="0.42·B − 0.5",
)
def _ag_survey(B: float) -> float:
    return 0.42 * B - 0.5


@SURVEY.rule(
    "KF",
    "knee to floor",
    key="KF",
    kind=Kind.BODY,
    sigma=1.5,
    source=_SURVEY,
    formula="0.276·HT",
)
def _kf_survey(HT: float) -> float:
    return 0.276 * HT


@SURVEY.rule(
    "FT",
    "heel and instep",
    key="FT",
    kind=Kind.BODY,
    sigma=1.2,
    source=_SURVEY,
    formula="0.158·HT + 5.3",
)
def _ft_survey(HT: float) -> float:
    return 0.158 * HT + 5.3


@SURVEY.rule(
    "WK",
    "waist to knee",
    key="WK",
    kind=Kind.BODY,
    sigma=1.8,
    source=_SURVEY,
    formula="0.354·HT",
)
def _wk_survey(HT: float) -> float:
    return 0.354 * HT


@cache
def estimates(ruleset: RuleSet) -> RuleTable:
    """The page of estimates: the survey's where it has one, else the handbook's."""
    if ruleset is RuleSet.HANDBOOK:
        return HANDBOOK
    return RuleTable(SURVEY.title, {**HANDBOOK.rules, **SURVEY.rules})

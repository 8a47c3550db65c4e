"""What measures of one body have to do with each other: rules R2 to R27 of our notes on
measures, §5, as amended. Differences in cm.
One file, for it is one table, a row a rule.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from clothwright.findings import Severity

# R12 ends at 0.72, not 0.70: the corrected slope of NBP in the cup (C5) brings a full
# standard body to 0.7015, and no rule may fire on it.
_E, _W, _N = Severity.REFUSE, Severity.WARN, Severity.NOTE


@dataclass(frozen=True)
class Agreement:
    """What several measures of one body say of each other."""

    code: str
    severity: Severity
    needs: tuple[str, ...]
    right: Callable[..., bool]
    """True when the measures agree."""

    says: str
    to_do: str


_NWB_MEAN = "Find the waist with a tied tape and the nape again, and measure both."

AGREEMENTS: tuple[Agreement, ...] = (
    Agreement(
        "R2",
        _W,
        ("B", "HB"),
        lambda B, HB: HB - 1 <= B,
        "the high bust is larger than the bust",
        "The high bust was perhaps taken over the bust; measure both again.",
    ),
    Agreement(
        "R3",
        _W,
        ("B", "HB"),
        lambda B, HB: B - HB <= 18,
        "bust and high bust are more than 18 cm (7 in) apart",
        "Measure both again.",
    ),
    Agreement(
        "R4",
        _W,
        ("UB", "HB", "B"),
        lambda UB, HB, B: UB <= HB + 3 and UB >= 0.72 * B,
        "the underbust does not fit high bust and bust",
        "Measure it level, directly under the bust.",
    ),
    Agreement(
        "R5",
        _N,
        ("W", "B"),
        lambda W, B: W < B + 10,
        "the waist is much larger than the bust",
        "The waist will be shaped for a full figure.",
    ),
    Agreement(
        "R6",
        _W,
        ("W", "H"),
        lambda W, H: 0.62 <= W / H <= 0.95,
        "waist and hip do not fit each other",
        "Look whether both were taken at the right level.",
    ),
    Agreement(
        "R7",
        _N,
        ("H", "B"),
        lambda H, B: -6 <= H - B <= 25,
        "hip and bust differ unusually",
        "Measure both again if in doubt.",
    ),
    Agreement(
        "R7",
        _W,
        ("H", "W"),
        lambda H, W: 5 <= H - W <= 42,
        "hip and waist differ unusually",
        "Measure both again.",
    ),
    Agreement(
        "R8",
        _W,
        ("W", "HH", "H"),
        lambda W, HH, H: W < HH <= H + 1,
        "the high hip does not lie between waist and hip",
        "Measure it 8 to 11 cm (3 to 4 1/2 in) below the waist.",
    ),
    Agreement(
        "R8",
        _W,
        ("HH", "W", "H"),
        lambda HH, W, H: 0.45 * (H - W) <= HH - W <= 0.95 * (H - W),
        "the high hip does not lie where waist and hip put it",
        "Measure it 8 to 11 cm (3 to 4 1/2 in) below the waist.",
    ),
    Agreement(
        "R9",
        _W,
        ("NWB", "HT"),
        lambda NWB, HT: 0.225 <= NWB / HT <= 0.275,
        "the back length does not fit the height",
        _NWB_MEAN,
    ),
    Agreement(
        "R10",
        _W,
        ("SBW", "NWB"),
        lambda SBW, NWB: 1.0 <= SBW - NWB <= 3.5,
        "the two back lengths do not fit each other",
        "Mark nape and neck-shoulder point and measure both again.",
    ),
    Agreement(
        "R11",
        _W,
        ("NFW", "SBW"),
        lambda NFW, SBW: -2.5 <= NFW - SBW <= 7,
        "front and back length do not fit each other",
        "Measure both from the neck-shoulder point again.",
    ),
    Agreement(
        "R11",
        _W,
        ("NFW", "SBW", "B", "HB"),
        lambda NFW, SBW, B, HB: abs(NFW - SBW - (0.8 + 0.4 * (B - HB - 5))) <= 2.0,
        "front and back length do not fit the cup",
        "Look at the posture, and measure both from the neck-shoulder point again.",
    ),
    Agreement(
        "R12",
        _W,
        ("NBP", "NFW"),
        lambda NBP, NFW: NBP < NFW - 10 and 0.52 <= NBP / NFW <= 0.72,
        "the bust depth does not fit the front length",
        "Measure both again.",
    ),
    Agreement(
        "R13",
        _W,
        ("BPS", "B"),
        lambda BPS, B: 0.17 * B <= BPS <= 0.25 * B,
        "the bust span does not fit the bust",
        "Measure straight from point to point, not over the curve.",
    ),
    Agreement(
        "R14",
        _W,
        ("XB", "B"),
        lambda XB, B: 0.33 * B <= XB <= 0.46 * B,
        "the back width does not fit the bust",
        "Measure it again.",
    ),
    Agreement(
        "R14",
        _W,
        ("XB", "XC"),
        lambda XB, XC: -1.5 <= XB - XC <= 6,
        "back and front width do not fit each other",
        "Measure both at the same height.",
    ),
    Agreement(
        "R15",
        _W,
        ("XB", "SW"),
        lambda XB, SW: XB <= SW + 1.0,
        "the back width is larger than the shoulder width",
        "Measure both again.",
    ),
    Agreement(
        "R16",
        _W,
        ("SH", "SS", "N", "SW"),
        lambda SH, SS, N, SW: (
            abs(2 * SH * math.cos(math.radians(SS)) + 2 * (N / 5 - 0.3) - SW) <= 3.5
        ),
        "shoulder, neck and shoulder width do not fit together",
        "Measure the three again.",
    ),
    Agreement(
        "R17",
        _W,
        ("AS", "NWB"),
        lambda AS, NWB: 0.44 * NWB <= AS <= 0.60 * NWB,
        "the armscye depth does not fit the back length",
        "Measure it down to a card held under both arms.",
    ),
    Agreement(
        "R17",
        _W,
        ("AS", "NWB", "SD"),
        lambda AS, NWB, SD: abs(NWB - AS - SD) <= 2.5,
        "armscye depth, back length and side do not fit together",
        "Measure the three again.",
    ),
    Agreement(
        "R18",
        _W,
        ("CFL", "NFW"),
        lambda CFL, NFW: NFW - 11 <= CFL <= NFW - 5.5,
        "the centre front does not fit the front length",
        "Measure both again.",
    ),
    Agreement(
        "R19",
        _W,
        ("UA", "B"),
        lambda UA, B: 0.24 * B <= UA <= 0.38 * B,
        "the upper arm does not fit the bust",
        "Measure it again.",
    ),
    Agreement(
        "R19",
        _E,
        ("UA", "FA"),
        lambda UA, FA: UA > FA,
        "the forearm is larger than the upper arm",
        "Measure both again.",
    ),
    Agreement(
        "R19",
        _E,
        ("FA", "WR"),
        lambda FA, WR: FA > WR,
        "the wrist is larger than the forearm",
        "Measure both again.",
    ),
    Agreement(
        "R19",
        _E,
        ("UA", "WR"),
        lambda UA, WR: UA > WR,
        "the wrist is larger than the upper arm",
        "Measure both again.",
    ),
    Agreement(
        "R19",
        _W,
        ("EL", "FA"),
        lambda EL, FA: EL >= FA - 1,
        "the elbow is smaller than the forearm",
        "Measure both again.",
    ),
    Agreement(
        "R20",
        _W,
        ("AG", "HB"),
        lambda AG, HB: 0.38 * (HB + 5) <= AG <= 0.50 * (HB + 5),
        "the armhole does not fit the frame",
        "Measure it with the arm down and the tape easy.",
    ),
    Agreement(
        "R20",
        _W,
        ("AG", "UA"),
        lambda AG, UA: 1.25 * UA <= AG <= 1.7 * UA,
        "armhole and upper arm do not fit each other",
        "Measure both again.",
    ),
    Agreement(
        "R21",
        _W,
        ("SE", "AL"),
        lambda SE, AL: 0.53 * AL <= SE <= 0.62 * AL,
        "the elbow does not lie where the arm length puts it",
        "Measure both again.",
    ),
    Agreement(
        "R21",
        _W,
        ("UL", "AL"),
        lambda UL, AL: 0.68 * AL <= UL <= 0.80 * AL,
        "inner and outer arm length do not fit",
        "Measure both again.",
    ),
    Agreement(
        "R22",
        _W,
        ("AL", "HT"),
        lambda AL, HT: 0.32 * HT <= AL <= 0.39 * HT,
        "the arm length does not fit the height",
        "Measure it again.",
    ),
    Agreement(
        "R23",
        _W,
        ("WH", "HT"),
        lambda WH, HT: 0.095 * HT <= WH <= 0.15 * HT,
        "the hip depth does not fit the height",
        "Measure it again.",
    ),
    Agreement(
        "R23",
        _W,
        ("WHH", "WH"),
        lambda WHH, WH: 0.35 <= WHH / WH <= 0.62,
        "the high hip depth does not fit the hip depth",
        "Measure both again.",
    ),
    Agreement(
        "R24",
        _W,
        ("BR", "IL", "WF"),
        lambda BR, IL, WF: -3.5 <= BR + IL - WF <= 6.0,
        "crotch depth and inseam do not add up to the waist height",
        "Measure the three again.",
    ),
    Agreement(
        "R24",
        _W,
        ("IL", "HT"),
        lambda IL, HT: 0.42 * HT <= IL <= 0.50 * HT,
        "the inseam does not fit the height",
        "Measure it again.",
    ),
    Agreement(
        "R25",
        _W,
        ("CRL", "BR", "H"),
        lambda CRL, BR, H: 2 * BR + 0.06 * H <= CRL <= 2 * BR + 0.22 * H,
        "the crotch length does not fit crotch depth and hip",
        "Measure it again.",
    ),
    Agreement(
        "R26",
        _W,
        ("TH", "H"),
        lambda TH, H: 0.50 * H <= TH <= 0.70 * H,
        "the thigh does not fit the hip",
        "Measure it again.",
    ),
    Agreement(
        "R26",
        _W,
        ("KN", "H"),
        lambda KN, H: 0.30 * H <= KN <= 0.44 * H,
        "the knee does not fit the hip",
        "Measure it again.",
    ),
    Agreement(
        "R26",
        _E,
        ("TH", "MT"),
        lambda TH, MT: TH > MT,
        "the mid thigh is larger than the thigh",
        "Measure both again.",
    ),
    Agreement(
        "R26",
        _E,
        ("MT", "KN"),
        lambda MT, KN: MT > KN,
        "the knee is larger than the mid thigh",
        "Measure both again.",
    ),
    Agreement(
        "R26",
        _E,
        ("TH", "KN"),
        lambda TH, KN: TH > KN,
        "the knee is larger than the thigh",
        "Measure both again.",
    ),
    Agreement(
        "R26",
        _E,
        ("KN", "AN"),
        lambda KN, AN: KN > AN,
        "the ankle is larger than the knee",
        "Measure both again.",
    ),
    Agreement(
        "R27",
        _N,
        ("N", "NK"),
        lambda N, NK: N >= NK - 1,
        "the collar neck is larger than the neck base",
        "Measure both again.",
    ),
    Agreement(
        "R27",
        _N,
        ("N", "B"),
        lambda N, B: 0.33 * B <= N <= 0.47 * B,
        "the neck does not fit the bust",
        "Measure it again.",
    ),
)

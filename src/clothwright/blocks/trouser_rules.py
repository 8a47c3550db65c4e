"""Numbers of the trouser block, half body, cm (blocks E of our notes, with their
corrections C1, C2 and C4).

Each half stands on its own crease line; y runs down from the crotch line. The keys of
what a skirt has too end in _T.
"""

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.trial import by_trial
from clothwright.blocks.trouser_curves import Back, Front
from clothwright.rules import Kind, RuleError, RuleTable

TROUSERS = RuleTable("trouser block")
_rule = TROUSERS.rule
_E = "blocks E"
_C4 = "corrections C4"

CROTCH_ROOM = 0.5, 3.5
"""The crotch seam is so much longer than the body's crotch length, cm (T5)."""

THIGH_ROOM = 4.0
"""Room over the thigh at the crotch line, cm (T6)."""

FRONT_KEYS = (
    *("BRe", "hip_F", "fork_F", "cf_in", "cf_down"),
    *("yk", "KW", "leg", "HW", "pl", "lf_T", "off_F"),
)
"""What `Front` is made of."""

BACK_KEYS = (*FRONT_KEYS, "hip_B", "fork_B", "tl", "rq", "drop")
"""What `Front` and `Back` are made of."""


def front_from(*n: float) -> Front:
    """The front of the numbers under `FRONT_KEYS`, in their order, cm."""
    return Front(*n)


def back_from(*n: float) -> Back:
    """The back of the numbers under `BACK_KEYS`, in their order, cm."""
    hip, fork, tilt, rise, drop = n[len(FRONT_KEYS) :]
    return Back(front_from(*n[: len(FRONT_KEYS)]), hip, fork, tilt, rise, drop)


# -- levels (E1) -----------------------------------------------------------------------
@_rule(
    "BRe",
    "body rise with ease",
    source=f"{_E}1",
    formula="BR + Er",
    low=18.0,
    high=50.0,
)
def BRe(BR: float, Er: float) -> float:
    return BR + Er


@_rule(
    "yh T", "hip above the crotch line", source=f"{_E}1", key="yh_T", formula="BRe/3"
)
def _hip_up(BRe: float) -> float:
    return BRe / 3


@_rule(
    "leg",
    "inside leg of the trousers",
    source=f"{_E}1",
    formula="IL",
    low=30.0,
    high=110.0,
)
def leg(IL: float) -> float:
    return IL


@_rule(
    "yk",
    "knee below the crotch line",
    source=f"{_E}1",
    formula="IL/2 − 4 cm",
    low=15.0,
    high=50.0,
)
def yk(IL: float, leg: float) -> float:
    knee = IL / 2 - 4.0
    if leg < knee + 5.0:
        raise RuleError(
            f"the inside leg of the trousers (leg) is {leg:.1f} cm and would end at "
            f"the knee, {knee:.1f} cm down, or above it: make leg longer"
        )
    return knee


# -- widths (E2, E5, E7) ---------------------------------------------------------------
@_rule(
    "KW",
    "width of the knee, all round",
    source=_E,
    formula="KN + 8 cm, at least 44 cm",
    low=34.0,
    high=90.0,
)
def KW(KN: float) -> float:
    return max(44.0, KN + 8.0)


@_rule(
    "HW",
    "width of the hem, all round",
    source=_E,
    formula="AN + 18 cm, at least 38 cm",
    low=26.0,
    high=120.0,
)
def HW(AN: float) -> float:
    return max(38.0, AN + 18.0)


def _to_each_side(symbol: str, half: str, level: str, girth: str, more: float) -> None:
    sign = "+" if more > 0 else "−"

    @_rule(
        symbol,
        f"{half} at the {level}, to each side of the crease",
        source=f"{_E}5",
        key=f"{symbol}_T",
        formula=f"({girth}/2 {sign} 1 cm)/2",
        needs=(girth,),
    )
    def _half(round_: float) -> float:
        return (round_ / 2 + more) / 2


_to_each_side("kF", "front", "knee", "KW", -1.0)
_to_each_side("mF", "front", "hem", "HW", -1.0)
_to_each_side("kB", "back", "knee", "KW", 1.0)
_to_each_side("mB", "back", "hem", "HW", 1.0)


@_rule(
    "hipF",
    "front half width at the hip",
    source=f"{_E}2",
    key="hip_F",
    formula="(H + Eh)/4 − 0.5 cm",
)
def _hip_front(H: float, Eh: float) -> float:
    return (H + Eh) / 4 - 0.5


@_rule(
    "hipB",
    "back half width at the hip",
    source=f"{_E}7",
    key="hip_B",
    formula="(H + Eh)/4 + 0.5 cm",
)
def _hip_back(H: float, Eh: float) -> float:
    return (H + Eh) / 4 + 0.5


@_rule(
    "tt",
    "wanting at the thigh with the usual forks",
    source=f"{_E}10, T6",
    key="tt",
    formula="TH + 4 cm − width at the crotch line, kept between nought and 2 cm",
    low=0.0,
    high=2.0,
    needs=("TH", "H", "Eh", "BRe", "cf_in", "cf_down", "yk", "KW", "leg", "HW", "tl"),
)
def _thigh(
    TH: float,
    H: float,
    Eh: float,
    rise: float,
    cf_in: float,
    cf_down: float,
    knee: float,
    knee_girth: float,
    hem: float,
    hem_girth: float,
    tl: float,
) -> float:
    hip = (H + Eh) / 4
    front = Front(
        *(rise, hip - 0.5, H / 20 + 0.5, cf_in, cf_down),
        *(knee, knee_girth, hem, hem_girth),
    )
    back = Back(front, hip + 0.5, H / 10 + 1.0, tl, 2.5, 0.0)
    width = front.leg.width_at_crotch() + back.leg.width_at_crotch()
    return clip(TH + THIGH_ROOM - width, 0.0, 2.0)


@_rule(
    "fF",
    "fork of the front",
    source=f"{_E}2, E10",
    key="fork_F",
    formula="H/20 + 0.5 cm, and 0.3 of what the thigh wants",
    low=3.0,
    high=10.0,
)
def _fork_front(H: float, tt: float) -> float:
    return H / 20 + 0.5 + 0.3 * tt


@_rule(
    "fB",
    "fork of the back",
    source=f"{_E}7, E10",
    key="fork_B",
    formula="H/10 + 1 cm, and 0.7 of what the thigh wants",
    low=6.0,
    high=20.0,
)
def _fork_back(H: float, tt: float) -> float:
    return H / 10 + 1.0 + 0.7 * tt


@_rule(
    "off",
    "crease nearer to the side than half way between it and the fork",
    source=f"{_E}2",
    key="off_F",
    formula="none: it lies half way",
)
def _off() -> float:
    return 0.0


@_rule(
    "xcf",
    "centre front upright from the crease",
    source=f"{_E}2",
    key="xcf",
    formula="(hipF − fF)/2 + off",
)
def _xcf(hip_F: float, fork_F: float, off_F: float) -> float:
    return (hip_F - fork_F) / 2 + off_F


@_rule(
    "xF",
    "fork of the front from the crease",
    source=f"{_E}2",
    key="x_F",
    formula="xcf + fF",
)
def _fork_at(xcf: float, fork_F: float) -> float:
    return xcf + fork_F


@_rule(
    "half F",
    "front from the crease to the side",
    source=f"{_E}2",
    key="half_F",
    formula="(hipF + fF)/2 − off",
)
def _half_front(hip_F: float, fork_F: float, off_F: float) -> float:
    return (hip_F + fork_F) / 2 - off_F


@_rule(
    "xK",
    "base of the seat line from the crease of the back",
    source=f"{_E}7",
    key="x_K",
    formula="xcf − 1 cm",
)
def _base(xcf: float) -> float:
    return xcf - 1.0


@_rule(
    "tl",
    "tilt of the seat",
    source=f"{_E}7",
    formula="(H − W)/8, kept between 2 cm and 4.5 cm",
    low=0.5,
    high=6.0,
)
def tl(H: float, W: float) -> float:
    return clip((H - W) / 8, 2.0, 4.5)


@_rule(
    "drop",
    "fork of the back below the crotch line",
    source=f"{_E}8",
    key="drop",
    formula="found so that the back inseam to the knee is shorter than the front's by "
    "what it is stretched",
    needs=(*FRONT_KEYS, "hip_B", "fork_B", "tl", "st"),
)
def _drop(*n: float) -> float:
    *rest, stretched = n
    aim = front_from(*n[: len(FRONT_KEYS)]).leg.inseam().segments[0].length - stretched

    def off(drop: float) -> float:
        return back_from(*rest, 2.5, drop).leg.inseam().segments[0].length - aim

    found = by_trial(off, -4.0, 8.0)
    if found is None:
        raise RuleError(
            "the back inseam cannot be made to fit the front's: the hip (H) and the "
            "inside leg (IL) do not go together; measure both again"
        )
    return found


@_rule(
    "rq",
    "rise of the centre back waist",
    source=f"{_E}7, T5",
    key="rq",
    formula="2.5 cm; more or less, from 2 cm to 3.5 cm, when the crotch seam would "
    "be shorter or longer than CRL asks",
    low=0.0,
    high=5.0,
    needs=(*FRONT_KEYS, "hip_B", "fork_B", "tl", "drop", "CRL"),
)
def _raise(*n: float) -> float:
    *rest, drop, crl = n
    back = back_from(*rest, 2.5, drop)
    room = back.crotch().length + back.front.crotch().length - crl
    low, high = CROTCH_ROOM
    return clip(2.5 + max(0.0, low - room) - max(0.0, room - high), 2.0, 3.5)


@_rule("pl", "fullness that pleats add to the front", source=f"{_E}3", key="pl")
def _no_pleats() -> float:
    return 0.0


@_rule("pleated", "front pleated", source=f"{_E}3", key="pleated", kind=Kind.COUNT)
def _not_pleated() -> float:
    return 0


@_rule(
    "lf T",
    "length of the front dart",
    source=f"{_E}3",
    key="lf_T",
    formula="9.5 cm",
    low=6.0,
    high=14.0,
)
def _front_length() -> float:
    return 9.5


@_rule(
    "apart",
    "crease of the back from that of the front, on the paper",
    source="our own",
    key="apart",
    formula="hipF + hipB + 12 cm",
)
def _apart(hip_F: float, hip_B: float) -> float:
    return hip_F + hip_B + 12.0

"""What is asked of a finished knit bodice (blocks F, N1 to N6; measures 8.1)."""

from collections.abc import Iterable, Iterator

from clothwright.blocks.knit_curves import front_neck, neck_point
from clothwright.blocks.knit_outline_rules import CREW, DEEPEST, HEAD_ROOM
from clothwright.blocks.knit_rules import RECOVERS
from clothwright.body.ease import knit_class
from clothwright.curves import Cubic
from clothwright.findings import Finding, Severity
from clothwright.rules import Hand, Numbers
from clothwright.truing.outline import wrong_way
from clothwright.truing.tolerances import WRONG_WAY

LEAST_STRETCH = 19.0
"""A cloth that stretches less, per cent, wants darts (blocks F)."""

STRIDE = 90.0
"""Least hem of a skirt to the knee, cm (measures 8)."""

_TINY = 1e-6


def findings(n: Numbers) -> Iterator[Finding]:
    """The cloth, its reach over the body, the widths and what covers them."""
    yield from _cloth(n)
    yield from _reach(n)
    if n.S_left < 3.0:
        yield Finding(
            "KN7",
            Severity.REFUSE,
            f"The neck leaves {n.S_left:.1f} cm of the shoulder; 3 cm is the least.",
            "dw",
            "Widen the neck less (dw), or narrow the shoulder less (ti).",
            {"Sr": n.S_left},
        )
    yield from _neck_bends(n)
    if n.A_hole * (1 + n.s_knit / 200) < n.AG:
        yield Finding(
            "KN8",
            Severity.WARN,
            f"The armhole of {n.A_hole:.1f} cm must stretch by more than half of what "
            f"the cloth gives to go round {n.AG:.1f} cm.",
            "AG",
            "Deepen the armhole (d), or measure AG again.",
            {"A": n.A_hole, "AG": n.AG},
        )


def _neck_bends(n: Numbers) -> Iterator[Finding]:
    """A front neck that leaves a steep shoulder square to it and is deep and close
    comes back in a wave (C16)."""
    at = neck_point(n.bw, n.sigma, n.knit_dw)
    curves = front_neck(at, n.sigma, n.knit_fd).segments
    back = max(wrong_way(c) for c in curves if isinstance(c, Cubic))
    if WRONG_WAY.severity(back) is Severity.REFUSE:
        yield Finding(
            "KN18",
            Severity.REFUSE,
            f"A front neck {n.knit_fd:.1f} cm deep turns the wrong way by {back:.0f}° "
            "below the shoulder.",
            "front depth",
            "Make the front depth less, or widen the neck (dw).",
            {"back": back},
        )


def _cloth(n: Numbers) -> Iterator[Finding]:
    """Whether this cloth makes a bodice without darts."""
    yield from _stretches(n, "bust", "bodice block")
    yield from _recovers(n, min(n.p_bust, n.p_waist, n.p_hip))


def _stretches(n: Numbers, place: str, woven: str) -> Iterator[Finding]:
    if n.s_knit < LEAST_STRETCH:
        yield Finding(
            "KN0",
            Severity.REFUSE,
            f"A cloth that stretches {n.s_knit:g} per cent does not go over the {place}"
            f" without darts; {LEAST_STRETCH:g} per cent is the least.",
            "s",
            f'Take a cloth that stretches more (s), or a "{woven}" with its darts.',
            {"s": n.s_knit},
        )


def _recovers(n: Numbers, tight: float) -> Iterator[Finding]:
    """Whether the cloth may be cut `tight` per cent smaller than the body."""
    if n.recovery >= RECOVERS:
        return
    if tight < 0:
        yield Finding(
            "KN9",
            Severity.WARN,
            f"A cloth that comes back by {n.recovery:g} per cent bags where it is cut "
            f"{-tight:g} per cent smaller than the body; {RECOVERS:g} is asked for.",
            "R",
            "Leave the ease to the rule, or take a cloth that comes back better.",
            {"R": n.recovery, "p": tight},
        )
    else:
        yield Finding(
            "KN9",
            Severity.NOTE,
            f"The cloth comes back by {n.recovery:g} per cent only, so nothing is cut "
            "smaller than the body.",
            "R",
            "",
            {"R": n.recovery},
        )


def _reach(n: Numbers) -> Iterator[Finding]:
    """The body is reached at half of the stretch (N6); the side leans no more than it
    hangs well (F1)."""
    places = [("bust", "p", n.p_bust), ("waist", "pw", n.p_waist)]
    if n.knit_below >= 0.5 * n.WH_knit:
        places.append(("hip", "ph", n.p_hip))
    yield from _close(n, places)
    low, high = (100 * v for v in knit_class(n.s_knit / 100).bust)
    if n.hand("p_bust") is Hand.CHOICE and not low - _TINY <= n.p_bust <= high + 4:
        yield Finding(
            "KN10",
            Severity.NOTE,
            f"Ease at the bust is {n.p_bust:g} per cent; for a cloth that stretches "
            f"{n.s_knit:g} per cent {low:g} to {high:g} is usual.",
            "p",
            "",
            {"p": n.p_bust},
        )
    yield from _stride(n, n.knit_below)


def skirt_findings(n: Numbers) -> Iterator[Finding]:
    """What is asked of a knit skirt."""
    yield from _stretches(n, "hip", "straight skirt")
    yield from _recovers(n, n.p_hip)
    yield from _close(n, [("hip", "ph", n.p_hip)])
    yield from _stride(n, n.L)


def _close(n: Numbers, places: Iterable[tuple[str, str, float]]) -> Iterator[Finding]:
    """The body is reached at half of the stretch (N6)."""
    for what, symbol, p in places:
        if p < n.p_least - _TINY:
            yield Finding(
                "KN6",
                Severity.REFUSE,
                f"The {what} is cut {-p:.1f} per cent smaller than the body; a cloth "
                f"that stretches {n.s_knit:g} per cent takes {-n.p_least:.1f} at most.",
                symbol,
                f"Cut it wider ({symbol}), or take a cloth that stretches more (s).",
                {symbol: p, "s": n.s_knit},
            )


def _stride(n: Numbers, below: float) -> Iterator[Finding]:
    """The hem of what reaches to the knee lets her walk; `below` the waist, cm."""
    if below > n.WH_knit + 25.0:
        hem = 4 * (n.q_hip + n.knit_out)
        opened = hem * (1 + n.s_knit / 200)
        if opened < STRIDE:
            yield Finding(
                "KN11",
                Severity.WARN,
                f"The hem of {hem:.1f} cm stretches to {opened:.1f} cm at half of what "
                f"the cloth gives; a stride asks for {STRIDE:g} cm.",
                "flare",
                "Let the sides out at the hem (flare), or end it higher.",
                {"hem": hem},
            )


def neck_findings(n: Numbers) -> Iterable[Finding]:
    """The neckline and its band pass the head (N5, measures 8.1)."""
    asked = n.HEAD + HEAD_ROOM
    edge = n.knit_neck * (1 + n.s_knit / 100)
    band = n.band_neck * (1 + n.s_band / 100)
    least, what = min((edge, "neckline"), (band, "neck band"))
    if least < asked - 0.05:
        yield Finding(
            "KN5",
            Severity.REFUSE,
            f"The {what} stretches to {least:.1f} cm; the head needs {asked:.1f} cm.",
            "HEAD",
            "Widen the neck (dw) or deepen it, cut the band less short (r), or take a "
            "band that stretches more (sn).",
            {"opening": least, "HEAD": n.HEAD},
        )
    elif n.hand("knit_fd") is not Hand.CHOICE and n.knit_fd > CREW + 0.05:
        yield Finding(
            "KN5",
            Severity.NOTE,
            f"The front neck is {n.knit_fd:.1f} cm deep instead of 8 cm, so that the "
            "head passes.",
            "front depth",
            "",
            {"depth": n.knit_fd, "most": DEEPEST},
        )


def sleeve_findings(n: Numbers) -> Iterable[Finding]:
    """Cap and arm (F5, N6)."""
    if n.p_arm < n.p_least - _TINY:
        yield Finding(
            "KN6",
            Severity.REFUSE,
            f"The sleeve is cut {-n.p_arm:.1f} per cent smaller than the arm; a cloth "
            f"that stretches {n.s_knit:g} per cent takes {-n.p_least:.1f} at most.",
            "pa",
            "Cut it wider (pa), or take a cloth that stretches more (s).",
            {"pa": n.p_arm},
        )
    if not 0.20 <= n.h_share <= 0.37:
        high = n.h_share > 0.37
        yield Finding(
            "KN12",
            Severity.WARN,
            f"The cap is {n.h_cap:.1f} cm high, {n.h_share:.2f} of the armhole; 0.25 "
            "to 0.33 is usual.",
            "h",
            "Give the arm more ease (pa), or raise the armhole (d)."
            if high
            else "Deepen the armhole (d), or give the arm less ease (pa).",
            {"h/A": n.h_share},
        )
    if n.under_arm > n.y_E and n.hem_sleeve * (1 + n.s_knit / 100) < n.HD:
        yield Finding(
            "KN13",
            Severity.REFUSE,
            f"The hem of the sleeve stretches to "
            f"{n.hem_sleeve * (1 + n.s_knit / 100):.1f} cm; the hand needs "
            f"{n.HD:.1f} cm.",
            "hem width",
            "Make it wider (hem width).",
            {"hem": n.hem_sleeve, "HD": n.HD},
        )


def armhole_band_findings(n: Numbers) -> Iterable[Finding]:
    """The band passes the arm's girth at half of its stretch."""
    opened = n.band_arm * (1 + n.s_arm / 200)
    if opened < n.AG:
        yield Finding(
            "KN14",
            Severity.WARN,
            f"The armhole band stretches to {opened:.1f} cm at half of what it gives; "
            f"the arm's girth over the shoulder is {n.AG:.1f} cm.",
            "ra",
            "Cut it less short, or deepen the armhole (d).",
            {"band": n.band_arm, "AG": n.AG},
        )


def hem_band_findings(n: Numbers) -> Iterable[Finding]:
    """The hem band goes over the hip at half of its stretch, where it lies there."""
    opened = n.band_hem * (1 + n.s_hem / 200)
    if n.knit_below + n.hem_w >= 0.75 * n.WH_knit and opened < n.H:
        yield Finding(
            "KN15",
            Severity.WARN,
            f"The hem band stretches to {opened:.1f} cm at half of what it gives; the "
            f"hip is {n.H:.1f} cm.",
            "rh",
            "Cut it less short, or end the top higher.",
            {"band": n.band_hem, "H": n.H},
        )


def cuff_findings(n: Numbers) -> Iterable[Finding]:
    """The hand passes the cuff (8.1)."""
    opened = n.band_cuff * (1 + n.s_cuff / 100)
    if n.under_arm > n.y_E and opened < n.HD:
        yield Finding(
            "KN16",
            Severity.REFUSE,
            f"The cuff stretches to {opened:.1f} cm; the hand needs {n.HD:.1f} cm.",
            "rc",
            "Cut it less short, widen the sleeve's end (hem width), or take rib.",
            {"cuff": n.band_cuff, "HD": n.HD},
        )

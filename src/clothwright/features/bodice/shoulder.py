"""Shoulders: finished tips, width of the neck, tightening of a wide neck.

One width serves front and back, measured along the shoulder, and what is left of it
is laid off from the tip (first garment 3.1); tightening turns the shoulder line about
the tip, so that its length stays (3.2). Only marks are made here; lines follow.
"""

import math
from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import outwards_back, outwards_front
from clothwright.curves import wedge_angle
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, RuleError, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

SHOULDER = RuleTable("shoulders")
_rule = SHOULDER.rule
_SRC = "first garment 3"


@_rule("S", "finished shoulder", source=f"{_SRC}.1.1", formula="SH − ti")
def S(SH: float, ti: float) -> float:
    return SH - ti


@_rule("Sb", "finished back shoulder", source=f"{_SRC}.1.1", formula="S + se")
def Sb(S: float, se: float) -> float:
    return S + se


@_rule(
    "Lr", "what the neck leaves of the shoulder", source=f"{_SRC}.1.3", formula="S − dw"
)
def Lr(S: float, dw: float) -> float:
    if S - dw < 2.0:
        raise RuleError(
            f"the neck leaves only {max(0.0, S - dw):.1f} cm of the shoulder; at least "
            "2 cm must stay: make the neck narrower (dw)"
        )
    return S - dw


@_rule(
    "Lrb",
    "what the neck leaves of the back shoulder",
    source=f"{_SRC}.1.3",
    formula="(S + se)·Lr/S",
)
def Lrb(Sb: float, Lr: float, S: float) -> float:
    return Sb * Lr / S


@_rule(
    "se left",
    "shoulder ease that is left",
    source=f"{_SRC}.1.3",
    formula="se·Lr/S",
)
def se_left(Lr: float, Lrb: float) -> float:
    return Lrb - Lr


@_rule(
    "φf",
    "turn of the front shoulder line",
    kind=Kind.ANGLE,
    source=f"{_SRC}.2.2",
    formula="2·asin(nipF/(2·Lr))",
)
def phi_f(nipF: float, Lr: float) -> float:
    return wedge_angle(nipF, Lr)


@_rule(
    "φb",
    "turn of the back shoulder line",
    kind=Kind.ANGLE,
    source=f"{_SRC}.2.2",
    formula="2·asin(nipB/(2·Lrb))",
)
def phi_b(nipB: float, Lrb: float) -> float:
    return wedge_angle(nipB, Lrb)


@_rule(
    "σf′",
    "slope of the tightened front shoulder",
    kind=Kind.ANGLE,
    source=f"{_SRC}.2.4",
    formula="σf − φf",
)
def sigma_f_new(sigma_f: float, phi_f: float) -> float:
    return sigma_f - phi_f


@_rule(
    "σb′",
    "slope of the tightened back shoulder",
    kind=Kind.ANGLE,
    source=f"{_SRC}.2.4",
    formula="σbs − φb",
)
def sigma_b_new(sigma_bs: float, phi_b: float) -> float:
    return sigma_bs - phi_b


NO_TIGHTENING = RuleTable("neck left as it is")
TIGHTENING = RuleTable("tightening")


@NO_TIGHTENING.rule("nipF", "tightening, front", source=f"{_SRC}.2", key="nipF")
def _no_f() -> float:
    return 0.0


@NO_TIGHTENING.rule("nipB", "tightening, back", source=f"{_SRC}.2", key="nipB")
def _no_b() -> float:
    return 0.0


MOST_OF_SHOULDER = 0.26
"""A tightening is at most this share of what is left of the shoulder (3.2.1)."""

NARROWEST = 2.5
"""A neck less wide than this beyond the standard is not tightened, cm (3.2.1)."""

MOST_IN_ALL, MOST_TURN = 2.5, 13.0
"""Tightening that is doubted above this: front and back together, cm; turn of either
shoulder line, degrees (25)."""

_FULL = (
    ("nipF_full", "nipF full", "tightening in front of a half-shoulder neck", 1.3, 0.5),
    ("nipB_full", "nipB full", "tightening behind of a half-shoulder neck", 0.6, 0.25),
)
"""Key, symbol, name, and the workroom's amounts in cm and inches (3.2.1)."""


def _full(nip: float, dw: float, S: float) -> float:
    """The full amount at half the shoulder, less for a narrower neck (3.2.1)."""
    return nip * min(1.0, dw / (S / 2))


@TIGHTENING.rule(
    "nipF",
    "tightening, front",
    key="nipF",
    source=f"{_SRC}.2.1",
    formula="the full amount at half the shoulder, at most 0.26·Lr",
    low=0.0,
    high=3.0,
)
def _nip_f(nipF_full: float, dw: float, S: float, Lr: float) -> float:
    return min(_full(nipF_full, dw, S), MOST_OF_SHOULDER * Lr)


@TIGHTENING.rule(
    "nipB",
    "tightening, back",
    key="nipB",
    source=f"{_SRC}.2.1",
    formula="the full amount at half the shoulder, at most 0.26·Lr",
    low=0.0,
    high=3.0,
)
def _nip_b(nipB_full: float, dw: float, S: float, Lr: float) -> float:
    return min(_full(nipB_full, dw, S), MOST_OF_SHOULDER * Lr)


class Tightening(Feature):
    """Tightening of a wide neck at the shoulder, so that it lies flat."""

    kind: Literal["tightening"] = "tightening"
    title: ClassVar[str] = "Tightening"
    sentence: ClassVar[str] = (
        "The neck is [tightened] at the shoulder, {front} in front and {back} behind."
    )
    shows: ClassVar[Shown] = {
        "nipF": ("FC.shoulder", "F.shoulder"),
        "nipB": ("BC.shoulder", "B.shoulder"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"tightened shoulder"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "the tightening of a neck is drawn on a bodice block; add one"
    }

    front: Annotated[
        Length | None,
        Number(
            "nipF",
            "nipF",
            "tightening, front",
            f"{_SRC}.2.1",
            low=0.0,
            high=3.0,
        ),
    ] = None
    back: Annotated[
        Length | None,
        Number(
            "nipB",
            "nipB",
            "tightening, back",
            f"{_SRC}.2.1",
            low=0.0,
            high=3.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (TIGHTENING,)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        for key, symbol, name, cm, inch in _FULL:
            full = inch * 2.54 if unit is Unit.IN else cm
            kind, hand = Kind.LENGTH, Hand.DEFAULT
            yield Given(key, symbol, name, kind, full, hand, f"{_SRC}.2.1")

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        most = MOST_OF_SHOULDER * n.Lr
        for key, full, angle, side in (
            ("nipF", "nipF_full", "phi_f", "at the front"),
            ("nipB", "nipB_full", "phi_b", "at the back"),
        ):
            by_rule = n.hand(key) is Hand.RULE
            wanted = _full(n[full], n.dw, n.S) if by_rule else n[key]
            if wanted > most + 1e-6:
                yield Finding(
                    "N4",
                    Severity.NOTE if by_rule else Severity.REFUSE,
                    f"A tightening of {wanted:.3g} cm {side} turns the "
                    f"shoulder too far: of the {n.Lr:.1f} cm that the neck leaves of "
                    f"it, at most about a quarter can be taken, {most:.3g} cm.",
                    key,
                    ""
                    if by_rule
                    else f"Make it ({key}) {math.floor(10 * most) / 10:.1f} cm or "
                    "less, or the neck narrower (dw).",
                    {"wanted": wanted, "most": most},
                )
            if n[angle] > MOST_TURN:
                yield Finding(
                    "N8",
                    Severity.WARN,
                    f"The shoulder line {side} is turned by {n[angle]:.1f}°, more than "
                    f"{MOST_TURN:.0f}°.",
                    key,
                    "Look at the armhole on a toile, or tighten less.",
                    {"turn": n[angle]},
                )
        if n.nipF + n.nipB > MOST_IN_ALL:
            yield Finding(
                "N3",
                Severity.WARN,
                "The neck is tightened by more than 2.5 cm in all.",
                "nipF",
                "Tighten less, or take the rest in a dart.",
                {"nipF": n.nipF, "nipB": n.nipB},
            )
        if max(n.nipF, n.nipB) > 0 and n.dw < NARROWEST:
            yield Finding(
                "N5",
                Severity.REFUSE,
                "A neck this narrow cannot be tightened at the shoulder.",
                "nipF",
                "Leave the tightening off, or widen the neck (dw) by 2.5 cm or more.",
                {"dw": n.dw},
            )


def shoulder_marks(d: Drafting) -> None:
    """Finished tips, neck ends, and the neck ends after tightening."""
    n = d.n
    of, ob = outwards_front(n.sigma_f), outwards_back(n.sigma_bs)
    d.part = "front"
    d.along("Tf", "hf", of, "S", "finished shoulder tip, front", "the front shoulder")
    d.along(
        "Nf",
        "Tf",
        of * -1.0,
        "Lr",
        "neck end of the front shoulder",
        "the shoulder, from the tip",
    )
    if n.phi_f:
        d.turned("Nf′", "Nf", "Tf", "phi_f", "neck end after tightening, front")
    else:
        d.also("Nf′", "Nf")
    d.part = "back"
    line = "the back shoulder" + (", its dart closed" if n.theta_s else "")
    d.along("Tb", "hb", ob, "Sb", "finished shoulder tip, back", line)
    d.along(
        "Nb",
        "Tb",
        ob * -1.0,
        "Lrb",
        "neck end of the back shoulder",
        "the shoulder, from the tip",
    )
    if n.phi_b:
        d.turned("Nb′", "Nb", "Tb", -n.phi_b, "neck end after tightening, back")
    else:
        d.also("Nb′", "Nb")


SHOULDER_STAGE = Stage(Rank.SHOULDER, "the shoulders", shoulder_marks)

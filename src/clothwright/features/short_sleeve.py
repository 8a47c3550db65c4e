"""A short set-in sleeve on the trued armhole (first garment 17).

The cap is solved in `blocks.sleeve`; here the sleeve gets its length, its taper and its
hem. Both ends of the seam under the arm are square, so that cap and hem run on over it.
"""

import math
from collections.abc import Iterable, Iterator
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.sleeve import RAISED_EASE, SLEEVE, draft_cap
from clothwright.curves import (
    Path,
    Point,
    Vector,
    mix,
)
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.sleeve_findings import cap_findings, notch_findings
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Sheet,
    Verb,
)
from clothwright.rules import Given, Numbers, RuleError, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "first garment 17"

SHORT = RuleTable("short sleeve")
USUAL_LENGTH = RuleTable("short sleeve of the usual length")
_rule = SHORT.rule

LEAST_SEAM = 2.5
"""Least length of the seam under the arm, cm (17.3); less is a cap sleeve."""

GOOD_SEAM = 3.5
"""What the usual sleeve leaves under the arm, cm: the turned hem then ends below the
allowance of the cap (our ruling)."""

DIP = 0.4
"""The hem is this much lower at the centre than at the seam, cm (17.3)."""

_BEND = 1.5
"""The ends of the seam under the arm bend to this radius, cm, where there is room."""

_E_USUAL = Number(
    "e_usual", "e usual", "usual ease of the upper arm", "blocks B1", 5, 2
)
_LH_USUAL = Number(
    "lh_usual", "lh usual", "usual length of a short sleeve", _SRC, 18, 7
)


@USUAL_LENGTH.rule(
    "lh",
    "length of the sleeve from T",
    source=f"{_SRC}.3",
    formula="lh usual, or h and 3.5 cm where that is longer",
    low=12.0,
    high=30.0,
)
def lh(lh_usual: float, h_cap: float) -> float:
    return max(lh_usual, h_cap + GOOD_SEAM)


@_rule(
    "lh − h",
    "depth of the seam under the arm",
    source=f"{_SRC}.3",
    key="under_arm",
    formula="lh − h",
)
def _under_arm(lh: float, h_cap: float) -> float:
    if lh - h_cap < LEAST_SEAM - 1e-6:
        least = math.ceil(10 * (h_cap + LEAST_SEAM) + 1) / 10  # right in inches too
        raise RuleError(
            f"the cap is {h_cap:.1f} cm high, so a sleeve of {lh:.1f} cm leaves less "
            f"than 2.5 cm under the arm; set length to {least:.1f} cm or more"
        )
    return lh - h_cap


@_rule(
    "hem width",
    "hem of the sleeve",
    source=f"{_SRC}.4",
    key="hem_sleeve",
    formula="Wb − 2·tp",
)
def _hem(Wb: float, tp: float) -> float:
    return Wb - 2 * tp


class ShortSleeve(Feature):
    """Short set-in sleeve with a turned hem."""

    kind: Literal["short sleeve"] = "short sleeve"
    title: ClassVar[str] = "Short sleeve"
    sentence: ClassVar[str] = (
        "Short set-in [sleeves], {length} long, {arm_ease} wider than the arm and "
        "tapered by {taper} a side; the cap is eased in by {cap_ease}."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve"})
    needs: ClassVar[dict[str, str]] = {
        "sleeved": 'a set-in sleeve hangs in a "sleeved armhole"; take one in place of '
        "the sleeveless"
    }
    clashes: ClassVar[dict[str, str]] = {"sleeve": "an order has one kind of sleeve"}

    length: Annotated[
        Length | None,
        Number(
            "lh",
            "lh",
            "length of the sleeve from the top of the cap",
            f"{_SRC}.3",
            low=10.0,
            high=30.0,
            usual=(12.0, 25.0),
        ),
    ] = None
    taper: Annotated[
        Length | None,
        Number(
            "tp",
            "tp",
            "taper of the sleeve, each side",
            f"{_SRC}.3",
            1.0,
            0.375,
            0.0,
            3.0,
            (0.0, 2.0),
        ),
    ] = None
    arm_ease: Annotated[
        Length | None,
        Number(
            "e_arm",
            "e",
            "ease of the upper arm",
            "blocks B1",
            low=1.0,
            high=14.0,
            usual=(2.5, 8.0),
        ),
    ] = None
    cap_ease: Annotated[
        Length | None,
        Number(
            "E_cap",
            "E",
            "ease of the cap over the armhole",
            "blocks B1",
            3.0,
            1.1875,
            0.0,
            5.0,
            (2.5, 3.8),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SLEEVE, RAISED_EASE, SHORT, USUAL_LENGTH)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield _E_USUAL.usually(unit)
        yield _LH_USUAL.usually(unit)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE, "the sleeve", draft_sleeve),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from self._raised(n)
        yield from cap_findings(n, sheet)
        yield from notch_findings(sheet)
        if n.hem_sleeve < n.UA + 3.0 - 1e-6:
            yield Finding(
                "SL4",
                Severity.WARN,
                f"The sleeve is {n.hem_sleeve:.1f} cm round at its hem, less than 3 cm "
                "more than the arm.",
                "hem",
                "Taper it less, or give the arm more ease.",
                {"hem": n.hem_sleeve, "UA": n.UA},
            )

    def _raised(self, n: Numbers) -> Iterator[Finding]:
        """What the draft has changed of its own usual amounts."""
        for key, usual, chosen, what, why in (
            (
                "e_arm",
                "e_usual",
                self.arm_ease,
                "The ease of the upper arm",
                "for a lower cap",
            ),
            (
                "lh",
                "lh_usual",
                self.length,
                "The length of the sleeve",
                "for a seam under the arm",
            ),
        ):
            if chosen is None and n[key] > n[usual] + 1e-6:
                yield Finding(
                    "SL1",
                    Severity.NOTE,
                    f"{what} is {n[key]:.1f} cm instead of {n[usual]:.1f} cm, {why}.",
                    key,
                    "",
                    {"usual": n[usual], "now": n[key]},
                )


def draft_sleeve(d: Drafting) -> None:
    """Draft the sleeve SL: the cap, the seam under the arm, the hem."""
    n = d.n
    cap = draft_cap(d)
    hf = d.point("Hf", "Uf", "front end of the hem", left="tp", down="under_arm")
    hb = d.point("Hb", "Ub", "back end of the hem", right="tp", down="under_arm")
    hc = d.point("Hc", "Os", "centre of the hem", down=n.under_arm + DIP)
    front = d.draw(
        "seam front",
        _square_to_both(d["Uf"], hf),
        "front seam under the arm",
        frm=("Uf", "Hf"),
        detail="plumb at both ends",
    )
    back = d.draw(
        "seam back",
        _square_to_both(d["Ub"], hb),
        "back seam under the arm",
        frm=("Ub", "Hb"),
        detail="plumb at both ends",
    )
    hem = d.draw(
        "hem",
        _level(hf, hc) + _level(hc, hb),
        "hem of the sleeve",
        frm=("Hf", "Hc", "Hb"),
        detail="level at the seams and at the centre",
    )
    cap_back, cap_front = cap.split_at_length(n.cap_back)
    piece = Piece(
        "SL",
        "Sleeve",
        (
            Edge("cap back", cap_back),
            Edge("cap front", cap_front),
            Edge("underarm front", front),
            Edge("hem", hem, EdgeKind.FINISHED),
            Edge("underarm back", back.reversed()),
        ),
        lines=(InnerLine("biceps line", Path.line(d["Ub"], d["Uf"])),),
        grain=(mix(hc, d["T"], 0.1), mix(hc, d["T"], 0.9)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        "SL",
        "sleeve",
        detail="from the cap, both seams and the hem, its grain from T to Hc",
    )


def _square_to_both(top: Point, foot: Point) -> Path:
    """The seam under the arm: nearly straight, but plumb where it leaves the cap and
    where it meets the hem, so that both run on over it."""
    depth = foot.y - top.y
    # a handle l at the end of a curve that moves aside by tp bends it to 3l²/2tp there
    round_enough = math.sqrt(2 / 3 * abs(foot.x - top.x) * _BEND)
    handle = Vector(0.0, clip(round_enough, 0.25 * depth, 0.4 * depth))
    return Path.cubic(top, top + handle, foot - handle, foot)


def _level(a: Point, b: Point) -> Path:
    """Half of the hem, level at both ends."""
    handle = Vector(0.36 * (b.x - a.x), 0.0)
    return Path.cubic(a, a + handle, b - handle, b)

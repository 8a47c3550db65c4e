"""A bodice cut in one with what is below the waist: hip-length top, tunic, sheath dress
(blocks D)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import torso
from clothwright.blocks.torso_rules import (
    CENTRE_FOLD,
    CENTRE_SEAM,
    TORSO,
    ZIP_END,
)
from clothwright.features.about import About
from clothwright.features.base import (
    Feature,
    Number,
    Pin,
    Rank,
    Shown,
    Stage,
    Words,
    useless,
)
from clothwright.features.bodice.dropped import cut_across
from clothwright.features.bodice.dropped_rules import (
    DROPPED,
    HUNG,
    HUNG_ZIP_END,
    OWN_ZIP_END,
    panelled,
)
from clothwright.features.bodice.torso_findings import torso_findings
from clothwright.features.bodice.torso_joints import torso_joints
from clothwright.features.bodice.torso_length import LENGTH, usual_length
from clothwright.features.bodice.torso_sewing import torso_operations
from clothwright.features.bodice.waist_seams import SEAMS, waist_joints, waist_seams
from clothwright.features.chains import Chains
from clothwright.features.operations import Operation
from clothwright.features.roles import bodice_hem
from clothwright.features.skirts.about import HANGING, HANGING_SEAMS, PANEL_SEAMS
from clothwright.features.skirts.hanging_seams import (
    hanging_joints,
    hanging_panels,
    hanging_side,
)
from clothwright.features.skirts.peplum_rules import AT_EDGE
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Seam, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, Rule, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "blocks D"

_WAIST_EASE = {Unit.CM: 4.0, Unit.IN: 1.5 * 2.54}
"""Ease at the waist of a sheath where the order does not say it, cm (D3: 3 to 5)."""


class Below(Enum):
    """What lies below a seam across the torso."""

    STRAIGHT = "straight"
    """The rest of the torso itself, as a straight skirt."""

    HUNG = "sewn on"
    """A skirt or peplum of its own, which hangs on the seam."""


_SEAM_CLASHES = {
    "tent": "a tent flares from the bust to the hem in one; leave the torso's seam "
    "out, or take another line for the bust dart",
}
"""What does not go with a torso that a seam crosses."""

_HUNG_CLASHES = {
    **_SEAM_CLASHES,
    "waist seam": "a torso in one has no waist seam; leave one of the two off",
    "straight back": "the straight skirt below a torso's seam is cut off the torso: "
    'leave the other off and set below = "straight"',
    "open back": "an open back is drawn to the waist; leave the torso's seam out and "
    "take a waist seam",
    "wrap": "the fronts of a wrap cross at the waist; leave the torso's seam out and "
    "take a waist seam",
}
"""What does not go with a torso to whose seam a skirt is sewn."""


class Torso(Feature):
    """Bodice and skirt in one through the waist, without a waist seam."""

    kind: Literal["torso"] = "torso"
    title: ClassVar[str] = "Torso in one"
    sentence: ClassVar[str] = (
        "Bodice and skirt are cut [in one] through the waist, {length} long from "
        "there, with {hip_ease} of ease at the hip."
    )
    page: ClassVar[int] = 2
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", ("FC", "F"), ("cf", "hem"), (0.0, 1.0)),
        Pin("seam", ("FC", "F"), ("cf", "waist"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "Ew": ("FS.side", "F.side low", "F.side"),
        "Eh": ("FS.side", "F.side low", "F.side"),
        "HH": ("FS.side", "F.side low", "F.side"),
        "a'": ("FS.side", "F.side low", "F.side"),
        "dd": ("FC.waist", "F.waist"),
        "blouse": ("FC.waist", "F.waist"),
        "fd": ("FC.panel", "F.hem"),
        "bd": ("BC.panel", "B.hem"),
        "cbs": ("BC.cb", "B.cb"),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        tuple(
            About(code, shown=("waist",), edges={"hem": bodice_hem})
            for code in torso.PIECES
        )
        + HANGING
    )
    seams: ClassVar[Mapping[str, str]] = {
        **SEAMS,
        **HANGING_SEAMS,
        **PANEL_SEAMS,
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"torso", "waist line", "skirt", "straight back", "plain hem"}
    )
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a torso runs on from a bodice block; add one",
        "dress opening": "a torso is put on through its back, side or front; add a "
        '"concealed zip", an "underarm zip" or a "button stand"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "waist seam": "a torso in one has no waist seam; leave one of the two off",
        "skirt": "a torso is bodice and skirt in one; nothing hangs on its waist: to "
        'sew a skirt on lower, set its seam and below = "sewn on"',
        "waist bust dart": "a fish-eye dart cannot hold the bust dart too; lead it "
        "elsewhere than to the waist",
        "yoke bust dart": "a torso leads its bust dart before the yoke is cut; lead "
        "it elsewhere than to the yoke",
        "empire seam": "an empire seam tapes the waist dart shut, which a torso has as "
        "a fish-eye dart; leave one of the two off",
    }

    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the torso from the waist",
            _SRC,
            low=18.0,
            high=125.0,
            usual=(20.0, 110.0),
        ),
    ] = None
    hip_ease: Annotated[
        Length | None,
        Number("Eh", "Eh", "ease at the hip", _SRC, 4.0, 1.5, 0.0, 16.0, (3.0, 8.0)),
    ] = None
    flare: Annotated[
        Length | None,
        Number(
            "fl_T",
            "fl",
            "out at the hem, each side (below nought it is tapered)",
            "blocks C5",
            low=-4.0,
            high=12.0,
            usual=(-2.5, 6.0),
        ),
    ] = None
    front_wider: Annotated[
        Length | None,
        Number(
            "hs",
            "hs",
            "front half wider at the hip and back half narrower by",
            f"{_SRC}2",
            0.25,
            0.125,
            -0.75,
            1.5,
            (-0.5, 1.0),
        ),
    ] = None
    back_dart: Annotated[
        Length | None,
        Number(
            "lb_T",
            "lb",
            "back dart below the waist",
            f"{_SRC}4",
            low=6.0,
            high=18.0,
            usual=(11.0, 15.0),
        ),
    ] = None
    front_dart: Annotated[
        Length | None,
        Number(
            "lf_T",
            "lf",
            "front dart below the waist",
            f"{_SRC}4",
            low=5.0,
            high=16.0,
            usual=(8.0, 12.0),
        ),
    ] = None
    seam: Annotated[
        Length | None,
        Number(
            "dd",
            "dd",
            "seam across the torso below the waist",
            f"{_SRC}7",
            low=5.0,
            high=30.0,
            usual=(8.0, 24.0),
        ),
    ] = None
    """How far below the waist a seam lies across it; none without."""

    blouse: Annotated[
        Length | None,
        Number(
            "blouse",
            "blouse",
            "torso longer above its seam, to blouse over",
            f"{_SRC}7",
            0.6,
            0.25,
            0.0,
            4.0,
            (0.0, 4.0),
        ),
    ] = None
    below: Below = Below.STRAIGHT

    @property
    def hung(self) -> bool:
        """True when a skirt of its own is sewn to its seam."""
        return self.seam is not None and self.below is Below.HUNG

    def said(self) -> str:
        if self.hung:
            return (
                "The bodice is cut [in one] through the waist, with {hip_ease} of ease "
                "at the hip, down to a seam {seam} below it; it is {blouse} longer, to "
                "blouse over, and the skirt is {below}."
            )
        said = self.sentence[:-1]
        if self.flare:
            said += "; each side runs out by {flare} to the hem"
        if self.seam is not None:
            said += (
                "; a seam crosses them {seam} below the waist, the torso {blouse} "
                "longer to blouse over it and the skirt {below}"
            )
        return f"{said}."

    def provides(self) -> frozenset[str]:
        words = self.gives if self.seam is None else self.gives | {"torso seam"}
        if not self.hung:
            return words
        return words - {"skirt", "straight back", "plain hem"} | {"waist seam"}

    def forbids(self) -> Mapping[str, str]:
        if self.seam is None:
            return self.clashes
        if not self.hung:
            return {**self.clashes, **_SEAM_CLASHES}
        kept = {w: why for w, why in self.clashes.items() if w != "skirt"}
        return {**kept, **_HUNG_CLASHES}

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its own numbers, and the waist's ease of a garment without a waist seam."""
        useless = self._useless()
        yield from (g for g in super().given(unit) if g.key not in useless)
        if self.length is None and not self.hung:
            yield usual_length(unit)
        yield Given(
            "Ew",
            "Ew",
            "ease at the waist",
            Kind.LENGTH,
            _WAIST_EASE[unit],
            Hand.DEFAULT,
            f"{_SRC}3",
        )

    def _useless(self) -> tuple[str, ...]:
        """Keys of its numbers that mean nothing as it is set."""
        if self.seam is None:
            return ("blouse",)
        return ("L", "fl_T") if self.hung else ()

    def tables(self) -> tuple[RuleTable, ...]:
        if self.seam is None:
            return (TORSO, LENGTH)
        below = (HUNG,) if self.hung else (LENGTH, AT_EDGE)
        return (TORSO, DROPPED, *below)

    def rewritten(
        self,
        rules: Mapping[str, Rule],
        given: Collection[str],
    ) -> Mapping[str, Rule]:
        """A centre back seam that is shaped takes the torso's share, one on the fold
        nothing; a zip ends above the hip."""
        ends = ZIP_END
        if self.seam is not None:
            ends = HUNG_ZIP_END if self.hung else OWN_ZIP_END
        zip_ = ends.rules if "z" in rules and "z" not in given else {}
        at_seam = {} if self.seam is None else panelled(rules).rules
        if "cbs" not in rules:
            return {**CENTRE_FOLD.rules, **zip_, **at_seam}
        shaped = CENTRE_SEAM.rules if rules["cbs"].needs else {}
        return {**shaped, **zip_, **at_seam}

    def stages(self) -> tuple[Stage, ...]:
        below = Stage(Rank.WAIST, "below the waist", self._run_on)
        if self.seam is None:
            return (below,)
        return (below, Stage(Rank.WAIST, "the seam below the waist", self._cut))

    def _run_on(self, d: Drafting) -> None:
        if d.n.sway > 0:
            raise PaperError(
                "a hollow back is shortened in a waist seam, which a torso in one has "
                'not: leave "centre back shortened at the waist" off, or take a waist '
                "seam and a skirt"
            )
        if self.hung:
            torso.extend(d, "L_T", "end of the paper")
        else:
            torso.extend(d)

    def _cut(self, d: Drafting) -> None:
        cut_across(d, keep=not self.hung)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        if self.seam is None:
            return
        yield from waist_seams(t, n)
        if not self.hung:
            yield hanging_side(t, n)
            yield from hanging_panels(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        yield from torso_joints(sheet)
        if self.seam is not None:
            yield from waist_joints(sheet)
            if not self.hung:
                yield from hanging_joints(sheet)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return torso_operations(n, sheet, fmt, hemmed=not self.hung)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from torso_findings(n, sheet)
        fields = [f for f, k in self.numbers().items() if k.key in self._useless()]
        so = "A torso to whose seam a skirt is sewn" if self.hung else "A torso"
        to_do = (
            "Leave it out: the skirt has its own."
            if self.hung
            else 'Leave it out, or give it a "seam".'
        )
        yield from useless(self, fields, so, to_do)
        if self.below is Below.HUNG and not self.hung:
            yield Finding(
                "Q5",
                Severity.NOTE,
                f'A torso without a seam has no use for below = "{Below.HUNG.value}": '
                "nothing is sewn to it.",
                "FC.hem" if "FC" in sheet.pieces else "F.hem",
                'Leave it out, or say with "seam" how far below the waist it is sewn '
                "on.",
            )

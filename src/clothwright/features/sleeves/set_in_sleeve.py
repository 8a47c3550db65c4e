"""A set-in sleeve of any length on the trued armhole (first garment 17, blocks B).

The cap is solved in `blocks.sleeve`; here the sleeve gets its length, its seam under
the arm and its hem: straight and tapered, or bent forward at the elbow, where the
longer back seam is taken in by a dart or eased in. Cap and hem run on over the seam.
"""

from collections.abc import Iterable, Iterator, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.sleeve import PLAIN, RAISED_EASE, SLEEVE, before_fitting
from clothwright.blocks.sleeve_lower import BENT, EASED, ELBOW, UPPER_ARM, arm_girth
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.sleeves.about import SLEEVE_PIECE, SLEEVE_SEAMS
from clothwright.features.sleeves.sleeve_findings import cap_findings, notch_findings
from clothwright.features.sleeves.sleeve_joints import sleeve_joints
from clothwright.features.sleeves.sleeve_lengths import (
    GOOD_SEAM,
    LEFT_OUT,
    LENGTH,
    REACH,
    Reach,
)
from clothwright.features.sleeves.sleeve_pieces import draft_bent, draft_straight
from clothwright.features.sleeves.sleeve_seams import sleeve_seams
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, EdgeKind, Seam, Sheet
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "first garment 17"

STRAIGHT = RuleTable("straight sleeve")
EASED_ELBOW = RuleTable("sleeve eased at the elbow")

E_USUAL = Number("e_usual", "e usual", "usual ease of the upper arm", "blocks B1", 5, 2)
_LH_USUAL = Number(
    "lh_usual", "lh usual", "usual length of a short sleeve", _SRC, 18, 7
)


class Elbow(Enum):
    """What happens at the elbow."""

    STRAIGHT = "straight"
    """Nothing: the sleeve hangs straight, tapered by the same on both sides."""

    DART = "dart"
    """Bent forward; a dart takes in what the back seam is longer."""

    EASE = "ease"
    """Bent a little; what the back seam is longer is eased in."""


@STRAIGHT.rule(
    "hem width",
    "hem of the sleeve",
    source=f"{_SRC}.4",
    key="hem_sleeve",
    formula="Wb − 2·tp",
)
def _hem(Wb: float, tp: float) -> float:
    return Wb - 2 * tp


@EASED_ELBOW.rule(
    "swing",
    "swing of the sleeve's end towards the front",
    source="blocks B11, our ruling",
    key="swing",
    formula="0.75 cm at the wrist: the back seam is then longer by what eases in",
    low=0.0,
    high=2.0,
)
def _little_swing(below_elbow: float, AL: float, SE: float) -> float:
    return 0.75 * min(1.0, below_elbow / (AL - SE - 0.5))


@EASED_ELBOW.rule(
    "elbow ease",
    "what is eased in at the elbow",
    source="blocks B11",
    key="elbow_ease",
    formula="all that the back seam is longer",
)
def _eased(elbow_in: float) -> float:
    return elbow_in


_LONG = 50.0
"""A shorter sleeve is not too long for any arm, cm."""


class SetInSleeve(Feature):
    """Set-in sleeve: any length, straight or shaped at the elbow, with a turned hem."""

    kind: Literal["set-in sleeve"] = "set-in sleeve"
    title: ClassVar[str] = "Set-in sleeve"
    sentence: ClassVar[str] = (
        "Set-in [sleeves], {length} long, {arm_ease} wider than the arm and tapered by "
        "{taper} a side; the cap is eased in by {cap_ease}."
    )
    shows: ClassVar[Shown] = {
        "lh": ("SL.hem",),
        "hem dip": ("SL.hem",),
        "h": ("SL.cap back",),
        "E": ("SL.cap back",),
        "e": ("SL.cap back",),
        "Qf": ("SL.cap front",),
    }
    pieces: ClassVar[tuple[About, ...]] = (SLEEVE_PIECE,)
    seams: ClassVar[Mapping[str, str]] = SLEEVE_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset(
        {"lined arm", "set-in sleeve", "sleeve", "armhole finish"}
    )
    needs: ClassVar[dict[str, str]] = {
        "sleeved": 'a set-in sleeve hangs in a "sleeved armhole"; add it, in place '
        "of a sleeveless armhole or a halter"
    }
    clashes: ClassVar[dict[str, str]] = {"sleeve": "an order has one kind of sleeve"}

    reach: Reach | None = None
    """How far it reaches, unless a length is given; left out: short, but to the wrist
    when it is shaped at the elbow, cut in two pieces or ends in a cuff."""

    length: Annotated[
        Length | None,
        Number(
            "lh",
            "lh",
            "length of the sleeve from the top of the cap",
            f"{_SRC}.3",
            low=10.0,
            high=80.0,
        ),
    ] = None
    elbow: Elbow = Elbow.STRAIGHT
    """Straight, or shaped at the elbow."""

    taper: Annotated[
        Length | None,
        Number(
            "tp",
            "tp",
            "taper of a straight sleeve, each side",
            f"{_SRC}.3",
            1.0,
            0.375,
            0.0,
            9.0,
        ),
    ] = None
    hem_dip: Annotated[
        Length | None,
        Number(
            "hem_dip",
            "hem dip",
            "hem of a straight sleeve lower at the centre than at the seam",
            f"{_SRC}.3; transformations 4",
            0.4,
            None,
            -1.5,
            1.5,
            (-1.0, 1.0),
        ),
    ] = None
    """Below nought it is higher there."""

    wrist: Annotated[
        Length | None,
        Number(
            "Ww",
            "Ww",
            "width of a shaped sleeve at the wrist",
            "blocks B10",
            low=12.0,
            high=50.0,
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

    def said(self) -> str:
        if self.elbow is Elbow.STRAIGHT and self.hem_dip is not None:
            return (
                f"{self.sentence[:-1]}; the hem lies {{hem_dip}} lower at the centre."
            )
        if self.elbow is Elbow.STRAIGHT:
            return self.sentence
        how = "by a dart" if self.elbow is Elbow.DART else "by a little ease"
        return (
            "Set-in [sleeves], {length} long, {arm_ease} wider than the arm, shaped at "
            f"the elbow {how} and {{wrist}} wide at the wrist; the cap is eased in by "
            "{cap_ease}."
        )

    def provides(self) -> frozenset[str]:
        shaped = {"straight sleeve" if self.elbow is Elbow.STRAIGHT else "bent sleeve"}
        return self.gives | shaped

    @property
    def _length(self) -> RuleTable:
        """The rule of its length."""
        if self.reach is not None:
            return REACH[self.reach]
        return LEFT_OUT if self.elbow is Elbow.STRAIGHT else REACH[Reach.WRIST]

    def tables(self) -> tuple[RuleTable, ...]:
        own = {
            Elbow.STRAIGHT: (STRAIGHT,),
            Elbow.DART: (BENT,),
            Elbow.EASE: (BENT, EASED_ELBOW),
        }
        return (
            PLAIN,
            SLEEVE,
            RAISED_EASE,
            ELBOW,
            LENGTH,
            self._length,
            *own[self.elbow],
        )

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield E_USUAL.usually(unit)
        yield _LH_USUAL.usually(unit)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE, "the sleeve", self._draft),)

    def _draft(self, d: Drafting) -> None:
        numbers, d.n = d.n, before_fitting(d.n)
        if self.elbow is Elbow.STRAIGHT:
            draft_straight(d)
        else:
            draft_bent(d, dart=self.elbow is Elbow.DART)
        d.n = numbers

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return sleeve_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return sleeve_joints(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from self._raised(n)
        yield from self._unused()
        yield from cap_findings(n, sheet)
        yield from notch_findings(sheet)
        yield from self._below(n, sheet)

    def _below(self, n: Numbers, sheet: Sheet) -> Iterator[Finding]:
        """The arm and the hand in the sleeve (17.4, B10 to B12)."""
        if self.elbow is Elbow.EASE and n.elbow_in > EASED:
            yield Finding(
                "SL8",
                Severity.WARN,
                f"The back seam is {n.elbow_in:.1f} cm longer than the front; more "
                f"than {EASED} cm does not ease in.",
                "elbow",
                "Take it in by a dart, or let the sleeve swing less.",
                {"longer": n.elbow_in},
            )
        if self.elbow is not Elbow.STRAIGHT and n.We < n.EL + 2.5 - 1e-6:
            yield Finding(
                "SL9",
                Severity.WARN,
                f"The sleeve is {n.We:.1f} cm round at the elbow, less than 2.5 cm "
                "more than the bent arm.",
                "We",
                "Make it wider there.",
                {"We": n.We, "EL": n.EL},
            )
        what, arm, room = arm_at(n)
        hem = sum(
            e.length
            for p in sheet.pieces.values()
            if p.code in ("SL", "SLF", "SLB", "ST", "SU")
            for e in p.edges
            if e.name == "hem" and e.kind is EdgeKind.FINISHED
        )
        if 0 < hem < arm + room - 1e-6:
            yield Finding(
                "SL4",
                Severity.WARN,
                f"The sleeve is {hem:.1f} cm round at its hem, "
                + (
                    f"less than {room:g} cm more than the {what}."
                    if room
                    else f"less than the {what} of {arm:.1f} cm."
                ),
                "hem",
                "Taper it less, or give the arm more ease.",
                {"hem": hem, "arm": arm},
            )
        if n.lh > _LONG and n.lh > n.AL + 6.0:
            yield Finding(
                "SL7",
                Severity.WARN,
                f"The sleeve is {n.lh:.1f} cm long, the arm {n.AL:.1f} cm.",
                "lh",
                "Look whether it is to hang over the hand.",
                {"lh": n.lh, "AL": n.AL},
            )

    def _unused(self) -> Iterator[Finding]:
        """What is set but has no say in this sleeve."""
        bent = self.elbow is not Elbow.STRAIGHT
        for field, value, idle, why in (
            ("taper", self.taper, bent, "one that is shaped at the elbow"),
            ("hem_dip", self.hem_dip, bent, "one that is shaped at the elbow"),
            ("wrist", self.wrist, not bent, "a straight one, which is tapered"),
        ):
            if value is not None and idle:
                yield Finding(
                    "SL13",
                    Severity.NOTE,
                    f"The {field} of the sleeve is set but not used on {why}.",
                    field,
                    "Leave it out, or change the elbow.",
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
            if key == "lh" and self._length not in (LEFT_OUT, REACH[Reach.SHORT]):
                continue
            if key == "lh" and n.lh > n.h_cap + GOOD_SEAM + 1e-6:
                continue  # it goes to the wrist, for what is worn there
            if chosen is None and n[key] > n[usual] + 1e-6:
                yield Finding(
                    "SL1",
                    Severity.NOTE,
                    f"{what} is {n[key]:.1f} cm instead of {n[usual]:.1f} cm, {why}.",
                    key,
                    "",
                    {"usual": n[usual], "now": n[key]},
                )


def arm_at(n: Numbers) -> tuple[str, float, float]:
    """What a hem has to go round where the sleeve ends, its girth, and the room that is
    right (17.4, transformations 4): the arm down to the elbow, the hand below it."""
    if n.under_arm <= UPPER_ARM:
        return "arm", n.UA, 3.0
    if n.under_arm <= n.y_E + 1.0:
        return "arm", arm_girth(n.under_arm, n.y_E, n.UA, n.EL), 3.0
    return "hand", n.HD, 0.0

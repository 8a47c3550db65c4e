"""A cap sleeve: the top of a sleeve alone, down to the underarm (transformations 4)."""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.sleeve import PLAIN, RAISED_EASE, SLEEVE, draft_cap
from clothwright.curves import Path, Point, Vector, mix
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.sleeves.about import SLEEVE_PIECE, SLEEVE_SEAMS
from clothwright.features.sleeves.set_in_sleeve import E_USUAL, SetInSleeve
from clothwright.features.sleeves.sleeve_findings import cap_findings, notch_findings
from clothwright.features.sleeves.sleeve_joints import sleeve_joints
from clothwright.features.sleeves.sleeve_seams import sleeve_seams
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "transformations 4"

LEAST_WIDTH = 2.5
"""A cap sleeve is nowhere narrower than this beyond its notches, cm (truing 5)."""


class CapSleeve(Feature):
    """Cap of a sleeve that covers the shoulder, with a short seam under the arm."""

    kind: Literal["cap sleeve"] = "cap sleeve"
    title: ClassVar[str] = "Cap sleeve"
    sentence: ClassVar[str] = (
        "Cap [sleeves], {length} long at the top and {under} under the arm; the cap is "
        "eased in by {cap_ease}."
    )
    shows: ClassVar[Shown] = {
        "h": ("SL.cap back",),
        "E": ("SL.cap back",),
        "e": ("SL.cap back",),
        "Qf": ("SL.cap front",),
    }
    pieces: ClassVar[tuple[About, ...]] = (SLEEVE_PIECE,)
    seams: ClassVar[Mapping[str, str]] = SLEEVE_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve", "armhole finish"})
    needs: ClassVar[dict[str, str]] = SetInSleeve.needs
    clashes: ClassVar[dict[str, str]] = SetInSleeve.clashes

    length: Annotated[
        Length | None,
        Number(
            "cap_long",
            "cap length",
            "length of the cap sleeve from the top of the cap",
            _SRC,
            9.0,
            3.5,
            4.0,
            16.0,
            (5.0, 12.0),
        ),
    ] = None
    under: Annotated[
        Length | None,
        Number(
            "under_arm",
            "under arm",
            "seam of the cap sleeve under the arm",
            _SRC,
            2.0,
            0.75,
            1.0,
            4.0,
        ),
    ] = None
    arm_ease: Annotated[Length | None, SetInSleeve.numbers()["arm_ease"]] = None
    cap_ease: Annotated[
        Length | None,
        Number(
            "E_cap",
            "E",
            "ease of the cap over the armhole",
            "blocks B1",
            2.0,
            0.75,
            0.0,
            5.0,
            (1.0, 3.8),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (PLAIN, SLEEVE, RAISED_EASE)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield E_USUAL.usually(unit)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE, "the sleeve", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return sleeve_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return sleeve_joints(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from cap_findings(n, sheet)
        yield from notch_findings(sheet)
        hem = sheet.edge("SL", "hem").path
        cap = sheet.edge("SL", "cap back").path + sheet.edge("SL", "cap front").path
        steps = (cap.at_length(cap.length * i / 40) for i in range(10, 31))
        least = min(hem.nearest(p)[1] for p in steps)
        if least < LEAST_WIDTH:
            yield Finding(
                "CS1",
                Severity.REFUSE,
                f"The cap sleeve is only {least:.1f} cm wide at its narrowest; "
                f"{LEAST_WIDTH} cm is the least that can be hemmed.",
                "cap length",
                "Make it longer at the top (cap length).",
                {"width": least},
            )
        if n.cap_long >= n.h_cap + n.under_arm:
            yield Finding(
                "CS2",
                Severity.WARN,
                f"The cap is {n.h_cap:.1f} cm high: a sleeve of {n.cap_long:.1f} cm is "
                "no cap sleeve any more.",
                "cap length",
                'Take a "set-in sleeve".',
                {"length": n.cap_long, "h": n.h_cap},
            )


def _draft(d: Drafting) -> None:
    """Draft the cap sleeve SL: the cap, a short plumb seam, a hem that is hollowed up
    to its length at the top."""
    cap = draft_cap(d)
    hf = d.point("Hf", "Uf", "front end of the hem", down="under_arm")
    hb = d.point("Hb", "Ub", "back end of the hem", down="under_arm")
    hc = d.point("Hc", "T", "centre of the hem", down="cap_long")
    hem = d.draw(
        "hem",
        _arched(hf, hc) + _arched(hb, hc).reversed(),
        "hem of the sleeve",
        frm=("Hf", "Hc", "Hb"),
        detail="square to both seams, level at the centre",
    )
    cap_back, cap_front = cap.split_at_length(d.n.cap_back)
    piece = Piece(
        "SL",
        "Cap sleeve",
        (
            Edge("cap back", cap_back),
            Edge("cap front", cap_front),
            straight("underarm front", d["Uf"], hf),
            Edge("hem", hem, EdgeKind.FINISHED),
            straight("underarm back", hb, d["Ub"]),
        ),
        grain=(mix(hc, d["T"], 0.1), mix(hc, d["T"], 0.9)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        "SL",
        "cap sleeve",
        detail="from the cap, both seams and the hem, its grain from T to Hc",
    )


def _arched(end: Point, top: Point) -> Path:
    """Half of the hem, level at both ends."""
    across = Vector(top.x - end.x, 0.0)
    return Path.cubic(end, end + across * 0.45, top - across * 0.5, top)

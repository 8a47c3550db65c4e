"""A bodice cut in one with what is below the waist: hip-length top, tunic, sheath dress
(blocks D)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import torso
from clothwright.blocks.torso_rules import (
    CENTRE_FOLD,
    CENTRE_SEAM,
    TORSO,
    ZIP_END,
)
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage, Words
from clothwright.features.bodice.torso_findings import torso_findings
from clothwright.features.bodice.torso_joints import torso_joints
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import bodice_hem
from clothwright.findings import Finding
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, Rule, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "blocks D"

_WAIST_EASE = {Unit.CM: 4.0, Unit.IN: 1.5 * 2.54}
"""Ease at the waist of a sheath where the order does not say it, cm (D3: 3 to 5)."""


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
    )
    shows: ClassVar[Shown] = {
        "Ew": ("FS.side", "F.side low", "F.side"),
        "Eh": ("FS.side", "F.side low", "F.side"),
        "HH": ("FS.side", "F.side low", "F.side"),
        "a'": ("FS.side", "F.side low", "F.side"),
        "fd": ("FC.panel", "F.hem"),
        "bd": ("BC.panel", "B.hem"),
        "cbs": ("BC.cb", "B.cb"),
    }
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, edges={"hem": bodice_hem}) for code in torso.PIECES
    )
    gives: ClassVar[frozenset[str]] = frozenset(
        {"torso", "waist line", "skirt", "straight back"}
    )
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a torso runs on from a bodice block; add one",
        "dress opening": "a torso is put on through a zip at its back or in its side, "
        "or a button stand; add one",
    }
    clashes: ClassVar[dict[str, str]] = {
        "waist seam": "a torso in one has no waist seam; leave one of the two off",
        "skirt": "a torso is bodice and skirt in one; nothing hangs on its waist",
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
            60.0,
            24.0,
            18.0,
            125.0,
            (20.0, 110.0),
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

    def said(self) -> str:
        if self.flare:
            return f"{self.sentence[:-1]}; each side runs out by {{flare}} to the hem."
        return self.sentence

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its own numbers, and the waist's ease of a garment without a waist seam."""
        yield from super().given(unit)
        yield Given(
            "Ew",
            "Ew",
            "ease at the waist",
            Kind.LENGTH,
            _WAIST_EASE[unit],
            Hand.DEFAULT,
            f"{_SRC}3",
        )

    def tables(self) -> tuple[RuleTable, ...]:
        return (TORSO,)

    def rewritten(
        self,
        rules: Mapping[str, Rule],
        given: Collection[str],
    ) -> Mapping[str, Rule]:
        """A centre back seam that is shaped takes the torso's share, one on the fold
        nothing; a zip ends above the hip."""
        zip_ = ZIP_END.rules if "z" in rules and "z" not in given else {}
        if "cbs" not in rules:
            return {**CENTRE_FOLD.rules, **zip_}
        return {**(CENTRE_SEAM.rules if rules["cbs"].needs else {}), **zip_}

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.WAIST, "below the waist", _run_on),)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return torso_joints(sheet)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        for code, half in (("F", "front"), ("B", "back")):
            if torso.fish_eye(sheet, code) is not None:
                yield Operation(
                    Work.DART,
                    f"Sew the {half} waist darts",
                    (
                        "From the middle to either point, overlapping there; run off "
                        "the cloth and tie the ends. Clip the fold at the waist.",
                    ),
                    stitch=Stitch.LOCK,
                    seam_type=SeamType.PLAIN,
                    length=2 * torso.stitched(sheet, code),
                    press="towards the centre",
                    task=Task.DART,
                    count=2.0,
                )
            if torso.fish_eye(sheet, f"L.{code}") is not None:
                yield Operation(
                    Work.DART,
                    f"Sew the waist darts of the {half} lining",
                    ("As the shell's, pressed the other way.",),
                    stitch=Stitch.LOCK,
                    length=2 * torso.stitched(sheet, f"L.{code}"),
                )
        hems = finished_edges(sheet, torso.PIECES, "hem")
        yield Operation(
            Work.HEM,
            "Hem the lower edge",
            (
                f"Level it from the floor, {fmt(n.L)} below the waist; neaten it, turn "
                "it up and fell it by hand.",
            ),
            edges=hems,
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            neatened=1,
            task=Task.HEM,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from torso_findings(n, sheet)


def _run_on(d: Drafting) -> None:
    if d.n.sway > 0:
        raise PaperError(
            "a hollow back is shortened in a waist seam, which a torso in one has not: "
            'leave "centre back shortened at the waist" off, or take a waist seam and '
            "a skirt"
        )
    torso.extend(d)

"""A zip in the left side seam of a top, from below the armhole through the waist
(transformations 7)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.torso import in_one
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.centre_back import CLOSED
from clothwright.features.necks.over_head import CLOSED_NECK
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.concealed_zip import crosses, ends_findings
from clothwright.features.openings.zips import (
    Setting,
    how_set,
    strip_work,
    zip_notions,
    zip_task,
)
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.wholes import zip_end
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 7"

_USUAL = 30.0
"""A longer zip than this is not sold for a side, cm (7: 18 to 30)."""

_IN_ONE = 40.0
"""That of a torso, which opens the hip, cm (common practice, no source)."""

_TICKS = 2
"""Notches of a set that tells an end of the zip."""

SIDE = RuleTable("zip in the side of a top")


@SIDE.rule(
    "z",
    "end of the zip below the waist",
    source=_SRC,
    formula="10 cm, 2 cm above the hem of a peplum: 22 to 30 cm in all",
    low=0.0,
    high=25.0,
)
def z(L: float) -> float:
    return min(10.0, L - 2.0)


class UnderarmZip(Feature):
    """Zip in the left side seam of a top."""

    kind: Literal["underarm zip"] = "underarm zip"
    title: ClassVar[str] = "Zip under the arm"
    sentence: ClassVar[str] = (
        "It closes with a {setting} [zip] in the left side, from {below_arm} below the "
        "armhole to {below_waist} below the waist."
    )
    shows: ClassVar[Shown] = {
        "z top": ("FS.side", "F.side high", "F.side"),
        "z": ("PF.side", "PFS.side", "FS.side", "F.side low", "F.side"),
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"side opening", "closure", "dress opening", "opening"}
    )
    needs: ClassVar[dict[str, str]] = {
        "waist line": "a zip under the arm runs through the waist of a fitted top; add "
        'a waist seam, or a "torso" to cut it in one',
    }
    clashes: ClassVar[dict[str, str]] = {
        "closure": "a top closes in one place; leave the other closing off",
        "open back": "an open back is closed at its own edges; leave one of the two "
        "off",
        "vent": "a vent is cut in a centre back seam, which a top that closes at its "
        'side lacks; take a "side slit", or leave it off',
    }

    below_arm: Annotated[
        Length | None,
        Number(
            "z_top",
            "z top",
            "beginning of the zip below the armhole",
            _SRC,
            4.0,
            1.5,
            2.0,
            12.0,
            (3.0, 5.0),
        ),
    ] = None
    below_waist: Annotated[
        Length | None,
        Number(
            "z",
            "z",
            "end of the zip below the waist",
            _SRC,
            low=0.0,
            high=25.0,
        ),
    ] = None
    setting: Setting = Setting.CONCEALED

    def tables(self) -> tuple[RuleTable, ...]:
        return (SIDE, CLOSED, CLOSED_NECK)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the zip under the arm", _mark),)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"The opening of the left side is {fmt(_opening(n, sheet))} long, between "
            "the double notches of the side; the right side is sewn through."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield from zip_notions(self.setting, _opening(n, sheet), "left side")
        yield Notion(Article.HOOK, 1, "at the waist, inside the zip")

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        opening = _opening(n, sheet)
        yield strip_work(fmt, "left side")
        yield Operation(
            Work.ZIP,
            f"Put in the {self.setting.value} zip of the left side",
            (
                "The left side is sewn only above the upper and below the lower double "
                "notch, the right one through.",
                f"From {fmt(_top(sheet))} below the armhole to {fmt(n.z)} below the "
                f"waist{'; the waist seams meet' if crosses(n, sheet) else ''}.",
                *how_set(self.setting, fmt, "front over back"),
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=2 * opening,
            task=zip_task(self.setting),
        )
        inside = ["facing"] if _faced(sheet) else []
        inside += ["lining"] if any(c.startswith("L.") for c in sheet.pieces) else []
        if inside:
            yield Operation(
                Work.LINED,
                f"Fell the {' and the '.join(inside)} to the zip's tape",
                ("Its left side is left open as the shell's, the edges turned in.",),
                stitch=Stitch.HAND,
                seam_type=SeamType.PLACED,
                length=2 * opening,
                task=Task.BY_HAND,
            )
        yield Operation(
            Work.FASTEN,
            "Sew a hook and eye at the waist, inside the zip",
            ("It takes the strain while the zip is drawn up.",),
            stitch=Stitch.HAND,
            task=Task.HOOK,
            hazards=(Hazard.SMALL_PART,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from ends_findings(n, sheet)
        side = _above_waist(n, sheet)
        if side < n.z_top + 5.0:
            yield Finding(
                "Z5",
                Severity.REFUSE,
                f"The side is only {side:.1f} cm long above the waist: a zip that "
                f"begins {n.z_top:.1f} cm below the armhole has no room there.",
                "z top",
                "Begin it (z top) higher, or put the zip in the centre back.",
                {"side": side, "top": n.z_top},
            )
            return
        opening = _opening(n, sheet)
        most = _IN_ONE if in_one(sheet) or "dd" in n else _USUAL
        if not 18.0 - 1e-9 <= opening <= most + 1e-9:
            yield Finding(
                "Z6",
                Severity.WARN,
                f"The zip of the side is {opening:.1f} cm long; 18 to {most:.0f} cm is "
                "usual.",
                "z",
                "End it higher or lower (z).",
                {"opening": opening},
            )


def _faced(sheet: Sheet) -> bool:
    """True when a facing reaches down the side to the zip."""
    return (
        "FF" in sheet.pieces
        and sheet.piece("FF").has("side")
        and sheet.length("FF", "side") > _top(sheet)
    )


def _opening(n: Numbers, sheet: Sheet) -> float:
    """Length of the opening, cm: side seam above the waist, and what is below it."""
    return _above_waist(n, sheet) - _top(sheet) + zip_end(n)


def _above_waist(n: Numbers, sheet: Sheet) -> float:
    """The side seam above the waist, cm; a torso's runs on to the hem."""
    if in_one(sheet):
        return _ends(sheet)[-1] - n.z
    if "dd" in n:  # the side runs on to its seam
        side = sheet.edge("BS" if "BS" in sheet.pieces else "B", "side").path
        return side.length_to_point(sheet.points["wb"])
    return sheet.chain_length(sheet.seam("S4").left)


def _top(sheet: Sheet) -> float:
    """Where the zip begins below the armhole, clear of a side dart, cm."""
    return _ends(sheet)[0]


def _ends(sheet: Sheet) -> list[float]:
    """Notches of the side that tell an end of the zip, cm below the armhole."""
    return [k.left for k in sheet.seam("S4").notches if k.ticks == _TICKS]


def _mark(d: Drafting) -> None:
    """Where the zip begins on the side, from the underarm down."""
    d.part = "front"
    code = "FS" if "FS" in d.sheet.pieces else "F"
    piece = d.sheet.piece(code)
    name = next(e for e in ("side high", "side") if piece.has(e))
    down = piece.edge(name).path.reversed()
    d.found(
        "Zu",
        down.at_length(min(d.n.z_top, down.length)),
        "beginning of the zip",
        amounts=(("from the underarm down the left side", "z_top"),),
    )

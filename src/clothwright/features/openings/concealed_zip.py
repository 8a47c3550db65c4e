"""Closed back with a zip in the centre back seam: concealed (first garment 16), or
centred or lapped (transformations 7)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.torso import in_one
from clothwright.blocks.torso_width import width_at
from clothwright.curves import Cubic, Line, Path, Point
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.torso_widths import half_at
from clothwright.features.bodice.waist_rules import raised_at
from clothwright.features.chains import HANGING_PANELS, hanging
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.zips import (
    Setting,
    below_zip,
    how_set,
    strip_work,
    zip_notions,
    zip_task,
    zip_work,
)
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.skirts.peplum_rules import girth_at
from clothwright.features.wholes import below_waist, reach, zip_end
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, EdgeKind, Sheet, Verb, redraw
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 16"

_BELOW_NECK = 0.5
"""A zip begins this far below the neck, cm (16.3)."""

_ABOVE_HEM = 2.0
"""A zip ends at least this far above the hem, cm (16.3)."""

_SKIRT, _IN_SKIRT = 35.0, 18.0
"""What is so long is a skirt, and a zip ends so far below the waist in it, cm
(transformations §2: 16 to 20)."""

_OVER_HEAD = 2.0
"""What goes on over the head passes the bust with this much room, cm (16.3)."""

VENT_TOP = "S36"
"""Code of the seam along the top of a vent."""

ZIP = RuleTable("concealed zip")
_rule = ZIP.rule
SHAPED = RuleTable("centre back seam shaped")
STRAIGHT = RuleTable("centre back seam straight")


@SHAPED.rule(
    "cbs",
    "intake of the centre back seam",
    source=f"{_SRC}.1",
    key="cbs",
    formula="0.10·sup, at most 1.5 cm, not more than the back dart",
    low=0.0,
    high=2.0,
)
def _cbs(sup: float, bd: float) -> float:
    return min(clip(0.10 * sup, 0.0, 1.5), bd)


@STRAIGHT.rule("cbs", "intake of the centre back seam", source=f"{_SRC}.1", key="cbs")
def _none() -> float:
    return 0.0


@_rule(
    "bd net",
    "back waist dart beside the centre back seam",
    source=f"{_SRC}.1",
    key="bd_net",
    formula="bd − cbs",
)
def _bd_net(bd: float, cbs: float) -> float:
    return bd - cbs


@_rule(
    "x(CB)", "centre back at the waist", source=f"{_SRC}.2", key="x_back", formula="cbs"
)
def _x_back(cbs: float) -> float:
    return cbs


@_rule("gap", "gap of the back", source=_SRC, key="gap", formula="none")
def _no_gap() -> float:
    return 0.0


@_rule(
    "z",
    "end of the zip below the waist",
    source=f"{_SRC}.3",
    formula="12 cm, 18 cm in a skirt (L from 35 cm), 2 cm above the hem of a peplum",
    low=0.0,
    high=25.0,
)
def z(L: float) -> float:
    return _IN_SKIRT if L >= _SKIRT else min(12.0, L - _ABOVE_HEM)


def _raised(n: Numbers) -> float:
    return raised_at(n.x_back, n.sway, n.sway_dart, n.xd - n.bd_cut / 2)


class ConcealedZip(Feature):
    """Centre back seam with a zip through the waist."""

    kind: Literal["concealed zip"] = "concealed zip"
    title: ClassVar[str] = "Concealed zip"
    sentence: ClassVar[str] = (
        "The back closes with a {setting} [zip] that ends {below_waist} below the "
        "waist."
    )
    shows: ClassVar[Shown] = {
        "z": ("BC.cb", "B.cb"),
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"centre back zip", "closure", "dress opening", "opening"}
    )
    needs: ClassVar[dict[str, str]] = {
        "back neck": "a closed back needs a back neckline",
        "waist line": "a fitted top with a zip needs a waist seam; add one",
    }
    clashes: ClassVar[dict[str, str]] = {
        "open back": "an open back has no centre back seam for a zip"
    }

    below_waist: Annotated[
        Length | None,
        Number(
            "z",
            "z",
            "end of the zip below the waist",
            f"{_SRC}.3",
            low=0.0,
            high=25.0,
        ),
    ] = None
    setting: Setting = Setting.CONCEALED
    shaped: bool = True
    """Take a little of the waist in at the centre back seam."""

    def tables(self) -> tuple[RuleTable, ...]:
        return (ZIP, SHAPED if self.shaped else STRAIGHT)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLEND, "the centre back seam", self._draw),)

    def _draw(self, d: Drafting) -> None:
        n = d.n
        d.part = "back"
        code = "BC" if "BC" in d.sheet.pieces else "B"
        top = d.sheet.edge(code, "cb").path.end
        y0 = max(0.5 * n.yB, top.y + 1.0)
        waist = d.point(
            "CBz",
            "O",
            "centre back at the waist",
            right="x_back",
            down=n.yW - _raised(n) if n.sway else "yW",
        )
        q = waist.y - y0
        if n.cbs > 1e-9:
            a = Point(0.0, y0)
            path = Path(
                (
                    Cubic(
                        waist,
                        Point(n.cbs, waist.y - 0.4 * q),
                        Point(0.0, y0 + 0.4 * q),
                        a,
                    ),
                    Line(a, top),
                )
            )
        else:
            path = Path.line(waist, top)
        sheet = redraw(d.sheet, code, ["cb"], [Edge("cb", path, EdgeKind.SEAM)])
        d.lay(
            Verb.REDRAW,
            sheet,
            f"{code}.cb",
            "centre back seam",
            amounts=(("taken in by {} at the waist", "cbs"),),
            frm=("CBz",),
            detail="plumb from the neck to half the armhole's depth, then in a slight "
            "curve",
            lines=(path,),
        )

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        what = hanging(sheet) if crosses(n, sheet) else ""
        on = f"on the {what}'s centre back" if what else "of the centre back"
        yield (
            f"The opening is {fmt(_opening(n, sheet))} long: the zip ends at the notch "
            f"{on}, {fmt(n.z)} below the waist."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield from zip_notions(self.setting, _opening(n, sheet), "centre back")
        yield Notion(Article.HOOK, 1, "at the top of the zip")

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        opening = _opening(n, sheet)
        seam = sheet.seam("S21")
        top = seam.start
        meets = "; the waist seams meet" if crosses(n, sheet) else ""
        concealed = self.setting is Setting.CONCEALED
        lies = ", face down on the net line of each half" if concealed else ""
        put_in = Operation(
            zip_work(self.setting),
            f"Put in the {self.setting.value} zip",
            (
                f"From {fmt(_BELOW_NECK)} below the {top} to the notch {fmt(n.z)} "
                f"below the waist{lies}{meets}.",
                *how_set(self.setting, fmt, "left over right"),
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=2 * opening,
            task=zip_task(self.setting),
        )
        closed_seams = tuple(s for s in sheet.seams if s.code in (seam.code, VENT_TOP))
        closed = Operation(
            Work.CENTRE,
            "Close the centre back below the zip",
            below_zip(self.setting, vent=bool(closed_seams[1:])),
            seams=tuple(s.code for s in closed_seams),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            length=sum(sheet.chain_length(s.left) for s in closed_seams)
            - opening
            - _BELOW_NECK,
            neatened=2,
            press="open",
        )
        yield strip_work(fmt, "centre back")
        yield from (put_in, closed) if concealed else (closed, put_in)
        inside = finished_edges(sheet, ("BF",), "cb")
        what = ["facing"] if inside else []
        what += ["lining"] if any(c.startswith("L.B") for c in sheet.pieces) else []
        if what:
            yield Operation(
                Work.LINED,
                f"Fell the {' and the '.join(what)} to the zip's tape",
                ("The raw ends turned in, clear of the teeth.",),
                edges=inside,
                stitch=Stitch.HAND,
                seam_type=SeamType.PLACED,
                length=2 * opening if "lining" in what else None,
                task=Task.BY_HAND,
            )
        yield Operation(
            Work.FASTEN,
            "Sew a hook and eye at the top of the zip",
            stitch=Stitch.HAND,
            task=Task.HOOK,
            hazards=(Hazard.SMALL_PART,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return ends_findings(n, sheet)


def ends_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Whether a zip ends above the hem, and opens far enough to be drawn on."""
    if n.z > reach(n) - _ABOVE_HEM + 1e-9:
        yield Finding(
            "Z1",
            Severity.REFUSE,
            "The zip would end below the hem, or less than 2 cm above it.",
            "z",
            "Make the zip (z) shorter, or what hangs on the waist longer.",
            {"z": n.z, "L": reach(n)},
        )
    wide = _round_at_end(n, sheet)
    if wide < n.B + _OVER_HEAD and wide < n.H:
        yield Finding(
            "Z2",
            Severity.WARN,
            f"Where the zip ends, the top is only {wide:.1f} cm round: it goes "
            "neither over the bust nor over the hip.",
            "z",
            "Make the zip (z) longer, or cut what hangs on the waist fuller.",
            {"girth": wide, "B": n.B, "H": n.H},
        )


def crosses(n: Numbers, sheet: Sheet) -> bool:
    """True for a zip that runs over the seam on which a peplum or a skirt hangs."""
    return bool(hanging(sheet)) and n.z > below_waist(n)


def _round_at_end(n: Numbers, sheet: Sheet) -> float:
    """Girth of the garment where the zip ends, cm."""
    end = n.z
    if in_one(sheet) or ("dd" in n and (end <= n.dd or "L_T" not in n)):
        return 2 * half_at(n, sheet, end)
    if "half_S" in n:  # a skirt with darts or in gores
        return 2 * width_at(sheet, end, ("PF", "PB", *HANGING_PANELS))
    return girth_at(n, end)


def _opening(n: Numbers, sheet: Sheet) -> float:
    """Length of the opening, cm (16.3)."""
    codes = [code for code in ("BY", "BC", "B", "BM") if code in sheet.pieces]
    cb = sum(sheet.length(code, "cb") for code in codes)
    if in_one(sheet) or "dd" in n:  # a torso's centre back runs on below the waist
        path = sheet.edge(codes[-1], "cb").path
        cb -= path.length_to_point(sheet.points["CBz"])
    return cb - _BELOW_NECK + zip_end(n)

"""A kimono sleeve: cut in one with front and back, with a gusset where the arm is steep
(transformations 4)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, turned
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Shown, Stage, Words
from clothwright.features.bodice import sleeved_armhole
from clothwright.features.bodice.armhole import outlines
from clothwright.features.bodice.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import Role
from clothwright.features.sleeves.about import SLEEVE_SEAMS
from clothwright.features.sleeves.kimono_cut import GUSSET, STEEP, draw_kimono
from clothwright.features.sleeves.kimono_rules import KIMONO, LENGTHS, ROOM
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.features.sleeves.sleeve_joints import kimono_joints
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Given, Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Angle, Length

_SRC = "transformations 4"
_OWN = "common practice, no source"


class Kimono(Feature):
    """Sleeves cut in one with front and back."""

    kind: Literal["kimono sleeve"] = "kimono sleeve"
    title: ClassVar[str] = "Kimono sleeve"
    sentence: ClassVar[str] = (
        "The [sleeves are cut in one] with the body, {length} long from the shoulder "
        "and {hem} round at the hem, {angle} below the level; the underarm lies "
        "{lowered} lower."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {
        "km drop": ("F.underarm",),
        "km hem": ("F.sleeve hem",),
        "lk": ("F.overarm",),
        "km angle": ("F.overarm",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(GUSSET, Place.GUSSET, ("gusset",), others=Role.GUSSET),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S25": SLEEVE_SEAMS["S25"],
        "S57": "gusset of a kimono sleeve, in front, to the side",
        "S58": "gusset of a kimono sleeve, in front, to the arm",
        "S59": "gusset of a kimono sleeve, behind, to the side",
        "S60": "gusset of a kimono sleeve, behind, to the arm",
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"armhole", "lined arm", "sleeved", "sleeve", "armhole finish", "kimono"}
    )
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a kimono sleeve is drawn on a bodice block; add one",
        "waist bust dart": "under the arm the sleeve takes the place of a side dart: "
        'add a "bust dart" led to the waist',
    }
    clashes: ClassVar[dict[str, str]] = {
        "armhole": "a kimono sleeve has no armhole; leave the other off",
        "sleeve": "an order has one kind of sleeve",
        "front panel seam": "a panel line would start in the sleeve; take a bust dart "
        "led to the waist, or a low side dart, in place of the princess line",
        "back panel seam": "a panel line would start in the sleeve; take a back waist "
        "dart in place of the princess line",
        "upper bust dart": "the shoulder runs on into the sleeve; lead the bust dart "
        "to the waist",
        "back neck dart": "the shoulder runs on into the sleeve; set "
        'back_shoulder = "ease"',
        "front yoke": "a yoke ends at an armhole, which a kimono sleeve has not",
        "back yoke": "a yoke ends at an armhole, which a kimono sleeve has not",
        "torso": "a kimono sleeve is not yet drawn on a bodice in one with the skirt; "
        "take a waist seam",
        "side opening": "the side runs on into the sleeve; close it at the centre back "
        "or front",
        "cowl": "a cowl hangs from its own shoulders; leave one off",
        "open back": "the sleeves hang from the back; close it",
    }

    reach: Reach = Reach.WRIST
    """How far it reaches, unless a length is given."""

    length: Annotated[
        Length | None,
        Number(
            "lk",
            "lk",
            "length of the sleeve from the tip of the shoulder",
            _SRC,
            low=10.0,
            high=80.0,
        ),
    ] = None
    angle: Annotated[
        Angle | None,
        Number(
            "km_angle",
            "km angle",
            "overarm line below the level, front and back between them",
            _SRC,
            low=25.0,
            high=60.0,
            usual=(30.0, 55.0),
            kind=Kind.ANGLE,
        ),
    ] = None
    lowered: Annotated[
        Length | None,
        Number(
            "km_drop",
            "km drop",
            "underarm lowered for a kimono sleeve",
            _SRC,
            low=0.0,
            high=14.0,
            usual=(3.0, 8.0),
        ),
    ] = None
    radius: Annotated[
        Length | None,
        Number(
            "km_R",
            "km R",
            "radius of the curve under the arm",
            _SRC,
            6.0,
            2.5,
            6.0,
            25.0,
        ),
    ] = None
    hem: Annotated[
        Length | None,
        Number(
            "km_hem", "km hem", "hem of the kimono sleeve", _OWN, low=16.0, high=80.0
        ),
    ] = None
    raised: Annotated[
        Length | None,
        Number(
            "km_raise",
            "km raise",
            "tip of the shoulder raised for the arm",
            _OWN,
            1.0,
            0.375,
            0.0,
            2.5,
            (0.5, 2.0),
        ),
    ] = None
    gusset: Annotated[
        Length | None,
        Number(
            "gs",
            "gs",
            "side of the gusset, and its slash",
            _SRC,
            9,
            3.5,
            6,
            14,
            (8, 10),
        ),
    ] = None
    gusset_width: Annotated[
        Length | None,
        Number("gw", "gw", "width of the gusset", _SRC, 8.0, 3.25, 4.0, 12.0, (6, 10)),
    ] = None

    def said(self) -> str:
        gusset = "with a gusset {gusset} a side and {gusset_width} wide"
        if self.angle is None:
            return self.sentence.replace(
                " lower.", f" lower, rounded by {{radius}}; over 40°, {gusset}."
            )
        if self.angle <= STEEP:
            return self.sentence.replace(" lower.", " lower, rounded by {radius}.")
        return self.sentence.replace(" lower.", f" lower, {gusset}.")

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER, sleeved_armhole.SLEEVED, KIMONO, LENGTHS[self.reach])

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield from (number.usually(unit) for number in sleeved_armhole.USUAL)

    def stages(self) -> tuple[Stage, ...]:
        return (
            SHOULDER_STAGE,
            Stage(Rank.ARMHOLE, "necks and armholes", outlines),
            Stage(Rank.YOKE, "the kimono sleeves", draw_kimono),
        )

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return kimono_joints(sheet, n.tau)

    def cuts(self, sheet: Sheet) -> dict[str, Cuts]:
        return {GUSSET: Cuts("2", 2)} if GUSSET in sheet.pieces else {}

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.SHOULDER,
            "Sew the overarm seams",
            ("From the neck over the shoulder to the hem, the back eased in.",),
            seams=both_sides(sheet, "S3"),
            stitch=Stitch.LOCK,
            neatened=2,
            press="open, over a cushion at the shoulder",
            task=Task.SEAMS,
        )
        if GUSSET in sheet.pieces:
            yield from _gusset_operations(n, sheet, fmt)
        else:
            yield Operation(
                Work.SIDE,
                "Sew the sides and the seams under the arm",
                (
                    "In one, from the hem of the sleeve down.",
                    "Tape laid along the round is sewn in; clip to the tape.",
                ),
                seams=both_sides(sheet, "S4"),
                stitch=Stitch.LOCK,
                neatened=2,
                press="open",
                task=Task.SEAMS,
            )
        yield Operation(
            Work.HEM,
            "Hem the sleeves",
            ("Turned up once, its raw edge neatened first, and felled by hand.",),
            edges=finished_edges(sheet, ("F", "B"), "sleeve hem"),
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            neatened=1,
            task=Task.HEM,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        round_ = self._round(n, sheet)
        if round_ is not None and round_ < n.UA + ROOM - 2.0:
            yield Finding(
                "KM1",
                Severity.WARN,
                f"The sleeve is {round_:.1f} cm round at the upper arm (UA), which is "
                f"{n.UA:.1f} cm; it wants {n.UA + ROOM:.1f} cm.",
                "km drop",
                "Lower the underarm more, or hold the overarm less steep.",
                {"round": round_, "UA": n.UA},
            )
        if n.km_hem < n.HD and n.lk > n.SE:
            yield Finding(
                "KM2",
                Severity.WARN,
                f"The hem of the sleeve is {n.km_hem:.1f} cm round, the hand (HD) "
                f"{n.HD:.1f} cm.",
                "km hem",
                "Make it wider.",
                {"hem": n.km_hem, "HD": n.HD},
            )

    def _round(self, n: Numbers, sheet: Sheet) -> float | None:
        """Girth of the sleeve half way from the corner under the arm to the elbow."""
        out = 0.0
        for code, side in (("F", -1.0), ("B", 1.0)):
            over = sheet.edge(code, "overarm").path
            over = over if code == "B" else over.reversed()
            at = over.length - n.lk + n.SE * 0.55
            if at > over.length - 0.5:
                return None
            p, way = over.at_length(at), over.direction_at_length(at)
            across = Path.line(p, p + turned(way, 90.0 * side) * 60.0)
            hits = across.meets(sheet.edge(code, "underarm").path)
            if not hits:
                return None
            out += hits[0][0]
        return out


def _gusset_operations(
    n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
) -> Iterable[Operation]:
    """Stay the points before the seams are sewn, set the gussets after."""
    yield Operation(
        Work.STAY,
        "Stay the points of the gusset slashes",
        (
            "A square of thin firm cloth on the right side of each point; stitch round "
            "the point on the net line, one stitch across it, short stitches there.",
            "Cut from the seam up to the point, midway between the two lines.",
        ),
        stitch=Stitch.LOCK,
        length=8 * n.gs,
        task=Task.STAY,
    )
    yield Operation(
        Work.SLEEVE,
        "Set the gussets",
        (
            f"Each of {fmt(n.gs)} a side; its short way across lies from seam to seam.",
            "Sew every side from its end to the point, the body uppermost; do not "
            "catch the allowances at the ends.",
        ),
        seams=both_sides(sheet, "S57", "S58", "S59", "S60"),
        stitch=Stitch.LOCK,
        neatened=1,
        press="away from the gusset",
        task=Task.SLEEVES,
    )

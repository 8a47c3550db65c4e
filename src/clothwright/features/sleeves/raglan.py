"""A raglan: the shoulders of front and back cut in one with the sleeve (transformations
4)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Shown, Stage, Words
from clothwright.features.operations import Operation, Stitch, Task, Work
from clothwright.features.sleeves.about import SLEEVE_HEM, SLEEVE_SEAMS
from clothwright.features.sleeves.raglan_cut import make_raglan
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.features.sleeves.sleeve_joints import raglan_joints
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Given, Hand, Kind, Numbers
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "transformations 4"


_ASIDE = 2.0
"""The overarm seam comes in by so much unnoticed, cm (common practice, no source)."""


class Raglan(Feature):
    """Sleeve cut in one with the shoulders, sewn on from the neck to the underarm."""

    kind: Literal["raglan"] = "raglan"
    title: ClassVar[str] = "Raglan"
    sentence: ClassVar[str] = (
        "The sleeves are cut as [raglans]: the seam runs from the neck, {front} down "
        "it in front and {back} behind, to the underarm, bowed {bow}; the tip of the "
        "shoulder lies {gap} above the cap, and a seam runs over the arm."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {"E": ("SLF.raglan",), "gap": ("SLF.overarm",)}
    pieces: ClassVar[tuple[About, ...]] = (
        *(About(c, Place.SLEEVE, ("sleeve",), SLEEVE_HEM) for c in ("SLF", "SLB")),
        *(
            About(f"{c} top", shown=(part, "sleeve"))
            for c, part in (("F", "front"), ("B", "back"))
        ),
    )
    seams: ClassVar[Mapping[str, str]] = SLEEVE_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve cap", "raglan"})
    needs: ClassVar[dict[str, str]] = {
        "set-in sleeve": 'a raglan is cut of a set-in sleeve; add a "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "sleeve cap": "a raglan takes the place of the cap; leave the puffed cap off",
        "sleeve in two": "a raglan has its own two pieces; leave the two pieces off",
        "petals": "petals cross on a cap, which a raglan has not; leave one off",
        "drop shoulder": "a raglan has no shoulder over the arm; take a "
        '"sleeved armhole" for it',
        "front panel seam": "the raglan line would cut the panels; take a side dart or "
        "a bust dart led to the waist in place of the princess line",
        "back panel seam": "the raglan line would cut the panels; take a back waist "
        "dart in place of the princess line",
        "upper bust dart": "the raglan line would cut the bust dart in two; leave the "
        "dart at the side or lead it to the waist",
        "back neck dart": "the raglan line would cut the neck dart in two; set "
        'back_shoulder = "ease"',
        "front yoke": "the raglan line would cut the yoke; leave one off",
        "back yoke": "the raglan line would cut the yoke; leave one off",
        "cowl": "a cowl hangs from the shoulders that a raglan cuts off; leave one off",
        "open back": "a raglan ends in a back neck; close the back",
    }

    front: Annotated[
        Length | None,
        Number(
            "rg_F",
            "rg front",
            "raglan line down the front neck from the shoulder",
            _SRC,
            3.2,
            1.25,
            1.5,
            8.0,
            (2.5, 4.0),
        ),
    ] = None
    back: Annotated[
        Length | None,
        Number(
            "rg_B",
            "rg back",
            "raglan line along the back neck from the shoulder",
            _SRC,
            2.5,
            1.0,
            1.5,
            6.0,
            (2.0, 3.0),
        ),
    ] = None
    bow: Annotated[
        Length | None,
        Number(
            "rg_bow",
            "rg bow",
            "bow of the raglan line",
            _SRC,
            0.8,
            0.3125,
            0.0,
            2.0,
            (0.6, 1.0),
        ),
    ] = None
    gap: Annotated[
        Length | None,
        Number(
            "rg_gap",
            "rg gap",
            "tip of the shoulder above the top of the cap",
            _SRC,
            0.9,
            0.375,
            0.3,
            2.0,
            (0.6, 1.2),
        ),
    ] = None

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        name = "ease of the cap over the armhole"
        yield Given("E_cap", "E", name, Kind.LENGTH, 0.0, Hand.DEFAULT, _SRC)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.YOKE, "the raglan", make_raglan),)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return raglan_joints(sheet, n.tau)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.SHOULDER,
            "Sew the overarm seams",
            ("The back eased in over the shoulder, the tips notch on notch.",),
            seams=both_sides(sheet, "S3"),
            stitch=Stitch.LOCK,
            neatened=2,
            press="open, over a cushion at the shoulder",
            task=Task.SEAMS,
        )
        yield Operation(
            Work.FLAT,
            "Sew the raglan seams",
            (
                "While front and back lie flat, from the neck to the underarm, notch "
                "on notch.",
                "Clip the hollow under the arm; a second row there, beside the first.",
            ),
            seams=both_sides(sheet, "S23", "S24"),
            stitch=Stitch.LOCK,
            neatened=2,
            press="open above the notch",
            task=Task.SLEEVES,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        over = sheet.edge("SLF", "overarm").path.reversed()
        aside = over.at_length(n.Lr).x - sheet.points["K"].x
        if aside > _ASIDE:
            yield Finding(
                "RG2",
                Severity.NOTE,
                f"The front shoulder (SH) lies {aside:.1f} cm beside the middle of the "
                "sleeve: the front armhole is long and hollow for it.",
                "rg gap",
                "Pinch the front armhole of a full cup (full_cup_pinched), or look at "
                "the shoulder on a toile.",
                {"aside": aside},
            )
        if n.E_cap > 0.05:
            yield Finding(
                "RG1",
                Severity.REFUSE,
                f"The cap of the raglan has {n.E_cap:.1f} cm of ease; a raglan is cut "
                "of a cap without ease.",
                "E",
                "Leave the ease of the cap (E) out, or set it to 0.",
                {"E": n.E_cap},
            )

"""Pockets in the front panel seams of a dress (transformations §9)."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.pockets.panels import (
    On,
    centre_front,
    panel_clashes,
    panel_words,
    seam_below,
)
from clothwright.features.skirts.about import GORE, POCKET_SEAMS
from clothwright.features.skirts.pocket_drawing import (
    OFF_CENTRE,
    PANEL_BAG,
    bag_findings,
    hang_from_seam,
    pocket_seams,
)
from clothwright.features.skirts.skirt_pockets import SkirtPockets, hand_findings
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM
from clothwright.units.fields import Length

_OF_GORES: Mapping[On, Mapping[str, str]] = {
    On.TORSO: {},
    On.GORES: {
        "shaped band": "a contour waistband takes the top of the gores, where the "
        'pockets hang; take a straight "waistband" or a "waist facing"'
    },
}
"""What pockets in the seams of gores do not allow."""

_WIDE = "pkw"
"""Symbol of the bag's width."""

_T = SkirtPockets.numbers()


class Towards(Enum):
    """Where the bag lies."""

    SIDE = "side"
    """Behind the side panel, which is the wider one."""

    CENTRE = "centre front"


class PanelSeamPockets(Feature):
    """Two pockets in the front panel seams."""

    kind: Literal["panel seam pockets"] = "panel seam pockets"
    title: ClassVar[str] = "Pockets in the panel seams"
    sentence: ClassVar[str] = (
        "[Pockets] lie in the front panel seams of the {on}, from {begin} below the "
        "waist, their bags towards the {towards}."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About(PANEL_BAG, Place.POCKET, ("front", "waist", "skirt front")),
    )
    seams: ClassVar[Mapping[str, str]] = POCKET_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"pockets"})
    clashes: ClassVar[dict[str, str]] = {
        "pockets": "a garment has one pair of pockets in its seams",
        "set pocket": "the bags of pockets in the seams hang where the others would be "
        "stitched on; leave one pair off",
    }

    on: On = On.TORSO
    towards: Towards = Towards.SIDE
    begin: Annotated[
        Length | None,
        replace(
            _T["begin"],
            name="mouth in the panel seam, below the waist",
            cm=8.0,
            inch=3.125,
            high=30.0,
            usual=(4.0, 22.0),
        ),
    ] = None
    mouth: Annotated[
        Length | None, replace(_T["mouth"], name="length of a mouth in the panel seam")
    ] = None
    bag: Annotated[
        Length | None, replace(_T["bag"], cm=31.0, inch=12.25, high=50.0)
    ] = None
    bag_width: Annotated[
        Length | None, replace(_T["bag_width"], symbol=_WIDE, cm=14.5, inch=5.75)
    ] = None

    def wants(self) -> Mapping[str, str]:
        return panel_words(self.on, alone=True)

    def forbids(self) -> Mapping[str, str]:
        return {**self.clashes, **panel_clashes(self.on), **_OF_GORES[self.on]}

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the pockets", self._draw),)

    def _draw(self, d: Drafting) -> None:
        """From the seam of the panel that the bag lies behind. Raises PaperError."""
        d.part = "waist" if self.on is On.TORSO else "skirt front"
        centre, side = seam_below(d.sheet, d.n, self.on)
        pair = self.on.panels_in(d.sheet)
        behind = self.towards is Towards.CENTRE
        if pair.side == GORE:
            _clear_of_zip(d.n)
        hang_from_seam(
            d,
            pair.centre if behind else pair.side,
            (centre if behind else side).reversed(),
            "panel seam",
            PANEL_BAG,
            at_left=behind,
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return pocket_seams(t, self.on.panels_in(t.sheet).centre, PANEL_BAG)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {PANEL_BAG: Cuts("4 (2 pairs)", 4, ("lining",))}

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            "Pockets: sew the bags to the allowances of both panels, and the panel "
            f"seams above and below the mouth of {fmt(n.pk_mouth)} (notches); the "
            f"seams lie open, the bags towards the {self.towards.value}."
        )
        if self.on.panels_in(sheet).centre == GORE:
            yield (
                "One gore lies at the centre front: the pockets lie in both its seams, "
                "the notches of the mouth hold there alone."
            )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        part = "gore" if self.on.panels_in(sheet).side == GORE else "panel"
        yield Operation(
            Work.PANEL,
            f"Sew the bags of the pockets to the {part}s",
            (
                f"Each to the allowance of its {part} from notch to notch, right sides "
                "together; press them out, beyond the seam.",
                f"The {part} seams are then sewn above and below the mouths alone.",
            ),
            edges=finished_edges(sheet, (PANEL_BAG,)),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="flat",
            before=(self.on.panels_in(sheet).seam,),
        )
        yield Operation(
            Work.PANEL,
            "Sew the bags of the pockets round",
            (
                f"Lay them towards the {self.towards.value}, and clip the allowance of "
                f"the other {part} above and below the mouth; they hang free.",
            ),
            seams=tuple(s.code for s in sheet.seams if s.code == "S47"),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            task=Task.SIDE_POCKET,
            count=2.0,
            after=(self.on.panels_in(sheet).seam,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from bag_findings(n, sheet, slant=False)
        yield from hand_findings(n, _WIDE)
        room = self._room(n, sheet)
        if self.towards is Towards.CENTRE:
            if room < OFF_CENTRE - 0.05:
                yield Finding(
                    "P2",
                    Severity.REFUSE,
                    f"The pocket bag comes to {max(0.0, room):.1f} cm from the centre "
                    f"front; {OFF_CENTRE:g} cm must stay.",
                    _WIDE,
                    f'Make the bag ({_WIDE}) narrower, or set towards = "side".',
                    {"room": room},
                )
        elif room <= 0.0:
            yield Finding(
                "PB1",
                Severity.WARN,
                f"The pocket bag reaches over the {self._far(sheet)} and will fold "
                "round the hip there.",
                _WIDE,
                f"Make the bag ({_WIDE}) narrower, or set it (pb) lower, where the "
                "panel is wider.",
                {"room": room},
            )

    def _far(self, sheet: Sheet) -> str:
        """The seam beyond the panel that the bag lies behind."""
        gore = self.on.panels_in(sheet).side == GORE
        return "next seam" if gore else "side seam"

    def _room(self, n: Numbers, sheet: Sheet) -> float:
        """Cloth between the bag and the centre front or the side seam, cm."""
        bag = sheet.piece(PANEL_BAG).edge("bag").path
        if self.towards is Towards.CENTRE:
            return centre_front(sheet, n, self.on) - bag.bounds()[2]
        pair = self.on.panels_in(sheet)
        side = sheet.edge(pair.side, pair.beyond).path
        if side.meets(bag):
            return -1.0
        return min(
            side.nearest(bag.at_length(bag.length * k / 24))[1] for k in range(25)
        )


def _clear_of_zip(n: Numbers) -> None:
    """All gores are alike: the notches of a mouth and that of the zip lie in one edge.
    Raises PaperError where they are too near to each other."""
    ends = (n.pk_begin, n.pk_begin + n.pk_mouth)
    if "z_S" in n and any(abs(end - n.z_S) < NOTCH_ROOM for end in ends):
        raise PaperError(
            f"a mouth of the pockets begins or ends {n.z_S:.1f} cm below the waist, "
            "where the notch of the zip is: begin it (pb) higher or lower"
        )

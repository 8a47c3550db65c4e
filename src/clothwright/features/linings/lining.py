"""Lining: to the edge, or below the facing (first garment 15)."""

from collections.abc import Callable, Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage, useless
from clothwright.features.linings.bound_lining import baste_lining, to_bound
from clothwright.features.linings.in_one_lining import in_one, line_in_one
from clothwright.features.linings.lining_checks import (
    bound_findings,
    edge_findings,
    hung_findings,
)
from clothwright.features.linings.lining_edge import to_edge
from clothwright.features.linings.lining_hems import (
    line_hanging,
    line_torso,
    shorter_by,
)
from clothwright.features.linings.lining_pieces import below_facing
from clothwright.features.linings.lining_seams import with_lining_seams
from clothwright.features.linings.roll import LEAST_STRAP
from clothwright.features.linings.walked import lay_walked
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.skirts.wrap_skirt_drawing import EDGE
from clothwright.findings import Finding
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 15"

HUNG = RuleTable("lining below the facing")


@HUNG.rule(
    "left",
    "least that the strip may leave of the back beside it",
    source="truing 5",
    key="strip_left",
    formula="as wide as the narrowest strap: less is not worth a piece of lining",
)
def _left() -> float:
    return LEAST_STRAP


_UNLINED = {
    word: f"a sleeve with {what} is not lined yet; leave the lining off"
    for word, what in (
        ("full cap", "a full cap"),
        ("sleeve hem", "a shaped hem"),
        ("sleeve end", "a band or a cuff"),
    )
}
"""What a sleeve may not have if it is to be lined."""


_SET_IN = (
    "a cap or a flutter sleeve is not lined; take a set-in one, or leave the lining off"
)

_NOT_BOUND = {
    "button stand": "a button stand has a facing behind it; line below that and face "
    "the neck, or leave the lining off",
    "open edges": "an edge that opens has a facing behind it; line below that and "
    "face the neck, or leave the lining off",
    **dict.fromkeys(
        ("raglan", "kimono"),
        "sleeves cut in one with the shoulder or the body are lined below a facing; "
        "face the neck, or leave the lining off",
    ),
    "back slit": "a slit is faced; line the top below the facing and face the neck",
}
"""What a lining to the bound edges does not go with."""


class Mode(Enum):
    """How far the lining goes."""

    TO_EDGE = "to the edge"
    """Bagged at neck, armholes and slanted edges; in place of facings."""

    BELOW_FACING = "below the facing"
    """From the facing's free edge down to the waist."""

    BOUND = "to the bound edges"
    """As far as the shell, and bound with it at neck and armholes."""


class Lining(Feature):
    """Lining of the bodice and the peplum."""

    kind: Literal["lining"] = "lining"
    title: ClassVar[str] = "Lining"
    sentence: ClassVar[str] = "It is [lined] {mode}."
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"lining"})
    clashes: ClassVar[dict[str, str]] = {"lining": "an order has one lining"}

    mode: Mode = Mode.BELOW_FACING
    roll: Annotated[
        Length | None,
        Number(
            "rho_l",
            "ρ lining",
            "roll of the lining",
            "first garment 14.4",
            0.3,
            0.125,
            0.0,
            0.6,
        ),
    ] = None
    hem_shorter: Annotated[
        Length | None,
        Number(
            "short",
            "shorter",
            "lining shorter at the hem",
            _SRC,
            1.5,
            0.625,
            0.0,
            4.0,
        ),
    ] = None

    @property
    def to_edge(self) -> bool:
        """True when it is bagged to the shell's own edges."""
        return self.mode is Mode.TO_EDGE

    @property
    def bound(self) -> bool:
        """True when its edges are caught in bindings."""
        return self.mode is Mode.BOUND

    def provides(self) -> frozenset[str]:
        if self.bound:
            return self.gives
        if self.to_edge:
            return self.gives | {"inside finish", "lining to the edge"}
        return self.gives | {"hung lining"}

    def wants(self) -> dict[str, str]:
        if self.bound:
            return {
                "bound neck": "a lining to the bound edges is caught in the binding "
                'of the neck; add a "neck binding", or line below the facing',
                "lined arm": _SET_IN,
            }
        if self.to_edge:
            return {"sleeveless": "a lining to the edge is for a sleeveless top"}
        return {
            "lined arm": _SET_IN,
            "inside finish": "a lining below the facing needs the facing",
        }

    def forbids(self) -> dict[str, str]:
        if self.bound:
            return {**self.clashes, **_NOT_BOUND, **_UNLINED}
        if self.to_edge:
            return {
                **self.clashes,
                "cowl": "a lining to the edge would hold the folds of a cowl; line "
                "below the facing",
                "inside finish": "a lining to the edge takes the place of the facing; "
                "leave one off",
            }
        return {
            **self.clashes,
            "strapless": "a strapless bodice is lined to the edge, which takes the "
            'place of the facing; set mode = "to the edge"',
            "back neck dart": "with a dart at the back neck, line to the edge",
            **_UNLINED,
        }

    def tables(self) -> tuple[RuleTable, ...]:
        return (HUNG,) if self.mode is Mode.BELOW_FACING else ()

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.LINING, "the lining", self._draft),
            Stage(Rank.LINING_IN_ONE, "the lining of the sleeves", self._in_one),
        )

    def _draft(self, d: Drafting) -> None:
        if not in_one(d.n):
            self._trace(d, below_facing)

    def _in_one(self, d: Drafting) -> None:
        """With sleeves cut in one with the body all is traced after these."""
        if in_one(d.n):
            self._trace(d, line_in_one)

    def _trace(self, d: Drafting, below: Callable[[Drafting], None]) -> None:
        d.part = "lining"
        if self.bound:
            rho = 0.0
            to_bound(d)
        else:
            rho = d.n.rho_l if self.to_edge else d.n.rho
            (to_edge if self.to_edge else below)(d)
        line_hanging(d)
        line_torso(d)
        lay_walked(d, with_lining_seams(d.sheet, rho, shorter_by(d.n)))

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield from baste_lining(sheet)
        free = finished_edges(sheet, ("L.",))
        necks = tuple(r for r in free if r.edge == "neck")
        if necks:
            yield Operation(
                Work.LINING,
                "Hem the neck of the front lining",
                ("Turned narrow, twice: it hangs free behind the cowl.",),
                edges=necks,
                stitch=Stitch.LOCK,
                seam_type=SeamType.HEM_TWICE,
                task=Task.HEM,
            )
        hems = tuple(r for r in free if r not in necks and r.edge != EDGE)
        sleeves = all(r.piece.startswith("L.SL") for r in hems)
        if hems:
            yield Operation(
                Work.LINING_HEM,
                "Hem the sleeves of the lining" if sleeves else "Hem the lining",
                ("Turned twice, when the shell has hung and is hemmed.",),
                edges=hems,
                stitch=Stitch.LOCK,
                seam_type=SeamType.HEM_TWICE,
                task=Task.HEM,
            )
        if any(code.startswith("L.SL") for code in sheet.pieces):
            yield Operation(
                Work.LINED,
                "Catch the sleeve linings to the armholes",
                ("Under the arm and at the shoulder, allowance on allowance.",),
                stitch=Stitch.HAND,
                task=Task.BY_HAND,
            )
        elif in_one(n):
            yield Operation(
                Work.LINED,
                "Catch the lining under the arms",
                ("Allowance on allowance, by a few loose stitches at the round.",),
                stitch=Stitch.HAND,
                task=Task.BY_HAND,
            )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.bound:
            so, to_do = "A lining to the bound edges", "Leave it (ρ lining) out."
            return (
                *useless(self, ("roll",), so, to_do),
                *bound_findings(n, sheet),
            )
        return edge_findings(n, sheet) if self.to_edge else hung_findings(n, sheet)

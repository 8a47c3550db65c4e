"""Opening of a skirt: a zip in the centre back seam or in the left side
(transformations §7)."""

from collections.abc import Callable, Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.notions import Notion
from clothwright.features.openings.zips import Setting, zip_notions
from clothwright.features.operations import Operation
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.contour_flared import above
from clothwright.features.skirts.gore_seams import gore_seam
from clothwright.features.skirts.skirt_sewing import zip_operations
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, EdgeKind, Sheet, redraw
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §7"

_SHORTEST = 2.0
"""A zip may end so far above the hip and still let it through, cm (zip lengths of
transformations §7: the hip depth less 0 to 2)."""

_SEAMS = {"Zs": "left side", "Zb": "centre back"}

SKIRT_ZIP = RuleTable("zip of a skirt")


@SKIRT_ZIP.rule(
    "zs",
    "opening of the skirt, from its waist",
    source=_SRC,
    key="z_S",
    formula="WH − 1.5 cm, but 16 cm to 20 cm",
    low=10.0,
    high=30.0,
)
def _opening(WH: float) -> float:
    return min(max(WH - 1.5, 16.0), 20.0)


def _called(sheet: Sheet, mark: str) -> str:
    """The seam that opens, by the mark of the zip's end on it."""
    return _SEAMS.get(mark) or f"{gore_seam(sheet)} that opens"


class Where(Enum):
    """Where a skirt opens."""

    CENTRE_BACK = "centre back"
    """In a seam down the centre back."""

    SIDE = "left side"
    """In the left side seam."""


class SkirtZip(Feature):
    """Zip of a skirt."""

    kind: Literal["skirt zip"] = "skirt zip"
    title: ClassVar[str] = "Zip of a skirt"
    sentence: ClassVar[str] = (
        "It opens with a {setting} [zip] in the {where}, {length} long."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"skirt opening"})
    needs: ClassVar[dict[str, str]] = {
        "skirt block": "a skirt zip needs a skirt; a top closes with a concealed zip"
    }
    clashes: ClassVar[dict[str, str]] = {"skirt opening": "a skirt opens once"}

    length: Annotated[
        Length | None,
        Number(
            "z_S",
            "zs",
            "opening of the skirt, from its waist",
            _SRC,
            low=10.0,
            high=30.0,
            usual=(16.0, 23.0),
        ),
    ] = None
    where: Where = Where.CENTRE_BACK
    setting: Setting = Setting.CONCEALED

    def provides(self) -> frozenset[str]:
        side = self.where is Where.SIDE
        return self.gives | {"side opening" if side else "back opening"}

    def tables(self) -> tuple[RuleTable, ...]:
        return (SKIRT_ZIP,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the zip", self._mark),)

    def _mark(self, d: Drafting) -> None:
        """The end of the zip; the centre back becomes a seam for it."""
        if self.where is Where.CENTRE_BACK and BACK in d.sheet.pieces:
            seamed_back(d)
        mark, code, edge = self._seam(d.sheet)
        d.part = "skirt back" if code == BACK else d.sheet.piece(code).name.lower()
        path = d.sheet.edge(code, edge).path
        down = path.reversed() if edge == "cb" else path
        top = above(d.n, d.sheet)
        d.found(
            mark,
            down.at_length(min(d.n.z_S - top, down.length)),
            "end of the zip",
            amounts=(
                (f"from the waist down the {_called(d.sheet, mark)}", "z_S"),
                *((("of it in the band", top),) if top > 0 else ()),
            ),
        )

    def _seam(self, sheet: Sheet) -> tuple[str, str, str]:
        """Mark of the zip's end, and the piece and edge that it lies on."""
        if GORE in sheet.pieces:
            return "Zg", GORE, "seam"
        if self.where is Where.SIDE:
            return "Zs", BACK, "side"
        return "Zb", BACK, "cb"

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        seam = _called(sheet, self._seam(sheet)[0])
        yield (
            f"The opening is {fmt(n.z_S)} long: the zip ends at the notch of the "
            f"{seam}."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        seam = _called(sheet, self._seam(sheet)[0])
        yield from zip_notions(self.setting, n.z_S, seam)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        seam = _called(sheet, self._seam(sheet)[0])
        return zip_operations(n, sheet, fmt, seam, self.setting)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if "WH" in n and "db_S" in n and n.z_S < n.WH - n.db_S - _SHORTEST - 2.0:
            yield Finding(
                "Z3",
                Severity.WARN,
                "The zip ends so far above the hip that it may not let it through.",
                "zs",
                "Make the opening longer.",
                {"z": n.z_S, "WH": n.WH},
            )
        mark, *first = self._seam(sheet)
        runs = [(first[0], first[1])]
        runs += [("SYB", e) for _, e in runs[:1] if "SYB" in sheet.pieces]
        runs += [(c, "side") for c in sheet.pieces if mark == "Zs" and c[0] == "T"]
        seam = sum(sheet.length(*run) for run in runs)
        if n.z_S > seam - 3.0:
            yield Finding(
                "Z4",
                Severity.REFUSE,
                "The zip is longer than the seam that it is set into.",
                "zs",
                "Make the opening (zs) shorter or the vent lower; in tiers, choose the "
                "left side, where it runs on from tier to tier.",
                {"z": n.z_S, "seam": seam},
            )


def seamed_back(d: Drafting, back: str = BACK) -> None:
    """The centre back as a seam in place of a fold."""
    edge = d.sheet.edge(back, "cb")
    if edge.kind is EdgeKind.SEAM:
        return
    d.part = "skirt back"
    d.draw("centre back", edge.path, "centre back as a seam, not on the fold")
    d.sheet = redraw(d.sheet, back, ["cb"], [Edge("cb", edge.path, EdgeKind.SEAM)])

"""Zip in the left side of trousers (transformations §7)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import BACK
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.notions import Notion
from clothwright.features.openings.openings import too_short
from clothwright.features.openings.zips import Setting, zip_notions
from clothwright.features.operations import Operation
from clothwright.features.skirts.skirt_sewing import zip_operations
from clothwright.features.skirts.skirt_zip import SKIRT_ZIP
from clothwright.findings import Finding
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §7"


class SideZip(Feature):
    """Zip in the left side."""

    kind: Literal["side zip"] = "side zip"
    title: ClassVar[str] = "Side zip"
    sentence: ClassVar[str] = (
        "They close with a {setting} [zip] in the left side, {length} long."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"trouser opening", "side zip"})
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "a side zip is for trousers; a skirt opens with a skirt zip"
    }
    clashes: ClassVar[dict[str, str]] = {"trouser opening": "trousers open once"}

    length: Annotated[
        Length | None,
        Number(
            "z_S",
            "zs",
            "opening of the side, from the waist",
            _SRC,
            low=10.0,
            high=30.0,
            usual=(16.0, 23.0),
        ),
    ] = None
    setting: Setting = Setting.CONCEALED

    def tables(self) -> tuple[RuleTable, ...]:
        return (SKIRT_ZIP,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the zip", _mark),)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            f"The opening is {fmt(n.z_S)} long: the zip ends at the notch of the left "
            "side."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield from zip_notions(self.setting, n.z_S, "left side")

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return zip_operations(n, sheet, fmt, "left side", self.setting)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return too_short(n, n.z_S, "opening", "zs")


def _mark(d: Drafting) -> None:
    d.part = "trouser back"
    path = d.sheet.edge(BACK, "side").path
    d.found(
        "Zs",
        path.at_length(d.n.z_S),
        "end of the zip",
        frm=("Wbs",),
        amounts=(("from the waist down the left side", "z_S"),),
    )

"""Underlining: a second cloth behind the shell, sewn in one with it (transformations
6)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number
from clothwright.features.bodice.about import SHELL
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet, own_piece
from clothwright.rules import Numbers
from clothwright.units.fields import Length

UNDERLINING = "underlining"
"""Plain name of the cloth."""

_BELOW = ("PF", "PFC", "PFS", "PB", "PBC", "PBS", "SF", "SB", "SG")


class Parts(Enum):
    """What is underlined."""

    BODICE = "the bodice"
    ALL = "bodice and skirt"
    """What hangs on the waist too; sleeves stay soft."""

    SKIRT = "the skirt"


_CODES = {
    Parts.BODICE: SHELL,
    Parts.ALL: (*SHELL, *_BELOW),
    Parts.SKIRT: _BELOW,
}


class Underlining(Feature):
    """Underlining of the shell."""

    kind: Literal["underlining"] = "underlining"
    title: ClassVar[str] = "Underlining"
    sentence: ClassVar[str] = (
        "Behind the shell of {parts} lies an [underlining], {less} smaller at the side "
        "seams."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"underlining"})
    clashes: ClassVar[dict[str, str]] = {
        "underlining": "an order has one underlining",
        "cowl": "an underlining would hold the folds of a cowl; leave it off",
    }

    parts: Parts = Parts.BODICE
    less: Annotated[
        Length | None,
        Number(
            "ul_less",
            "ul less",
            "underlining smaller at each side seam",
            "transformations 6",
            0.15,
            0.0625,
            0.0,
            0.5,
            (0.1, 0.3),
        ),
    ] = None

    def wants(self) -> Mapping[str, str]:
        if self.parts is not Parts.BODICE:
            return self.needs
        return {
            **self.needs,
            "bodice": "there is no bodice to be underlined; set the underlining's "
            'parts to "the skirt", or leave it off',
        }

    def forbids(self) -> Mapping[str, str]:
        if self.parts is Parts.SKIRT:
            return self.clashes
        return {
            **self.clashes,
            "strapless": "a strapless bodice is mounted on coutil or net of its own; "
            'leave the underlining off, or set its parts to "the skirt"',
        }

    def cut_again(self, sheet: Sheet) -> Mapping[str, str]:
        return dict.fromkeys(self._pieces(sheet), UNDERLINING)

    def _pieces(self, sheet: Sheet) -> tuple[str, ...]:
        codes = _CODES[self.parts]
        return tuple(c for c in sheet.pieces if own_piece(c) in codes)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        names = [sheet.piece(c).name.lower() for c in self._pieces(sheet)]
        yield (
            f"Underlining is cut by the shell's paper ({', '.join(names)}), "
            f"{fmt(n.ul_less)} less at each side seam."
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        if not self._pieces(sheet):
            return
        pieces = [sheet.piece(c) for c in self._pieces(sheet)]
        around = 2 * sum(p.outline.length for p in pieces)
        dart = any("leg" in e.name or "dart" in e.name for p in pieces for e in p.edges)
        says: tuple[str, ...] = (
            "Each piece on the wrong side of its shell, raw edges level: the "
            f"underlining, {fmt(n.ul_less)} smaller at the sides, lies inside the "
            "curve of the body. Baste it over the hand, within the allowances; from "
            "then on the two are one piece.",
        )
        if dart:
            says += ("Baste along the middle of every dart before it is folded.",)
        yield Operation(
            Work.UNDERLINE,
            "Mount the underlining",
            says,
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            length=around,
            task=Task.BY_HAND,
            count=float(len(pieces)),
        )

    def checks(
        self,
        n: Numbers,
        sheet: Sheet,
    ) -> Iterable[Finding]:
        if not self._pieces(sheet):
            yield Finding(
                "UL1",
                Severity.REFUSE,
                f"The order has nothing that is {self.parts.value}: no piece would be "
                "underlined.",
                "ul less",
                "Set its parts to what there is, or leave the underlining (ul less) "
                "off.",
            )

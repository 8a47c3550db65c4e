"""A cut-out in the back that is bound by a bias strip, below a neck that is bound too;
above it the centre back is sewn together (transformations 2, deep back c; 3)."""

from collections.abc import Callable, Iterable, Mapping
from typing import ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Rank, Shown, Stage
from clothwright.features.chains import ABOVE, CUT_OUT, CUT_OUT_STRIP, Chains
from clothwright.features.linings.binding import (
    Bound,
    Ends,
    Strip,
    backwards,
    cut_net,
    lay_strip,
    meets_centre,
    strip_edge,
    strip_seams,
)
from clothwright.features.linings.binding_sewing import strip_operations
from clothwright.features.necks.over_head import CLOSED_NECK
from clothwright.features.openings.cut_out import (
    ABOVE_SEAM,
    BACKS,
    CutOut,
    back_of,
)
from clothwright.features.openings.cut_out_back import SEAM_BEHIND
from clothwright.features.openings.cut_out_findings import cut_out_findings
from clothwright.features.operations import Operation, Work
from clothwright.features.roles import Role
from clothwright.findings import Finding
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers, RuleTable


class BoundCutOut(CutOut):
    """Bound opening in the back below a bound neck."""

    kind: Literal["bound cut-out"] = "bound cut-out"
    title: ClassVar[str] = "Bound cut-out"
    sentence: ClassVar[str] = (
        "The back is [cut out] in the shape of a {shape}, from {top} below the nape to "
        "{foot} above the waist and {half} wide to each side, and bound as the neck; "
        "above it the centre back is sewn together."
    )
    shows: ClassVar[Shown] = {
        "co top": tuple(f"{c}.{ABOVE}" for c in BACKS),
        "co foot": tuple(f"{c}.{CUT_OUT}" for c in BACKS),
        "co half": tuple(f"{c}.{CUT_OUT}" for c in BACKS),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(CUT_OUT_STRIP, Place.BINDING, ("band",), others=strip_edge),
        *cut_net(CUT_OUT),
        *(About(code, edges={ABOVE: Role.CENTRE_ZIP}) for code in BACKS),
    )
    seams: ClassVar[Mapping[str, str]] = {
        ABOVE_SEAM: "centre back above a cut-out",
        "S143": "bias strip on a half of a cut-out",
    }
    needs: ClassVar[Mapping[str, str]] = {
        **CutOut.needs,
        **SEAM_BEHIND,
        "bound neck": 'a cut-out is bound below a bound neck; add a "neck binding", or '
        'take a "cut-out back", which is faced',
    }

    clashes: ClassVar[Mapping[str, str]] = {
        **CutOut.clashes,
        "lining": "a bound cut-out is not lined yet; leave the lining off, or take a "
        '"cut-out back", face the neck, and line below the facing',
    }

    def tables(self) -> tuple[RuleTable, ...]:
        return (*super().tables(), CLOSED_NECK)

    @property
    def sewn_above(self) -> bool:
        return True

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.STAND, "the cut-out", self._cut),
            Stage(Rank.COLLAR, "the strips of the cut-out", _draft),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        yield from super().sewn(t, n)
        yield from strip_seams(t, _strip(n), (_part(t),))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {CUT_OUT_STRIP: Cuts("2 (1 pair), on the bias", 2, bias=True)}

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return strip_operations(sheet, fmt, _strip(n), Work.EDGE)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from cut_out_findings(n, sheet)


def _strip(n: Numbers) -> Strip:
    """As wide as that of the neck, and as much shorter."""
    return Strip(CUT_OUT_STRIP, "cut-out", "S143", False, "", n.nb_w, n.nb_short)


def _part(t: Chains) -> Bound:
    """Half the cut-out, from its foot up."""
    chain = t.chain((back_of(t.sheet), CUT_OUT, False))
    return Bound(
        "one half",
        chain,
        "foot",
        "top",
        first=meets_centre(t, backwards(chain)[-1]),
        last=meets_centre(t, chain[-1]),
    )


def _draft(d: Drafting) -> None:
    """Draw the strip that binds half of the cut-out (VC)."""
    lay_strip(d, _strip(d.n), (_part(Chains(d.sheet)),), "Vc", Ends.TAKEN_IN)

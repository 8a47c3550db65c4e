"""The armholes bound by bias strips, in place of a facing (transformations 3)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Rank, Shown, Stage
from clothwright.features.chains import ARM_STRIP, Chains
from clothwright.features.linings.binding import (
    Bound,
    Ends,
    Strip,
    backwards,
    cut_net,
    lay_strip,
    short_of,
    strip_edge,
    strip_seams,
    width_of,
)
from clothwright.features.linings.binding_sewing import strip_operations
from clothwright.features.linings.bound_lining import under_binding
from clothwright.features.linings.facing_seams import back_armhole, front_armhole
from clothwright.features.operations import Operation, Work
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length, Ratio

_FREE = 0.5
"""What stays of the shoulder beside the binding of the neck, cm (our own)."""


class ArmholeBinding(Feature):
    """Bias strips that bind the armholes."""

    kind: Literal["armhole binding"] = "armhole binding"
    title: ClassVar[str] = "Armhole binding"
    sentence: ClassVar[str] = (
        "The armholes are [bound] by bias strips, {width} wide and cut {short} per "
        "cent shorter than the edge."
    )
    shows: ClassVar[Shown] = {
        "ab": (f"{ARM_STRIP}.inside",),
        "ab short": (f"{ARM_STRIP}.armhole 1",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(ARM_STRIP, Place.BINDING, ("band",), others=strip_edge),
        *cut_net("armhole", "armhole low", "armhole high", "cap armhole"),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S141": "bias strip on an armhole, front and back, and its ends"
    }
    gives: ClassVar[frozenset[str]] = frozenset({"armhole finish"})
    needs: ClassVar[dict[str, str]] = {
        "sleeveless": "a strip binds an armhole without a sleeve; add a "
        '"sleeveless armhole"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "armhole finish": "an armhole is finished one way only",
        "faced armholes": "an all-in-one facing finishes the armholes too; take a "
        '"neck facing" beside bound armholes',
        "lining to the edge": "a lining to the edge finishes the armholes too; leave "
        "one of the two off",
        "halter": "a halter's edges end in its band; face it",
        "strapless": "a strapless bodice has no armholes to bind; face its edge",
    }

    width: Annotated[Length | None, width_of("ab_w", "ab", "armhole")] = None
    short: Annotated[Ratio | None, short_of("ab_short", "ab short", "armhole")] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the strips of the armholes", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return strip_seams(t, _strip(n), _parts(t))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {ARM_STRIP: Cuts("2 (1 pair), on the bias", 2, bias=True)}

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        work = Work.BIND if under_binding(sheet, ARM_STRIP) else Work.SLEEVE
        return strip_operations(sheet, fmt, _strip(n), work)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        both = n.ab_w + (n.nb_w if "nb_w" in n else 0.0)
        if n.Lr < both + _FREE:
            yield Finding(
                "BN3",
                Severity.REFUSE,
                f"The neck leaves {n.Lr:.1f} cm of the shoulder, less than the "
                f"bindings and {_FREE:g} cm between them.",
                "ab",
                "Make the bindings (ab, nb) or the neck (dw) narrower.",
                {"Lr": n.Lr, "bindings": both},
            )


def _strip(n: Numbers) -> Strip:
    return Strip(ARM_STRIP, "armhole", "S141", True, "side seam", n.ab_w, n.ab_short)


def _parts(t: Chains) -> tuple[Bound, ...]:
    """Round the armhole from the side seam, up the front, down the back."""
    return (
        Bound("front", backwards(front_armhole(t)), "underarm", "shoulder"),
        Bound("back", back_armhole(t), "shoulder", "underarm"),
    )


def _draft(d: Drafting) -> None:
    """Draw the strip that binds an armhole (VA)."""
    lay_strip(d, _strip(d.n), _parts(Chains(d.sheet)), "Va", Ends.JOINED)

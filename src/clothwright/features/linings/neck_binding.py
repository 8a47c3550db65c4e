"""The neck bound by a bias strip, in place of a facing (transformations 3)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Rank, Shown, Stage
from clothwright.features.chains import NECK_STRIP, Chains
from clothwright.features.linings.binding import (
    Bound,
    Strip,
    backwards,
    cut_net,
    lay_strip,
    meets_centre,
    short_of,
    strip_edge,
    strip_findings,
    strip_operations,
    strip_seams,
    width_of,
)
from clothwright.features.linings.facing_seams import back_neck_chain, front_neck
from clothwright.features.operations import Operation, Work
from clothwright.findings import Finding
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length, Ratio


class NeckBinding(Feature):
    """Bias strip that binds the neck."""

    kind: Literal["neck binding"] = "neck binding"
    title: ClassVar[str] = "Neck binding"
    sentence: ClassVar[str] = (
        "The neck is [bound] by a bias strip, {width} wide and cut {short} per cent "
        "shorter than the edge."
    )
    shows: ClassVar[Shown] = {
        "nb": (f"{NECK_STRIP}.inside",),
        "nb short": (f"{NECK_STRIP}.neck 1",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(NECK_STRIP, Place.BINDING, ("band",), others=strip_edge),
        *cut_net("neck", "neck side", "cap neck"),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S140": "bias strip on the neck, stretch by stretch, and its ends"
    }
    gives: ClassVar[frozenset[str]] = frozenset({"inside finish", "bound neck"})
    needs: ClassVar[dict[str, str]] = {
        "neckline": "a strip binds a neck; add a neckline",
        "back neck": "a strip binds the whole neck; add a back neckline",
        "armhole finish": "a neck binding leaves the armholes open; add an "
        '"armhole binding" or a sleeve',
    }
    clashes: ClassVar[dict[str, str]] = {
        "inside finish": "the edges are finished one way only",
        "collar": "a collar is sewn between the cloth and its facing; leave the "
        "binding of the neck off",
        "front opening": "the neck of a front that buttons is not yet bound; face it",
        "back opening": "the neck of a back that buttons is not yet bound; face it",
        "neck placket": "beside a half placket the neck is faced; leave one of the two "
        "off",
        "back slit": "the facing of the neck is led round a slit; face the neck, or "
        "leave the slit off",
        "jabot": "a jabot is sewn between the cloth and its facing; face the neck",
        "open back": "a strip is not yet led round the corner into a slanted edge; "
        "close the back, or face it",
        "winding neck": "a strip is not led round the point of a sweetheart, nor into "
        "a keyhole; take another neck",
        "square neck": "a strip is not yet mitred in the corners of a square neck; "
        "face it, or take a round one or a V",
        "wrap": "the edges of a wrap cross and end in the waist; face them",
        "cowl": "the edge of a cowl is folded back; its back neck is faced with it",
        "halter": "a halter's edges end in its band; face it",
        "strapless": "a strapless bodice has no neck to bind; face its edge",
        "back strap": "a strap across the back is caught in a faced neck; face it",
        "lining": "a top whose neck is bound is not lined yet; leave the lining off, "
        "or face the neck",
    }

    width: Annotated[Length | None, width_of("nb_w", "nb", "neck")] = None
    short: Annotated[Ratio | None, short_of("nb_short", "nb short", "neck")] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the strip of the neck", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return strip_seams(t, _strip(n), _parts(t))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {NECK_STRIP: Cuts("1, on the bias", bias=True)}

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return strip_operations(sheet, fmt, _strip(n), Work.EDGE)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return strip_findings(sheet, _strip(n))


def _strip(n: Numbers) -> Strip:
    return Strip(NECK_STRIP, "neck", "S140", False, "left shoulder", n.nb_w, n.nb_short)


def _parts(t: Chains) -> tuple[Bound, ...]:
    """Round the neck from the left shoulder, over the front; where the back opens, or
    has a seam, from there to there."""
    front, back = front_neck(t), back_neck_chain(t)  # from the shoulder
    at_front = meets_centre(t, front[-1])
    at_back = meets_centre(t, back[-1])
    cf, cb = "centre front", "centre back"
    fronts = (
        Bound("left front", front, "shoulder", cf, last=at_front),
        Bound("right front", backwards(front), cf, "shoulder", first=at_front),
    )
    right = Bound("right back", back, "shoulder", cb, last=at_back)
    left = Bound("left back", backwards(back), cb, "shoulder", first=at_back)
    return (left, *fronts, right) if t.zipped() else (*fronts, right, left)


def _draft(d: Drafting) -> None:
    """Draw the strip that binds the neck (VN)."""
    t = Chains(d.sheet)
    lay_strip(d, _strip(d.n), _parts(t), "Vn", ring=not t.zipped())

"""The neck bound by a bias strip, in place of a facing (transformations 3)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Rank, Shown, Stage
from clothwright.features.chains import NAPE, NECK_STRIP, Chains
from clothwright.features.linings.binding import (
    Bound,
    Ends,
    Strip,
    backwards,
    cut_net,
    lay_strip,
    meets_centre,
    short_of,
    strip_edge,
    strip_seams,
    width_of,
)
from clothwright.features.linings.binding_sewing import strip_operations
from clothwright.features.linings.bound_lining import under_binding
from clothwright.features.linings.facing_seams import (
    back_neck_chain,
    beside_centre,
    front_neck,
)
from clothwright.features.openings.cut_on import FACING
from clothwright.features.openings.stand_pieces import (
    BACK,
    BANDED,
    FRONT,
    STAND,
    Centre,
)
from clothwright.features.operations import Operation, SeamType, Stitch, Work
from clothwright.features.roles import Role
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.paper import ON_STAND, Drafting, Ease, Seam, SeamKind, Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length, Ratio

CAUGHT = "S48"
"""Code of the seam of what the strip catches."""

_NET = tuple(f"{f}neck{on}" for f in ("", FACING) for on in ("", ON_STAND))
"""Edges of the shell, and of a facing beside an opening, that are bound."""


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
        *cut_net(*_NET, "neck side", "cap neck"),
        *(About(c, edges=dict.fromkeys(_NET, Role.BOUND)) for c in ("FF", "BF")),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S140": "bias strip on the neck, stretch by stretch, and its ends",
        CAUGHT: "facing beside an opening, its upper end caught in a binding",
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
        "neck placket": "beside a half placket the neck is faced; leave one of the two "
        "off",
        "jabot": "a jabot is sewn between the cloth and its facing; face the neck",
        "open back": "a strip is not yet led round the corner into a slanted edge; "
        "close the back, or face it",
        "wrap": "the edges of a wrap cross and end in the waist; face them",
        "cowl": "the edge of a cowl is folded back; its back neck is faced with it",
        "halter": "a halter's edges end in its band; face it",
        "strapless": "a strapless bodice has no neck to bind; face its edge",
        "back strap": "a strap across the back is caught in a faced neck; face it",
        "hung lining": "a lining hangs from a facing; below a bound neck set its "
        'mode = "to the bound edges"',
    }

    width: Annotated[Length | None, width_of("nb_w", "nb", "neck")] = None
    short: Annotated[Ratio | None, short_of("nb_short", "nb short", "neck")] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the strip of the neck", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return (*strip_seams(t, _strip(n), _parts(t)), *_caught(t))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {NECK_STRIP: Cuts("1, on the bias", bias=True)}

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        caught = both_sides(sheet, CAUGHT)
        if caught:
            yield Operation(
                Work.BASTE,
                "Baste the upper end of the facing to the neck",
                ("Edge on edge, from the opening on: the binding catches them.",),
                seams=caught,
                stitch=Stitch.LOCK,
                seam_type=SeamType.LAPPED,
            )
        ends = Ends.of(sheet.piece(NECK_STRIP))
        late = ends is Ends.TURNED_IN or under_binding(sheet, NECK_STRIP)
        work = Work.BIND if late else Work.EDGE
        yield from strip_operations(sheet, fmt, _strip(n), work)


def _strip(n: Numbers) -> Strip:
    return Strip(NECK_STRIP, "neck", "S140", False, "left shoulder", n.nb_w, n.nb_short)


def _opened(t: Chains) -> tuple[Centre | None, Ends]:
    """The centre where the neck opens, if not by a zip, and what becomes of the ends of
    a strip."""
    for centre in (FRONT, BACK):
        code = centre.on(t.sheet, centre.upper)
        if t.has(code, STAND):
            return centre, Ends.TURNED_IN
        if t.has(code, BANDED):
            return centre, Ends.IN_BAND
    if t.has(BACK.on(t.sheet, BACK.upper), NAPE):  # a slit
        return BACK, Ends.TURNED_IN
    return None, Ends.TAKEN_IN if t.zipped() else Ends.JOINED


def _parts(t: Chains) -> tuple[Bound, ...]:
    """Round the neck from the left shoulder, over the front; where front or back opens,
    or the back has a seam, from there to there."""
    front, back = (  # from the shoulder, and on over a stand
        (*chain, *t.chain(*((c, "neck" + ON_STAND, up) for c in centre.upper)))
        for chain, centre, up in (
            (front_neck(t), FRONT, False),
            (back_neck_chain(t), BACK, True),
        )
    )
    at_front = meets_centre(t, front[-1])
    at_back = meets_centre(t, back[-1])
    cf, cb = "centre front", "centre back"
    left_front = Bound("left front", front, "shoulder", cf, last=at_front)
    right_front = Bound("right front", backwards(front), cf, "shoulder", first=at_front)
    right = Bound("right back", back, "shoulder", cb, last=at_back)
    left = Bound("left back", backwards(back), cb, "shoulder", first=at_back)
    opened, _ = _opened(t)
    if opened is FRONT:
        return right_front, right, left, left_front
    if opened is BACK or t.zipped():
        return left, left_front, right_front, right
    return left_front, right_front, right, left


def _caught(t: Chains) -> Iterable[Seam]:
    """The upper end of a facing beside an opening, caught in the strip."""
    for centre, neck in ((FRONT, front_neck(t)), (BACK, back_neck_chain(t))):
        facing = t.chain((centre.facing, "neck", centre is BACK))
        if not facing:
            continue
        begin = t.sheet.run_path(facing[0]).start
        before = beside_centre if centre is FRONT else Chains.upto
        short = before(t, neck, begin)
        yield Seam(
            CAUGHT,
            f"{centre.words} facing, caught in the binding of the neck",
            neck,
            facing,
            "shoulder",
            f"centre {centre.words}",
            Ease.about(-short, 0.1),
            kind=SeamKind.LAPPED,
        )


def _draft(d: Drafting) -> None:
    """Draw the strip that binds the neck (VN)."""
    t = Chains(d.sheet)
    lay_strip(d, _strip(d.n), _parts(t), "Vn", _opened(t)[1])

"""The button and loop that close a keyhole, or a cut-out, at the neck (transformations
2)."""

from collections.abc import Callable, Iterable

from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)

_BUTTON, _LOOP = 1.0, 4.5
"""Diameter of the button, and the cord of its loop with both allowances, cm (first
garment 10.5: girth π·d less the ends' distance, and two allowances)."""


BOUND_NOTE = (
    "Keyhole: cut its drop out on the net line, and the neck apart above it; the "
    "binding of the neck is led round it."
)

KEYHOLE_NOTE = (
    "Keyhole: its drop is marked, not cut out. Stitch the facing on round it, slash "
    "along the fold to its foot, trim what lies inside and turn."
)


def keyhole_notions(what: str = "keyhole") -> Iterable[Notion]:
    """What closes it."""
    yield Notion(Article.BALL_BUTTON, 2, f"for the {what}", size=_BUTTON, spare=1)
    yield Notion(Article.BIAS, 1, f"for the loop of the {what}", length=_LOOP)


def keyhole_operations(
    fmt: Callable[[float], str], what: str = "keyhole", *, bound: bool = False
) -> Iterable[Operation]:
    """The loop before the facing, or inside a binding; the button last."""
    yield Operation(
        Work.FASTEN if bound else Work.ON_EDGE,
        f"Make a loop and sew it to the right edge of the {what}",
        (
            f"A bias cord of {fmt(_LOOP)}, just below the neck, its ends together.",
            "Sew them to the inside of the binding, and try the button through it."
            if bound
            else "Try the button through it before you face the edge.",
        ),
        stitch=Stitch.HAND if bound else Stitch.LOCK,
        seam_type=SeamType.LOOP,
        length=2 * _LOOP,
        task=Task.LOOP,
        hazards=(Hazard.CORD,),
    )
    yield Operation(
        Work.FASTEN,
        f"Sew the button to the left edge of the {what}",
        ("Opposite the loop, with a shank of thread.",),
        stitch=Stitch.HAND,
        task=Task.BUTTON,
        hazards=(Hazard.SMALL_PART,),
    )

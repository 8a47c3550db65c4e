"""What cannot be laid at all, told before anything is tried."""

from collections.abc import Sequence

from shapely import Polygon

from clothwright.lay.pieces import Copy, Shape
from clothwright.lay.spread import LayError, Spread
from clothwright.units import Unit, format_length


def must_be_simple(shapes: Sequence[Shape]) -> None:
    """Raises LayError that names every outline that crosses itself."""
    crossed = [s.label for s in shapes if not Polygon(s.outline).is_valid]
    if crossed:
        raise LayError(f"the outline of {', '.join(crossed)} crosses itself; mend it")


def must_fit(everything: Sequence[Copy], spread: Spread, unit: Unit) -> None:
    """Raises LayError that names every piece that is too wide, and what would do."""
    said = dict.fromkeys(
        _too_wide(c.shape, spread, unit) for c in everything if not c.variants
    )
    if said:
        raise LayError("\n".join(said))


def _too_wide(shape: Shape, spread: Spread, unit: Unit) -> str:
    ys = [y for _, y in shape.outline]
    wide = max(ys) - min(ys)
    room = max(b - a for a, b in spread.bands)
    layers = "single cloth" if spread.layers == 1 else "the folded cloth"
    return (
        f"{shape.label} is {format_length(wide, unit)} wide across the grain, and "
        f"{layers} has {format_length(room, unit)} for it; "
        f"it takes {format_length(wide - room, unit)} more"
    )

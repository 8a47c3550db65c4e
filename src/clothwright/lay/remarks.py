"""What the checker has against a piece, as it is said at that piece."""

from collections.abc import Sequence

from clothwright.findings import Finding
from clothwright.lay.pieces import Copy
from clothwright.lay.spread import Spread
from clothwright.units import CM_PER_INCH, Unit, format_length


def remark(
    fault: Finding,
    copies: Sequence[Copy],
    spread: Spread,
    gap: float,
    unit: Unit,
    *,
    of: int,
) -> str:
    """A fault as said at piece `of`: "overlaps the side front by 2.1 cm²"."""
    data = fault.data

    def show(cm: float) -> str:
        return format_length(cm, unit)

    def other() -> str:
        a, b = int(data["piece"]), int(data["other"])
        return called(copies[b if of == a else a])

    match fault.code:
        case "overlap":
            return f"overlaps {other()} by {area(data['shared'], unit)}"
        case "gap":
            return f"lies {show(data['apart'])} from {other()}; leave {show(gap)}"
        case "border" if data["outside"] > 0:
            return f"lies off the cloth by {show(data['outside'])}"
        case "border":
            return "lies on the selvedge"
        case "ends":
            return f"reaches over the end of the cloth by {show(data['over'])}"
        case "grain" if spread.one_way:
            return "lies the wrong way of the nap"
        case "grain":
            return f"lies {data['off']:.1f}° off its grain"
        case "hand":
            return "lies wrong side up"
        case "fold":
            return "does not lie on the fold"
        case "flaw":
            return "lies on a flaw"
        case "phase":
            way = "across" if data["axis"] else "along"
            return (
                f"misses the stripes of {other()} by {show(data['off'])} {way} the "
                "cloth"
            )
    return fault.sentence


def called(copy: Copy) -> str:
    """A piece as it is spoken of: "the left side front"."""
    hand = f"{copy.hand} " if copy.hand else ""
    return f"the {hand}{copy.shape.label.lower()}"


def area(cm2: float, unit: Unit) -> str:
    """An area in words: "2.1 cm²", "0.3 square inches"."""
    value = cm2 / CM_PER_INCH**2 if unit is Unit.IN else cm2
    mark = "square inches" if unit is Unit.IN else "cm²"
    return f"{value:.1f} {mark}" if value >= 0.1 else f"less than 0.1 {mark}"

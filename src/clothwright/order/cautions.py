"""Cautions: where work, or the garment, can hurt (cutting and costing 7).

They remind and defer to the rules in force and to current standards; they claim no
compliance with any.
"""

from collections.abc import Iterable, Iterator, Mapping

from clothwright.features.operations import Hazard
from clothwright.order.file import Order
from clothwright.order.wearer import Use, Wearer

_AT_WORK: Mapping[Hazard, str] = {
    Hazard.BLADE: "Cut away from the hand; close the rotary blade each time you lay it "
    "down.",
    Hazard.IRON: "Iron off when you leave it; keep the cord dry and the room aired.",
    Hazard.NEEDLE: "Machine off while you thread it; mind where pins and needles lie.",
    Hazard.LOST_PIN: "Count pins and needles before the garment leaves the workroom.",
}

_CORDS = (
    "Loops, cords and small buttons are a hazard on children's clothes: follow the "
    "rules in force where the garment is worn."
)
_CHILD_CORDS = (
    "For a child: loops, cords and ties can catch, at neck and hem most of all. Design "
    "them out, or follow the rules in force where it is worn and the current standards "
    "(EN 14682, ASTM F1816)."
)
_CHILD_PARTS = (
    "For a child: sew on buttons, hooks and other small parts so that they cannot be "
    "pulled off, by the rules in force where it is worn."
)
_UNDER_THREE = (
    "For a child under three: leave off buttons, hooks and other small parts, or have "
    "them tested by the rules in force where it is worn."
)
_NIGHT = (
    "Nightwear: how the cloth may burn is ruled by law in many places. Choose and "
    "label it by the rules in force, and keep it from open flame."
)

NO_PROOF = "These are reminders: nothing here shows that a rule or a standard is met."


def at_work(hazards: Iterable[Hazard], order: Order) -> tuple[str, ...]:
    """What to mind at an operation with these hazards."""
    found = set(hazards)
    said = [text for h, text in _AT_WORK.items() if h in found]
    return (*said, *_of_garment(found, order))


def of_garment(hazards: Iterable[Hazard], order: Order) -> tuple[str, ...]:
    """What to mind of the whole garment, for a pattern's first page."""
    night = (_NIGHT,) if order.use is Use.NIGHTWEAR else ()
    found = tuple(_of_garment(set(hazards), order))
    return (*found, *night, _AT_WORK[Hazard.LOST_PIN])


def _of_garment(hazards: set[Hazard], order: Order) -> Iterator[str]:
    child = order.wearer.child
    if Hazard.CORD in hazards:
        yield _CHILD_CORDS if child else _CORDS
    if Hazard.SMALL_PART in hazards and child:
        young = order.wearer is Wearer.UNDER_THREE
        yield _UNDER_THREE if young else _CHILD_PARTS

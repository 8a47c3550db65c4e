"""What lies on one cloth; what the slip says of it; where lays are kept."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Protocol

from clothwright.order import Cloth, Draft, OrderError, Pattern
from clothwright.units import opening

if TYPE_CHECKING:
    from clothwright.lay.byhand import Board, Laid, Places
    from clothwright.lay.kept import KeptLay


SECONDS = 8.0
"""How long a shorter lay is looked for while she watches."""

LONGER = 40.0
"""The same when she asks for it."""

QUICK = 2.0
"""The same where only the length is wanted, for the cost."""


MOVES = ("move", "turn", "swap", "back", "keep")
"""What a hand does that is to be there again when the slip is opened next."""

REMEMBERED = 20
"""So many of the last moves can be taken back when it is opened next."""


class Leaves(Protocol):
    """Where lays are kept."""

    def leaf(self, name: str) -> str:
        """A text that lies with the slip; blank when there is none."""
        ...

    def put_leaf(self, name: str, text: str, *, of_state: bool = False) -> None:
        """Lay a text with the slip, or with its state on the table."""
        ...


@dataclass(frozen=True)
class Spoken:
    """What the slip says now, as far as a lay goes by it."""

    draft: Draft
    text: str
    house: str
    cloths: Mapping[str, Cloth]
    basted: bool


@dataclass
class Lying:
    """One cloth with its pieces on it."""

    board: "Board"
    laid: "Laid"
    kept: "Places | None" = None
    past: "list[KeptLay]" = field(default_factory=list)
    """As it lay before each move of a hand, and before a search that was asked for."""

    def remember(self) -> None:
        """Note how the pieces lie, to come back to it."""
        from clothwright.lay.kept import kept_of

        self.past.append(kept_of(self.laid.lay))

    def beats(self, cloth: float) -> bool:
        """True when the pieces lie well, on no more cloth than this, cm."""
        lay = self.laid.lay
        taken = lay.length * lay.spread.lengths
        return not self.laid.faults and taken < cloth + 0.01


def leaf_name(key: str) -> str:
    """What the lay of a cloth is called among the leaves of its slip."""
    return f"lay {key}"


def sentence(why: object) -> str:
    """A sentence without the place in the file, which the app does not show."""
    lines = [
        line.removeprefix("the slip: ").removeprefix("the slip, ")
        for line in str(why).splitlines()
    ]
    text = ". ".join(opening(x) for x in lines)
    return text if text.endswith(".") else f"{text}."


def kept_lay(leaves: Leaves, key: str) -> "KeptLay | None":
    """The lay of a cloth as it was kept, unless it was not, or cannot be read."""
    return _read(leaves.leaf(leaf_name(key)))


def to_keep(lying: Lying, spoken: Spoken) -> str:
    """The text of a lay that may be kept. Raises OrderError."""
    from clothwright.lay.kept import write_kept

    if lying.laid.faults:
        raise OrderError(
            "This lay must not be cut, so it cannot be kept; move the pieces that "
            "are marked, or take the move back"
        )
    if spoken.basted:
        raise OrderError(
            "a lay is kept with the order; stitch or unpick what is basted first"
        )
    return write_kept(lying.laid.lay)


def tried_name(key: str) -> str:
    """What the lay is called that a hand has left and nobody has kept."""
    return f"tried lay {key}"


def hold(leaves: Leaves, key: str, lying: Lying, spoken: Spoken) -> None:
    """Write down how a hand has left the pieces, apart from what is kept."""
    from clothwright.lay.kept import write_kept

    if lying.laid.lay.placed != lying.kept or leaves.leaf(tried_name(key)):
        lay = write_kept(lying.laid.lay, lying.past[-REMEMBERED:])
        text = f'order = "{_mark(spoken)}"\n{lay}'
        leaves.put_leaf(tried_name(key), text, of_state=True)


def _tried_lay(
    leaves: Leaves, key: str, spoken: Spoken
) -> "tuple[KeptLay, bool] | None":
    """How a hand has left the pieces, and whether for this very order."""
    text = leaves.leaf(tried_name(key))
    lay = _read(text)
    return (
        None if lay is None else (lay, f'"{_mark(spoken)}"' in text.partition("\n")[0])
    )


def _as_written(
    pattern: Pattern, cloth: Cloth | None, key: str, lay: "KeptLay | None"
) -> "tuple[Board, Laid] | None":
    """A written lay on its cloth; None when the pieces are others by now."""
    from clothwright.lay import LayError
    from clothwright.lay.byhand import Board

    if lay is None or cloth is None or cloth.fold not in (None, lay.fold):
        return None
    try:
        board = Board(pattern, key, lay.fold, lay.gap)
        return board, board.laid(lay.placed, saving=lay.saving)
    except LayError:
        return None


def as_kept(leaves: Leaves, key: str, pattern: Pattern, spoken: Spoken) -> Lying | None:
    """A cloth as it was kept; None when it was not, or for an order that has changed
    since."""
    lay = kept_lay(leaves, key)
    found = _as_written(pattern, spoken.cloths.get(key), key, lay)
    if found is None or found[1].faults:
        return None
    return Lying(*found, found[1].lay.placed)


def as_tried(
    leaves: Leaves, key: str, pattern: Pattern, spoken: Spoken, was: Lying | None
) -> Lying | None:
    """A cloth as a hand has left it, faults and all, with the moves that led there; one
    move from how it lies (`was`) when it was left for another order."""
    tried = _tried_lay(leaves, key, spoken)
    lay = tried[0] if tried else None
    found = _as_written(pattern, spoken.cloths.get(key), key, lay)
    if tried is None or found is None or (found[1].faults and not tried[1]):
        return None
    lying = Lying(*found, was.kept if was else None)
    if tried[1]:
        lying.past = list(tried[0].before)
    elif was is not None and was.kept != found[1].lay.placed:
        was.remember()
        lying.past = was.past
    return lying


def _mark(spoken: Spoken) -> str:
    """Tells one order from another."""
    return hashlib.sha256(f"{spoken.text}\0{spoken.house}".encode()).hexdigest()[:16]


def _read(text: str) -> "KeptLay | None":
    from clothwright.lay import LayError
    from clothwright.lay.kept import read_kept

    try:
        return read_kept(text) if text else None
    except LayError:
        return None

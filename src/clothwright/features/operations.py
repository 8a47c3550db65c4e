"""What is done in the cloth: kinds of work, stitches, seams, hazards.

Terminology
    work       a kind of work, with its place in the general order of making.
    operation  one thing that is done at the machine, the iron or by hand, and ticked.
    task       what its time is reckoned by: a row of the house rates.

A seam of the draft says by itself how it is sewn; a feature says only what no seam
tells: loops, a zip, gathers, hems. Lengths are cm.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from clothwright.paper import EdgeKind, Run, Sheet, own_name


class Work(Enum):
    """A kind of work, by what it is and its place in the order of making (cutting and
    costing 5: flat before round, small before large, inside before outside)."""

    def __init__(self, words: str, place: int) -> None:
        self.words, self.place = words, place

    CUT = "cut out", 0
    MARK = "mark", 1
    FUSE = "interline", 1
    UNDERLINE = "mount the underlining", 1
    STAY = "stay the edges", 1
    DART = "darts", 2
    PANEL = "panel seams", 2
    BAG = "bag out a small part", 3
    ON_EDGE = "sew fastenings into an edge", 4
    SHOULDER = "shoulders", 5
    FLAT = "sleeves, while the body lies flat", 5
    FACING = "make the facing", 6
    COLLAR = "make the collar", 6
    SET_COLLAR = "set the collar", 6
    EDGE = "face or bag out the edges", 6
    SLEEVE_SEAM = "seam of the sleeve", 7
    SLIT = "slit of the sleeve", 6
    CUFF = "band or cuff", 7
    SLEEVE_HEAD = "gather the cap", 7
    SIDE = "sides", 8
    SLEEVE = "set the sleeves", 8
    """In the round."""

    SKIRT = "make what hangs on the waist", 9
    READY = "make the waist ready", 9
    WAIST = "waist", 9
    ZIP = "zip", 9
    CENTRE = "centre seam", 9
    LINING = "make the lining", 10
    JOIN = "join the lining to the facing", 10
    LINING_ROUND = "close the lining", 10
    BASTE = "baste together what is bound", 10
    BIND = "bind the edges of all layers", 10
    LINED = "fasten what lies inside", 10
    BAND = "waistband", 11
    BEHIND = "attach what lies behind", 12
    FASTEN = "fasteners", 12
    HANG = "let it hang", 13
    FACE_HEM = "face the hem", 13
    MITRE = "turn slits in", 13
    HEM = "hems", 13
    LINING_HEM = "hem of the lining", 13
    FINISH = "press, label, inspect", 14


class Stitch(Enum):
    """Stitch types after ISO 4915."""

    def __init__(self, number: str, words: str) -> None:
        self.number, self.words = number, words

    LOCK = "301", "lockstitch"
    ZIGZAG = "304", "zigzag"
    COVER = "406", "two-needle cover stitch"
    OVEREDGE = "504", "three-thread overedge"
    FOUR_THREAD = "514", "four-thread overedge"
    TOP_COVER = "602", "two-needle covering stitch"
    HAND = "200", "by hand"


class SeamType(Enum):
    """Seam types after ISO 4916, by class and lie of the plies."""

    def __init__(self, number: str, words: str) -> None:
        self.number, self.words = number, words

    PLAIN = "1.01", "plain seam"
    LAPPED = "2.01", "lapped seam"
    PLACED = "2.02", "laid on, its edge turned in"
    BOUND = "3.05", "edge bound by a strip, both its edges turned in"
    NEATENED = "6.01", "edge neatened"
    HEM_ONCE = "6.02", "hem turned once"
    HEM_TWICE = "6.03", "hem turned twice"
    SET_ON = "class 7", "something set on an edge"
    LOOP = "class 8", "loop"


class Task(Enum):
    """What a time is reckoned by, as the house rates name it."""

    MEASURE = "measuring"
    OWN_BLOCK = "draft from her own block"
    NEW_BLOCK = "new block"
    TOILE = "toile"
    FITTING = "fitting"
    CUT = "cut the shell"
    CUT_LINING = "cut the lining"
    MARK = "mark and interline"
    MARK_ALONE = "mark"
    """Where nothing is interlined."""

    STAY = "stay and tape"
    DART = "dart"
    PLEAT = "pleat or tuck"
    PANEL = "princess seam"
    ACROSS = "crosswise seam"
    """Of a yoke, a midriff, a shaped band; both halves of it are one."""

    SEAMS = "pair of plain seams"
    FACE = "facing of an edge"
    BAG = "bagged part"
    SIDE_POCKET = "pocket in the side seam"
    SLANT_POCKET = "slanting pocket"
    PATCH_POCKET = "patch pocket"
    WELT_POCKET = "welt or jetted pocket"
    LOOP = "loop"
    BUTTON = "button"
    BUTTONHOLE = "buttonhole"
    HOOK = "hook and eye"
    SLEEVES = "pair of sleeves"
    GATHER = "gathers"
    BONE = "bone in its channel"
    BY_HAND = "seam by hand"
    WAIST = "waist seam"
    ZIP = "concealed zip"
    VISIBLE_ZIP = "centred or lapped zip"
    FLY = "fly"
    LINING = "lining"
    BAND = "waistband"
    CUFFS = "pair of cuffs or bands"
    PLACKETS = "pair of plackets"
    FLAT_COLLAR = "flat collar"
    STAND_COLLAR = "stand collar"
    SHIRT_COLLAR = "shirt collar"
    SHAWL_COLLAR = "shawl or notched collar"
    NARROW_HEM = "narrow hem of an edge"
    HEM = "straight hem"
    CIRCLE_HEM = "hem of a circle"
    FINISH = "press and finish"


class Hazard(Enum):
    """Where work, or the finished garment, can hurt."""

    BLADE = "blade"
    IRON = "iron"
    NEEDLE = "needle"
    CORD = "cord"
    SMALL_PART = "small part"
    LOST_PIN = "lost pin"


@dataclass(frozen=True)
class Operation:
    """One operation of the making order.

    `seams` are the codes of the seams that it sews, `edges` the finished edges that it
    neatens or hems. Without `length` its stitches run along these, as often as the
    garment has them.
    """

    work: Work
    title: str
    says: tuple[str, ...] = ()
    seams: tuple[str, ...] = ()
    edges: tuple[Run, ...] = ()
    stitch: Stitch | None = None
    seam_type: SeamType | None = None
    length: float | None = None
    """Stitched in all, cm, where no seam and no edge tells it."""

    neatened: int = 0
    """Raw edges along its seams that are neatened, 0 to 2."""

    press: str = ""
    task: Task | None = None
    count: float = 1.0
    """Times that the task is done."""

    hazards: tuple[Hazard, ...] = ()

    after: tuple[str, ...] = ()
    """Codes of seams that must be sewn before it: a pocket is set over one."""

    before: tuple[str, ...] = ()
    """Codes of seams that are sewn after it: a bag hangs in one."""


def finished_edges(
    sheet: Sheet, begins: tuple[str, ...], *names: str
) -> tuple[Run, ...]:
    """The finished edges of these names on pieces whose codes begin so."""
    return tuple(
        Run(p.code, e.name)
        for p in sheet.pieces.values()
        if p.code.startswith(begins)
        for e in p.edges
        if e.kind is EdgeKind.FINISHED and (not names or own_name(e.name) in names)
    )


def tape_on(
    what: str, length: float, count: int, fmt: Callable[[float], str], work: Work
) -> Operation:
    """Tape of `length` cm on each of `count` net lines that would stretch, before
    anything is sewn to them (cutting and costing 4)."""
    each = "each net line" if count > 1 else "the net line"
    return Operation(
        work,
        f"Tape the {what}",
        (f"Tape of {fmt(length)} on {each}, so that it does not stretch.",),
        stitch=Stitch.LOCK,
        seam_type=SeamType.SET_ON,
        length=count * length,
        task=Task.STAY,
    )

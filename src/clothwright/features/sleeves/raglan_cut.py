"""How a raglan is made on the table: the shoulders are cut off front and back, laid on
the sleeve and drawn in one with it (transformations 4).

Front and back are cut from the neck to the notch of the armhole; the sleeve, its cap
without ease, is cut down its middle. Each shoulder is laid on its half of the sleeve,
notch on notch, and turned until its tip stands above the top of the cap.
"""

import math
from dataclasses import dataclass, replace

from clothwright.blocks.trial import by_trial
from clothwright.curves import (
    Motion,
    Path,
    Point,
    Vector,
    direction,
    distance,
    from_pair,
    unit,
)
from clothwright.features.chains import BACK_NOTCH, FRONT_NOTCH
from clothwright.features.grain import longest_line
from clothwright.features.hand.hand_seams import off_corners
from clothwright.features.sleeves.raglan_lines import bowed, curve, run_on, runs_in
from clothwright.features.wholes import keep_whole
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Ease,
    Edge,
    NotchPair,
    PaperError,
    Piece,
    Run,
    Seam,
    Verb,
    cut,
    redraw,
    spot_on,
)

BELOW_TOP = 10.0
"""From so far below the top of the cap the overarm seam runs down the middle of the
sleeve, cm (common practice, no source)."""

_ROUNDED = 3.0
"""The seam begins to round so far before the tip of the shoulder, cm."""

_DOWN = Vector(0.0, 1.0)
_UP = Vector(0.0, -1.0)


@dataclass(frozen=True)
class Half:
    """A raglan of one half, by the names of its pieces and numbers."""

    half: str
    piece: str
    sleeve: str
    cap: str
    down: str
    """Key of what the line lies down the neck from the shoulder."""

    notch: float
    """The armhole's notch from the underarm, cm; the line runs in there or below."""

    marks: tuple[str, str]
    """Ends of the raglan line: at the neck, on the armhole."""

    seam: str
    ticks: int

    @property
    def top(self) -> str:
        """Code of the shoulder that is cut off."""
        return f"{self.piece} top"

    @property
    def front(self) -> bool:
        """True for the front."""
        return self.piece == "F"


FRONT = Half(
    "front", "F", "SLF", "cap front", "rg_F", FRONT_NOTCH, ("Rf", "Rfn"), "S23", 1
)
BACK = Half("back", "B", "SLB", "cap back", "rg_B", BACK_NOTCH, ("Rb", "Rbn"), "S24", 2)


def make_raglan(d: Drafting) -> None:
    """Cut off both shoulders, cut the sleeve down its middle, lay the shoulders on."""
    for half in (FRONT, BACK):
        _cut_off(d, half)
    middle = _cut_sleeve(d)
    laid_f = _laid(d, FRONT, middle, d.n.rg_gap)
    wanted = laid_f.over_tip

    def longer(gap: float) -> float:
        return _laid(d, BACK, middle, gap).over_tip - wanted

    gap = by_trial(longer, d.n.rg_gap - 1.5, d.n.rg_gap + 3.0)
    if gap is None:
        raise PaperError(
            "the back shoulder of the raglan does not meet the front over the arm: the "
            "two armholes differ too much for it; take a set-in sleeve"
        )
    for laid in (laid_f, _laid(d, BACK, middle, gap)):
        _draw_in_one(d, laid)
    _sew(d)


# -- front and back ----------------------------------------------------------------
def _cut_off(d: Drafting, h: Half) -> None:
    """Cut the shoulder off along the raglan line, which runs on in the armhole."""
    n, p = d.n, d.sheet.piece(h.piece)
    d.part = h.half
    neck = p.edge("neck").path
    arm = p.edge("armhole").path
    if not h.front:  # from the shoulder, from the underarm
        neck, arm = neck.reversed(), arm.reversed()
    at_neck = d.found(
        h.marks[0],
        neck.at_length(n[h.down]),
        f"raglan line at the neck of the {h.half}",
        amounts=(("along the neck from the shoulder", h.down),),
    )
    outward = -1.0 if h.front else 1.0
    low = runs_in(arm, at_neck, n.rg_bow, h.notch, outward)
    at_arm = d.found(
        h.marks[1],
        arm.at_length(low),
        f"raglan line on the armhole of the {h.half}",
        amounts=(("along the armhole from the underarm", low),),
        detail="where a bowed line from the neck runs into it, at the notch at the "
        "highest",
    )
    way = arm.direction_at_length(low)
    line = bowed(at_arm, way, at_neck, n.rg_bow, outward)
    spots = spot_on(p, "armhole", at_arm), spot_on(p, "neck", at_neck)
    along = line if h.front else line.reversed()
    sheet = cut(
        keep_whole(d.sheet, h.piece),
        h.piece,
        along,
        *(spots if h.front else (spots[1], spots[0])),
        edge="raglan",
        seam=f"raglan {h.half}",
        seam_name=f"raglan, {h.half}",
        into=((h.top, f"{p.name}, shoulder"), (p.code, p.name)),
    )
    below = arm.between(0.0, low)
    whole = below + line.pinned(below.end, line.end)
    run = ["armhole", "raglan"]
    if not h.front:
        whole, run = whole.reversed(), ["raglan", "armhole"]
    sheet = redraw(sheet, h.piece, run, [Edge("raglan", whole)])
    body = sheet.piece(h.piece)
    up = _UP if p.grain is None else direction(*p.grain)
    sheet = sheet.put(replace(body, grain=longest_line(body, up)))
    d.lay(
        Verb.CUT,
        off_corners(sheet, h.piece),
        h.top,
        f"the shoulder cut off the {h.half} along the raglan line, which runs into "
        "the armhole",
        frm=h.marks,
        amounts=(("of bow", "rg_bow"),),
        lines=(line,),
    )


# -- the sleeve --------------------------------------------------------------------
def _cut_sleeve(d: Drafting) -> Path:
    """Cut the sleeve down its middle; the line from below the top of the cap down."""
    d.part = "sleeve"
    p = d.sheet.piece("SL")
    k, hc = p.edge("cap front").path.start, d["Hc"]
    below = min(BELOW_TOP, 0.6 * (hc.y - k.y))
    o = d.point("Ro", "K", "where the overarm seam reaches the middle", down=below)
    at = o
    parts: list[Path] = []
    way = _DOWN
    if "Es" in d.sheet.points:  # bent at the elbow
        elbow, down = d["Es"], direction(d["Es"], hc)
        at_elbow = unit(_DOWN + down)
        parts.append(curve(o, _DOWN, elbow, at_elbow))
        at, way = elbow, at_elbow
        parts.append(curve(at, way, hc, down))
    else:
        parts.append(curve(at, way, hc, _DOWN))
    middle = Path.of(*parts)
    sheet = cut(
        d.sheet,
        "SL",
        Path.line(k, o) + middle,
        CornerAfter("cap back"),
        spot_on(p, "hem", hc),
        edge="overarm",
        seam="S3",
        seam_name="overarm",
        into=((FRONT.sleeve, "Front sleeve"), (BACK.sleeve, "Back sleeve")),
    )
    d.lay(Verb.CUT, sheet, "SLF, SLB", "the sleeve down its middle, from K to Hc")
    return middle


@dataclass(frozen=True)
class _Laid:
    """A shoulder as it lies on its half of the sleeve."""

    half: Half
    motion: Motion
    overarm: Path
    """From the neck over the tip and down the middle to the hem."""

    over_tip: float
    """Length of it where it rounds the shoulder, cm."""


def _laid(d: Drafting, h: Half, middle: Path, gap: float) -> _Laid:
    """The shoulder laid notch on notch, its tip `gap` above the top of the cap."""
    top, sleeve = d.sheet.piece(h.top), d.sheet.piece(h.sleeve)
    cap = _from_top(sleeve, h)
    shoulder = top.edge("shoulder").path
    if h.front:
        shoulder = shoulder.reversed()
    tip, notch = shoulder.end, d[h.marks[1]]
    on = cap.at_length(cap.length - _low(d, h))
    level = cap.start.y - gap
    reach, high = distance(tip, notch), on.y - level
    if high >= reach:
        raise PaperError(
            f"the {h.half} shoulder does not reach up to the top of the sleeve: make "
            "the gap of the raglan smaller"
        )
    aside = math.sqrt(reach**2 - high**2)
    m = from_pair(notch, tip, on, Point(on.x + (-aside if h.front else aside), level))
    line = shoulder.moved(m)
    first = line.length - min(_ROUNDED, 0.4 * d.n.Lr)
    begin, end, way = line.at_length(first), line.end, line.end_direction
    at_tip = unit(way + direction(end, middle.start))
    bend = curve(begin, way, end, at_tip) + curve(end, at_tip, middle.start, _DOWN)
    overarm = line.between(0.0, first) + bend + middle
    return _Laid(h, m, overarm, bend.length)


def _low(d: Drafting, h: Half) -> float:
    """How far from the underarm the raglan line meets the armhole, cm."""
    raglan = d.sheet.edge(h.piece, "raglan").path
    at = raglan.length_to_point(d[h.marks[1]])
    return at if h.front else raglan.length - at


def _from_top(sleeve: Piece, h: Half) -> Path:
    """Half of the cap from its top to the underarm."""
    path = sleeve.edge(h.cap).path
    return path if h.front else path.reversed()


def _draw_in_one(d: Drafting, laid: _Laid) -> None:
    """Draw the shoulder and the half of the sleeve that it lies on as one piece."""
    h = laid.half
    d.part = "sleeve"
    top, sleeve = d.sheet.piece(h.top), d.sheet.piece(h.sleeve)
    cap = _from_top(sleeve, h)
    tip = laid.motion(d["Tf" if h.front else "Tb"])
    gap = cap.start.y - tip.y
    d.lay(
        Verb.MOVE,
        d.sheet.put(top.moved(laid.motion)),
        h.top,
        f"lay the {h.half} shoulder on the sleeve, its end of the raglan line as far "
        "from the underarm as on the armhole, and turn it until its tip stands above "
        "the top of the cap",
        amounts=(("above the top of the cap", "rg_gap" if h.front else gap),),
        detail=""
        if h.front
        else "which makes the seam from the tip down as long as in front",
        over=(sleeve.outline,),
    )
    low = cap.between(cap.length - _low(d, h), cap.length)
    top = d.sheet.piece(h.top)
    old = top.edge("raglan").path
    if not h.front:
        old = old.reversed()
    raglan = run_on(old, low)
    neck = top.edge("neck").path
    if h.front:
        new = [
            Edge("overarm", laid.overarm.reversed()),
            Edge("neck", neck),
            Edge("raglan", raglan),
        ]
        run = ["overarm", h.cap]
    else:
        new = [
            Edge("raglan", raglan.reversed()),
            Edge("neck", neck),
            Edge("overarm", laid.overarm),
        ]
        run = [h.cap, "overarm"]
    sheet = redraw(d.sheet, h.sleeve, run, new)
    out = sheet.piece(h.sleeve)
    sheet = sheet.put(replace(out, grain=longest_line(out, _UP)))
    gone = h.top

    def where(r: Run) -> tuple[Run, ...]:
        return (Run(h.sleeve, "neck", r.backward),) if r.edge == "neck" else ()

    sheet = sheet.unsew(f"raglan {h.half}").with_runs(where, gone)
    sheet = sheet.in_place_of(gone, put=())
    d.lay(
        Verb.REDRAW,
        off_corners(sheet, h.sleeve),
        h.sleeve,
        f"{h.half} shoulder and sleeve drawn as one: the raglan line blended into the "
        "cap and kept at its length, the shoulder line rounded over its tip and led "
        "into the middle",
        lines=(raglan, laid.overarm),
    )


# -- seams -------------------------------------------------------------------------
def _sew(d: Drafting) -> None:
    """State the overarm seam and the two raglan seams."""
    n, sheet = d.n, d.sheet
    seams = [
        Seam(
            "S3",
            "overarm",
            (Run(FRONT.sleeve, "overarm", True),),
            (Run(BACK.sleeve, "overarm"),),
            "neck",
            "hem",
            Ease.about(n.se_left, 0.05),
            (0.0, n.Lr),
            (NotchPair(n.Lr, n.Lrb),),
        )
    ]
    for h in (FRONT, BACK):
        left = (Run(h.piece, "raglan", h.front),)
        right = (Run(h.sleeve, "raglan", not h.front),)
        a, b = sheet.chain_length(left), sheet.chain_length(right)
        low = _low(d, h)
        high = 0.4 * (a - low)
        seams.append(
            Seam(
                h.seam,
                f"raglan, {h.half}",
                left,
                right,
                "neck",
                "underarm",
                Ease.about(0.0, 0.1),
                None,
                (
                    NotchPair(high, high, h.ticks),
                    NotchPair(a - low, b - low, h.ticks),
                ),
            )
        )
    d.lay(
        Verb.SEW,
        sheet.sew(*seams),
        "raglan seams",
        "overarm and raglan seams walked and notched",
        detail="both partners together, from the neck",
    )

"""The lining of sleeves cut in one with the shoulder or the body: a raglan, a kimono
sleeve (transformations 4 and 6).

Traced from front, back and sleeves as they are cut, below the free edge of the neck
facing, which lies on a raglan's sleeves as it does on the shoulders they were cut with.
"""

from collections.abc import Iterator

from clothwright.curves import Path, Vector, from_pair
from clothwright.features.linings.lining_darts import closed_front
from clothwright.features.linings.lining_pieces import (
    NECK_FACED,
    below_line,
    lay_again,
    lay_below,
    lay_closed,
    lay_traced,
    named_lining,
    with_shell_grain,
)
from clothwright.features.linings.lining_strips import REACH
from clothwright.features.linings.sleeve_lining import (
    CAPS,
    MOST_RISE,
    OUT,
    RISES,
    SHORTER,
    cap_over,
    led_aside,
    nearest,
    raised,
    shorter,
    sunk,
    with_raised_underarm,
)
from clothwright.features.wholes import before_yoke
from clothwright.paper import Drafting, PaperError, Piece, Seam, Sheet, redraw
from clothwright.rules import Numbers

_RAGLAN, _KIMONO = "rg_gap", "km_angle"
"""Numbers by which such a sleeve is known."""

_HALVES = (("F", "SLF", "FF"), ("B", "SLB", "BF"))
"""Body, sleeve and facing, front and back."""

_WIDER = 1.5
"""The lining of a raglan's sleeve is at most so much wider at each seam under the arm,
cm (common practice, no source; 0.3 a seam by transformations 6)."""

_GUSSET = "GU"

_HERE = Vector(0.0, 0.0)


def in_one(n: Numbers) -> bool:
    """True when the sleeves are cut in one with the shoulder or the body."""
    return _RAGLAN in n or _KIMONO in n


def line_in_one(d: Drafting) -> None:
    """The lining of front, back and sleeves, their hems shorter."""
    sheet = d.sheet
    for half in _HALVES:
        for shell, line, aside in _below_facing(sheet, *half):
            p = closed_front(sheet, shell) if shell.has("dart low") else shell
            if p is not shell:
                lay_closed(d, shell, p)
            below = named_lining(below_line(p, line.run_on(REACH), NECK_FACED), shell)
            if aside != _HERE:
                below = _to_facing(below, aside)
            facing = sheet.piece(half[2]).name.lower()
            lay_below(d, shell, with_shell_grain(below, shell), facing)
    if "L.SLF" in d.sheet.pieces:
        _raglan(d)
    else:
        _kimono(d)


def _below_facing(
    sheet: Sheet, body: str, sleeve: str, facing: str
) -> Iterator[tuple[Piece, Path, Vector]]:
    """Each shell piece of a half that its facing lies on, and the facing's free edge as
    it lies there: on a raglan's sleeve from the seam over the arm, so far down the
    raglan seam as on the body. That seam is bowed on the sleeve otherwise than on the
    body; how far beside it the facing's edge really ends is told too."""
    front = body == "F"
    shell, free = sheet.piece(body), sheet.edge(facing, "free").path
    yield shell, free, _HERE
    if sleeve not in sheet.pieces:
        return
    on = sheet.piece(sleeve)
    ends = [sheet.edge(code, "raglan").path for code in (body, sleeve)]
    necks = [p.edge("neck").path for p in (before_yoke(sheet, body), on)]
    if front:
        ends[0], free = ends[0].reversed(), free.reversed()
    else:
        ends[1] = ends[1].reversed()
        necks = [path.reversed() for path in necks]
    old, new = necks  # from the shoulder
    m = from_pair(old.start, old.at_length(new.length), new.start, new.end)
    hits = ends[0].meets(free)
    if not hits:
        raise PaperError(
            "the neck facing does not reach down to the raglan seam: make it (nf, nf "
            "shoulder) wider, or begin the raglan (rg front, rg back) nearer to the "
            "shoulder"
        )
    down, out = hits[0]
    line = free.between(0.0, out).moved(m)
    aside = line.end - ends[1].at_length(down)
    yield on, sunk(line, _HERE, aside * -1.0), aside


def _to_facing(lined: Piece, aside: Vector) -> Piece:
    """The lining of a raglan's sleeve led out to the facing's edge where that lies
    beside the raglan seam, and back to the shell's line below."""
    raglan, join = (lined.edge(k) for k in ("raglan", "join"))
    front = raglan.path.start == join.path.end
    ends = (_HERE, aside) if front else (aside, _HERE)
    new = [
        join.along(sunk(join.path, *ends)),
        raglan.along(led_aside(raglan.path, aside, first=front)),
    ]
    new = new if front else new[::-1]
    table = redraw(Sheet().put(lined), lined.code, [e.name for e in new], new)
    return table.piece(lined.code)


# -- raglan --------------------------------------------------------------------------
def _raglan(d: Drafting) -> None:
    """The underarms raised, the body's as much as is good; the sleeve's so that its
    seam is as long as the body's, and wider there where raising it the least leaves
    it too short."""
    bodies = [f"L.{body}" for body, _, _ in _HALVES]
    sheet = d.sheet
    for code in bodies:
        sheet = with_raised_underarm(sheet, code, MOST_RISE)
    lay_again(
        d,
        sheet,
        bodies,
        "the lining of front and back under the arm",
        (("up along the side by {}", MOST_RISE), ("and out by {}", OUT)),
        "the raglan seam led there on its last hand's width",
    )
    shells = [sheet.seam(code) for code in CAPS]
    codes = [f"L.{sleeve}" for _, sleeve, _ in _HALVES]

    def over(rise: float) -> float:
        made = raised(raised(sheet, codes[0], rise), codes[1], rise)
        return sum(cap_over(made, s) for s in shells)

    rise = nearest(over, RISES)
    for code, shell in zip(codes, shells, strict=True):
        wider = _gone_on(sheet, code, shell, rise)
        sheet = shorter(raised(sheet, code, rise, wider), code, "hem")
        lay_again(
            d,
            sheet,
            [code],
            f"{sheet.piece(code).name.lower()} under the arm and at the hem",
            (
                ("up along its own seam by {}", rise),
                ("wider there by {}", wider),
                ("shorter at the hem", SHORTER),
            ),
        )


def _gone_on(sheet: Sheet, code: str, shell: Seam, rise: float) -> float:
    """What makes half a raglan's sleeve, raised, so wide under the arm that it goes on
    flat."""

    def over(wider: float) -> float:
        return cap_over(raised(sheet, code, rise, wider), shell)

    return nearest(over, (0.0, _WIDER))


# -- kimono --------------------------------------------------------------------------
def _kimono(d: Drafting) -> None:
    """Under the arm as the shell, for no seam is passed over there (common practice, no
    source); over it led to the end of the facing's shoulder, for the shell's rises
    above that; the gusset again."""
    if _GUSSET in d.sheet.pieces:
        gusset = d.sheet.piece(_GUSSET)
        lined = named_lining(gusset, gusset)
        lay_traced(d, gusset, with_shell_grain(lined, gusset))
    for body, _, facing in _HALVES:
        code, free = f"L.{body}", d.sheet.edge(facing, "free").path
        sheet = shorter(d.sheet, code, "sleeve hem")
        join, over = sheet.edge(code, "join"), sheet.edge(code, "overarm")
        if body == "F":
            at = join.path.length_to_point(free.end)
            short = join.path.between(at, join.length)
            led = led_aside(over.path, short.start - join.path.start, first=False)
        else:
            at = join.path.length_to_point(free.start)
            short = join.path.between(0.0, at)
            led = led_aside(over.path, short.end - join.path.end, first=True)
        new = [over.along(led), join.along(short)]
        new = new if body == "F" else new[::-1]
        sheet = redraw(sheet, code, [e.name for e in new], new)
        lay_again(
            d,
            sheet,
            [code],
            f"{sheet.piece(code).name.lower()} over the arm, led to the end of the "
            "facing's shoulder",
            (("shorter at the hem of the sleeve", SHORTER),),
        )

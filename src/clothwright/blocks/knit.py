"""The knit bodice without darts, drafted as by hand: back and front on the fold, alike
but for the neck (blocks F; corrections C7). cm, y down, the nape at the origin."""

from clothwright.blocks import knit_curves as lines
from clothwright.blocks.bodice_curves import outwards_back
from clothwright.curves import Motion, Path, Point, Vector, mirror_in, shift
from clothwright.paper import Drafting, Edge, EdgeKind, InnerLine, Piece, Verb, straight
from clothwright.rules import Numbers

BACK, FRONT = "KB", "KF"
"""Codes of the pieces."""


def draft(d: Drafting) -> None:
    """Draft the back (piece KB) and the front (KF) on the table."""
    _back(d)
    _front(d)


def over(n: Numbers) -> Motion:
    """The motion that lays the back's lines where the front is drafted."""
    return mirror_in(Point(n.X / 2, 0.0), Point(n.X / 2, 1.0))


def _back(d: Drafting) -> None:
    n = d.n
    d.part = "knit back"
    d.start("O", Point(0.0, 0.0), "the nape, on the centre back")
    d.point("Cb", "O", "waist at the centre back", down="yW")
    d.point("Bb", "O", "bust line at the centre back", down="yB")
    d.point("Nb", "O", "neck point of the block", right="bw", up=lines.RISE)
    if n.knit_dw > 0:
        _along(d, "Nw", "Nb", "knit_dw", "neck point of the wider neck", "back")
    tip = _along(d, "Tb", "Nb", "S", "tip of the shoulder", "back")
    pitch = lines.pitch_of(tip, n.sigma, n.across, n.yB)
    d.found(
        "pb",
        pitch,
        "pitch of the armhole",
        frm=("Tb", "Bb"),
        amounts=(
            ("from the centre back", pitch.x),
            ("down from Tb", pitch.y - d["Tb"].y),
        ),
        detail="a little over half way from Tb to the bust line",
    )
    d.point("Gb", "Bb", "underarm", right="q_bust")
    d.point("Wb", "Cb", "side at the waist", right="q_waist")
    d.point("Mb", "Cb", "hem at the centre back", down="knit_below")
    if n.knit_below > n.WH_knit:
        d.point("Yb", "Cb", "side at the hip", right="q_hip", down="WH_knit")
    half = _Half(d, BACK, "Back", "back", 0.0, n.q_bust, _STAYS, n.knit_bd)
    half.lay(("Nb", "Tb", "pb", "Gb", "Wb"))


def _front(d: Drafting) -> None:
    n = d.n
    d.part = "knit front"
    d.start(
        "Of",
        Point(n.X, 0.0),
        "the level of the nape on the centre front, on paper of its own",
    )
    d.point("Cf", "Of", "waist at the centre front", down=n.yW + n.front_down)
    d.point("Bf", "Of", "bust line at the centre front", down="yB")
    d.point("Nf", "Of", "neck point of the block", left="bw", up=lines.RISE)
    if n.knit_dw > 0:
        _along(d, "Nv", "Nf", "knit_dw", "neck point of the wider neck", "front")
    tip = _along(d, "Tf", "Nf", "S", "tip of the shoulder", "front")
    back_tip = over(n)(tip)
    d.found(
        "pf",
        over(n)(lines.pitch_of(back_tip, n.sigma, n.across, n.yB)),
        "pitch of the armhole",
        frm=("Tf", "Bf"),
        amounts=(("from the centre front", "across"),),
        detail="as on the back",
    )
    d.point("Df", "Of", "neck at the centre front", down=n.knit_fd - lines.RISE)
    d.point("Gf", "Bf", "underarm", left="q_front")
    d.point("Wf", "Cf", "side at the waist", left="q_waist")
    d.point("Mf", "Cf", "hem at the centre front", down="knit_below")
    if n.knit_below > n.WH_knit:
        d.point("Yf", "Cf", "side at the hip", left="q_hip", down="WH_knit")
    half = _Half(d, FRONT, "Front", "front", n.front_down, n.q_front, over(n), None)
    half.lay(("Nf", "Tf", "pf", "Gf", "Wf"))


_STAYS = shift(Vector(0.0, 0.0))


def _along(d: Drafting, name: str, frm: str, size: str, says: str, half: str) -> Point:
    way = outwards_back(d.n.sigma)
    if half == "front":
        way = Vector(-way.x, way.y)
    return d.along(name, frm, way, size, says, "the slope of the shoulder")


class _Half:
    """One half at work: its lines are drawn as the back has them, then laid over."""

    def __init__(
        self,
        d: Drafting,
        code: str,
        name: str,
        half: str,
        down: float,
        q: float,
        onto: Motion,
        back_depth: float | None,
    ) -> None:
        self.d, self.code, self.name, self.half = d, code, name, half
        self.down, self.q, self.onto, self.back_depth = down, q, onto, back_depth

    def lay(self, at: tuple[str, str, str, str, str]) -> None:
        """Draw neck, shoulder, armhole, side and hem, and lay the piece on the table.
        `at` are the marks of neck point, tip, pitch, underarm and waist."""
        d, n = self.d, self.d.n
        neck_at, tip_at, pitch_at, under_at, waist_at = at
        point = lines.neck_point(n.bw, n.sigma, n.knit_dw)
        tip = lines.neck_point(n.bw, n.sigma, n.S)
        if self.back_depth is None:
            neck = lines.front_neck(point, n.sigma, n.knit_fd).reversed()
            how = "square to the shoulder, level at the centre"
        else:
            neck = lines.back_neck(point, self.back_depth)
            how = "level at the centre back, nearly square to the shoulder"
        wide = {"front": "Nv", "back": "Nw"}[self.half] if n.knit_dw > 0 else neck_at
        self._draw("neck", neck, "neck", (wide,), how)
        hole = lines.armhole(
            tip, n.sigma, n.across, self.q, n.q_waist, n.yB, n.yW + self.down
        )
        self._draw(
            "armhole",
            hole,
            "armhole",
            (tip_at, pitch_at, under_at),
            "square to the shoulder, upright at the pitch, square to the side",
        )
        side = self._side()
        foot = Point(0.0, n.yW + self.down + n.knit_below)
        mark = f"L{self.half[0]}"
        d.found(
            mark,
            self.onto(side.end),
            "side at the hem",
            frm=(f"M{self.half[0]}",),
            amounts=(("towards the side", side.end.x),),
            detail="" if side.end.y > foot.y - 0.01 else "as far down the side",
        )
        self._draw(
            "side",
            side,
            "side",
            (under_at, waist_at, mark),
            "straight from the underarm, in a slack curve over the waist, upright at "
            "the hip or at a hem above it",
        )
        hem = lines.hem_line(foot, side.end, side.end_direction)
        self._draw("hem", hem, "hem", (f"M{self.half[0]}", mark), "square to the side")
        centre = "cf" if self.back_depth is None else "cb"
        edges = (
            Edge("neck", neck),
            straight("shoulder", point, tip),
            Edge("armhole", hole),
            Edge("side", side),
            Edge("hem", hem.reversed(), EdgeKind.FINISHED),
            straight(centre, foot, neck.start, EdgeKind.FOLD),
        )
        far, waist = 99.0, n.yW + self.down
        levels = [("bust line", n.yB), ("waist line", waist)]
        if n.knit_below > n.WH_knit + 1.0:
            levels.append(("hip line", waist + n.WH_knit))
        if n.knit_below <= 1.0:
            del levels[1]
        piece = Piece(
            self.code,
            self.name,
            edges,
            lines=tuple(
                InnerLine(name, Path.line(Point(-far, y), Point(far, y)))
                for name, y in levels
            ),
        )
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(piece.moved(self.onto)),
            self.code,
            f"{self.half} of the knit bodice",
            detail="its centre on the fold; the greatest stretch of the cloth goes "
            "round the body",
        )

    def _side(self) -> Path:
        n = self.d.n
        return lines.side(
            self.q,
            (n.q_bust, n.q_waist, n.q_hip),
            n.yB,
            (n.yW, n.yW + self.down),
            n.WH_knit,
            n.knit_below,
            n.knit_out,
        )

    def _draw(
        self, name: str, path: Path, says: str, frm: tuple[str, ...], detail: str
    ) -> None:
        self.d.draw(
            f"{self.half} {name}",
            path.moved(self.onto),
            f"{says} of the {self.half}",
            frm=frm,
            detail=detail,
        )

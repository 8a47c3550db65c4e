"""What is asked of drawn necks (first garment 3.3)."""

from collections.abc import Iterator

from clothwright.curves import Cubic, Path, degrees_between
from clothwright.features.chains import ABOVE, CUT_OUT, NAPE
from clothwright.features.necks.neck_shapes import (
    SCOOP_FLAT,
    USUAL_DEPTH,
    FrontShape,
    scoop_flat,
)
from clothwright.features.necks.over_head import OVER_HEAD
from clothwright.findings import Finding, Severity
from clothwright.paper import EdgeKind, Sheet
from clothwright.rules import Numbers
from clothwright.truing.outline import wrong_way
from clothwright.truing.tolerances import WRONG_WAY

LOW = 6.0
"""A neck this far below the block's own is low, cm (transformations 2, rule 5)."""


def _tightened(half: str, sheet: Sheet, before: Path) -> Finding:
    """Old and new length of a neck edge whose shoulder was tightened (3.2.5)."""
    after = sheet.lines[f"neck {half}"].length
    return Finding(
        "N11",
        Severity.NOTE,
        f"Tightened at the shoulder, the {half} neck edge is {after:.1f} cm long "
        f"instead of {before.length:.1f} cm.",
        f"neck {half}",
        "",
        {"before": before.length, "after": after},
    )


def front_findings(
    n: Numbers, sheet: Sheet, shape: FrontShape, untightened: Path
) -> Iterator[Finding]:
    """Every check of a front neck; `untightened` is its edge without tightening."""
    low = sheet.lines["neck front"].bounds()[3]
    if low > n.y_BP + 2:
        yield Finding(
            "N1",
            Severity.REFUSE,
            "The front neck reaches below the bust points.",
            "Df",
            "Make it (Df) less deep.",
            {"Df": n.Df},
        )
    elif low > n.y_BP - 4:
        yield Finding(
            "N1",
            Severity.WARN,
            "The front neck comes near the line of the brassiere.",
            "Df",
            "Make it less deep, or sew in a support.",
            {"Df": n.Df},
        )
    low_back = n.Db - n.nr > LOW
    held = "Ks" in sheet.points  # by a strap across the back
    least = 4.0 if low_back and not held else 3.0
    if n.Lr < least:
        yield Finding(
            "N2",
            Severity.WARN,
            f"Less than {least:.0f} cm is left of the shoulder"
            f"{' above a low back' if low_back else ''}.",
            "dw",
            "Make the neck narrower"
            + (", or add a strap across the back." if least > 3.0 else "."),
            {"Lr": n.Lr},
        )
    if n.Df - n.dep > LOW and low_back and n.dw > 5 and not held:
        yield Finding(
            "N7",
            Severity.WARN,
            "A wide neck that is low in front and behind slides off the shoulder.",
            "dw",
            "Raise one of them, or add a strap across the back.",
            {"dw": n.dw},
        )
    yield from _turned_back("front", sheet, "Df", n.Df)
    yield from _shape_findings(n, sheet, shape)
    yield from over_head(n, sheet)
    if n.cn > 0:
        yield from contoured("front", n.cn, _CONTOUR.get(shape, _ANY))
    if n.phi_f:
        yield _tightened("front", sheet, untightened)


_ANY = (0.3, 1.0)
_CONTOUR = {
    FrontShape.SCOOP: (0.6, 1.0),
    FrontShape.V: (1.0, 2.0),
    FrontShape.BOAT: (0.3, 0.6),
    FrontShape.SWEETHEART: (1.0, 2.0),
}
"""Usual contour of the shapes, cm (1.8), before the scale of the cup."""


def contoured(
    half: str, amount: float, usual: tuple[float, float]
) -> Iterator[Finding]:
    """A contour outside what the table of the notes and the scale of cups give."""
    low, high = usual[0] * 0.6, min(max(2.0, usual[1]), usual[1] * 1.8)
    if low - 1e-6 <= amount <= high + 1e-6:
        return
    yield Finding(
        "N12",
        Severity.WARN,
        f"The {half} neck is drawn in by {amount:.1f} cm; usual for it is {low:.1f} cm "
        f"to {high:.1f} cm.",
        f"neck {half}",
        "Pin it on a toile first.",
        {"contour": amount},
    )


_ROUNDED = 0.05
"""A length that is written down to the mm is so much more, cm."""


def opens_in_front(sheet: Sheet) -> bool:
    """True for a garment that buttons or wraps."""
    edges = ("stand", "neck stand", "front edge")
    return any(p.has(e) for p in sheet.pieces.values() for e in edges)


def over_head(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """A neck without any opening passes the head."""
    back = sheet.piece("BC" if "BC" in sheet.pieces else "B")
    on_fold = back.has("cb") and back.edge("cb").kind is EdgeKind.FOLD
    if not (on_fold or back.has(ABOVE)):
        return
    if opens_in_front(sheet):
        return
    round_ = 2 * sum(sheet.lines[f"neck {half}"].length for half in ("front", "back"))
    if "np_long" in n:
        round_ += 2 * n.np_long
    if back.has(NAPE):  # a slit, or a cut-out and what is open above it
        opened = (e for e in (CUT_OUT, NAPE) if back.has(e))
        round_ += 2 * sum(back.edge(e).length for e in opened)
    short, sewn = n.HEAD + OVER_HEAD - round_, back.has(ABOVE)
    if short > 0 and "sl" in n:
        yield Finding(
            "R-j",
            Severity.REFUSE,
            f"The neck is {round_:.1f} cm round with its slit open and does not go "
            f"over a head of {n.HEAD:.1f} cm (HEAD) and {OVER_HEAD:g} cm.",
            "sl",
            f"Make the slit (sl) {n.sl + short / 2 + _ROUNDED:.1f} cm long or more, or "
            "the neck deeper or wider.",
            {"round": round_, "HEAD": n.HEAD},
        )
    elif short > 0:
        yield Finding(
            "R-j",
            Severity.REFUSE,
            f"The neck is {round_:.1f} cm round and does not go over a head of "
            f"{n.HEAD:.1f} cm (HEAD) and {OVER_HEAD:g} cm, for the back "
            + ("is sewn together there." if sewn else "has no opening."),
            "neck",
            _to_open(short, sewn=sewn, bound="nb_w" in n)
            + ", or make the neck deeper or wider.",
            {"round": round_, "HEAD": n.HEAD},
        )


def _to_open(short: float, *, sewn: bool, bound: bool) -> str:
    """What to do for a head that does not go through."""
    if sewn and bound:
        return 'Face neck and cut-out (a "cut-out back" closes with a loop)'
    if sewn:
        return "Let the back close with a loop above its cut-out (closing)"
    long = max(12.0, short / 2)
    slit = f"cut a keyhole or a back neck slit {long:.1f} cm long or more"
    return f"Open the back with a zip{'' if bound else f', or {slit}'}"


def _shape_findings(n: Numbers, sheet: Sheet, shape: FrontShape) -> Iterator[Finding]:
    """What one shape has to be checked for (3.3)."""
    p, c = sheet.points["Nf′"], sheet.points["C"]
    if shape in USUAL_DEPTH:
        below = 0.0 if shape is FrontShape.BOAT else n.dep
        low, high = (below + d for d in USUAL_DEPTH[shape])
        if not low - 0.01 <= n.Df <= high + 0.01:
            yield Finding(
                "usual",
                Severity.WARN,
                f"The {shape.value} neck is {n.Df:.1f} cm deep; usual is "
                f"{low:.1f} cm to {high:.1f} cm.",
                "Df",
                "Look whether that is meant.",
                {"Df": n.Df},
            )
    if shape is FrontShape.SCOOP:
        flat = scoop_flat(p, c, n.sigma_f_new - n.tau)
        if flat < SCOOP_FLAT[0]:
            yield Finding(
                "N9",
                Severity.WARN,
                "A scoop this deep for its width bends the other way at its side.",
                "Df",
                "Raise its tilt at the shoulder, or make it wider or less deep.",
                {"flat": flat},
            )
    if shape is FrontShape.SQUARE:
        side, foot = sheet.lines["neck front"].segments
        corner = degrees_between(side.end_direction, foot.start_direction)
        if abs(corner - 90.0) > 8.0:
            yield Finding(
                "N10",
                Severity.WARN,
                f"The corner of the square neck is {corner:.0f}° off straight; 90° "
                "is square.",
                "lean",
                "Change the lean of its side.",
                {"corner": corner},
            )


def _turned_back(
    half: str, sheet: Sheet, symbol: str, depth: float
) -> Iterator[Finding]:
    """A curve so deep for its shape that it bends the other way below the shoulder."""
    curves = (s for s in sheet.lines[f"neck {half}"].segments if isinstance(s, Cubic))
    back = max((wrong_way(c) for c in curves), default=0.0)
    if WRONG_WAY.severity(back) is Severity.REFUSE:
        yield Finding(
            "N14",
            Severity.REFUSE,
            f"A {half} neck of this shape, {depth:.1f} cm deep, turns the wrong way by "
            f"{back:.0f}° below the shoulder.",
            symbol,
            f"Make it ({symbol}) less deep, or take another shape.",
            {symbol: depth, "back": back},
        )


def back_findings(n: Numbers, sheet: Sheet, untightened: Path) -> Iterator[Finding]:
    """Every check of a back neck."""
    c = sheet.points["Cb"]
    if c.y > n.yW - 8:
        yield Finding(
            "N6",
            Severity.REFUSE,
            "The back neck reaches nearly to the waist.",
            "Db",
            "Make it (Db) less deep.",
            {"Db": n.Db},
        )
    elif c.y > n.yB + 4:
        yield Finding(
            "N6",
            Severity.WARN,
            "The back neck reaches below the line of the brassiere.",
            "Db",
            "Make it less deep, or say so to the client.",
            {"Db": n.Db},
        )
    yield from _turned_back("back", sheet, "Db", n.Db)
    if n.cnb > 0:
        yield from contoured("back", n.cnb, (0.6, 1.5))
    if n.phi_b:
        yield _tightened("back", sheet, untightened)

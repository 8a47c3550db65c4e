"""The piece of a set-in sleeve: cap, seams under the arm, hem (first garment 17, blocks
B9 to B12)."""

import math

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.sleeve import draft_cap
from clothwright.blocks.sleeve_lower import NO_DART, lower_sleeve
from clothwright.curves import (
    Path,
    Point,
    Vector,
    cross,
    direction,
    dot,
    midpoint,
    mix,
    turned,
    unit,
)
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Run,
    Seam,
    SeamKind,
    Verb,
    straight,
)

_BEND = 1.5
"""The ends of the seam under the arm bend to this radius, cm, where there is room."""


def draft_straight(d: Drafting) -> None:
    """Draft the sleeve SL: the cap, the seam under the arm, the hem."""
    n = d.n
    cap = draft_cap(d)
    hf = d.point("Hf", "Uf", "front end of the hem", left="tp", down="under_arm")
    hb = d.point("Hb", "Ub", "back end of the hem", right="tp", down="under_arm")
    hc = d.point("Hc", "Os", "centre of the hem", down=n.under_arm + n.hem_dip)
    front = d.draw(
        "seam front",
        square_to_both(d["Uf"], hf),
        "front seam under the arm",
        frm=("Uf", "Hf"),
        detail="plumb at both ends",
    )
    back = d.draw(
        "seam back",
        square_to_both(d["Ub"], hb),
        "back seam under the arm",
        frm=("Ub", "Hb"),
        detail="plumb at both ends",
    )
    hem = d.draw(
        "hem",
        _level(hf, hc) + _level(hc, hb),
        "hem of the sleeve",
        frm=("Hf", "Hc", "Hb"),
        detail="level at the seams and at the centre",
    )
    cap_back, cap_front = cap.split_at_length(n.cap_back)
    piece = Piece(
        "SL",
        "Sleeve",
        (
            Edge("cap back", cap_back),
            Edge("cap front", cap_front),
            Edge("underarm front", front),
            Edge("hem", hem, EdgeKind.FINISHED),
            Edge("underarm back", back.reversed()),
        ),
        lines=(InnerLine("biceps line", Path.line(d["Ub"], d["Uf"])),),
        grain=(mix(hc, d["T"], 0.1), mix(hc, d["T"], 0.9)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        "SL",
        "sleeve",
        detail="from the cap, both seams and the hem, its grain from T to Hc",
    )


def draft_bent(d: Drafting, *, dart: bool) -> None:
    """Draft the sleeve SL bent forward at the elbow, with or without its dart."""
    n = d.n
    cap = draft_cap(d)
    low = lower_sleeve(n.b_F, n.b_B, n.y_E, n.We, n.hem_sleeve, n.below_elbow, n.swing)
    d.point("Es", "Os", "centre of the elbow", down="y_E")
    half = n.We / 2
    d.point("Ef", "Es", "front of the elbow", right=half)
    eb = d.point("Eb", "Es", "back of the elbow", left=half)
    d.found(
        "Hc",
        low.centre,
        "centre of the hem",
        frm=("Es",),
        amounts=(
            ("from Es", "below_elbow"),
            ("to the front of the plumb line", "swing"),
        ),
    )
    forearm = direction(d["Es"], low.centre)
    for name, at, side in (
        ("Hf", low.front.end, "front"),
        ("Hb", low.back_below.end, "back"),
    ):
        d.found(
            name,
            at,
            f"{side} end of the hem",
            frm=("Hc",),
            amounts=(
                (
                    f"from Hc to the {side}, square to the line from Es to Hc",
                    abs(cross(forearm, at - low.centre)),
                ),
                ("on, parallel to that line", dot(forearm, at - low.centre)),
            ),
            detail="so that the hem meets the seam square",
        )
    for name, path, says, frm in (
        ("seam front", low.front, "front seam under the arm", ("Uf", "Ef", "Hf")),
        (
            "seam back",
            low.back_above + low.back_below,
            "back seam under the arm",
            ("Ub", "Eb", "Hb"),
        ),
        ("hem", low.hem, "hem of the sleeve", ("Hf", "Hc", "Hb")),
    ):
        way = "square to both seams" if name == "hem" else "plumb where it begins"
        d.draw(name, path, says, frm=frm, detail=way)
    darted = dart and n.elbow_in >= NO_DART
    below = low.back_below
    behind = [Edge("underarm back", (low.back_above + below).reversed())]
    if darted:
        mouth, rest = below.split_at_length(n.elbow_in)
        foot = d.found(
            "Ed",
            mouth.end,
            "lower end of the elbow dart",
            amounts=(("along the seam from Eb", "elbow_in"),),
        )
        into = unit(turned(foot - eb, -90))
        tip = d.found(
            "Ep",
            midpoint(eb, foot) + into * n.elbow_depth,
            "point of the elbow dart",
            amounts=(("square from the middle between Eb and Ed", "elbow_depth"),),
        )
        behind = [
            Edge("underarm back low", rest.reversed()),
            straight("dart elbow low", foot, tip),
            straight("dart elbow high", tip, eb),
            Edge("underarm back", low.back_above.reversed()),
        ]
    cap_back, cap_front = cap.split_at_length(n.cap_back)
    piece = Piece(
        "SL",
        "Sleeve",
        (
            Edge("cap back", cap_back),
            Edge("cap front", cap_front),
            Edge("underarm front", low.front),
            Edge("hem", low.hem, EdgeKind.FINISHED),
            *behind,
        ),
        lines=(
            InnerLine("biceps line", Path.line(d["Ub"], d["Uf"])),
            InnerLine("elbow line", Path.line(d["Eb"], d["Ef"])),
        ),
        grain=(Point(0.0, low.centre.y - 0.1 * n.lh), mix(d["T"], d["Os"], 0.2)),
    )
    sheet = d.sheet.put(piece)
    if darted:
        legs = Run("SL", "dart elbow low"), Run("SL", "dart elbow high", True)
        sheet = sheet.sew(
            Seam(
                "elbow dart",
                "elbow dart",
                legs[:1],
                legs[1:],
                "seam",
                "point",
                Ease.about(0.0, 0.1),
                kind=SeamKind.DART,
            )
        )
    d.lay(
        Verb.OUTLINE,
        sheet,
        "SL",
        "sleeve",
        detail="from the cap, both seams and the hem, its grain plumb from T",
    )


def square_to_both(top: Point, foot: Point) -> Path:
    """The seam under the arm: nearly straight, but plumb where it leaves the cap and
    where it meets the hem, so that both run on over it."""
    depth = foot.y - top.y
    # a handle l at the end of a curve that moves aside by tp bends it to 3l²/2tp there
    round_enough = math.sqrt(2 / 3 * abs(foot.x - top.x) * _BEND)
    handle = Vector(0.0, clip(round_enough, 0.25 * depth, 0.4 * depth))
    return Path.cubic(top, top + handle, foot - handle, foot)


def _level(a: Point, b: Point) -> Path:
    """Half of the hem, level at both ends."""
    handle = Vector(0.36 * (b.x - a.x), 0.0)
    return Path.cubic(a, a + handle, b - handle, b)

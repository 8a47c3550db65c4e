"""Corners that must flow when seams are sewn (first garment 22)."""

from collections.abc import Callable, Collection

from clothwright.features.chains import LAPPED_BEHIND, NAPE, TOP, hanging
from clothwright.features.knits.knit_seams import knit_joints
from clothwright.features.knits.knit_skirt_seams import knit_skirt_joints
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.skirts.skirt_joints import skirt_joints
from clothwright.features.trousers.trouser_seams import trouser_joints
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import BLENDED, NECK_SUM, Band

_PEPLUM_SIDE = Band(1.0, 2.0, "the hem of a peplum runs on across its side, degrees")
_PANEL = Band(3.0, 8.0, "armhole and waist run on across a panel seam, degrees")
_SLEEVE_HEM = Band(3.0, 8.0, "the hem of a sleeve runs on across its seam, degrees")
_TIP = Band(3.0, 8.0, "neck and armhole leave the shoulder square, degrees")

_Has = Callable[..., bool]
"""Answers whether a piece with these edges is on the table."""


V_FRONT, V_BACK = "pointed front neck", "pointed back neck"
"""Words of a neckline that comes to a point at its centre."""


def joints(sheet: Sheet, n: Numbers, words: Collection[str]) -> list[Joint]:
    """Every joint of the garment whose edges are on the table; `words` are what its
    features provide."""
    found: list[Joint] = []

    def has(piece: str, *edges: str) -> bool:
        return piece in sheet.pieces and all(sheet.piece(piece).has(e) for e in edges)

    def first(*codes: str, edge: str) -> str:
        return next((c for c in codes if has(c, edge)), "")

    fn, bn = (
        first("FC", "F", "FY", edge="neck"),
        first("BC", "B", "BY", edge="neck"),
    )
    neck_end = "neck side" if has(bn, "neck side") else "neck"
    front_end = "neck side" if has(fn, "neck side") else "neck"
    if has(fn, "neck", "shoulder") and has(bn, neck_end, "shoulder"):
        tilt = n.fn_tilt if "fn_tilt" in n else n.tau
        found.append(
            Joint(
                "neck over the shoulder",
                (Corner(fn, front_end, End.START), Corner(bn, neck_end, End.END)),
                180.0,
                NECK_SUM,
                (90.0 - tilt, 90.0 + tilt),
                _TIP,
            )
        )
    ft = next((c for c in ("FC", "F", "FS", "FY") if has(c, "armhole", "shoulder")), "")
    bt = next((c for c in ("BC", "B", "BS", "BY") if has(c, "armhole", "shoulder")), "")
    if ft and bt:
        found.append(
            Joint(
                "armhole over the shoulder",
                (Corner(ft, "armhole", End.END), Corner(bt, "armhole", End.START)),
                180.0,
                NECK_SUM,
                (90.0, 90.0),
                _TIP,
            )
        )
    if has("FS", "shoulder") and has("BS", "shoulder"):
        for half, a, b in (
            ("front", ("FC", End.START), ("FS", End.END)),
            ("back", ("BC", End.END), ("BS", End.START)),
        ):
            both = Corner(a[0], "shoulder", a[1]), Corner(b[0], "shoulder", b[1])
            over = f"shoulder over the {half} panel"
            found.append(Joint(over, both, 180.0, BLENDED))
    if neck_end == "neck side":
        both = Corner(bn, "neck", End.END), Corner(bn, neck_end, End.START)
        found.append(Joint("back neck over its dart", both, 180.0, _PANEL))
    if has("FC", "armhole") and has("FS", "armhole"):
        found.append(
            Joint(
                "armhole over the front panel",
                (Corner("FC", "armhole", End.START), Corner("FS", "armhole", End.END)),
                180.0,
                _PANEL,
            )
        )
    if has("BC", "armhole") and has("BS", "armhole"):
        found.append(
            Joint(
                "armhole over the back panel",
                (Corner("BC", "armhole", End.END), Corner("BS", "armhole", End.START)),
                180.0,
                _PANEL,
            )
        )
    found += _top_edge(has, words)
    fu, bu = first("FS", "F", edge="armhole"), first("BS", "B", edge="armhole")
    if fu and bu:
        found.append(
            Joint(
                "underarm",
                (
                    Corner(
                        fu,
                        "armhole low" if has(fu, "armhole low") else "armhole",
                        End.START,
                    ),
                    Corner(
                        bu,
                        "armhole low" if has(bu, "armhole low") else "armhole",
                        End.END,
                    ),
                ),
                180.0,
                NECK_SUM,
            )
        )
    if fu and has("B", "neck") and not has("B", "shoulder"):  # a halter's back
        corners = Corner(fu, "armhole", End.START), Corner("B", "neck", End.END)
        found.append(Joint("edge over the side", corners, 180.0, NECK_SUM))
    if _waist_is_trued(sheet):
        found += _waist(has)
    for code, name in ((fn, "neck"), (first("FC", "F", edge="waist"), "waist")):
        if not has(code, "cf"):
            continue
        if name == "neck" and (V_FRONT in words or has(code, "placket")):
            continue
        end = End.END if name == "neck" else End.START
        found.append(Joint.fold(f"{name} at the centre front", Corner(code, name, end)))
    if has("F", OVER):
        centre_front = (Corner("F", OVER, End.END),)
        found.append(Joint("waist over the centre front", centre_front, 180.0))
    if has(bn, "cb") and not (has(bn, "slant") or has(bn, NAPE) or V_BACK in words):
        centre = Corner(bn, "neck", End.START)
        found.append(Joint.fold("neck at the centre back", centre))
    found += _peplum(has, hanging(sheet))
    found += _torso(has)
    if has("F", "overarm"):
        found += _kimono(n)
    if has("SL", "hem"):
        last = "hem back" if has("SL", "hem back") else "hem"
        found += _sleeve(("SL", "hem"), ("SL", last))
        found.append(_cap_top("SL"))
    elif has("SLF", "raglan"):
        found += _raglan(n, "hem back" if has("SLB", "hem back") else "hem")
    elif has("KS", "hem"):
        found += [*_sleeve(("KS", "hem"), ("KS", "hem")), _cap_top("KS")]
    elif has("SLF", "hem"):
        found += _sleeve(("SLF", "hem"), ("SLB", "hem"))
    elif has("ST", "front seam"):
        found += _two_pieces()
    found += skirt_joints(sheet)
    found += trouser_joints(sheet)
    found += knit_joints(sheet)
    found += knit_skirt_joints(sheet)
    return found


def _top_edge(has: _Has, words: Collection[str]) -> list[Joint]:
    """The top edge of a strapless bodice runs on over its seams, square to both
    centres but where it comes to a point."""
    out = []
    start, end = End.START, End.END
    f, b = ("F" if has("F", TOP) else "FS"), ("B" if has("B", TOP) else "BS")
    for name, one, other in (
        ("the side", (f, start), (b, end)),
        ("the front panel", ("FC", start), ("FS", end)),
        ("the back panel", ("BC", end), ("BS", start)),
    ):
        if has(one[0], TOP) and has(other[0], TOP):
            corners = Corner(one[0], TOP, one[1]), Corner(other[0], TOP, other[1])
            out.append(Joint(f"top edge over {name}", corners, 180.0, _PANEL))
    front, back = ("F" if f == "F" else "FC"), ("B" if b == "B" else "BC")
    if has(front, TOP, "cf") and V_FRONT not in words:
        corner = Corner(front, TOP, end)
        out.append(Joint.fold("top edge at the centre front", corner))
    if has(back, TOP, "cb"):
        out.append(Joint.fold("top edge at the centre back", Corner(back, TOP, start)))
    return out


def _cap_top(code: str) -> Joint:
    """The cap runs on where the shoulder seam meets it."""
    top = (Corner(code, "cap back", End.END),)
    return Joint("cap at the shoulder notch", top, 180.0)


def _sleeve(front: tuple[str, str], back: tuple[str, str]) -> list[Joint]:
    """The cap runs on at the shoulder notch and under the arm, the hem over its seam
    (blocks S3, S4; first garment 17.3)."""
    return [
        Joint(
            "cap under the arm",
            (
                Corner(front[0], "cap front", End.END),
                Corner(back[0], "cap back", End.START),
            ),
            180.0,
            NECK_SUM,
        ),
        Joint(
            "sleeve hem over the seam",
            (Corner(*front, End.START), Corner(*back, End.END)),
            180.0,
            _SLEEVE_HEM,
            (90.0, 90.0),
        ),
    ]


def _kimono(n: Numbers) -> list[Joint]:
    """The neck runs on over a kimono's overarm seam, its hem over both seams."""
    start, end = End.START, End.END
    over = Joint(
        "neck over the shoulder",
        (Corner("F", "neck", start), Corner("B", "neck", end)),
        180.0,
        NECK_SUM,
        (90.0 - n.tau, 90.0 + n.tau),
        _TIP,
    )
    return [over] + [
        Joint(
            name,
            (Corner("F", "sleeve hem", f), Corner("B", "sleeve hem", b)),
            180.0,
            _SLEEVE_HEM,
        )
        for name, f, b in (
            ("sleeve hem over the overarm seam", end, start),
            ("sleeve hem over the seam under the arm", start, end),
        )
    ]


def _raglan(n: Numbers, last: str) -> list[Joint]:
    """The neck runs on over the three seams of a raglan, the raglan line under the arm
    on body and sleeve, the hem over both seams."""
    start, end = End.START, End.END
    over = Joint(
        "neck over the shoulder",
        (Corner("SLF", "neck", start), Corner("SLB", "neck", end)),
        180.0,
        NECK_SUM,
        (90.0 - n.tau, 90.0 + n.tau),
        _TIP,
    )
    return [over] + [
        Joint(name, (Corner(*a), Corner(*b)), 180.0, band)
        for name, a, b, band in (
            (
                "neck over the front raglan",
                ("F", "neck", start),
                ("SLF", "neck", end),
                NECK_SUM,
            ),
            (
                "neck over the back raglan",
                ("B", "neck", end),
                ("SLB", "neck", start),
                NECK_SUM,
            ),
            ("underarm", ("F", "raglan", start), ("B", "raglan", end), NECK_SUM),
            (
                "sleeve under the arm",
                ("SLF", "raglan", end),
                ("SLB", "raglan", start),
                NECK_SUM,
            ),
            (
                "hem over the seam under the arm",
                ("SLF", "hem", start),
                ("SLB", last, end),
                _SLEEVE_HEM,
            ),
            (
                "hem over the overarm seam",
                ("SLF", "hem", end),
                ("SLB", "hem", start),
                _SLEEVE_HEM,
            ),
        )
    ]


def _two_pieces() -> list[Joint]:
    """Cap and hem run on over both seams of a two-piece sleeve."""
    start, end = End.START, End.END
    return [
        Joint(name, (Corner("ST", *a), Corner("SU", *b)), 180.0, band)
        for name, a, b, band in (
            (
                "cap over the front seam",
                ("cap front", end),
                ("cap front", start),
                NECK_SUM,
            ),
            (
                "cap over the back seam",
                ("cap back", start),
                ("cap back", end),
                NECK_SUM,
            ),
            ("hem over the front seam", ("hem", start), ("hem", end), _SLEEVE_HEM),
            ("hem over the back seam", ("hem", end), ("hem", start), _SLEEVE_HEM),
        )
    ]


def _waist_is_trued(sheet: Sheet) -> bool:
    return any(s.code in ("S5", "S6") for s in sheet.seams)


def _waist(has: _Has) -> list[Joint]:
    out = []
    for name, a, b in (
        ("waist over the front panel", ("FC", End.END), ("FS", End.START)),
        ("waist over the back panel", ("BS", End.END), ("BC", End.START)),
    ):
        if has(a[0], "waist") and has(b[0], "waist"):
            corners = (Corner(a[0], "waist", a[1]), Corner(b[0], "waist", b[1]))
            out.append(Joint(name, corners, 180.0, _PANEL))
    # a half without a dart has its waist in one
    at_side = [
        next((c for c in choices if has(*c)), None)
        for choices in (
            (("FS", "waist"), ("F", "waist side"), ("F", "waist")),
            (("BS", "waist"), ("B", "waist side"), ("B", "waist")),
        )
    ]
    side_f, side_b = at_side
    if side_f and side_b:
        corners = (Corner(*side_f, End.END), Corner(*side_b, End.START))
        out.append(Joint("waist over the side", corners, 180.0, _PANEL))
    return out


def _torso(has: _Has) -> list[Joint]:
    """The hem of a torso runs on over side and panels, square to fold and centre back
    (blocks C, K6)."""
    out = []
    start, end = End.START, End.END
    f, b = ("F" if has("F", "hem") else "FS"), ("B" if has("B", "hem") else "BS")
    for name, over, under in (
        ("side", f, b),
        ("front panel", "FC", "FS"),
        ("back panel", "BS", "BC"),
    ):
        if has(over, "hem") and has(under, "hem"):
            corners = (Corner(over, "hem", end), Corner(under, "hem", start))
            out.append(Joint(f"hem over the {name}", corners, 180.0, _PEPLUM_SIDE))
    front, back = ("F" if f == "F" else "FC"), ("B" if b == "B" else "BC")
    if has(front, "hem") and has(front, "cf"):
        out.append(Joint.fold("hem at the centre front", Corner(front, "hem", start)))
    if has(back, "hem") and has(back, "cb") and not has(back, "vent"):
        out.append(Joint.fold("hem at the centre back", Corner(back, "hem", end)))
    return out


def _peplum(has: _Has, what: str) -> list[Joint]:
    out = []
    f = "PF" if has("PF", "side") else "PFS"
    b = "PB" if has("PB", "side") else "PBS"
    if has(f, "waist", "hem") and has(b, "waist", "hem"):
        for edge, ends in (
            ("waist", (End.START, End.END)),
            ("hem", (End.END, End.START)),
        ):
            names = [f"{edge} side" if has(c, f"{edge} side") else edge for c in (f, b)]
            corners = (Corner(f, names[0], ends[0]), Corner(b, names[1], ends[1]))
            band = _PEPLUM_SIDE if names == [edge, edge] else _PANEL
            out.append(Joint(f"{what} {edge} over the side", corners, 180.0, band))
    centre = "PF" if has("PF", "cf") else "PFC"
    if has(centre, "cf"):
        for edge, end in (("waist", End.END), ("hem", End.START)):
            out.append(
                Joint.fold(f"{what} {edge} at the fold", Corner(centre, edge, end))
            )
    back = "PB" if has("PB", "hem") else "PBC"
    if has(back, "waist") and not any(has(back, e) for e in LAPPED_BEHIND):
        first = "waist on" if has(back, "waist on") else "waist"
        for edge, end in ((first, End.START), ("hem", End.END)):
            name = f"{what} {edge.split()[0]} at the centre back"
            if edge == "hem" and has(back, "vent"):
                continue
            out.append(Joint.fold(name, Corner(back, edge, end)))
    for half, (c, s) in (("front", ("PFC", "PFS")), ("back", ("PBS", "PBC"))):
        if has(c, "panel") and has(s, "panel"):
            for edge, ends in (
                ("waist", (End.START, End.END)),
                ("hem", (End.END, End.START)),
            ):
                corners = (Corner(c, edge, ends[0]), Corner(s, edge, ends[1]))
                name = f"{what} {edge} over the {half} panel"
                out.append(Joint(name, corners, 180.0, _PEPLUM_SIDE))
    return out

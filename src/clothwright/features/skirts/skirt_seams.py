"""What is sewn to what on a skirt, with its notches (truing 6; blocks K3)."""

from clothwright.blocks import trousers
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.chains import Chains
from clothwright.features.skirts.contour_band import BANDS
from clothwright.features.skirts.flounce import FLOUNCES, hems
from clothwright.features.skirts.godets import GODET
from clothwright.features.skirts.gored_skirt import GORE
from clothwright.features.skirts.pocket_drawing import (
    HIP_PIECE,
    mouth_places,
    pocket_seams,
)
from clothwright.features.skirts.waist_facing import FACINGS, SHORT_OF_ZIP
from clothwright.features.skirts.waistband import BAND, stretches
from clothwright.features.skirts.wrap_skirt_drawing import wrapped
from clothwright.paper import (
    JOINT,
    Ease,
    EdgeKind,
    NotchPair,
    Run,
    Seam,
    SeamKind,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM

WAIST_NAMES = ("waist", "waist mid", "waist side")

FAR = 40.0
"""No stretch of a long seam without a notch is longer, cm (truing 6)."""


def waist_chain(
    t: Chains, code: str, *, outwards: bool, over: bool = False
) -> tuple[Run, ...]:
    """The waist of a half from the centre to the side, or back; with `over` that of a
    wrap's front beyond its centre, out to its edge, or back."""
    names = WAIST_NAMES if outwards else WAIST_NAMES[::-1]
    if over:
        return t.chain(
            *((code, w.replace("waist", "waist over"), not outwards) for w in names)
        )
    backward = (code in (FRONT, trousers.FRONT)) == outwards
    runs = [(code, name, backward) for name in names]
    if code in (FRONT, trousers.FRONT):  # a slanting pocket takes the corner
        runs.insert(len(runs) if outwards else 0, (HIP_PIECE, "waist side", backward))
    return t.chain(*runs)


def skirt_seams(t: Chains, n: Numbers) -> list[Seam]:
    """Every seam of a skirt whose pieces are on the table."""
    if not {BACK, GORE} & set(t.sheet.pieces):
        return [*_facing(t), *_vent(t)]  # of trousers, and of a torso
    return [
        *_facing(t),
        *_gores(t, n),
        *_side(t, n),
        *wrapped(t),
        *pocket_seams(t, FRONT),
        *_centre_back(t, n),
        *_vent(t),
        *_tiers(t, n),
        *_flounces(t),
        *_godets(t),
    ]


def band_seams(t: Chains, n: Numbers) -> list[Seam]:
    """The waist of a skirt or of trousers, stretch by stretch, into its waistband."""
    if BAND not in t.sheet.pieces:
        return []
    out = []
    parts = stretches(t.sheet, n)
    total = sum(part.waist for part in parts)
    scale = n.w_band / sum(part.share for part in parts)
    for i, part in enumerate(parts, 1):
        left = waist_chain(t, part.piece, outwards=part.outwards, over=part.over)
        right = t.chain((BAND, f"band {i}", False))
        a, c = t.length(left), t.length(right)
        stretched = n.by_S if "by_S" in n else 0.0
        plan = scale * part.share - part.waist * (1 - stretched / total)
        notches = () if i == len(parts) else (NotchPair(a, c, 1, JOINT),)
        if "g" in n:  # gathers lie on the side that is walked second
            left, right, notches = right, left, ()
            plan = part.waist * n.g - scale * part.share
        out.append(
            Seam(
                f"S30.{i}",
                f"waistband, {part.name}",
                left,
                right,
                *(("centre", "side") if part.outwards else ("side", "centre")),
                Ease.about(plan, 0.05),
                notches=notches,
            )
        )
    return out


def _facing(t: Chains) -> list[Seam]:
    """The facings sewn to the waist and to each other."""
    out: list[Seam] = []
    for i, (code, facing) in enumerate(FACINGS.items(), 1):
        if not {code, facing} <= set(t.sheet.pieces):
            continue
        outwards = code not in (FRONT, trousers.FRONT)
        left = waist_chain(t, code, outwards=outwards)
        right = t.chain((facing, "waist", False))
        short = -SHORT_OF_ZIP if t.has(facing, "cb") and not _fold(t, facing) else 0.0
        out.append(
            Seam(
                f"S38.{i}",
                t.sheet.piece(facing).name.lower(),
                left,
                right,
                *(("centre", "side") if outwards else ("side", "centre")),
                Ease.about(short, 0.05),
                kind=SeamKind.FACED,
            )
        )
    pairs = (
        (("WFF", "side", True), ("WFB", "side", False)),
        (("WFG", "seam", False), ("WFG", "other seam", True)),
    )
    for first, second in pairs:
        left, right = t.chain(first), t.chain(second)
        if left and right:  # of trousers the foot, which is loose, is levelled
            ease = Ease.about(0.0, 0.5 if trousers.FRONT in t.sheet.pieces else 0.1)
            out.append(Seam("S38", "waist facing", left, right, "waist", "edge", ease))
    for facing, edge, backward in (("WFF", "crotch", False), ("WFB", "seat", True)):
        chain = t.chain((facing, edge, backward))  # of trousers
        if chain:
            says = f"centre of the {t.sheet.piece(facing).name.lower()}"
            even = Ease.about(0.0, 0.05)
            ends = "waist", "edge"
            out.append(
                Seam(f"S38 {edge}", says, chain, chain, *ends, even, kind=SeamKind.TWIN)
            )
    return out


def contour_seams(t: Chains) -> list[Seam]:
    """Each shaped band to its half, and to the same band as its facing."""
    out: list[Seam] = []
    halves = [(c, b) for c, b in BANDS.items() if {c, b} <= set(t.sheet.pieces)]
    for i, (code, band) in enumerate(halves, 1):
        says, ease = t.sheet.piece(band).name.lower(), Ease.about(0.0, 0.05)
        ends = ("centre", "side")
        left = waist_chain(t, code, outwards=True)
        front = band == BANDS[FRONT]
        right = t.chain((band, "foot of band", not front))
        name = t.sheet.piece(code).name.lower()
        out.append(Seam(f"S39.{i}", f"{says} to the {name}", left, right, *ends, ease))
        top = t.chain((band, "waist", front))
        out.append(
            Seam(
                f"S39.{i}t",
                f"{says}, upper edge",
                top,
                top,
                *ends,
                ease,
                kind=SeamKind.TWIN,
            )
        )
    return out


def _fold(t: Chains, code: str) -> bool:
    return t.sheet.piece(code).fold is not None


def _gores(t: Chains, n: Numbers) -> list[Seam]:
    """Each gore to the next."""
    left = t.chain((GORE, "seam", False))
    right = t.chain((GORE, "other seam", True))
    if not left:
        return []
    whole = t.length(left)
    places = [t.upto(left, t.sheet.points["Hg"])]
    if "Zg" in t.sheet.points:
        places = [p for p in places if abs(n.z_S - p) > NOTCH_ROOM]
        places = sorted((*places, n.z_S))
    places += _spaced(places[-1], whole)
    if t.has(GORE, "gore slit"):
        places.append(whole)
    return [
        Seam(
            "S37",
            "gore seam",
            left,
            right,
            "waist",
            "hem",
            Ease.about(0.0, 0.05),
            notches=tuple(NotchPair(s, s) for s in places),
        )
    ]


def _side(t: Chains, n: Numbers) -> list[Seam]:
    left = t.chain(
        ("WCF", "side", True), (HIP_PIECE, "side", True), (FRONT, "side", True)
    )
    right = t.chain(("WCB", "side", False), (BACK, "side", False))
    if not (left and right):
        return []
    places = []
    if "Hbs" in t.sheet.points:
        places.append(t.upto(right, t.sheet.points["Hbs"]))
    whole = t.length(right)
    if "Zs" in t.sheet.points and n.z_S < whole - NOTCH_ROOM:
        places = [p for p in places if abs(n.z_S - p) > NOTCH_ROOM]
        places.append(n.z_S)
    joint = t.length(left[:1]) if left[0].piece == HIP_PIECE else -1.0
    pocket = [joint] if joint > 0 else mouth_places(t.sheet, n)
    places = [p for p in places if all(abs(p - q) > NOTCH_ROOM for q in pocket)]
    places = sorted((*places, *pocket))
    places += _spaced(places[-1] if places else 0.0, whole)
    if t.has(FRONT, "slit"):
        places.append(whole)
    return [
        Seam(
            "S34",
            "skirt side",
            left,
            right,
            "waist",
            "hem",
            Ease.about(0.0, 0.05),
            notches=tuple(
                NotchPair(s, s, 1, JOINT if s == joint else "") for s in places
            ),
        )
    ]


def _spaced(start: float, end: float) -> list[float]:
    """Notches between two places of a seam so that no stretch is longer than 40 cm,
    nearer to the first."""
    count = int((end - start) // FAR)
    return [start + (end - start) * (i + 0.9) / (count + 1) for i in range(count)]


def _centre_back(t: Chains, n: Numbers) -> list[Seam]:
    chain = t.chain(("WCB", "cb", True), (BACK, "cb", True))
    if not chain or t.sheet.edge(BACK, "cb").kind is not EdgeKind.SEAM:
        return []
    whole = t.length(chain)
    places = [n.z_S] if "Zb" in t.sheet.points else []
    places = [p for p in places if p < whole - NOTCH_ROOM]
    places += _spaced(places[-1] if places else 0.0, whole)
    return [
        Seam(
            "S35",
            "centre back of the skirt",
            chain,
            chain,
            "waist",
            "vent" if t.has(BACK, "vent") else "hem",
            Ease.about(0.0, 0.05),
            notches=tuple(NotchPair(s, s, 1) for s in places),
            kind=SeamKind.TWIN,
        )
    ]


def _vent(t: Chains) -> list[Seam]:
    chain = t.chain(
        *((code, "vent top", True) for code in (BACK, "PB", "PBC", "BC", "B"))
    )
    if not chain:
        return []
    return [
        Seam(
            "S36",
            "top of the vent",
            chain,
            chain,
            "centre back",
            "edge",
            Ease.about(0.0, 0.05),
            kind=SeamKind.TWIN,
        )
    ]


def _tiers(t: Chains, n: Numbers) -> list[Seam]:
    """Each tier gathered onto the one above, front and back; its side."""
    out: list[Seam] = []
    above = [("front", (FRONT, "foot of tier", False))]
    above.append(("back", (BACK, "foot of tier", True)))
    zip_left = n.z_S - t.sheet.length(BACK, "side") if "Zs" in t.sheet.points else 0.0
    for k in range(2, 5):
        code = f"T{k}"
        if code not in t.sheet.pieces:
            break
        right = t.chain((code, "top", True))
        for half, run in above:
            left = t.chain(run)
            plan = t.length(right) - t.length(left)
            out.append(
                Seam(
                    f"S106.{k}" + ("b" if half == "back" else ""),
                    f"tier {k}, {half}",
                    left,
                    right,
                    "centre",
                    "side",
                    Ease.about(plan, 0.15),
                )
            )
        side = t.chain((code, "side", True))
        long = t.length(side)
        places = [zip_left] if NOTCH_ROOM < zip_left < long - NOTCH_ROOM else []
        places += _spaced(places[-1] if places else 0.0, long)
        zip_left -= long
        out.append(
            Seam(
                f"S107.{k}",
                f"side of tier {k}",
                side,
                side,
                "top",
                "foot",
                Ease.about(0.0, 0.05),
                notches=tuple(NotchPair(s, s) for s in places),
                kind=SeamKind.TWIN,
            )
        )
        above = [("above", (code, "foot of tier", False))]
    return out


def _flounces(t: Chains) -> list[Seam]:
    """Each part of a flounce to its hem, and to the next part."""
    out: list[Seam] = []
    for code in hems(t.sheet):
        name = FLOUNCES[code]
        if name not in t.sheet.pieces:
            continue
        left = t.chain((code, "hem", False))
        right = t.chain((name, "top", True))
        says = t.sheet.piece(name).name.lower()
        ease = Ease.about(0.0, 0.05)
        out.append(Seam(f"S50.{name}", says, left, right, "", "", ease))
        for edge in ("cf", "cb"):
            if t.has(name, edge) and t.sheet.edge(name, edge).kind is EdgeKind.SEAM:
                chain = t.chain((name, edge, edge == "cb"))
                out.append(
                    Seam(
                        f"S51.{name}",
                        f"centre of the {says}",
                        chain,
                        chain,
                        "top",
                        "hem",
                        ease,
                        kind=SeamKind.TWIN,
                    )
                )
    for first, second in (
        (("NF", "side", True), ("NB", "side", False)),
        (("NT", "side", True), ("NT", "side", True)),
        (("NG", "seam", False), ("NG", "other seam", True)),
    ):
        left, right = t.chain(first), t.chain(second)
        if left and right:
            twin = SeamKind.TWIN if first == second else SeamKind.PLAIN
            ease = Ease.about(0.0, 0.05)
            out.append(
                Seam("S52", "flounce side", left, right, "top", "hem", ease, kind=twin)
            )
    return out


def _godets(t: Chains) -> list[Seam]:
    """A godet into the slits of a seam."""
    out: list[Seam] = []
    for i, (slit, edge) in enumerate(
        (
            ((FRONT, "slit", True), (GODET, "slit", True)),
            ((BACK, "slit", False), (GODET, "other slit", False)),
            ((GORE, "gore slit", False), (GODET, "other gore slit", True)),
            ((GORE, "other gore slit", True), (GODET, "gore slit", False)),
        ),
        1,
    ):
        left, right = t.chain(slit), t.chain(edge)
        if left and right:
            ease = Ease.about(0.0, 0.05)
            out.append(Seam(f"S53.{i}", "godet", left, right, "point", "hem", ease))
    return out

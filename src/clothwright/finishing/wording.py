"""What is written on a piece: its label, the figures along its edges, names of lines.

Label after truing 10 and first garment 19: piece, cloths and quantities, number;
garment, client and date of the measures; allowances.
"""

from collections import Counter
from collections.abc import (
    Callable,
    Collection,
    Iterable,
    Iterator,
    Mapping,
    Sequence,
)
from dataclasses import dataclass, replace

from clothwright.curves import Path, cross, distance
from clothwright.finishing.drawn import Beside, Meaning, Wording, Zone
from clothwright.finishing.label import GLUE
from clothwright.paper import EdgeKind, InnerLine, LineKind, Piece, own_name

_WORDS = {
    "cf": "centre front",
    "cb": "centre back",
    "slant": "slanted edge",
    "cb nape": "centre back at the nape",
    "cb above": "centre back above the cut-out",
    "open": "open edge",
    "free": "loose edge",
    "free above": "loose edge, above the lining",
    "join": "upper edge, to the facing",
    "waist on": "waist, on to the centre back",
    "waist mid": "waist, between the darts",
    "waist side": "waist, side of the dart",
    "dart centre": "waist dart, centre leg",
    "dart side": "waist dart, side leg",
    "dart centre 2": "side waist dart, centre leg",
    "dart side 2": "side waist dart, side leg",
    "backing": "middle of the backing",
    "pleat inside": "inner fold, to the backing",
    "pleat backing": "inner fold, to the skirt",
    "vent top": "top of the vent",
    "end over": "end that laps over",
    "end under": "end of the underlap",
    "inside": "inner edge, turned in",
    "side low": "side, below the dart",
    "side mid": "side, between the darts",
    "side high": "side, above the dart",
    "neck side": "neck, shoulder side of the dart",
    "pleat centre": "pleat, centre fold",
    "pleat side": "pleat, side fold",
    "pleat centre 2": "second pleat, centre fold",
    "pleat side 2": "second pleat, side fold",
    "dart neck cb": "neck dart, centre leg",
    "dart neck side": "neck dart, shoulder leg",
    "dart neck tip": "neck dart, shoulder leg",
    "dart neck cf": "neck dart, centre leg",
    "shoulder neck": "shoulder, neck side of the dart",
    "dart shoulder tip": "shoulder dart, outer leg",
    "dart shoulder cf": "shoulder dart, centre leg",
    "under": "empire seam",
    "under side": "empire seam, side of the dart",
    "yoke side": "seam of the yoke, beside the dart",
    "yoke": "seam of the yoke",
    "yoke over": "seam of the yoke, beyond the centre",
    "foot of yoke": "seam of the yoke",
    "foot of yoke over": "seam of the yoke, beyond the centre",
    "dart yoke side": "dart below the yoke, side leg",
    "dart yoke cf": "dart below the yoke, centre leg",
    "armhole low": "armhole, below the dart",
    "dart armhole low": "armhole dart, lower leg",
    "dart armhole high": "armhole dart, upper leg",
    "cf low": "centre front, below the dart",
    "dart cf high": "centre front dart, upper leg",
    "dart cf low": "centre front dart, lower leg",
    "dart top side": "dart at the centre front, side leg",
    "dart top cf": "dart at the centre front, centre leg",
    "dart foot cf": "dart at the centre front, centre leg",
    "dart foot side": "dart at the centre front, side leg",
    "dart shoulder cb": "shoulder dart, centre leg",
    "dart yoke cb": "dart below the yoke, centre leg",
    "panel low": "panel seam, below the dart",
    "dart panel low": "dart in the panel seam, lower leg",
    "dart panel high": "dart in the panel seam, upper leg",
    "dart side upper": "side dart, upper leg",
    "dart side lower": "side dart, lower leg",
    "dart low": "side dart, lower leg",
    "dart high": "side dart, upper leg",
    "dart low 2": "lower side dart, lower leg",
    "dart high 2": "lower side dart, upper leg",
    "leg cf": "waist dart, centre leg",
    "leg cb": "waist dart, centre leg",
    "leg side": "waist dart, side leg",
    "cap front": "cap, front half",
    "cap back": "cap, back half",
    "cap first": "cap, front half under the back petal",
    "cap last": "cap, back half under the front petal",
    "cap lap": "cap, on the other petal",
    "raglan": "raglan seam",
    "underarm": "seam under the arm",
    "sleeve hem": "hem of the sleeve",
    "dart gusset side": "slash for the gusset, side",
    "dart gusset arm": "slash for the gusset, under the arm",
    "front side": "front, towards the side",
    "back side": "back, towards the side",
    "back arm": "back, towards the sleeve",
    "front arm": "front, towards the sleeve",
    "overarm": "overarm seam",
    "underarm front": "seam under the arm, front",
    "underarm back": "seam under the arm, back",
    "pocket": "mouth of the pocket",
    "side under": "side, below the mouth",
    "panel under": "panel seam, at the pocket",
    "waist under": "waist, behind the front",
    "hem in": "hem, inside",
    "underarm back low": "seam under the arm, back, below the dart",
    "dart elbow low": "elbow dart, lower leg",
    "dart elbow high": "elbow dart, upper leg",
    "hem back": "hem, behind the slit",
    "end front": "front end",
    "end back": "back end",
    "turned end front": "front end, turned in",
    "turned end back": "back end, turned in",
    "end in the band front": "front end, in the seam of the band",
    "end in the band back": "back end, in the seam of the band",
    "end high": "end",
    "end low": "end, inner half",
    "upper": "upper edge",
    "lap": "underlap",
    "lap end": "end of the underlap",
    "lap end low": "end of the underlap, inner half",
    "lap low": "underlap, inner half",
    "outer": "outer edge",
    "strap over": "long edge",
    "strap under": "long edge",
    "outer tail": "outer edge of the tail",
    "tail": "lower edge",
    "placket": "side of the placket",
    "placket foot": "foot of the placket",
    "top inside": "upper end, inner half",
    "foot inside": "foot, inner half",
    "stand": "edge of the stand",
    "neck stand": "neck of the stand",
    "lapel": "edge of the lapel",
    "lapel top": "upper edge of the lapel",
    "collar neck": "collar, to the back facing",
    "collar end": "collar, centre back",
    "waist stand": "waist of the stand",
    "hem stand": "hem of the stand",
    "foot stand": "foot of the stand",
    "lower": "lower edge, to the hem",
    "lower stand": "lower edge of the stand",
    "facing neck": "neck of the facing",
    "facing neck stand": "neck of the facing's stand",
    "facing waist": "waist of the facing",
    "facing waist stand": "waist of the facing's stand",
    "facing shoulder": "shoulder of the facing",
    "facing armhole": "armhole of the facing",
    "facing yoke": "seam of the yoke, on the facing",
    "facing side": "side of the facing",
    "band": "seam of the band",
    "band upper": "upper edge",
    "band lower": "lower edge",
    "neck inside": "neck, inner half",
    "neck stand inside": "neck of the stand, inner half",
}


MEET = 0.05
"""Ends of inner lines nearer than this meet, cm."""

EACH = " of each"
"""Ends a count that holds for several cloths."""


def edge_words(name: str) -> str:
    """An edge's name in words."""
    own = own_name(name)
    return _WORDS.get(own, own)


@dataclass(frozen=True)
class Words:
    """What the order says about one piece."""

    title: str
    client: str
    measured: str
    number: int
    total: int
    cuts: tuple[str, ...]
    """A line for each cloth: "ink crêpe: cut 1 on fold"."""

    allowances: tuple[tuple[str, str], ...]
    """(edges, width)."""

    centres: Mapping[str, str]
    """Edges that are a centre of the garment under another name."""

    fmt: Callable[[float], str]


def wording(
    net: Piece,
    piece: Piece,
    legs: Sequence[Path],
    gathers: Mapping[str, float],
    zones: Iterable[Zone],
    said: Words,
) -> Wording:
    """The wording of a piece whose darts are capped; `net` is the piece without caps,
    `legs` are the darts' in pairs, `gathers` the edges that are gathered, with the
    length that remains, and `zones` the stretches that take in ease or gathers."""
    caps = {e.name for e in piece.edges} - {e.name for e in net.edges}
    return Wording(
        _label(piece, said),
        (
            *_names(piece, said.centres),
            *_drawn_up(zones, said.fmt),
            *_figures(piece, caps, legs, gathers, said.fmt),
        ),
    )


def _label(piece: Piece, said: Words) -> tuple[tuple[str, ...], ...]:
    what = [piece.name.upper(), *(_cuts(c) for c in said.cuts)]
    what.append(_kept(f"piece {said.number} of {said.total}"))
    whose = [said.title.replace(", order ", f", order{GLUE}")]
    if said.client:
        whose.append(_kept(said.client))
    if said.measured:
        whose.append(f"measured {_kept(said.measured)}")
    widths = "; ".join(
        f"{_kept(_here(edges)).replace(f',{GLUE}', ', ')}{GLUE}{_kept(width)}"
        for edges, width in said.allowances
    )
    groups = [tuple(what), tuple(whose)]
    if widths:
        groups.append((f"allowances included: {widths}",))
    return tuple(groups)


def _here(edges: str) -> str:
    """Edges as they are called on their own piece."""
    return ROUND if edges.startswith(ROUND) else edges


ROUND = "all round"


def _cuts(text: str) -> str:
    """Cloths may part, and how it lies from the count, but the count may not."""
    cloths, how = text.rsplit(": ", 1)
    parts = how.removesuffix(EACH).split(", ")
    return f"{cloths}: {', '.join(map(_kept, parts))}" + EACH * how.endswith(EACH)


def _kept(text: str) -> str:
    """The text as one that is not broken."""
    return text.replace(" ", GLUE)


def _names(piece: Piece, centres: Mapping[str, str]) -> list[Beside]:
    """The names of inner lines, of the centres, of what a band is sewn to and of the
    back end of half a collar, and what a fold is for."""
    out = [Beside(Meaning.LABEL, k.name, k.path) for k in _named_once(piece.lines)]
    for e in piece.edges:
        if e.kind is EdgeKind.FOLD:
            text = f"{edge_words(e.name)}, on the fold"
            said = Beside(Meaning.LABEL, text, e.path, True, "on the fold")
            out.append(said)
        elif e.name in centres:
            out.append(Beside(Meaning.LABEL, centres[e.name], e.path, right=True))
        elif own_name(e.name) in ("cf", "cb", "band", "end back"):
            out.append(Beside(Meaning.LABEL, edge_words(e.name), e.path, right=True))
    return out


def _named_once(lines: Iterable[InnerLine]) -> list[InnerLine]:
    """Lines with a name: of two parts of one line the longer; of lines
    that are only numbered ("buttonhole 3"), the first, without its number."""
    out: list[InnerLine] = []
    lines = [k for k in lines if k.kind is not LineKind.ARROW]
    many = Counter(map(_unnumbered, lines))
    for k in lines:
        stem = _unnumbered(k)
        if stem != k.name and many[stem] > 1:
            if any(j.name == stem for j in out):
                continue
            k = replace(k, name=stem)
        first = next((i for i, j in enumerate(out) if _one_line(j, k)), None)
        if first is None:
            out.append(k)
        elif k.path.length > out[first].path.length:
            out[first] = k
    return out


def _unnumbered(line: InnerLine) -> str:
    """Its name without a number at the end."""
    return line.name.rstrip("0123456789").rstrip()


def _one_line(a: InnerLine, b: InnerLine) -> bool:
    ends = (
        (p, q) for p in (a.path.start, a.path.end) for q in (b.path.start, b.path.end)
    )
    if a.name != b.name:
        return False
    return any(distance(p, q) < MEET for p, q in ends) or _in_a_row(a.path, b.path)


def _in_a_row(a: Path, b: Path) -> bool:
    """True for parts of one ruled line, which a dart divides."""
    way = a.start_direction
    off = (abs(cross(way, p - a.start)) for p in (b.start, b.end))
    return a.straight and b.straight and max(off) < MEET


_ALIKE = 0.05
"""Two sides that differ by less are drawn up together, onto a tape: how far is told
with that, cm."""


def _drawn_up(zones: Iterable[Zone], fmt: Callable[[float], str]) -> Iterator[Beside]:
    """What each stretch that is gathered comes to."""
    for z in zones:
        if z.drawn_up and z.to < z.path.length - _ALIKE:
            text = f"gather to {fmt(z.to)}"
            between = " between the notches" if z.notched else ""
            yield Beside(Meaning.DIMENSION, text + between, z.path, True, text)


def _figures(
    piece: Piece,
    caps: Collection[str],
    legs: Sequence[Path],
    gathers: Mapping[str, float],
    fmt: Callable[[float], str],
) -> list[Beside]:
    """The length of each edge; what a dart takes in; what gathers come to."""
    out = []
    for e in piece.edges:
        text, short = fmt(e.length), ""
        if e.name in caps:
            what = "pleat" if "pleat" in e.name else "dart"
            short = fmt(distance(e.path.start, e.path.end))
            text = f"{what} {short}"
        if e.name in gathers:
            text += f", gather to {fmt(gathers[e.name])}"
        out.append(Beside(Meaning.DIMENSION, text, e.path, True, short))
    for leg in legs[::2]:
        out.append(Beside(Meaning.DIMENSION, fmt(leg.length), leg))
    for line in piece.lines:
        if line.path.closed and "dart" in line.name:
            at = {k.name: k.at for k in piece.marks}
            own = own_name(line.name)
            half = line.name.removeprefix(own)  # of a left half, or a mirrored one
            a, b = (at[f"{own}, at the waist{w}{half}"] for w in ("", " again"))
            text = f"dart {fmt(distance(a, b))}"
            out.append(Beside(Meaning.DIMENSION, text, Path.line(a, b)))
    return out

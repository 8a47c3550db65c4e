"""The waist seam of the bodice: trued over every joint (first garment 12).

At each joint both partners are lengthened along their own seam, and every waist edge
becomes a curve that is square to the seams it meets.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage, Words
from clothwright.features.bodice.blouse import (
    ONLY_DARTS,
    blouse_findings,
    lengthen,
)
from clothwright.features.bodice.waist_rules import (
    LEVEL_BACK,
    TRUED,
    WAIST,
    waist_curve,
)
from clothwright.features.bodice.waist_seams import (
    SEAMS,
    waist_joints,
    waist_seams,
)
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.skirts.hanging_seams import crosses
from clothwright.features.wholes import waist_in_band
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, Piece, Run, Seam, Sheet, Verb, redraw
from clothwright.rules import Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length

_SRC = "first garment 12"


class WaistSeam(Feature):
    """Seam at the waist, trued over side and panels."""

    kind: Literal["waist seam"] = "waist seam"
    title: ClassVar[str] = "Waist seam"
    sentence: ClassVar[str] = (
        "There is a [seam at the waist], eased on by {ease} a half."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {
        "blouse": ("F.waist", "FC.waist"),
        "waist": ("FC.waist", "F.waist side", "F.waist"),
        "ex": ("FC.waist", "F.waist side", "F.waist"),
        "ew": ("FC.waist", "F.waist side", "F.waist"),
    }
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, shown=("waist",)) for code in ("FC", "FS", "F", "BS", "BC", "B")
    )
    seams: ClassVar[Mapping[str, str]] = SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"waist seam", "waist line"})
    needs: ClassVar[dict[str, str]] = {
        "front panels": "add a front princess line or a side dart",
        "back panels": "add a back princess line or a back waist dart",
        "opening": "a fitted waist must open: add a low open back, a zip "
        "or a button stand",
    }

    ease: Annotated[
        Length | None,
        Number(
            "ew",
            "ew",
            "bodice eased onto the skirt, each half",
            f"{_SRC}.5",
            0.0,
            0.0,
            0.0,
            1.2,
            (0.0, 0.6),
        ),
    ] = None
    blouse: Annotated[
        Length | None,
        Number(
            "blouse",
            "blouse",
            "bodice longer, to blouse over the waist",
            "blocks D7",
            low=0.6,
            high=4.0,
        ),
    ] = None
    """How much longer the bodice is, to blouse over its waist seam."""

    excess_given_back: bool = True
    """Give the excess of the trued waist back in the darts."""

    def tables(self) -> tuple[RuleTable, ...]:
        return (WAIST, TRUED if self.excess_given_back else LEVEL_BACK)

    def said(self) -> str:
        if self.blouse is None:
            return self.sentence
        return f"{self.sentence[:-1]}; the bodice is {{blouse}} longer, to blouse over."

    def forbids(self) -> Mapping[str, str]:
        return {**self.clashes, **(ONLY_DARTS if self.blouse is not None else {})}

    def stages(self) -> tuple[Stage, ...]:
        trued = Stage(Rank.WAIST, "the waist seam", true_waist)
        if self.blouse is None:
            return (trued,)
        return (trued, Stage(Rank.WAIST, "the blouse", lengthen))

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        return waist_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return waist_joints(sheet)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(Article.TAPE, 1, "for the waist", length=_whole(n, sheet))

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        return (Run(*edge) for edge in waist_edges(sheet))

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        long = _whole(n, sheet)
        yield Operation(
            Work.READY,
            "Tape the bodice's waist",
            (
                f"Tape of {fmt(long)} on the net line of the whole waist, from one end "
                "to the other.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=long,
            task=Task.STAY,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.blouse is not None:
            yield from blouse_findings(sheet)
        for half, aim in (("front", n.aim_F), ("back", n.aim_B)):
            length = _stitched(sheet, half)
            off = length - aim
            if abs(off) > (0.05 if self.excess_given_back else 0.3):
                yield Finding(
                    "B2",
                    Severity.REFUSE,
                    f"The {half} waist measures {length:.2f} cm and should be "
                    f"{aim:.2f} cm.",
                    "waist",
                    "Let the excess be given back (excess_given_back), or give the "
                    "waist more ease (Ew).",
                    {"length": length, "aim": aim},
                )
        if abs(n.ex) > 0.6:
            yield Finding(
                "W1",
                Severity.REFUSE,
                "Truing moves the waist by more than 0.6 cm: the front waist takes in "
                f"{n.fd:.1f} cm at one seam and the back {n.bd:.1f} cm.",
                "ex",
                "Give the waist more ease (Ew), or measure B, W, NBP and NFW again.",
                {"ex": n.ex},
            )
        elif abs(n.ex) > 0.3:
            yield Finding(
                "W1",
                Severity.WARN,
                "Truing moves the waist by more than 0.3 cm.",
                "ex",
                "Look at the darts.",
                {"ex": n.ex},
            )


def _whole(n: Numbers, sheet: Sheet) -> float:
    """The whole waist from one end to the other, cm: where both fronts are sewn to a
    skirt that crosses, with what lies beyond the centre; between laced edges less the
    gap."""
    if "lace_gap" in n:
        return n.w - n.lace_gap
    return n.w + 2 * n.wx if crosses(sheet) else n.w


def _seam(sheet: Sheet, side_panel: str) -> str:
    return "panel seam" if side_panel in sheet.pieces else "dart"


def _half(code: str) -> str:
    return "front" if code.startswith("F") else "back"


def _stitched(sheet: Sheet, half: str) -> float:
    """The waist of a half with its dart closed; of one that is gathered there, or has
    tucks, as it was before: the first before an edge was set back, the other after."""
    of = {"front": "gathered", "back": "gathered back"}[half]
    names = (f"{of} {e}" for e in ("waist", "waist side"))
    gathered = [sheet.lines[e].length for e in names if e in sheet.lines]
    if gathered:
        by_dart = any(name.startswith(f"{of} leg") for name in sheet.lines)
        return sum(gathered) + (0.0 if by_dart else waist_in_band(sheet, half))
    edges = [(c, e) for c, e in waist_edges(sheet) if _half(c) == half]
    stitched = sum(sheet.length(c, e) for c, e in edges)
    return stitched + waist_in_band(sheet, half)


def waist_edges(sheet: Sheet) -> list[tuple[str, str]]:
    """(piece, edge) of every bodice waist edge, from centre front to centre back."""
    out = []
    for code in ("FC", "FS", "F", "FM", "FMS", "BS", "BC", "B", "BMS", "BM"):
        if code in sheet.pieces:
            p = sheet.pieces[code]
            names = (
                ["waist", "waist side"] if code[0] == "F" else ["waist side", "waist"]
            )
            out += [(code, e) for e in names if p.has(e)]
    return out


def true_waist(d: Drafting) -> None:
    """Redraw every waist edge over its joints."""
    n = d.n
    d.part = "waist"
    sheet = d.sheet
    drawn: list[Path] = []

    def dip(p: Piece, neighbour: str) -> float:
        if neighbour in ("side", "side low"):
            return n.delta_s
        return n.delta_f if p.code.startswith("F") else n.delta_b

    for code, name in waist_edges(d.sheet):
        p = sheet.piece(code)
        before, after = p.before(name), p.after(name)
        path = p.edge(name).path
        loose = ("cf", "cb", "slant")
        down = None if before.name in loose else before.path.end_direction
        up = None if after.name in loose else after.path.start_direction * -1.0
        curve = waist_curve(
            path.start,
            path.end,
            down,
            up,
            0.0 if down is None else dip(p, before.name),
            0.0 if up is None else dip(p, after.name),
        )
        new = Path((curve,))
        sheet = redraw(sheet, code, [name], [Edge(name, new)])
        drawn.append(new)
    sheet = sheet.named(**_joints(sheet))
    d.lay(
        Verb.REDRAW,
        sheet,
        "waist",
        "waist, every seam run on below the waist line",
        amounts=(
            (f"at the front {_seam(sheet, 'FS')}", "delta_f"),
            ("at the side", "delta_s"),
            (f"at the back {_seam(sheet, 'BS')}", "delta_b"),
        ),
        detail="then joined by curves that meet each seam at a right angle",
        lines=tuple(drawn),
    )


def _joints(sheet: Sheet) -> dict[str, Point]:
    """Where seams meet the trued waist (12.1), Jf front panel on
    the centre front, Js side on the front, Jb back panel on the centre back."""
    out = {}
    for mark, code, neighbours in (
        ("Jf", "FC", ("panel",)),
        ("Js", "FS", ("side", "side low")),
        ("Js", "F", ("side", "side low")),
        ("Jb", "BC", ("panel",)),
    ):
        piece = sheet.pieces.get(code)
        for name in ("waist side", "waist"):
            if piece is not None and piece.has(name):
                path = piece.edge(name).path
                if piece.before(name).name in neighbours:
                    out[mark] = path.start
                elif piece.after(name).name in neighbours:
                    out[mark] = path.end
    return out

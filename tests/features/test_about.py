"""Pieces are told by their features: no part above them knows one by its code."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import clothwright
from clothwright.curves import Point
from clothwright.features import KINDS
from clothwright.features.about import About, Place
from clothwright.features.roles import Role
from clothwright.features.said import Said, seam_codes
from clothwright.paper import Edge, EdgeKind, Piece, straight

ABOVE = ("finishing", "order", "making", "lay", "sheets")
"""Layers that handle pieces and draw none. The app's table lays the halves of a body in
rows, which it names; any other piece lies beside them."""

OTHER_WORDS = {("hpgl.py", "PU"), ("packing.py", "strip")}
"""Words of a plotter and of a packer that are codes too."""


def _codes_in(file: Path, codes: set[str]) -> Iterator[str]:
    tree = ast.parse(file.read_text())
    for node in ast.walk(tree):
        if not isinstance(node, ast.Constant) or node.value not in codes:
            continue
        if (file.name, node.value) not in OTHER_WORDS:
            yield f"{file.name}, line {node.lineno}: {node.value}"


@pytest.mark.parametrize("layer", ABOVE)
def test_no_layer_above_knows_a_piece_by_its_code(layer: str) -> None:
    codes = {a.code for kind in KINDS.values() for a in kind.pieces}
    files = (Path(clothwright.__file__).parent / layer).rglob("*.py")
    assert not [found for f in files for found in _codes_in(f, codes)]


def _square(code: str) -> Piece:
    a, b, c, d = Point(0, 0), Point(9, 0), Point(9, 9), Point(0, 9)
    done = EdgeKind.FINISHED
    edges = (
        straight("top", a, b),
        straight("right", b, c),
        straight("hem", c, d, done),
    )
    return Piece(code, "Square", (*edges, straight("left", d, a)))


def _as_kind(piece: Piece, edge: Edge) -> Role | None:
    assert piece.edge(edge.name) is edge
    return Role.HEM if edge.kind is EdgeKind.FINISHED else None


def test_what_two_features_say_of_a_piece_is_taken_together() -> None:
    said = Said(
        (
            About("QF", Place.SKIRT, ("front",), {"top": Role.WAIST}, Role.EDGE),
            About("QB", Place.BACK, ("back", "front")),
            About("QF", shown=("pockets",), edges={"hem": _as_kind, "left": _as_kind}),
        )
    )
    for code in ("QF", "L.QF", "QF-L"):  # a lining as its shell, left as right
        piece = _square(code)
        roles = [said.role(piece, e.name, e) for e in piece.edges]
        assert roles == [Role.WAIST, Role.EDGE, Role.HEM, None]
        assert said.place(code) is Place.SKIRT
    assert said.role(_square("QB"), "top", _square("QB").edge("top")) is None
    assert said.shown("front") == ("QF", "QB")
    assert said.shown("pockets") == ("QF",)
    codes = ("own", "QF-L", "L.QB", "QF", "QB")
    assert said.in_order(codes) == ("QB", "QF", "QF-L", "own", "L.QB")


def test_the_page_of_figures_names_every_seam_code() -> None:
    told = (Path(__file__).parents[2] / "docs/figures.md").read_text()
    page = " ".join(told.split())
    named = set(re.findall(r"\bS\d+a?\b", page))
    for first, last in re.findall(r"\bS(\d+) to S(\d+)\b", page):
        if first != "1":  # all of them, as JSON has them
            named |= {f"S{n}" for n in range(int(first), int(last))}
    assert not [code for code, _ in seam_codes() if code not in named]

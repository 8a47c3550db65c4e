"""Lines that are to meet: where they do, or the sentence that says what to change."""

import ast
from pathlib import Path

import pytest

import clothwright
from clothwright.curves import Path as Line
from clothwright.curves import Point
from clothwright.paper import PaperError, meetings

LEVEL = Line.line(Point(-5, 0), Point(5, 0))


def test_lines_that_cross_meet_where_they_cross() -> None:
    rising = Line.line(Point(-3, 4), Point(3, -4))  # through the origin, 3-4-5
    ((along, across),) = meetings(rising, LEVEL, "never said")
    assert (along, across) == pytest.approx((5.0, 5.0))


def test_lines_that_miss_say_which_number_is_to_change() -> None:
    above = Line.line(Point(-5, 1), Point(5, 1))
    with pytest.raises(PaperError, match=r"make it \(L\) longer"):
        meetings(above, LEVEL, "the side ends above the hip: make it (L) longer")


def _first_taken(tree: ast.AST) -> list[int]:
    """Lines that take the first meeting of a call without asking for one."""
    return [
        node.lineno
        for node in ast.walk(tree)
        if isinstance(node, ast.Subscript)
        and isinstance(node.value, ast.Call)
        and isinstance(node.value.func, ast.Attribute)
        and node.value.func.attr == "meets"
    ]


def test_no_feature_takes_a_meeting_for_granted() -> None:
    """An IndexError would tell her nothing of the number that is to change."""
    assert _first_taken(ast.parse("a.meets(b)[0][0]")) == [1]
    folder = Path(clothwright.__file__).parent / "features"
    found = {
        f"{f.name}:{line}"
        for f in folder.rglob("*.py")
        for line in _first_taken(ast.parse(f.read_text()))
    }
    assert not found

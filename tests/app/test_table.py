"""Where names stand on the pieces."""

import pytest
import shapely

from bodies import YSOLDE
from clothwright.app.changes import change
from clothwright.app.keeping import InBook
from clothwright.app.room import Room
from clothwright.app.table import Table, _label_at
from clothwright.app.workshop import made_up, styles
from clothwright.book import Book
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.cowl import Cowl
from clothwright.finishing.finish import unlettered
from clothwright.order import draft
from clothwright.order.pattern import finishing_of
from orders import order, sleeved_features, swapped


@pytest.mark.parametrize("style", sorted(styles()))
def test_a_name_s_place_is_clear_and_as_wide_as_its_lines_let_it(
    book: Book, style: str
) -> None:
    """By shapely: no line of the piece crosses the box that words may fill; and it is
    no smaller than what fits into the clear circle round the place."""
    draft = Room(InBook(book, made_up(book, style))).draft
    assert draft is not None
    f = finishing_of(draft)
    for code in f.order:
        drawn = unlettered(draft.sheet, code, f).drawn
        at, room, across, down = _label_at(drawn)
        outline = drawn.cut_line.flatten(0.4)
        cut = shapely.LineString([(p.x, p.y) for p in outline])
        for wide, tall in ((across, room / 2), (room / 2, down)):
            box = shapely.box(at.x - wide, at.y - tall, at.x + wide, at.y + tall)
            assert not shapely.intersects(cut, box.buffer(-0.02)), code
        assert min(across, down) >= 0.866 * room - 0.01, code


def test_nothing_is_moved_aside_while_a_number_is_pulled(book: Book) -> None:
    """The outline is a new one, the places and names stay until it is let go; then all
    lies as if it had been drawn afresh."""
    room = Room(InBook(book, made_up(book, "peplum-top")))
    before = room.paper
    for cm in (25.0, 30.0):
        pull = {"do": "set", "of": "peplum.length", "cm": cm, "live": True}
        assert change(room, pull) is None
    pulled = room.paper
    assert pulled["pieces"]["PF"]["cut"] != before["pieces"]["PF"]["cut"]
    assert pulled["pieces"]["PF"]["label"] == before["pieces"]["PF"]["label"]
    assert pulled["pieces"]["FC"] is before["pieces"]["FC"]
    assert pulled["places"] == before["places"]
    assert change(room, {"do": "set", "of": "peplum.length", "cm": 30.0}) is None
    assert room.paper["places"] != before["places"]
    assert room.paper["pieces"]["PF"]["label"] != before["pieces"]["PF"]["label"]
    assert room.draft is not None
    assert room.paper == Table().lay(room.draft)


def test_pieces_fill_the_table() -> None:
    """A cowl with its lining has two pieces of the body and many others: in rows no
    wider than these they would lie as a strip far higher than it is wide."""
    bare = (f for f in sleeved_features() if "princess" not in f.kind)
    back = (BackWaistDart(), Lining(mode=Mode.BELOW_FACING))
    features = (*swapped(tuple(bare), Cowl(), place_of="neckline"), *back)
    made = draft(order(YSOLDE, features))
    laid = Table().lay(made)
    corners = [
        (x + b[0] + dx, y + b[1] + dy)
        for c, (x, y) in laid["places"].items()
        for b in (laid["pieces"][c]["box"],)
        for dx, dy in ((0.0, 0.0), b[2:])
    ]
    wide, tall = (max(v) - min(v) for v in zip(*corners, strict=True))
    assert 0.6 < wide / tall < 1.4

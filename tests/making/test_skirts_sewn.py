"""The order of making of skirts, by the rules of tops where they hold, and: sides and
zip before the band, band before the hem (cutting and costing 5)."""

import pytest

from bodies import THEA, YSOLDE
from clothwright.features.operations import Task, Work
from clothwright.making import making_order
from clothwright.order import draft
from features.skirts.test_skirts import KINDS
from making.test_order import complete
from orders import order


@pytest.mark.parametrize("kind", KINDS)
def test_every_seam_and_edge_is_sewn_once_and_in_order(kind: str) -> None:
    m = making_order(draft(order(THEA, KINDS[kind])))
    complete(m)
    works = [op.work for op in m.operations]
    last_side = max(i for i, w in enumerate(works) if w in (Work.SKIRT, Work.PANEL))
    (zipped,) = [i for i, op in enumerate(m.operations) if op.task is Task.ZIP]
    band = [i for i, w in enumerate(works) if w is Work.BAND]
    hems = [i for i, w in enumerate(works) if w in (Work.HEM, Work.LINING_HEM)]
    assert zipped < min(band)
    assert max(band) < min(hems)
    assert last_side < min(hems)
    assert sum(w is Work.FASTEN for w in works) == 1


def test_what_is_bought_for_a_skirt() -> None:
    """A zip at least 2.5 longer than its opening; a hook for the band."""
    d = draft(order(YSOLDE, KINDS["straight"]))
    bought = [b for f in d.order.features for b in f.notions(d.numbers, d.sheet)]
    lengths = {b.article.value: b.length for b in bought}
    assert lengths["concealed zip"] == pytest.approx(d.numbers.z_S + 2.5)
    assert lengths["hook and eye"] is None

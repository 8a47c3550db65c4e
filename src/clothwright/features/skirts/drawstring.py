"""A drawstring beside the elastic of a casing (transformations 8)."""

from typing import ClassVar, Literal

from clothwright.features.skirts.cord import Corded


class Drawstring(Corded):
    """Cord in the casing of an elastic waist, tied in front."""

    kind: Literal["drawstring"] = "drawstring"
    title: ClassVar[str] = "Drawstring"
    sentence: ClassVar[str] = (
        "A [drawstring] {cord} wide runs beside the elastic and comes out through two "
        "{through}, {apart} apart in front."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"drawstring"})
    needs: ClassVar[dict[str, str]] = {
        "cased waist": 'a drawstring runs beside an elastic: add an "elastic waist" to '
        'a gathered skirt, or a "trouser elastic" to trousers; one that draws alone is '
        'a "drawstring waist", or a "trouser drawstring"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "drawstring": "one drawstring runs in a casing; leave the other off"
    }
    beside: ClassVar[str] = " in front of the elastic"
    deeper: ClassVar[str] = "or the elastic (we) wider"

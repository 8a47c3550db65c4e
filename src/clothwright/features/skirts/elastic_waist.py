"""Elastic in a casing at the waist of a gathered skirt (transformations §8)."""

from typing import ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.about import About
from clothwright.features.base import Rank, Shown, Stage
from clothwright.features.skirts.elastic_casing import (
    ElasticCasing,
    cased,
    raise_top,
)
from clothwright.paper import Drafting


class ElasticWaist(ElasticCasing):
    """Waist drawn in by elastic, without band or zip."""

    kind: Literal["elastic waist"] = "elastic waist"
    title: ClassVar[str] = "Elastic waist"
    sentence: ClassVar[str] = (
        "It is pulled on: an [elastic] {width} wide and {shorter} per cent shorter "
        "than the waist runs in a casing turned down from the top."
    )
    shows: ClassVar[Shown] = {"casing": ("SF.waist",), "g": ("SF.waist",)}
    pieces: ClassVar[tuple[About, ...]] = cased(FRONT, BACK)
    gives: ClassVar[frozenset[str]] = frozenset(
        {"waist finish", "skirt opening", "elastic waist", "cased waist"}
    )
    needs: ClassVar[dict[str, str]] = {
        "gathered waist": "an elastic waist must pass the hip unopened, without "
        'darts; take a "gathered skirt", or for trousers a "trouser elastic"'
    }
    clashes: ClassVar[dict[str, str]] = {
        **ElasticCasing.clashes,
        "skirt opening": "an elastic waist is pulled on and needs no zip; leave it off",
    }
    codes: ClassVar[tuple[str, ...]] = (FRONT, BACK)
    wider: ClassVar[tuple[str, str]] = ("g", "Make the skirt fuller (g).")

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the elastic waist", _draft),)


def _draft(d: Drafting) -> None:
    raise_top(d, (FRONT, BACK), "skirt front")

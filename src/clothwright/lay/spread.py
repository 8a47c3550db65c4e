"""The cloth as it is spread on the table: layers, folds, selvedges, stripes, flaws.

Terminology
    along     x, from the end of the cloth where the lay begins; cm.
    across    y, from the near edge of the spread cloth: its fold where there is one
              along the warp, else its outer edge; cm.
    layer     one thickness of cloth; a folded spread has two, face to face.
    band      a strip of the spread in which a piece has to lie whole.
"""

from dataclasses import dataclass

from clothwright.order import Cloth, Flaw, Fold
from clothwright.units import Unit

END_LOSS = 2.0
"""Lost at either end of the cloth, cm (cutting and costing §2.7)."""

MATCHED_END_LOSS = 5.0
"""The same where stripes or checks are matched (§2.7)."""

MOST_TILT = 1.0
"""A piece may be turned off its grain so far at the most, degrees (§2.5)."""


class LayError(ValueError):
    """A lay that cannot be made. `str()` is a plain sentence or several lines."""


@dataclass(frozen=True)
class Box:
    """An upright rectangle, cm."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True)
class Spread:
    """A cloth as it lies. All lengths cm."""

    width: float
    """Of the spread cloth, from its near edge to its far one."""

    bands: tuple[tuple[float, float], ...]
    """Where pieces may lie, across."""

    fold: Fold = Fold.SINGLE
    near_fold: bool = False
    """A fold along the near edge, for pieces on the fold."""

    far_fold: bool = False
    """Another along the far edge."""

    one_way: bool = False
    """All pieces head the same way."""

    tilt: float = 0.0
    """Degrees that a piece may be turned off its grain; one at the most."""

    repeat: tuple[float | None, float | None] = (None, None)
    """Of stripes, along and across."""

    growth: tuple[float, float] = (1.0, 1.0)
    """What the pieces are multiplied by, along and across."""

    flaws: tuple[Box, ...] = ()
    end_loss: float = END_LOSS

    @property
    def layers(self) -> int:
        """Thicknesses of cloth: pieces cut at one place."""
        return 1 if self.fold is Fold.SINGLE else 2

    @property
    def folds(self) -> bool:
        """True when half pieces can lie on a fold."""
        return self.near_fold or self.far_fold

    @property
    def usable(self) -> float:
        """Width of all bands."""
        return sum(b - a for a, b in self.bands)

    @property
    def striped(self) -> bool:
        """True when stripes or checks are to be matched."""
        return any(r is not None for r in self.repeat)

    @property
    def near_edge(self) -> float | None:
        """How far the near side of the upper layer, or the lower one between two folds,
        is from the edge of the open cloth, cm; none where it depends on the lay."""
        shares = {Fold.SINGLE: 0.0, Fold.LENGTHWISE: 1.0, Fold.TWO: 0.5}
        share = shares.get(self.fold)
        return None if share is None else share * self.width

    @property
    def lengths(self) -> int:
        """How many times the length of the lay goes into the cloth."""
        return 2 if self.fold is Fold.ACROSS else 1


def spread(
    cloth: Cloth, fold: Fold, *, unit: Unit = Unit.CM, tilt: float = 0.0
) -> Spread:
    """Spread a cloth. Raises LayError where it cannot lie so."""
    if cloth.width is None:
        raise LayError(
            f"the width of the {cloth.name or 'cloth'} is missing; measure it between "
            "its outer edges at the narrowest place and write width = "
            + ('"54 in"' if unit is Unit.IN else '"140 cm"')
        )
    if not 0 <= tilt <= MOST_TILT:
        raise LayError(
            f"a tilt of {tilt:g} degrees is out of reach; write something from 0 to "
            f"{MOST_TILT:g}"
        )
    if cloth.nap and fold is Fold.ACROSS:
        raise LayError(
            "with a nap the cloth cannot be folded across, for its layers would head "
            'opposite ways; fold it "lengthwise" or lay it "single"'
        )
    if cloth.repeat_weft is not None and fold is not Fold.SINGLE:
        raise LayError(
            "stripes along the cloth, and checks, are cut in a single layer, so that "
            'each one is seen; write fold = "single"'
        )
    if cloth.flaws and fold is Fold.ACROSS:
        raise LayError(
            "folded across, a flaw moves with the length of the lay; cut out the "
            'flaws first, or fold the cloth "lengthwise"'
        )
    w, s = cloth.width, cloth.selvedge
    matched = cloth.repeat_warp is not None or cloth.repeat_weft is not None
    width, bands = _laid(w, s, fold)
    end_loss = MATCHED_END_LOSS if matched else END_LOSS
    return Spread(
        width=width,
        bands=bands,
        fold=fold,
        near_fold=fold in (Fold.LENGTHWISE, Fold.TWO),
        far_fold=fold is Fold.TWO,
        one_way=cloth.nap,
        tilt=0.0 if matched else tilt,
        repeat=(cloth.repeat_warp, cloth.repeat_weft),
        growth=cloth.growth,
        flaws=tuple(b for f in cloth.flaws for b in _flaw(f, w, fold, end_loss)),
        end_loss=end_loss,
    )


def _laid(
    w: float, s: float, fold: Fold
) -> tuple[float, tuple[tuple[float, float], ...]]:
    """Width of a spread and its bands, from a cloth's width and its selvedges."""
    if fold is Fold.LENGTHWISE:
        return w / 2, ((0.0, w / 2 - s),)
    if fold is Fold.TWO:  # the selvedges meet in the middle, over the lower layer
        return w / 2, ((0.0, w / 4 - s), (w / 4 + s, w / 2))
    return w, ((s, w - s),)


def _flaw(flaw: Flaw, w: float, fold: Fold, end_loss: float) -> list[Box]:
    """Where a flaw of the open cloth comes to lie; a fold may divide it."""
    left = flaw.along - end_loss
    a, b = flaw.across, flaw.across + flaw.width
    # stretches of the open cloth, and how each comes to lie: y = k·c + m
    if fold is Fold.LENGTHWISE:
        parts = [(0.0, w / 2, -1, w / 2), (w / 2, w, 1, -w / 2)]
    elif fold is Fold.TWO:
        parts = [
            (0.0, w / 4, -1, w / 4),
            (w / 4, 3 * w / 4, 1, -w / 4),
            (3 * w / 4, w, -1, 5 * w / 4),
        ]
    else:
        parts = [(0.0, w, 1, 0.0)]
    out = []
    for low, high, k, m in parts:
        c, d = max(a, low), min(b, high)
        if c < d:
            y, z = sorted((k * c + m, k * d + m))
            out.append(Box(left, y, left + flaw.length, z))
    return out


def told(fold: Fold) -> str:
    """A fold in a cutter's words."""
    return {
        Fold.SINGLE: "a single layer, right side up",
        Fold.LENGTHWISE: "folded lengthwise, right sides together",
        Fold.ACROSS: "folded across, right sides together",
        Fold.TWO: "two folds, selvedges to the middle, right sides together",
    }[fold]

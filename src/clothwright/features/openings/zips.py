"""How a zip is set into a seam, and what is bought for it (transformations 7).

A visible zip is as long as its opening, a concealed one 2 to 3 cm longer. The seam's
own allowance serves all three: 1.5 to 2 cm, for a lapped one 2 cm.
"""

from collections.abc import Callable, Iterator
from enum import Enum

from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Hazard, Operation, Task, Work

_SPARE = 2.5
"""A concealed zip is bought so much longer than its opening, cm (7)."""

STRIP = 2.5
"""Width of the strip of interlining behind each edge of a zip, cm (cutting and
costing 3)."""

_BEYOND = 1.0
"""It goes on so far beyond the end of the opening, cm (common practice, no source)."""

_STITCHED, _LAP, _UNDER = 0.6, 1.2, 0.3
"""A centred zip is stitched so far to both sides of the seam; a lap so far from its
fold; the edge under a lap stands out by so much, cm (common practice, no source)."""


class Setting(Enum):
    """How a zip is set."""

    CONCEALED = "concealed"
    CENTRED = "centred"
    """Under both edges, which meet over its teeth."""

    LAPPED = "lapped"
    """One edge laps over it."""


def zip_work(setting: Setting) -> Work:
    """When it is put in: a visible zip when the seam below it is closed."""
    return Work.ZIP if setting is Setting.CONCEALED else Work.CENTRE


def zip_task(setting: Setting) -> Task:
    """What its time is reckoned by."""
    return Task.ZIP if setting is Setting.CONCEALED else Task.VISIBLE_ZIP


def below_zip(setting: Setting, *, vent: bool) -> tuple[str, ...]:
    """How the centre back is closed below a zip, and the vent beneath it made."""
    begin = (
        "As near to the zip's last stitches as the foot goes"
        if setting is Setting.CONCEALED
        else "From the notch at the end of the zip down"
    )
    if not vent:
        return (f"{begin}.",)
    return (
        f"{begin}, down to the vent and on along its top.",
        "Clip the right back's allowance at the top of the vent; press the vent to "
        "the left, the left back folded in along the centre back.",
    )


def zip_notions(setting: Setting, opening: float, place: str) -> Iterator[Notion]:
    """The zip to buy for an opening, cm, and the strips of interlining behind it."""
    where = f"for the {place}"
    if setting is Setting.CONCEALED:
        yield Notion(Article.ZIP, 1, where, length=opening + _SPARE, at_least=True)
    else:
        yield Notion(Article.VISIBLE_ZIP, 1, where, length=opening)
    along = f"along both edges of the zip, {place}"
    yield Notion(Article.STRIP, 2, along, length=opening + _BEYOND, size=STRIP)


def strip_work(fmt: Callable[[float], str], place: str) -> Operation:
    """The strips of interlining, before the zip is put in."""
    return Operation(
        Work.FUSE,
        f"Strengthen the edges of the zip, {place}",
        (
            f"A strip of interlining {fmt(STRIP)} wide along each, on the wrong side, "
            f"from the top of the opening to {fmt(_BEYOND)} beyond its end.",
        ),
        hazards=(Hazard.IRON,),
    )


def how_set(
    setting: Setting, fmt: Callable[[float], str], over: str
) -> tuple[str, ...]:
    """What to do, beside where it goes; `over` says which edge laps over which."""
    match setting:
        case Setting.CONCEALED:
            return ("Baste and close it once before you stitch beside the teeth.",)
        case Setting.CENTRED:
            return (
                "Baste the opening shut on its net line and press it open; lay the zip "
                "face down under it, the teeth on the seam.",
                f"Stitch from the right side, {fmt(_STITCHED)} to either side of the "
                "seam and across its lower end; take the basting out.",
            )
        case Setting.LAPPED:
            return (
                f"Press the under edge in so that it stands {fmt(_UNDER)} beyond its "
                "net line, and stitch it close to the teeth.",
                f"Press the other edge in on its net line and lap it over ({over}); "
                f"stitch it {fmt(_LAP)} from its fold and across the lower end.",
            )

"""The search as a program beside us: an order in, ever shorter lays out.

    python -m clothwright.lay.aside

One line of JSON comes in: `text` of the order with its `place`, the `house` rules, the
`cloth`, the `fold` (or null), the `seconds`. Lines go out, each a lay that is shorter
than the one before: `length`, `bound`, `share`, `fold`, `placed`; at the end `done`
with `saving` and `others`, or `refused` with a sentence. When the way in is closed, the
search ends and the best stands.
"""

import json
import sys
import threading
from collections.abc import Sequence
from dataclasses import astuple, replace
from pathlib import Path

from clothwright.lay.patterns import matched_seams, shapes_of
from clothwright.lay.pieces import Placed
from clothwright.lay.plan import GAP, WAYS, Told, lay
from clothwright.lay.solve import Budget, Progress, solve
from clothwright.lay.spread import LayError, spread
from clothwright.order import Fold, OrderError, Pattern, draft, pattern
from clothwright.order.file import order_from_text


def main() -> None:
    """Search as the line that comes in says."""
    wish = json.loads(sys.stdin.readline())
    stopped = threading.Event()

    def listen() -> None:
        sys.stdin.read()
        stopped.set()

    threading.Thread(target=listen, daemon=True).start()
    fold = Fold(wish["fold"]) if wish["fold"] else None
    told = _Teller()

    def at_once(p: Progress) -> None:
        told(replace(p, share=0.0))

    try:
        order = order_from_text(wish["text"], wish["place"], Path())
        if wish["house"]:
            order = replace(
                order, house_text=wish["house"], house_place="the house rules"
            )
        finished = pattern(draft(order))
        _first(finished, wish["cloth"], fold, at_once)
        made = lay(
            finished,
            wish["cloth"],
            fold=fold,
            budget=Budget(seconds=float(wish["seconds"])),
            told=told,
            stop=stopped.is_set,
        )
    except (LayError, OrderError) as e:
        _say({"refused": str(e)})
        return
    _say(
        {
            "done": True,
            "length": made.length,
            "fold": made.spread.fold.value,
            "placed": _plain(made.placed),
            "saving": made.saving,
            "others": [[f.value, n] for f, n in made.others],
        }
    )


def _first(finished: Pattern, cloth: str, fold: Fold | None, told: Told) -> None:
    """A lay at once, on the first fold that takes the pieces; none where a refusal is
    to come, which the search says better."""
    order = finished.draft.order
    bought = order.cloths.get(cloth)
    wanted = fold or (bought.fold if bought else None)
    if bought is None or bought.width is None or finished.failed:
        return
    for way in (wanted,) if wanted else WAYS:
        try:
            on = spread(bought, way, unit=order.unit)
            shapes = shapes_of(finished, cloth, growth=on.growth)
            seams = matched_seams(finished, on)
            solve(
                shapes,
                on,
                seams=seams,
                gap=GAP,
                budget=Budget(layouts=1),
                unit=order.unit,
                told=told,
            )
        except LayError:
            continue
        return


class _Teller:
    """Tells a progress when the lay is another, or when some time has gone by."""

    def __init__(self) -> None:
        self.placed: tuple[Placed, ...] = ()
        self.share = -1.0

    def __call__(self, p: Progress) -> None:
        if p.placed is self.placed and p.share < self.share + 0.05:
            return
        self.placed, self.share = p.placed, p.share
        _say(
            {
                "length": p.length,
                "bound": p.bound,
                "share": p.share,
                "fold": p.fold.value,
                "placed": _plain(p.placed),
            }
        )


def _plain(placed: Sequence[Placed]) -> list[list[object]]:
    return [list(astuple(p)) for p in placed]


def _say(line: dict[str, object]) -> None:
    print(json.dumps(line), flush=True)


if __name__ == "__main__":
    main()

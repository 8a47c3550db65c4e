"""What every opening at the waist must do: let the hip pass (transformations 7)."""

from collections.abc import Iterable

from clothwright.findings import Finding, Severity
from clothwright.rules import Numbers


def too_short(n: Numbers, long: float, name: str, symbol: str) -> Iterable[Finding]:
    """A fault when trousers that are open by so much do not pass the hip. `long` is in
    cm, `name` and `symbol` are the opening's."""
    open_ = n.W + n.Ew + 2 * long
    if open_ < n.H:
        yield Finding(
            "Y2",
            Severity.REFUSE,
            f"Opened, the waist comes to {open_:.1f} cm and does not pass the hip "
            f"(H) of {n.H:.1f} cm.",
            symbol,
            f"Make the {name} ({symbol}) longer.",
            {"open": open_, "H": n.H},
        )

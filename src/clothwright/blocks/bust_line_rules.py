"""The level of the bust line, and with it the depth of the armhole (blocks A1.5).

Two ways lead there: by the scale of the bust, or from the measured depth. Lengths in
cm; y runs down from the nape.
"""

from clothwright.rules import RuleTable

SCALE_DEPTH = RuleTable("armhole depth by the scale rule")
MEASURED_DEPTH = RuleTable("armhole depth from the measured depth")

_SRC = "blocks A1.5"


@SCALE_DEPTH.rule(
    "Dm",
    "depth of the armhole, mean of back and front",
    source=f"{_SRC} (inch workroom practice)",
    formula="B/6 + k; over 100 cm a twelfth; with a full cup the frame bust for B",
    low=8.0,
    high=30.0,
)
def Dm(B: float, Bf: float, c: float, k: float) -> float:
    bust = Bf if c > 7 else B
    return min(bust, 100.0) / 6 + max(0.0, bust - 100.0) / 12 + k


@SCALE_DEPTH.rule(
    "yB",
    "level of the bust line",
    source=_SRC,
    formula="Dm below the mean of the shoulder tips",
)
def yB(Dm: float, y_tb: float, y_tf: float, dl: float) -> float:
    return Dm + (y_tb + y_tf + dl) / 2


@MEASURED_DEPTH.rule(
    "yB", "level of the bust line", key="yB", source=_SRC, formula="AS + d"
)
def _measured(AS: float, d: float) -> float:
    return AS + d


@MEASURED_DEPTH.rule(
    "Dm",
    "depth of the armhole, mean of back and front",
    key="Dm",
    source=_SRC,
    formula="bust line below the mean of the shoulder tips",
)
def _mean(yB: float, y_tb: float, y_tf: float, dl: float) -> float:
    return yB - (y_tb + y_tf + dl) / 2

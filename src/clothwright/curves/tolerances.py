"""Tolerances of the geometry, by kind, in centimetres. One place, one reason each."""

ARC = 1e-7
"""Arc length: far below what any chain of edges could add up to a tape's mark."""

CLOSE = 1e-6
"""Two points this near are the same point: rounding of doubles on a 200 cm page."""

SOLVE = 1e-4
"""Solvers stop here: a hundredth of the 0.01 cm that a cutter's maths asks for."""

FIT = 0.005
"""A fitted curve (an allowance's parallel) may stray this far: a twentieth of the
finest mark a cutter draws, 0.1 cm."""

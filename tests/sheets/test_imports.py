"""Asking for the outputs loads nothing heavy; each loads its library when it writes."""

import subprocess
import sys


def test_sheets_are_light() -> None:
    code = (
        "import sys, clothwright.sheets; "
        "print([m for m in ('reportlab', 'ezdxf', 'shapely', 'pikepdf', 'numpy') "
        "if m in sys.modules])"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "[]"

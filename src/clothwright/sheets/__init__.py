"""What is handed over on paper or to a machine: pages, pictures, exchange files.

Every output listens to the same drawn pieces. Nothing heavy is loaded before a
file is written.
"""

from clothwright.sheets.dxf import write_dxf
from clothwright.sheets.formats import ROLL_WIDTH, PageFormat, Scale
from clothwright.sheets.hpgl import write_hpgl
from clothwright.sheets.pdf import write_pdf
from clothwright.sheets.svg import write_svg
from clothwright.sheets.write import SheetError

__all__ = [
    "ROLL_WIDTH",
    "PageFormat",
    "Scale",
    "SheetError",
    "write_dxf",
    "write_hpgl",
    "write_pdf",
    "write_svg",
]

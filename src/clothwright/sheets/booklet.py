"""Booklets through typst: one template, one set of data, one PDF."""

from importlib import resources
from pathlib import Path

from clothwright.sheets.write import SheetError, write_file


def compile_to(template: str, data: str, target: Path) -> None:
    """Set a template of this package with JSON data and write it as PDF.

    Values reach the template as data, never as markup. Raises SheetError.
    """
    import typst

    source = resources.files("clothwright.sheets").joinpath(template).read_bytes()
    fonts = resources.files("clothwright.sheets").joinpath("fonts")
    with resources.as_file(fonts) as folder:
        faces = typst.Fonts(include_system_fonts=False, font_paths=[folder])
        try:
            pdf = typst.compile(
                source,
                format="pdf",
                font_paths=faces,
                sys_inputs={"data": data},
                timestamp=0,
            )
        except typst.TypstError as e:
            raise SheetError(f"{target.name} could not be set: {e.message}") from e
    assert isinstance(pdf, bytes)
    write_file(target, pdf)

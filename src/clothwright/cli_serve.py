"""`clothwright serve`: the app in a browser, on this machine."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated

import typer

FAILED = 5


def serve(
    book: Annotated[
        str,
        typer.Option(
            envvar="CLOTHWRIGHT_BOOK",
            help="The book's file, or a PostgreSQL address; else your own.",
        ),
    ] = "",
    host: Annotated[
        str,
        typer.Option(
            help="Address to listen at; beyond this machine it needs a "
            "password in CLOTHWRIGHT_PASSWORD."
        ),
    ] = "127.0.0.1",
    port: Annotated[int, typer.Option(help="Port; 0 takes a free one.")] = 8643,
    certificate: Annotated[
        Path | None, typer.Option(help="TLS certificate (PEM), with --key.")
    ] = None,
    key: Annotated[Path | None, typer.Option(help="Its key (PEM).")] = None,
) -> None:
    """Open the workroom in a browser; all of it stays on this machine."""
    from clothwright.app.serving import ServeError
    from clothwright.app.serving import serve as run
    from clothwright.book import BookError

    try:
        run(
            book or None,
            host,
            port,
            os.environ.get("CLOTHWRIGHT_PASSWORD", ""),
            certificate,
            key,
        )
    except (BookError, ServeError) as e:
        print(e, file=sys.stderr)
        raise typer.Exit(FAILED) from None

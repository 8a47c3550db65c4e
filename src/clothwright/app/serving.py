"""Starting the app: where it listens, and what it tells the user."""

import gc
import logging
import secrets
import socket
import ssl
from pathlib import Path

from clothwright.app.guard import LOOPBACK, hashed
from clothwright.book import open_book
from clothwright.features import KINDS


class ServeError(ValueError):
    """The app cannot be started so: one plain sentence."""


def serve(
    book: Path | str | None,
    host: str,
    port: int,
    password: str,
    certificate: Path | None,
    key: Path | None,
) -> None:
    """Serve the book until it is interrupted. Raises BookError, ServeError."""
    import uvicorn

    from clothwright.app.line import Line
    from clothwright.app.server import create_app

    beyond = host not in LOOPBACK
    if beyond and len(password) < 8:
        raise ServeError(
            "Beyond this machine a password is needed, of 8 letters or more; set "
            "CLOTHWRIGHT_PASSWORD."
        )
    if (certificate is None) != (key is None):
        raise ServeError("A certificate and its key go together; name both.")
    if certificate is not None and key is not None:
        _check_pair(certificate, key)
    hosts = {*LOOPBACK, host, socket.gethostname(), *_addresses(host)}
    with open_book(book) as opened:
        app = create_app(
            opened,
            hosts=hosts,
            password=hashed(password) if beyond else "",
            secret=secrets.token_hex(32),
            secure=certificate is not None,
        )
        tuple(KINDS.values())  # their files are read now, while nobody waits
        # what a draft makes holds no rings: to look for them less often takes 4 % off
        gc.freeze()
        gc.set_threshold(10_000, 20, 20)
        listening = _listen(host, port)
        scheme = "https" if certificate else "http"
        name = f"[{host}]" if ":" in host else host
        place = f"{scheme}://{name}:{listening.getsockname()[1]}/"
        print(f"The workroom is at {place}", flush=True)
        print(f"The book lies at {opened.place}. Ctrl-C closes it.", flush=True)
        if beyond and not certificate:
            print(
                "Without a certificate the password crosses the network unhidden; "
                "use --certificate and --key, or a network of your own."
            )
        config = uvicorn.Config(
            app,
            log_level="warning",
            access_log=False,
            http=Line,
            ws_max_size=64_000,
            ws_per_message_deflate=False,  # packing costs more than the way to here
            ssl_certfile=certificate,
            ssl_keyfile=key,
            server_header=False,
            timeout_graceful_shutdown=2,
        )
        logging.getLogger("python_multipart").setLevel(logging.ERROR)
        logging.getLogger("uvicorn.error").addFilter(_worth_saying)
        # what is loaded stays; searched for waste, it would hold a change up by 60 ms
        gc.collect()
        gc.freeze()
        uvicorn.Server(config).run([listening])


def _worth_saying(record: logging.LogRecord) -> bool:
    """Not that a sheet was still being drawn when she closed the workroom."""
    return "graceful shutdown" not in record.getMessage()


def _check_pair(certificate: Path, key: Path) -> None:
    """Whether the line can be encrypted with these files. Raises ServeError."""
    for file in (certificate, key):
        try:
            text = file.read_bytes()
        except FileNotFoundError:
            said = f"{file}: there is no such file; name a PEM file."
            raise ServeError(said) from None
        except OSError as e:
            raise ServeError(f"{file} cannot be read ({e.strerror}).") from None
        if b"-----BEGIN " not in text:
            raise ServeError(f"{file} is no PEM file; one begins with -----BEGIN.")

    def locked() -> str:
        raise ServeError(
            f"{key} is locked with a password; write it once without: "
            "openssl pkey -in locked.pem -out key.pem"
        )

    try:
        ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(
            certificate, key, locked
        )
    except ssl.SSLError:
        raise ServeError(
            f"{certificate} and {key} do not belong together, or one is damaged; name "
            "a certificate and the key that it was made with."
        ) from None


def _listen(host: str, port: int) -> socket.socket:
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    # named as TCP, or asyncio does not see that it is, and small messages wait 40 ms
    found = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        found.bind((host, port))
        found.listen(128)  # who comes before it is ready waits
    except OSError as e:
        found.close()
        raise ServeError(
            f"The workroom cannot be opened at {host}, port {port} "
            f"({e.strerror}); name another with --port, or --port 0 for a free one."
        ) from e
    except OverflowError as e:
        found.close()
        raise ServeError("A port is a number from 0 to 65535.") from e
    return found


def _addresses(host: str) -> set[str]:
    """The names by which this machine is reached when it listens everywhere."""
    if host not in ("0.0.0.0", "::"):
        return set()
    try:
        found = socket.getaddrinfo(socket.gethostname(), None)
    except OSError:
        return set()
    return {str(a[4][0]) for a in found}

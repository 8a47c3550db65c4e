"""The line of one browser: HTTP/1.1 that stays calm when a message cannot be read.

uvicorn's own answers twice, or out of turn, when a message breaks off after its head
was read; each time it logs a traceback.
"""

from uvicorn.protocols.http.h11_impl import H11Protocol


class Line(H11Protocol):
    """After a message that cannot be read nothing more is said on its line."""

    def send_400_response(self, msg: str) -> None:
        """Say that it cannot be read, unless an answer is on its way; hang up."""
        answering = False
        cycle = self.cycle
        if cycle is not None and not cycle.response_complete:
            answering = cycle.response_started
            cycle.disconnected = True
            cycle.message_event.set()
        if not answering and not self.transport.is_closing():
            body = msg.encode()
            self.transport.write(
                b"HTTP/1.1 400 Bad Request\r\ncontent-type: text/plain\r\n"
                b"connection: close\r\ncontent-length: %d\r\n\r\n%b" % (len(body), body)
            )
        self.transport.close()

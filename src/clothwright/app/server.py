"""The app on HTTP: pages, sheets and the socket of each slip. No other host is asked
for anything: every script, style and picture lies in this package."""

import asyncio
import contextlib
import mimetypes
from importlib import resources
from pathlib import Path

from fastapi import FastAPI, WebSocket, WebSocketDisconnect
from fastapi.responses import Response
from fastapi.staticfiles import StaticFiles
from fastapi.templating import Jinja2Templates
from starlette.requests import Request

from clothwright import __version__
from clothwright.app.tabs import Desk, Tab
from clothwright.units import Unit

mimetypes.add_type("text/javascript", ".js")
HERE = Path(str(resources.files("clothwright.app")))

"""A served book, and windows of a real browser at it: wide, and a phone's."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from ..browsing import browser, served, watched


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    with browser() as opened:
        yield opened


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with served(tmp_path_factory.mktemp("book") / "book.db") as address:
        yield address


@pytest.fixture
def page(chromium: Browser) -> Iterator[Page]:
    context = chromium.new_context(viewport={"width": 1440, "height": 900})
    page = context.new_page()
    wrong = watched(page)
    yield page
    context.close()
    assert wrong == []


@pytest.fixture
def phone(chromium: Browser) -> Iterator[Page]:
    context = chromium.new_context(
        viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True
    )
    page = context.new_page()
    wrong = watched(page)
    yield page
    context.close()
    assert wrong == []

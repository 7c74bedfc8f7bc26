"""A browser without a window, where the machine has one."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest

FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--disable-dev-shm-usage", "--hide-scrollbars",
)  # fmt: skip


def program() -> str:
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if found is None:
        if os.environ.get("CI"):
            pytest.fail("CI must have chromium for the tests of the page")
        pytest.skip("chromium is not installed")
    return found


@pytest.fixture(scope="session")
def chrome():
    """Give a browser that can be pointed at, typed into and asked."""
    from playwright.sync_api import sync_playwright

    path = program()
    with sync_playwright() as started:
        opened = started.chromium.launch(executable_path=path, args=list(FLAGS[1:]))
        yield opened
        opened.close()


@pytest.fixture(scope="session")
def browser(tmp_path_factory):
    """Give a function that runs the browser once and returns what it wrote to stdout."""
    path = program()

    def run(page: Path, *options: str) -> str:
        profile = tmp_path_factory.mktemp("profile")
        done = subprocess.run(
            [path, *FLAGS, f"--user-data-dir={profile}", *options, page.as_uri()],
            capture_output=True, text=True, check=True, timeout=120,
        )  # fmt: skip
        return done.stdout

    return run

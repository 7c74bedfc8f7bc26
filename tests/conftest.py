"""Where tests find what they share."""

from __future__ import annotations

from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
SHARED = ROOT.parent / "shared"


@pytest.fixture(scope="session")
def shared_tracks() -> Path:
    """Folder of real recordings; they are not part of the project, so tests skip without them."""
    folder = SHARED / "tracks"
    if not folder.is_dir():
        pytest.skip("the real recordings (shared/tracks) are not beside this checkout")
    return folder

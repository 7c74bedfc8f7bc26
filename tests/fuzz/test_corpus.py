"""The kept corpus of the fuzzing, read once more: a record or one refusal, without a warning."""

from __future__ import annotations

from pathlib import Path

import pytest
from fuzz.readers_by_kind import READERS

from audit.errors import InputRefusedError

CORPUS = Path(__file__).parent / "corpus"


@pytest.mark.parametrize("kind", READERS)
def test_what_was_kept_of_the_fuzzing_reads_or_is_refused(tmp_path, kind):
    read, name = READERS[kind]
    kept = sorted((CORPUS / kind).iterdir())
    outcomes = set()
    for sample in kept:
        (tmp_path / name).write_bytes(sample.read_bytes())
        try:
            assert read(tmp_path / name) is not None
            outcomes.add("read")
        except InputRefusedError:
            outcomes.add("refused")
    assert outcomes == {"read", "refused"}

"""Arrays of a finished record: nobody may change what others have been told."""

from __future__ import annotations

from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

_Scalar = TypeVar("_Scalar", bound=np.generic)


def read_only(array: NDArray[_Scalar]) -> NDArray[_Scalar]:
    """Give the same array, which from here on cannot be written to."""
    array.setflags(write=False)
    return array

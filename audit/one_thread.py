"""Sums on one thread: the matrices here are small, and the same input is to give the same bytes.

Threads over small sums wait for each other and cost several times the processor time, and how
many there are decides in which order a sum is taken, and so its last digits. The command says
so before numpy is loaded; who calls the library has it loaded already.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

_Given = ParamSpec("_Given")
_Result = TypeVar("_Result")


def on_one_thread(function: Callable[_Given, _Result]) -> Callable[_Given, _Result]:
    """Hold the linear algebra within a function to one thread; afterwards it is as before."""

    @wraps(function)
    def held(*args: _Given.args, **kwargs: _Given.kwargs) -> _Result:
        from threadpoolctl import threadpool_limits  # noqa: PLC0415 (a command needs it late)

        # What is loaded is looked up anew: another library may have brought its own since.
        with threadpool_limits(limits=1, user_api="blas"):
            return function(*args, **kwargs)

    return held

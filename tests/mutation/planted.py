"""A wrong planted into functions that are loaded already: only their code is exchanged.

What imported them keeps them, so that nothing need be loaded anew for a mutant.
"""

from __future__ import annotations

import gc
from collections.abc import Iterator
from functools import _lru_cache_wrapper
from pathlib import Path
from types import CodeType, FunctionType

from mutation.mutants import Mutant, spoilt


def plant(file: Path, mutant: Mutant) -> int:
    """Exchange the code of the function that holds the wrong; say how many functions had it."""
    tree = spoilt(file.read_text("utf-8"), mutant)
    codes = {
        code.co_qualname: code
        for code in _functions_of(compile(tree, str(file), "exec"))
        if code.co_qualname == mutant.function
    }
    exchanged = 0
    for one in gc.get_objects():
        if isinstance(one, FunctionType) and one.__code__.co_filename == str(file):
            code = codes.get(one.__code__.co_qualname)
            if code and code.co_freevars == one.__code__.co_freevars:
                one.__code__ = code
                exchanged += 1
        elif isinstance(one, _lru_cache_wrapper) and one.__module__.startswith("audit"):
            one.cache_clear()
    return exchanged


def _functions_of(code: CodeType) -> Iterator[CodeType]:
    """Give functions and methods, without what is inside of them."""
    for inner in code.co_consts:
        if isinstance(inner, CodeType):
            yield inner
            if not inner.co_flags & 0x2:  # no own names: the body of a class (CO_NEWLOCALS)
                yield from _functions_of(inner)

"""Many machines in place of many processes: the same function, mapped by Dask distributed.

A machine that is lost takes nothing with it: what it was at is given to another, and a
result is taken once. Every worker must have this very program: its results could differ.
"""

from __future__ import annotations

import gc
import logging
import platform
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from functools import partial
from importlib.metadata import PackageNotFoundError, version
from importlib.util import find_spec
from typing import Any, Self, TypeVar

import audit
from audit.errors import AuditError, refuse

Item = TypeVar("Item")
Made = TypeVar("Made")
_AHEAD = 3
"""Items that wait for each thread of the cluster: none idles, and few are held in memory."""
_ANSWER_S = 10
_LOOK_S, _ALIVE_S = 0.02, 1.0
"""How often it is looked whether something is done, and whether anybody is at work."""
_LOOKS_FOR_WHAT_IS_LEFT = 50
"""So often at most for what could not connect: a second."""
PATIENCE_S = 60.0
"""For workers to come back after all are lost."""
_KEPT = "What is done is kept; the same command goes on from there."
_LOST = f"The scheduler of the cluster, or its last worker, was lost. {_KEPT}"
_LIBRARIES = ("numpy", "pyproj", "shapely", "pygeomag", "gpxpy", "pandas", "vl-convert-python")
"""What the figures and pages of a walk are made with."""
_OPTION = "--cluster"


class OtherProgramError(AuditError):
    """A worker has another version of the program, or of a library that it counts with."""


class Cluster:
    """The workers of a scheduler, used as a pool of processes is."""

    def __init__(self, address: str) -> None:
        self.address = address
        self._client: Any = None  # the library tells no types

    def __enter__(self) -> Self:
        self._client = _connected(self.address)
        return self

    def __exit__(self, *_: object) -> None:
        if self._client is not None:
            self._client.close()

    def over_all(
        self, function: Callable[[Item], Made], items: Sequence[Item]
    ) -> Iterator[tuple[int, Made]]:
        """Give (place, result) of each item as it is done, each once.

        Raises
        ------
        AuditError
            Where the scheduler is lost, a worker has another program, or one item ends
            every worker that it is given to.
        """
        from distributed import as_completed  # noqa: PLC0415 (an extra)

        client: Any = self._client
        if client is None:
            message = "a cluster is used within its context"
            raise RuntimeError(message)
        run = partial(_with_this_program, this_program(), function)
        left = iter(enumerate(items))
        waiting: dict[Any, int] = {}
        # A result is done when it is here: one that still lies with its worker may die with it.
        done: Any = as_completed(loop=client.loop, with_results=True, raise_errors=False)  # type: ignore[no-untyped-call]

        def hand_out() -> None:
            threads = max(1, _threads(client))
            while len(waiting) < _AHEAD * threads and (one := next(left, None)):
                # Not pure: no two items share a result, and nothing is kept for another run.
                future = client.submit(run, one[1], pure=False)
                waiting[future] = one[0]
                done.add(future)

        try:
            hand_out()
            while waiting:
                _await_one(client, done)
                future, made = next(done)
                place = waiting.pop(future)
                if future.status in ("error", "cancelled"):
                    _say_why(future, place)
                yield place, made
                del future, made
                hand_out()
        finally:
            if waiting and client.status == "running":
                client.cancel(list(waiting))


def _await_one(client: Any, done: Any) -> None:  # noqa: ANN401 (the library tells no types)
    """Wait until something is done, as long as there is anybody to do it."""
    looked = alive = time.monotonic()
    while not done.has_ready():
        time.sleep(_LOOK_S)
        now = time.monotonic()
        if now - looked >= _ALIVE_S:
            looked = now
            if _threads(client):
                alive = now
            elif now - alive > PATIENCE_S:
                raise AuditError(_LOST)


def _threads(client: Any) -> int:  # noqa: ANN401 (the library tells no types)
    """Give how many threads wait for work; none where the scheduler is lost."""
    if client.status != "running":
        return 0
    try:
        return sum(client.nthreads().values())
    except OSError:
        return 0


def this_program() -> dict[str, str]:
    """Give the versions of all that a result is made with."""
    told = {"leg-audit": audit.__version__, "Python": platform.python_version()}
    for library in _LIBRARIES:
        try:
            told[library] = version(library)
        except PackageNotFoundError:
            told[library] = "none"
    return told


def _with_this_program(
    wanted: dict[str, str], function: Callable[[Item], Made], item: Item
) -> Made:
    """Run a function on a worker that has the program of whoever asks."""
    here = this_program()
    for name, of in wanted.items():
        if here[name] != of:
            message = (
                f"The worker {platform.node()} has {name} {here[name]} and this machine has {of}: "
                "results could differ. Install the same on both."
            )
            raise OtherProgramError(message)
    return function(item)


def _connected(address: str) -> Any:  # noqa: ANN401 (the library tells no types)
    """Give a client of the scheduler."""
    if find_spec("distributed") is None:
        rule = "needs a library that is not installed here"
        raise refuse(_OPTION, "", address, rule, 'Install it: pip install "leg-audit[cluster]".')
    from distributed import Client  # noqa: PLC0415 (an extra)

    logging.getLogger("distributed").setLevel(logging.CRITICAL)
    client: Any = None
    with suppress(OSError, TimeoutError, ValueError, TypeError):  # a traceback would hold it
        client = Client(address, timeout=_ANSWER_S, set_as_default=False)  # type: ignore[no-untyped-call]
    if client is None:
        # What could not connect closes when it is thrown away: here, and not in the middle of
        # the next start, which holds the lock that closing waits for. On a busy machine its own
        # thread may hold it for a moment yet.
        for _ in range(_LOOKS_FOR_WHAT_IS_LEFT):
            gc.collect()
            if not any(type(one) is Client for one in gc.get_objects()):
                break
            time.sleep(_LOOK_S)
        rule = "is not the address of a scheduler that answers"
        remedy = "Start one with dask scheduler, and give its address, like tcp://host:8786."
        raise refuse(_OPTION, "", address, rule, remedy)
    if not client.nthreads():
        client.close()
        rule = "is a scheduler without workers"
        remedy = "Start some: dask worker ADDRESS --nworkers auto --nthreads 1."
        raise refuse(_OPTION, "", address, rule, remedy)
    return client


def _say_why(future: Any, place: int) -> None:  # noqa: ANN401 (the library tells no types)
    """Raise why a worker made nothing."""
    from distributed import CancelledError, KilledWorker  # noqa: PLC0415 (an extra)

    try:
        future.result()
    except KilledWorker as killed:
        message = (
            f"Recording {place + 1} of those left ended every worker that it was given to, "
            f"perhaps for want of memory. {_KEPT}"
        )
        raise AuditError(message) from killed
    except (CancelledError, OSError) as lost:
        raise AuditError(_LOST) from lost
    except ModuleNotFoundError as missing:
        message = f"A worker of the cluster lacks the program: {missing}. Install leg-audit there."
        raise OtherProgramError(message) from missing

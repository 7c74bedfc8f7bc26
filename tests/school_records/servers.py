"""A PostgreSQL server of our own, from Debian's packages, for as long as the tests run."""

from __future__ import annotations

import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

USER = "records"


def programs() -> Path:
    """Give the folder of initdb and pg_ctl; skip where there is none, and fail in CI."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    if not found:
        if os.environ.get("CI"):
            pytest.fail("CI must have PostgreSQL for the tests of the records")
        pytest.skip("PostgreSQL is not installed")
    return found[-1].parent


@contextmanager
def server() -> Iterator[str]:
    """Run a server and give the address of its first database."""
    bin_ = programs()
    folder = Path(tempfile.mkdtemp(prefix="records-"))
    as_user = {}
    if os.getuid() == 0:  # the server refuses to run as root
        names = {one.pw_name for one in pwd.getpwall()}
        who = pwd.getpwnam("postgres" if "postgres" in names else "nobody")
        os.chown(folder, who.pw_uid, who.pw_gid)
        as_user = {"user": who.pw_uid, "group": who.pw_gid, "extra_groups": []}
    port = free_port()

    def run(program: str, *options: str) -> None:
        with (folder / f"{program}.log").open("w") as log:
            subprocess.run([bin_ / program, "-D", folder / "data", *options], check=True, cwd=folder,
                           stdout=log, stderr=subprocess.STDOUT, timeout=120, **as_user)  # fmt: skip

    try:
        run("initdb", "-U", USER, "-A", "trust", "-N", "-E", "UTF8", "--no-locale")
        settings = f"-p {port} -k {folder} -c listen_addresses=127.0.0.1 -c fsync=off"
        run("pg_ctl", "start", "-w", "-l", str(folder / "server.log"), "-o", settings)
        try:
            yield f"postgresql://{USER}@127.0.0.1:{port}/postgres"
        finally:
            run("pg_ctl", "stop", "-m", "immediate")
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def free_port() -> int:
    """Give a port that nobody listens on."""
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])

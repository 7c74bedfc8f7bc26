"""Work over a real scheduler: nothing is lost with a worker, nothing is taken twice."""

from __future__ import annotations

import gc
import time
from collections import Counter

import cluster.cluster_workers as work
import pytest
from cluster.cluster_workers import started

import audit.cli.cluster as cluster_module
from audit.cli.class_pool import Processes
from audit.cli.cluster import Cluster, OtherProgramError
from audit.errors import AuditError, InputRefusedError


def test_a_worker_killed_in_the_middle_loses_nothing_and_doubles_nothing(tmp_path):
    notes = tmp_path / "notes"
    notes.mkdir()
    items = [(str(notes), number) for number in range(24)]
    with started(tmp_path) as hands, Cluster(hands.address) as cluster:
        made, victim = [], hands.workers[0]
        for place, result in cluster.over_all(work.squared, items):
            made.append((place, result))
            if len(made) == 6:
                _await_busy(notes, victim.pid)
                victim.kill()
    assert Counter(place for place, _ in made) == Counter(range(24))
    assert {place: square for place, (square, _) in made} == {n: n * n for n in range(24)}
    begun = {path.stem for path in notes.glob("*.begun")}
    ended = {path.stem for path in notes.glob("*.done")}
    (lost,) = begun - ended  # the victim was at it, and another did it
    assert lost.endswith(f"-{victim.pid}")
    assert any(one.startswith(lost.split("-")[0] + "-") for one in ended)
    with Processes(2) as processes:
        local = dict(processes.over_all(work.squared, items))
    assert {place: square for place, (square, _) in local.items()} == {n: n * n for n in range(24)}


def _await_busy(notes, pid):
    for _ in range(400):
        begun = {path.stem for path in notes.glob(f"*-{pid}.begun")}
        if begun - {path.stem for path in notes.glob(f"*-{pid}.done")}:
            return
        time.sleep(0.005)
    pytest.fail("the worker has nothing to do")


def test_a_fault_of_the_work_comes_back_as_it_is_and_the_worker_goes_on(tmp_path):
    with started(tmp_path, workers=1) as hands, Cluster(hands.address) as cluster:
        with pytest.raises(ArithmeticError, match="a fault of the work"):
            list(cluster.over_all(work.fails, [1]))
        assert [made for _, made in cluster.over_all(abs, [-3])] == [3]


@pytest.mark.parametrize("whose", ["workers", "scheduler"])
def test_when_nobody_is_left_it_is_said_and_not_waited_for(whose, tmp_path, monkeypatch):
    monkeypatch.setattr(cluster_module, "PATIENCE_S", 1.5)
    notes = tmp_path / "notes"
    notes.mkdir()
    with started(tmp_path) as hands, Cluster(hands.address) as cluster:
        begun = cluster.over_all(work.squared, [(str(notes), number) for number in range(200)])
        next(begun)
        for process in hands.workers if whose == "workers" else [hands.scheduler]:
            process.kill()
        with pytest.raises(AuditError, match=r"lost\. What is done is kept"):
            list(begun)


def test_results_that_died_with_their_workers_are_not_waited_for(tmp_path, monkeypatch):
    """A result that nobody has fetched lies with the worker that made it."""
    monkeypatch.setattr(cluster_module, "PATIENCE_S", 1.5)
    notes = tmp_path / "notes"
    notes.mkdir()
    with started(tmp_path) as hands, Cluster(hands.address) as cluster:
        begun = cluster.over_all(work.squared, [(str(notes), number) for number in range(40)])
        next(begun)
        while len(list(notes.glob("*.done"))) < 4:  # more are done than were taken
            time.sleep(0.05)
        for process in hands.workers:
            process.kill()
        with pytest.raises(AuditError, match=r"lost\. What is done is kept"):
            list(begun)


def test_work_that_ends_every_worker_is_told_in_a_sentence(tmp_path):
    with started(tmp_path, workers=6) as hands, Cluster(hands.address) as cluster:
        with pytest.raises(AuditError, match="Recording 1 of those left ended every worker"):
            list(cluster.over_all(work.ends_its_worker, [1]))
        assert [made for _, made in cluster.over_all(abs, [-3])] == [3]


def test_a_worker_with_other_libraries_is_refused(tmp_path, monkeypatch):
    with started(tmp_path, workers=1) as hands, Cluster(hands.address) as cluster:
        monkeypatch.setattr(cluster_module, "this_program", work.other_program)
        with pytest.raises(OtherProgramError, match=r"this machine has 0\.0\.1: results could"):
            list(cluster.over_all(abs, [-3]))


def test_a_client_that_could_not_connect_is_not_left_to_hang_the_next(monkeypatch):
    """One thrown away in the middle of the start of the next waited for a lock of its own."""
    from distributed import Client

    monkeypatch.setattr(cluster_module, "_ANSWER_S", 0.5)
    with pytest.raises(InputRefusedError, match="is not the address of a scheduler"):
        Cluster("tcp://127.0.0.1:9").__enter__()
    assert not [one for one in gc.get_objects() if isinstance(one, Client)]


def test_no_scheduler_and_no_workers_are_refused(tmp_path):
    for address in ("tcp://127.0.0.1:9", "nonsense", ""):
        with pytest.raises(InputRefusedError, match="is not the address of a scheduler"):
            Cluster(address).__enter__()
    with (
        started(tmp_path, workers=0) as hands,
        pytest.raises(AuditError, match="is a scheduler without workers"),
    ):
        Cluster(hands.address).__enter__()

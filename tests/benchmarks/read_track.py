"""How long reading and cleaning a recording take, and how much memory, against gpxpy and bare expat.

Run it by hand: ``python tests/benchmarks/read_track.py [--large FILE.gpx.gz]``.

Every figure comes from a process of its own: the best processor time of a few repeats,
and the peak of resident memory above that of a process that has only imported. Look at
the ratios: seconds differ from machine to machine and with what else it does.
"""

from __future__ import annotations

import argparse
import gzip
import multiprocessing
import resource
import shutil
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from xml.parsers import expat

import gpxpy
import numpy as np

ROOT = Path(__file__).resolve().parent.parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from matching.planted_walks import FlatGrid  # noqa: E402

from audit.matching.clean_track import clean_track  # noqa: E402
from audit.readers.gpx_track import read_track  # noqa: E402
from audit.settings import CleaningSettings  # noqa: E402
from audit.track import Track  # noqa: E402

LARGE = ROOT.parent / "shared" / "tracks" / "large-walk.gpx.gz"
SIZES = (1_000, 10_000, 100_000, 1_000_000)


def write_recording(path: Path, fixes: int) -> None:
    """A walk logged every second, with elevation and cadence, as a watch writes it."""
    rng = np.random.default_rng(fixes)
    lat = 46.5 + np.cumsum(rng.normal(0, 1e-5, fixes))
    lon = 7.5 + np.cumsum(rng.normal(0, 1e-5, fixes))
    moments = np.datetime64("2026-10-03T08:00:00") + np.arange(fixes)
    with path.open("w", encoding="utf-8") as file:
        file.write('<?xml version="1.0"?>\n<gpx version="1.1" xmlns:t="t"><trk><trkseg>\n')
        file.writelines(
            f'<trkpt lat="{lat[i]:.7f}" lon="{lon[i]:.7f}">\n <ele>{800 + i % 90}.5</ele>\n'
            f" <time>{moments[i]}.000Z</time>\n <extensions><t:TPX><t:cad>{i % 60}</t:cad>"
            "</t:TPX></extensions>\n</trkpt>\n"
            for i in range(fixes)
        )
        file.write("</trkseg></trk></gpx>\n")


def bare_expat(path: Path) -> int:
    """What no reader on expat can do without: the three handlers, empty."""
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler = lambda _name, _attributes: None
    parser.EndElementHandler = lambda _name: None
    parser.CharacterDataHandler = lambda _text: None
    with path.open("rb") as file:
        parser.ParseFile(file)
    return 0


def with_gpxpy(path: Path) -> int:
    with path.open(encoding="utf-8") as file:
        return len(gpxpy.parse(file).tracks)


def ours(path: Path) -> int:
    return len(read_track(path))


def cleaning(track: Track) -> int:
    return len(clean_track(track, FlatGrid(), CleaningSettings()))


def repeated(job: Callable[[object], int], argument: object, repeats: int) -> tuple[float, float]:
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    best = float("inf")
    for _ in range(repeats):
        start = time.process_time()
        job(argument)
        best = min(best, time.process_time() - start)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return best, (peak - before) / 1024.0


def measured(job: Callable[..., int], argument: object, repeats: int) -> tuple[float, float]:
    """Best processor time in seconds, and peak memory in MB above that before."""
    with multiprocessing.get_context("fork").Pool(1) as one:
        return one.apply(repeated, (job, argument, repeats))


def row(name: str, path: Path, repeats: int) -> str:
    expat_s, _ = measured(bare_expat, path, repeats)
    ours_s, ours_mb = measured(ours, path, repeats)
    gpxpy_s, gpxpy_mb = measured(with_gpxpy, path, 1)
    track = read_track(path)
    clean_s, clean_mb = measured(cleaning, track, repeats)
    return (
        f"{name:>12} {len(track):>9,} {path.stat().st_size / 1e6:>7.1f}"
        f" {expat_s:>8.3f} {ours_s:>8.3f} {gpxpy_s:>8.3f}"
        f" {ours_s / expat_s:>7.2f} {ours_s / gpxpy_s:>7.2f}"
        f" {ours_mb:>8.0f} {gpxpy_mb:>8.0f} {clean_s:>8.3f} {clean_mb:>8.0f}"
    )


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--large", type=Path, default=LARGE, help="a packed recording to add")
    options.add_argument("--repeats", type=int, default=3)
    chosen = options.parse_args()
    print(
        f"{'recording':>12} {'fixes':>9} {'MB':>7} {'expat s':>8} {'read s':>8} {'gpxpy s':>8}"
        f" {'/expat':>7} {'/gpxpy':>7} {'read MB':>8} {'gpxpy MB':>8} {'clean s':>8} {'clean MB':>8}"
    )
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "walk.gpx"
        for fixes in SIZES:
            write_recording(path, fixes)
            print(row("invented", path, chosen.repeats), flush=True)
        if chosen.large.is_file():
            with gzip.open(chosen.large, "rb") as packed, path.open("wb") as plain:
                shutil.copyfileobj(packed, plain)
            print(row("large, real", path, chosen.repeats), flush=True)


if __name__ == "__main__":
    main()

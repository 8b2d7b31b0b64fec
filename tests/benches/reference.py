"""The floor's work in scipy, for comparison: reads {"spots": [[x, y, z]], "level": h, "runs": n}, prints medians in milliseconds."""
import json
import statistics
import sys
import time

import numpy as np
from scipy.optimize import linprog
from scipy.spatial import Delaunay

given = json.load(sys.stdin)
spots = np.array(given["spots"])
xy, z = spots[:, :2], spots[:, 2]
triangles = Delaunay(xy)


def volume_to(level):
    """Volume between the surface and the level where the surface is lower: exact per triangle, vectorised."""
    corners = triangles.simplices
    p = xy[corners]
    a, b = p[:, 1] - p[:, 0], p[:, 2] - p[:, 0]
    area = 0.5 * np.abs(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0])
    d = np.sort(level - z[corners], axis=1)[:, ::-1]  # depths, deepest first
    whole = area * d.sum(axis=1) / 3
    with np.errstate(divide="ignore", invalid="ignore"):
        one = area * d[:, 0] ** 3 / (3 * (d[:, 0] - d[:, 1]) * (d[:, 0] - d[:, 2]))
        two = whole - area * d[:, 2] ** 3 / (3 * (d[:, 2] - d[:, 0]) * (d[:, 2] - d[:, 1]))
    return np.where(d[:, 2] >= 0, whole, np.where(d[:, 1] >= 0, two, np.where(d[:, 0] > 0, one, 0))).sum()


def lowest_plane():
    """The plane on or above every spot with the least mean height over the room: a linear program in three unknowns."""
    middle = xy.mean(axis=0)
    rows = np.column_stack([np.ones(len(z)), xy - middle])
    answer = linprog([1, 0, 0], A_ub=-rows, b_ub=-z, bounds=[(None, None)] * 3, method="highs")
    assert answer.status == 0
    return answer.x


def median_ms(work):
    times = []
    for _ in range(given["runs"]):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times) * 1e3


times = {
    "triangulate": median_ms(lambda: Delaunay(xy)),
    "volume to a level": median_ms(lambda: volume_to(given["level"])),
    "flat pour": median_ms(lowest_plane),
}
# The triangles and the plane alone: our own whole plan has the level pour and both volumes besides.
times["whole plan"] = times["triangulate"] + times["flat pour"]
json.dump(times, sys.stdout)

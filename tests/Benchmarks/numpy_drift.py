"""The drift estimator's mixture in numpy, for a fair race: one line of settings, one of mountings, then a number of rounds on each line.

For every noise node and every set of two gross errors or fewer the level, steps and weather are integrated in closed form; what is
left is a normal curve in the drift, weighed on a grid. All sets and nodes are worked out at once: the weighted cross products by one
matrix product, the elimination by sweeps over a stack of small matrices (quicker than numpy.linalg on it).
Index lists of the sets are kept from mounting to mounting. Band exit and step effects are left out, which FleetWake does work out.
"""
import itertools
import json
import math
import sys
import time

import numpy as np

GRID = np.arange(-20.0, 81.0)
POWERS = np.stack([np.ones_like(GRID), GRID, GRID**2])
_sets = {}


def sets_of(n):
    """For each set of gross errors: which trials, as a matrix of 0 and 1, and how many."""
    if n not in _sets:
        most = 1 if n <= 3 else 2
        chosen = [c for k in range(most + 1) for c in itertools.combinations(range(n), k)]
        gross = np.zeros((len(chosen), n))
        for row, c in enumerate(chosen):
            gross[row, list(c)] = 1
        _sets[n] = gross, gross.sum(1)
    return _sets[n]


def assess(m, s, prior):
    hours, rpm = m["hours"], m["rpm"]
    n, r = len(rpm), np.median(m["rpm"])
    steps = m["steps"]  # first trial after, mean, variance
    p = 3 + len(steps)
    width = p + 2
    rows = np.empty((n, width))  # level, steps, temperature, load, then x, u
    rows[:, 0] = 1
    index = np.arange(n)
    for k, (after, _, _) in enumerate(steps):
        rows[:, 1 + k] = index >= after
    rows[:, p - 2] = m["air"] - 15
    rows[:, p - 1] = m["load"] / 100
    mean = np.array([m["level"], *(step[1] for step in steps), 0.0, 0.0])
    variance = np.array([s["levelSd"] ** 2, *(step[2] for step in steps), (s["airShare"] * r) ** 2, (s["loadShare"] * r) ** 2])
    rows[:, p] = (hours - hours[-1]) / 100
    rows[:, p + 1] = rpm - rows[:, :p] @ mean
    now = np.ones(p)
    now[p - 2 :] = 0

    gross, count = sets_of(n)
    fine = (s["shares"] * r) ** 2
    bad = fine + (s["grossShare"] * r) ** 2
    precision = (gross.T[:, :, None] * (1 / bad - 1 / fine) + 1 / fine).reshape(n, -1)  # trials by components
    cross = (rows.T[:, None, :] * rows.T).reshape(-1, n) @ precision

    # M, bordered by x, u and the row of the level now; each sweep eliminates a column of A, and leaves Schur complements.
    stack = np.zeros((width + 1, width + 1, cross.shape[1]))
    stack[:width, :width] = cross.reshape(width, width, -1)
    stack[range(p), range(p)] += 1 / variance[:, None]
    stack[:p, width] = now[:, None]
    logdet = np.zeros(cross.shape[1])
    for k in range(p):
        pivot, right = stack[k, k], stack[k, k + 1 :]
        logdet += np.log(pivot)
        for i, factor in enumerate(right / pivot):
            stack[k + 1 + i, k + 1 + i :] -= factor * right[i:]  # the upper triangle
    qxx, qxu, quu = stack[p, p], stack[p, p + 1], stack[p + 1, p + 1]
    cx, cu, cc = stack[p, width], stack[p + 1, width], stack[width, width]

    log = np.add.outer(count * math.log(s["grossChance"]) + (n - count) * math.log(1 - s["grossChance"]), np.log(s["weights"]))
    log -= 0.5 * (np.outer(n - count, np.log(fine)) + np.outer(count, np.log(bad)))
    log = log.reshape(-1) - 0.5 * (n * math.log(2 * math.pi) + logdet + np.log(variance).sum() + quu)
    # Components that are negligible wherever they peak are left out, as FleetWake does.
    peak = np.clip(np.rint(qxu / qxx), GRID[0], GRID[-1])
    height = log + peak * (qxu - 0.5 * qxx * peak)
    top = height.max()
    kept = height > top - 27
    exponent = np.stack([log[kept] - top, qxu[kept], -0.5 * qxx[kept]], 1) @ POWERS
    mass = np.exp(np.maximum(exponent, -600)) * prior  # what underflows takes the processor twenty times as long
    moments = mass @ POWERS.T  # of each component: weight, and that times drift and its square
    total = moments[:, 0].sum()
    weights = mass.sum(0) / total

    drift = weights @ GRID
    below = np.cumsum(weights)
    points = []
    for share in (0.1, 0.9):
        g = np.searchsorted(below, share)
        points.append(GRID[g] - 0.5 + (share - below[g] + weights[g]) / weights[g])
    at, per = now @ mean - cu[kept] - r, cx[kept]  # the level about r is at + per s
    level = (at @ moments[:, 0] + per @ moments[:, 1]) / total
    square = (at * at - cc[kept]) @ moments[:, 0] + 2 * (at * per) @ moments[:, 1] + (per * per) @ moments[:, 2]
    by_set = np.zeros(len(height))
    by_set[kept] = moments[:, 0]
    outlier = by_set.reshape(len(gross), -1).sum(1) @ gross / total
    return [drift, *points, r + level, math.sqrt(square / total - level * level), top + math.log(total), *outlier]


settings = json.loads(sys.stdin.readline())
settings = {k: np.array(v) if isinstance(v, list) else v for k, v in settings.items()}
mountings = json.loads(sys.stdin.readline())
for m in mountings:
    m.update({k: np.array(m[k]) for k in ("hours", "rpm", "air", "load")})
print(json.dumps([assess(m, settings, settings["prior"]) for m in mountings]), flush=True)
for line in sys.stdin:
    start = time.process_time()
    for _ in range(int(line)):
        for m in mountings:
            assess(m, settings, settings["prior"])
    print(time.process_time() - start, flush=True)

"""The balance of InventedBoat by scipy, for a fair race: waits for a number of solves on each line, answers with seconds and a sum.

The series is collapsed to cubics for each pitch by numpy, as the program does it; what is timed is collapse and solve, in double
precision and to the same tolerance. Two ways: "root" takes both equations as they stand, "brentq" the one in J that is left when the
torque equation is solved by hand.
"""
import csv
import json
import math
import os
import sys
import time

import numpy as np
from scipy.optimize import brentq, root

HERE = os.path.dirname(os.path.abspath(__file__))
AREA, PITCH, M, N_0 = 0.60, 17 / 14.5, 1.33, 5500.0
J_0 = 33.9 * 1852 / 3600 / (5500 / 60 / 2.0 * 14.5 * 0.0254)


class Series:
    def __init__(self, name):
        with open(os.path.join(HERE, name)) as f:
            rows = np.array([[float(cell) for cell in row] for row in list(csv.reader(f))[1:]])
        self.s, self.t = rows[:, 2].astype(int), rows[:, 3]
        self.c = rows[:, 1] * AREA ** rows[:, 4] * 3.0 ** rows[:, 5]

    def cubic(self, pitch):
        return np.bincount(self.s, weights=self.c * pitch**self.t, minlength=4).tolist()


KT, KQ = Series("gawn_kt.csv"), Series("gawn_kq.csv")


def value(c, J):
    return c[0] + J * (c[1] + J * (c[2] + J * c[3]))


KT_0, KQ_0 = value(KT.cubic(PITCH), J_0), value(KQ.cubic(PITCH), J_0)


def state(i):
    return -0.06 + 0.005 * (i % 25), -0.01 * (i % 7), 0.05 * (i % 5)


def by_root(i):
    pitch, engine, resistance = state(i)
    kt, kq = KT.cubic(PITCH * (1 + pitch)), KQ.cubic(PITCH * (1 + pitch))

    def residual(u):
        x, v = math.exp(u[0]), math.exp(u[1])
        J = J_0 * v / x
        return [
            (1 + x - x * x) * (1 + engine) - value(kq, J) / KQ_0 * x * x,
            value(kt, J) / KT_0 * x * x - (1 + resistance) * v**M,
        ]

    return N_0 * math.exp(root(residual, [0.0, 0.0], method="hybr", options={"xtol": 1e-12}).x[0])


def by_brentq(i):
    pitch, engine, resistance = state(i)
    kt, kq = KT.cubic(PITCH * (1 + pitch)), KQ.cubic(PITCH * (1 + pitch))

    def rate(J):
        c = value(kq, J) / KQ_0 / (1 + engine)
        return (1 + math.sqrt(1 + 4 * (c + 1))) / (2 * (c + 1))

    def residual(J):
        x = rate(J)
        return value(kt, J) / KT_0 * x * x - (1 + resistance) * (J / J_0 * x) ** M

    return N_0 * rate(brentq(residual, 0.3 * PITCH, 1.05 * PITCH, xtol=1e-13))


for line in sys.stdin:
    way, count = line.split()
    solve = by_root if way == "root" else by_brentq
    start = time.perf_counter()
    total = sum(solve(i) for i in range(int(count)))
    print(json.dumps({"seconds": time.perf_counter() - start, "total": total}), flush=True)

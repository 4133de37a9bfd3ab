"""Balances at wide-open throttle, solved by scipy in their dimensional form, to hold the program's own solver against.

    python3 wot_balance.py > ../wot_balance_vectors.csv        (Debian: python3-scipy; run in this folder)

Nothing here is shared with the program but the coefficients in ../series: two equations in (ln n, ln V), in SI units, for
scipy.optimize.root. The boats are invented.
"""
import csv
import math
import sys

import scipy
from scipy.optimize import brentq, root

RHO, GEAR_LOSS = 1025.0, 0.97
BOATS = {  # rated rpm, gear, diameter and pitch in inches, A_E/A_0, baseline rpm, baseline knots
    "A": (5500, 2.08, 9.25, 9, 0.55, 5500, 14.4),
    "B": (5500, 2.08, 11.5, 13, 0.55, 5350, 22.5),
    "C": (5500, 2.00, 14.5, 17, 0.60, 5500, 33.9),
    "D": (6000, 1.85, 14.75, 19, 0.58, 5850, 43.0),
}
STATES = [  # pitch, diameter, section drag, engine torque, resistance, water density, hub slip, thrust loss, torque loss
    (0, 0, 0, 0, 0, 0, 0, 0, 0),
    (-0.06, 0, 0, 0, 0, 0, 0, 0, 0),
    (0.10, 0, 0, 0, 0, 0, 0, 0, 0),
    (0, -0.03, 0, 0, 0, 0, 0, 0, 0),
    (0, 0, 0.005, 0, 0, 0, 0, 0, 0),
    (0, 0, 0, -0.10, 0, 0, 0, 0, 0),
    (0, 0, 0, 0, 0.30, 0, 0, 0, 0),
    (0, 0, 0, 0, 0, -0.026, 0, 0, 0),
    (0, 0, 0, 0, 0, 0, 0.08, 0, 0),
    (0, 0, 0, 0, 0, 0, 0, 0.10, 0.08),
    (-0.04, -0.01, 0.002, -0.03, 0.05, -0.01, 0.02, 0.02, 0.015),
    (0.15, 0.05, 0.01, -0.4, 1.5, 0.02, 0.3, 0.3, 0.2),
]
ENGINES = [("cubic", None), ("linear", 0.0), ("linear", -0.5), ("linear", -2.0)]
EXPONENTS = [1.0, 1.3, 2.0]


def table(name):
    with open(f"../series/{name}.csv") as f:
        return [[float(cell) for cell in row] for row in list(csv.reader(f))[1:]]


TABLES = {name: table(name) for name in ("bseries_kt", "bseries_kq", "gawn_kt", "gawn_kq", "kca_kt", "kca_kq")}


def coefficient(series, what, J, P, A, Z=3):
    if series == "KCA":
        developed = brentq(lambda x: 0.34 * x * (2.75 + x / Z) - A, 0.1, 2, xtol=1e-15)
        return sum(c * 10**e * developed**x * P**y * J**z for _, c, e, x, y, z in TABLES[f"kca_{what}"])
    rows = TABLES[("bseries_" if series == "B" else "gawn_") + what]
    return sum(c * J**s * P**t * A**u * Z**v for _, c, s, t, u, v in rows)


def torque(engine, slope, x):
    return 1 + x - x * x if engine == "cubic" else 1 + slope * (x - 1)


def solve(boat, series, engine, slope, m, state):
    rated, gear, d_in, p_in, area, rpm_0, knots_0 = BOATS[boat]
    dP, dD, dCD, dQ, dR, dRho, slip, lossT, lossQ = state
    D_0, P_0, V_0, n_0 = d_in * 0.0254, p_in * 0.0254, knots_0 * 1852 / 3600, rpm_0 / 60 / gear
    J_0 = V_0 / (n_0 * D_0)
    R_0 = coefficient(series, "kt", J_0, P_0 / D_0, area) * RHO * n_0**2 * D_0**4
    Q_0 = coefficient(series, "kq", J_0, P_0 / D_0, area) * RHO * n_0**2 * D_0**5
    Q_rated = Q_0 / gear / GEAR_LOSS / torque(engine, slope, rpm_0 / rated)
    D, P, rho = D_0 * (1 + dD), P_0 * (1 + dP), RHO * (1 + dRho)
    chord = 2.073 * area

    def residual(u):
        rpm, V = rpm_0 * math.exp(u[0]), V_0 * math.exp(u[1])
        n = rpm / 60 / gear * (1 - slip)
        J = V / (n * D)
        K_T = (coefficient(series, "kt", J, P / D, area) - 0.3 * dCD * P / D * chord) * (1 - lossT)
        K_Q = (coefficient(series, "kq", J, P / D, area) + 0.25 * dCD * chord) * (1 - lossQ)
        engine_torque = Q_rated * torque(engine, slope, rpm / rated) * (1 + dQ) * gear * GEAR_LOSS
        return [
            (engine_torque - K_Q * rho * n**2 * D**5) / Q_0,
            (K_T * rho * n**2 * D**4 - R_0 * (1 + dR) * (V / V_0) ** m) / R_0,
        ]

    for start in ([0, 0], [0, -0.2], [-0.2, -0.5], [0.1, -0.1], [-0.4, -1.0]):
        found = root(residual, start, method="hybr", options={"xtol": 1e-14})
        if max(abs(r) for r in residual(found.x)) < 1e-11:
            return rpm_0 * math.exp(found.x[0]), knots_0 * math.exp(found.x[1])
    raise ArithmeticError((boat, series, engine, slope, m, state))


def main():
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow("boat,series,rated_rpm,gear,diameter_in,pitch_in,area,baseline_rpm,baseline_kn,engine,e,m,pitch,diameter,"
                 "drag,torque,resistance,water,hub,thrust_loss,torque_loss,rpm,kn".split(","))
    for b, boat in enumerate(BOATS):
        for s, series in enumerate(("B", "Gawn", "KCA")):
            for k, state in enumerate(STATES):
                engine, slope = ENGINES[(b + s + k) % 4]  # every engine and exponent meets every state, in turn
                m = EXPONENTS[(b + 2 * s + k) % 3]
                rpm, knots = solve(boat, series, engine, slope or 0.0, m, state)
                out.writerow([boat, series, *BOATS[boat], engine, "" if slope is None else slope, m, *state,
                              f"{rpm:.9f}", f"{knots:.9f}"])
    print(f"scipy {scipy.__version__}", file=sys.stderr)


main()

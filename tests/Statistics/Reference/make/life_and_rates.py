"""Vectors for which no published table was found, by scipy and by brute force, sharing no formula with the code.
Run in this folder's parent: python3 make/life_and_rates.py (numpy 1.24.2, scipy 1.10.1)."""
import numpy as np
from scipy.optimize import minimize, brentq
from scipy.stats import chi2, gamma, nbinom, norm, poisson, weibull_min

np.seterr(all="ignore")

# --- Weibull with lives followed from some age on; limits of the likelihood ratio at 80 % -----------------------------
lives = [  # hours, ended, from; invented
    (310, 1, 0), (452, 1, 0), (120, 0, 0), (505, 1, 200), (640, 0, 350), (275, 1, 150), (388, 0, 0), (710, 1, 90),
    (95, 1, 0), (530, 0, 410)]
t, d, e = (np.array(c, float) for c in zip(*lives))


def minus_log_likelihood(log_k, log_eta):
    k, eta = np.exp(log_k), np.exp(log_eta)
    return -(d * weibull_min.logpdf(t, k, scale=eta) + (1 - d) * weibull_min.logsf(t, k, scale=eta)
             - weibull_min.logsf(e, k, scale=eta)).sum()


best = minimize(lambda p: minus_log_likelihood(*p), [0.3, 6], method="Nelder-Mead",
                options=dict(xatol=1e-12, fatol=1e-14, maxiter=9999))
top, (log_k, log_eta) = -best.fun, best.x
fall = chi2.ppf(0.8, 1) / 2 * d.sum() / (d.sum() - 1)  # the factor for few ends is the program's own


def limits(profile, at):
    f = lambda x: profile(x) - (top - fall)
    return brentq(f, at - 6, at, xtol=1e-11), brentq(f, at, at + 6, xtol=1e-11)


def over_k(log_scale_of):
    """The top over k when log eta is bound to it."""
    grid = np.linspace(-3, 4, 141)
    values = [-minus_log_likelihood(g, log_scale_of(np.exp(g))) for g in grid]
    g = grid[int(np.argmax(values))]
    r = minimize(lambda p: minus_log_likelihood(p[0], log_scale_of(np.exp(p[0]))), [g], method="Nelder-Mead",
                 options=dict(xatol=1e-11, fatol=1e-13))
    return -r.fun


rows = []
profile_k = lambda x: -minimize(lambda p: minus_log_likelihood(x, p[0]), [log_eta], method="Nelder-Mead",
                                options=dict(xatol=1e-11, fatol=1e-13)).fun
lo, hi = limits(profile_k, log_k)
rows.append(("shape", np.exp(log_k), np.exp(lo), np.exp(hi)))
for name, s in (("scale", np.exp(-1)), ("hours_until_0.5", 0.5), ("hours_until_0.9", 0.9)):
    c = -np.log(s)
    at = log_eta + np.log(c) / np.exp(log_k)
    lo, hi = limits(lambda x: over_k(lambda k: x - np.log(c) / k), at)
    rows.append((name, np.exp(at), np.exp(lo), np.exp(hi)))
w = np.exp(log_k) * (np.log(300) - log_eta)
lo, hi = limits(lambda x: over_k(lambda k: np.log(300) - x / k), w)
rows.append(("alive_at_300", np.exp(-np.exp(w)), np.exp(-np.exp(hi)), np.exp(-np.exp(lo))))
rows.append(("log_likelihood", top, np.nan, np.nan))
with open("weibull_delayed_entry.csv", "w") as f:
    f.write("quantity,value,low80,high80\n")
    f.writelines(f"{n},{v:.10g},{a:.8g},{b:.8g}\n".replace("nan", "") for n, v, a, b in rows)

# --- Gamma-Poisson rates: the same priors, a dense grid, no gamma standing for a mixture of gammas ---------------------
fleets = {"docks": [(0, 10), (1, 3), (4, 25), (2, 30), (12, 20), (0, 2), (7, 40), (3, 15), (0, 0)],
          "quiet": [(0, 5), (0, 8), (0, 1.5)],
          "alike": [(5, 10), (6, 10), (4, 10), (5, 10), (7, 10), (5, 10)],
          "alone": [(3, 12)]}
with open("shrunk_rates.csv", "w") as f:
    f.write("fleet,unit,count,exposure,mean,sd,low80,high80\n")
    for name, tallies in fleets.items():
        y, E = (np.array(c, float) for c in zip(*tallies))
        center = np.log((y.sum() + 1) / E.sum())
        c = (np.arange(150) + 0.5) / 100  # the spread, 0 to 1.5
        x = center + np.linspace(-16, 12, 701)  # log m
        k, m = 1 / c[:, None] ** 2, np.exp(x)[None, :]
        log_w = norm.logpdf(x, center, 1.5)[None, :] + np.zeros((len(c), 1))
        for yi, Ei in zip(y, E):
            if Ei > 0:
                log_w = log_w + nbinom.logpmf(yi, k, k / (k + m * Ei))
        W = np.exp(log_w - log_w.max())
        W /= W.sum()
        for i, (yi, Ei) in enumerate([*tallies, ("", "")]):
            yy, EE = (0, 0) if yi == "" else (yi, Ei)
            shape, rate = np.broadcast_arrays(k + yy, k / m + EE)
            mean = (W * shape / rate).sum()
            sd = np.sqrt((W * shape * (shape + 1) / rate**2).sum() - mean**2)
            keep = W > 1e-9
            s, r, w = shape[keep], rate[keep], W[keep] / W[keep].sum()
            q = [np.exp(brentq(lambda lx: (w * gamma.cdf(np.exp(lx) * r, s)).sum() - p,
                               np.log(mean) - 40, np.log(mean) + 6, xtol=1e-7)) for p in (0.1, 0.9)]
            f.write(f"{name},{i if yi != '' else 'unseen'},{yi},{Ei},{mean:.8g},{sd:.8g},{q[0]:.7g},{q[1]:.7g}\n")

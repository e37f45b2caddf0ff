"""Makes robust_regression.json: worked figures for the level curve's robust statistics, from statsmodels and SciPy.

    /usr/bin/python3 tests/Reference/robust/robust_regression.py > tests/Reference/robust/robust_regression.json

Debian packages python3-statsmodels and python3-scipy. lowess is Cleveland's algorithm (J. Am. Stat. Assoc. 74 (1979)). All data are made up, by formulas.
"""
import json
import math

import numpy as np
import scipy
import statsmodels
from scipy import optimize, stats
from statsmodels.nonparametric.smoothers_lowess import lowess
from statsmodels.robust import norms


def scatter(index, size):
    """A value of no pattern between -size and size, the same with every version of every library."""
    return size * math.sin(12.9898 * index + 78.233 * index * index)


def smooth(name, x, y, neighbours, rounds):
    x, y = np.array(x, float), np.array(y, float)
    fitted = lowess(y, x, frac=neighbours / len(x), it=rounds, delta=0.0, return_sorted=False)
    return dict(name=name, x=list(x), y=list(y), neighbours=neighbours, rounds=rounds, fitted=list(fitted))


def regressions():
    outputs = list(range(1, 44))
    curve = [0.02 * (n - 20) ** 2 / 10 + scatter(n, 0.4) for n in outputs]
    wild = [level + {7: 6.0, 8: 5.0, 30: -9.0}.get(n, 0) for n, level in zip(outputs, curve)]
    gaps = [n for n in outputs if n % 5 and n not in (11, 12, 13)]
    yield smooth("smooth, not robust", outputs, curve, 11, 0)
    yield smooth("with wild values, not robust", outputs, wild, 11, 0)
    yield smooth("with wild values, two rounds", outputs, wild, 11, 2)
    yield smooth("with wild values, four rounds", outputs, wild, 11, 4)
    yield smooth("outputs missing", gaps, [wild[n - 1] for n in gaps], 9, 4)
    yield smooth("a short run", outputs[:7], wild[3:10], 7, 4)
    yield smooth("a wide window", outputs, wild, 29, 3)


def centre(name, values, uncertainties):
    values, own = np.array(values, float), np.array(uncertainties, float)
    spread = stats.median_abs_deviation(values, scale="normal")
    deviations = np.maximum(1e-6, np.sqrt(max(0.0, spread ** 2 - np.median(own ** 2)) + own ** 2))
    norm = norms.TukeyBiweight(c=4.685)
    if not own.any():
        found = float(norms.estimate_location(values, spread, norm=norm, maxiter=1000, tol=1e-14))
    else:
        start = np.median(values)
        psi = lambda mu: float(np.sum(norm.psi((values - mu) / deviations) / deviations))
        found = optimize.brentq(psi, start - spread, start + spread, xtol=1e-15, rtol=1e-14)
    return dict(name=name, values=list(values), uncertainties=list(own), centre=found)


def centres():
    values = [1.5 + scatter(n, 0.6) for n in range(1, 31)]
    wild = values[:24] + [9.0, -7.5, 6.0, 8.2, -3.0, 12.0]
    yield centre("no wild values", values, [0] * 30)
    yield centre("six wild values of thirty", wild, [0] * 30)
    yield centre("uncertain values count less", wild, [0.05 + 0.4 * (n % 3) for n in range(30)])


def most(name, values):
    """The bisquare centre from the middle of the shortest half (Rousseeuw and Leroy 1987)."""
    ordered, count = np.sort(np.array(values, float)), len(values)
    half = count // 2 + 1
    lengths = ordered[half - 1:] - ordered[:count - half + 1]
    first = int(np.argmin(lengths))
    spread = lengths[first] / 2 / stats.norm.ppf(0.75) * (1 + 5 / (count - 1))
    start = ordered[first] + lengths[first] / 2
    found = norms.estimate_location(np.array(values, float), spread, norm=norms.TukeyBiweight(c=4.685), initial=start, maxiter=1000, tol=1e-14)
    return dict(name=name, values=list(values), centre=float(found))


def mosts():
    sound = [0.2 + scatter(n, 0.8) for n in range(48)]
    yield most("no wild values", sound)
    yield most("half of them drifted down", sound + [-4 - 3 * n % 11 + scatter(n, 2) for n in range(45)])


def hampel(values):
    median, scale = np.median(values), stats.median_abs_deviation(values, scale="normal")
    far = [index for index, value in enumerate(values) if abs(value - median) > 3 * scale]
    return dict(values=values, centre=float(median), scale=float(scale), far=far)


def identifiers():
    # Newcomb's 66 passage times of light (1882), as printed by Stigler, Annals of Statistics 5 (1977), from memory
    # (66 values, mean 26.21, median 27, as published); two of them famously off.
    newcomb = [28, 26, 33, 24, 34, -44, 27, 16, 40, -2, 29, 22, 24, 21, 25, 30, 23, 29, 31, 19, 24, 20, 36, 32, 36, 28, 25, 21, 28, 29, 37, 25, 28, 26,
               30, 32, 36, 26, 30, 22, 36, 23, 27, 27, 28, 27, 31, 27, 26, 33, 26, 32, 32, 24, 39, 28, 24, 25, 32, 25, 29, 27, 28, 29, 16, 23]
    yield hampel([float(value) for value in newcomb])
    yield hampel([1.0 + scatter(n, 0.3) for n in range(5)] + [4.0])


print(json.dumps(dict(
    source="tests/Reference/robust/robust_regression.py; all figures by statsmodels and SciPy, data made up by formulas but Newcomb's",
    versions=dict(statsmodels=statsmodels.__version__, scipy=scipy.__version__, numpy=np.__version__),
    regressions=list(regressions()), centres=list(centres()), mosts=list(mosts()), identifiers=list(identifiers()))))

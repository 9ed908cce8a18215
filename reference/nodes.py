"""How far rules of few nodes are from a dense sum, for the integral over one man's requirement.

For each setting 150 courses are drawn. Gauss and Hermite's rule is centred at the top with the
curvature there ("top"), or at the mean with the standard deviation ("mean"); the trapezoid rule goes
out from the top until the integrand has fallen by e^-26, with the distance of nodes that the fit
uses. Printed: the largest error of the logarithm of one course's probability; for the trapezoid rule
the mean and the largest number of nodes too.
"""

import platform

import numpy as np
import scipy
from numpy.polynomial.hermite import hermgauss
from scipy.special import expit, log_ndtr, logsumexp

SEED = 20261127
MU, C2, C4, D0, D1 = 0.5, -1.4, 1.6, 3.8, 0.6
COURSES = 150


def courses(rng, omega, beta, tau):
    for _ in range(COURSES):
        eta = MU + omega * rng.normal()
        n = rng.integers(3, 11)
        x = np.log(rng.choice(np.arange(5, 51, 5), n) / 10)
        u = rng.random(n)
        y = 1 + sum((u < expit(beta * (x - eta) - c)).astype(int) for c in (C2, 0, C4))
        yield x, y, D0 + D1 * (x - eta) + tau * rng.normal(size=n), rng.integers(0, 4, n)


def log_integrand(eta, course, omega, beta, tau):
    cuts = np.array([-np.inf, -np.inf, C2, 0, C4])
    value = -(((eta - MU) / omega) ** 2) / 2 - np.log(omega * np.sqrt(2 * np.pi))
    for x, y, log_minutes, kind in zip(*course):
        if y > 1:
            value = value - np.logaddexp(0, cuts[y] - beta * (x - eta))
        if y < 4:
            value = value - np.logaddexp(0, beta * (x - eta) - cuts[y + 1])
        if y >= 3:
            e = (log_minutes - D0 - D1 * (x - eta)) / tau
            if kind == 0:
                value = value - e * e / 2
            elif kind == 1:
                value = value + log_ndtr(-e)
    return value


def distance(precision, pole, exponent=25):
    slowest = pole * precision
    frequency = np.sqrt(2 * exponent * precision)
    if frequency > slowest:
        frequency = (exponent + slowest * pole / 2) / pole
    return 2 * np.pi / frequency


def main():
    print(f"# nodes.py, seed {SEED} - Python {platform.python_version()} - NumPy {np.__version__}"
          f" - SciPy {scipy.__version__}")
    rng = np.random.default_rng(SEED)
    for omega, beta, tau in [(0.3, 1, 0.8), (0.7, 2, 0.45), (1.2, 2.5, 0.45), (1.6, 4, 0.3), (2.2, 4, 0.2)]:
        errors, counts = {}, []
        for course in courses(rng, omega, beta, tau):
            f = lambda eta: log_integrand(eta, course, omega, beta, tau)
            grid = np.linspace(MU - 10 * omega, MU + 10 * omega, 20001)
            values = f(grid)
            true = logsumexp(values) + np.log(grid[1] - grid[0])
            weights = np.exp(values - true) * (grid[1] - grid[0])
            mean = (weights * grid).sum()
            sd = np.sqrt((weights * (grid - mean) ** 2).sum())
            top, h = grid[values.argmax()], 1e-3
            curved = -(f(top + h) - 2 * f(top) + f(top - h)) / h**2
            for n in (7, 11, 15, 21, 31):
                nodes, node_weights = hermgauss(n)
                for name, centre, scale in (("top", top, curved**-0.5), ("mean", mean, sd)):
                    found = logsumexp(f(centre + np.sqrt(2) * scale * nodes) + nodes**2
                                      + np.log(node_weights)) + np.log(np.sqrt(2) * scale)
                    errors.setdefault((name, n), []).append(abs(found - true))
            bounded = ((course[1] >= 3) & (course[3] == 1)).sum()
            step = distance(bounded * (D1 / tau) ** 2 + curved, np.pi / beta)
            spread = top + step * np.arange(-2000, 2001)
            spread = spread[f(spread) > values.max() - 26]
            counts.append(len(spread))
            errors.setdefault("trapezoid", []).append(abs(logsumexp(f(spread)) + np.log(step) - true))
        for key, error in errors.items():
            name = key if isinstance(key, str) else f"hermite {key[0]} {key[1]}"
            nodes = f" nodes {np.mean(counts):.1f} {max(counts)}" if isinstance(key, str) else ""
            print(f"omega {omega} beta {beta} tau {tau} {name} {max(error):.1e}{nodes}")


main()

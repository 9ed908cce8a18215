"""The full posterior by importance sampling on the dense sums: a second opinion beside Stan.

The parameters are those of fit.stan with its priors, and the requirement of each patient is
integrated out by fit_scipy.py instead of being drawn. Draws come from a t distribution with 8
degrees of freedom about the mode, in pairs that mirror each other, and are weighed.

    python3 fit_posterior.py > fit_posterior.txt

Lines, on the natural scale:
    SET NAME mean sd mcse_mean mcse_sd ess
"""
import os
import sys
import numpy as np
import scipy
from fit_scipy import FOLDER, Courses, Likelihood, fit, natural

SEED = 20261127
SETS = [('n60', 40_000), ('n250', 20_000)]
NODES = 64
FREEDOM = 8
BATCHES = 100
CHECKED = 20
FIXED = [(np.log(0.7), 0.7), (np.log(2), 0.7), (np.log(2), 0.7), (np.log(2), 0.7),
         (np.log(40), 1.0), (np.log(0.5), 1.0), (np.log(0.5), 0.7)]


class Posterior:
    def __init__(self, courses):
        others = len(courses.groups) - 1
        centre, spread = zip(*([(0.0, 2.0)] + [(0.0, 1.0)] * others + FIXED))
        self.centre, self.spread = np.array(centre), np.array(spread)
        self.likelihood = Likelihood(courses, NODES)

    def value(self, theta):
        """The logarithm of the density, but for a constant, and its derivative."""
        value, gradient = self.likelihood.value(theta)
        r = (theta - self.centre) / self.spread
        return value - 0.5 * r @ r, gradient - r / self.spread

    def mode(self, theta):
        self.likelihood.place(theta)
        for _ in range(30):
            second = self.likelihood.second(theta) - np.diag(self.spread ** -2)
            change = np.linalg.solve(second, self.value(theta)[1])
            theta = theta - change
            if abs(change).max() < 1e-12:
                break
        return theta, np.linalg.inv(-second)


def sample(posterior, mode, covariance, count, rng):
    """Points and the logarithms of their weights."""
    n = len(mode)
    root = np.linalg.cholesky(covariance)
    z = rng.standard_normal((count // 2, n))
    z = z / np.sqrt(rng.chisquare(FREEDOM, count // 2) / FREEDOM)[:, None]
    z = np.concatenate((z, -z))
    log_drawn = -0.5 * (FREEDOM + n) * np.log1p((z * z).sum(axis=1) / FREEDOM)
    points = mode + z @ root.T
    posterior.likelihood.place(mode)
    logs = np.array([posterior.value(point)[0] for point in points])
    return points, logs - log_drawn


def check(posterior, mode, points):
    """The largest change of the log density where the nodes are placed for the point itself."""
    posterior.likelihood.place(mode)
    before = [posterior.value(point)[0] for point in points[:CHECKED]]
    worst = 0.0
    for point, there in zip(points, before):
        posterior.likelihood.place(point)
        worst = max(worst, abs(posterior.value(point)[0] - there))
    return worst


def moments(values, weights):
    mean = weights @ values / weights.sum()
    return mean, np.sqrt(weights @ (values - mean) ** 2 / weights.sum())


def main():
    print('# fit_posterior.py, seed', SEED, '- Python', sys.version.split()[0], '- NumPy',
          np.__version__, '- SciPy', scipy.__version__)
    for name, count in SETS:
        rng = np.random.default_rng(SEED)
        courses = Courses(os.path.join(FOLDER, name + '.csv.gz'))
        posterior = Posterior(courses)
        _, theta, _, _, _ = fit(courses, NODES)
        mode, covariance = posterior.mode(theta)
        points, logs = sample(posterior, mode, covariance, count, rng)
        weights = np.exp(logs - logs.max())
        values = np.array([natural(point, len(courses.groups)) for point in points])
        print('#', name, 'reference', courses.groups[0], 'draws', count, 'largest share of a draw',
              f'{weights.max() / weights.sum():.1e}', 'nodes placed anew change the density by',
              f'{check(posterior, mode, points):.1e}')
        ess = weights.sum() ** 2 / (weights ** 2).sum()
        # A pair belongs to one batch, so that batches are independent.
        batch = np.arange(count) % (count // 2) % BATCHES
        for k, word in enumerate(courses.names()):
            mean, sd = moments(values[:, k], weights)
            parts = np.array([moments(values[batch == b, k], weights[batch == b])
                              for b in range(BATCHES)])
            mcse = parts.std(axis=0, ddof=1) / np.sqrt(BATCHES)
            print(name, word, *[f'{v:.10g}' for v in (mean, sd, mcse[0], mcse[1], ess)])
        sys.stdout.flush()


if __name__ == '__main__':
    main()

"""How the parameters of n60 go together: of the maximum, and of the posterior with its quantiles.

The draws are those of fit_posterior.py with another seed. How sure a number is comes from as many
batches, each as large as another.

    python3 fit_spread.py > fit_spread.txt

Lines, on the natural scale:
    SET maximum NAME NAME covariance
    SET posterior NAME NAME covariance mcse
    SET quantile NAME part value mcse
"""
import os
import sys
import numpy as np
import scipy
from fit_posterior import BATCHES, NODES, Posterior, sample
from fit_scipy import FOLDER, Courses, fit, natural, slopes

SEED = 20261130
SET, COUNT = 'n60', 60_000
PARTS = (0.05, 0.25, 0.5, 0.75, 0.95)


def covariance(values, weights):
    apart = values - weights @ values / weights.sum()
    return (weights[:, None] * apart).T @ apart / weights.sum()


def quantiles(values, weights):
    """The smallest value up to which draws of each part lie, one row for each parameter."""
    out = []
    for column in values.T:
        order = np.argsort(column)
        sums = np.cumsum(weights[order]) / weights.sum()
        out.append([column[order][np.searchsorted(sums, part)] for part in PARTS])
    return np.array(out)


def main():
    print('# fit_spread.py, seed', SEED, '- Python', sys.version.split()[0], '- NumPy',
          np.__version__, '- SciPy', scipy.__version__)
    courses = Courses(os.path.join(FOLDER, SET + '.csv.gz'))
    groups, names = len(courses.groups), courses.names()
    _, theta, _, inverse, _ = fit(courses, NODES)
    scale = slopes(theta, groups)
    top = scale[:, None] * inverse * scale
    posterior = Posterior(courses)
    mode, spread = posterior.mode(theta)
    points, logs = sample(posterior, mode, spread, COUNT, np.random.default_rng(SEED))
    weights = np.exp(logs - logs.max())
    values = np.array([natural(point, groups) for point in points])
    batch = np.arange(COUNT) % (COUNT // 2) % BATCHES
    parts = [(covariance(values[batch == b], weights[batch == b]),
              quantiles(values[batch == b], weights[batch == b])) for b in range(BATCHES)]
    errors = [np.std([part[k] for part in parts], axis=0, ddof=1) / np.sqrt(BATCHES)
              for k in (0, 1)]
    together, found = covariance(values, weights), quantiles(values, weights)
    for i, one in enumerate(names):
        for j, other in enumerate(names):
            print(SET, 'maximum', one, other, f'{top[i, j]:.10g}')
            print(SET, 'posterior', one, other, f'{together[i, j]:.10g} {errors[0][i, j]:.3g}')
        for j, part in enumerate(PARTS):
            print(SET, 'quantile', one, part, f'{found[i, j]:.10g} {errors[1][i, j]:.3g}')


if __name__ == '__main__':
    main()

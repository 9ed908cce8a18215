"""Maximum marginal likelihood of the response model, by dense sums. Independent of the product.

Every course is one integral over its standardised requirement z. Its integrand is summed by the
trapezoid rule on evenly spaced points over the whole stretch where it is above exp(-45) of its
top; the stretch is found for each course on its own. For a smooth function that has died down at
both ends this rule converges faster than any power of the step, so twice the points show the
error. The gradient is exact (Fisher's identity: the mean of the derivative over z); the matrix of
second derivatives is the complex step of that gradient, exact to rounding as well.

    python3 fit_scipy.py > fit_scipy.txt
    python3 fit_scipy.py --nodes 24 --stay 0.3 FILE...     estimates of any files, quicker; the
                                                           seconds are told on standard error

Lines of the output:
    SET logLik value             log density of all grades and of the minutes, constants kept
    SET NAME estimate se         mu, gamma.GROUP, omega, beta, c2, c4, d0, d1, tau as they are
    SET.at1 logLik value         and SET.at1 NAME value 0: the log-likelihood elsewhere
    # ...                        reference group, counts, what more points change
"""
import argparse
import csv
import gzip
import io
import os
import sys
import time
import numpy as np
import scipy
from scipy.optimize import minimize
from scipy.special import log_ndtr

NODES = 96
DIED = 45.0
BLOCK = 40_000          # numbers in one array at a time: what fits into a cache
FOLDER = os.path.join(os.path.dirname(os.path.abspath(__file__)), 'fit')
SETS = ['n60', 'n300', 'n1000', 'n5000']
HALF_LOG_TWO_PI = 0.5 * np.log(2 * np.pi)
NONE, EXACT, RIGHT, INTERVAL = range(4)
STATUS = dict(none=NONE, exact=EXACT, right=RIGHT, interval=INTERVAL)


class Courses:
    """Columns of a history file, sorted by patient, and the groups with the reference first."""

    def __init__(self, path, reference=None):
        with (gzip.open(path, 'rt') if path.endswith('.gz') else open(path)) as file:
            rows = list(csv.DictReader(io.StringIO(file.read())))
        number = {}
        course = np.array([number.setdefault(row['patient'], len(number)) for row in rows])
        order = np.argsort(course, kind='stable')
        rows = [rows[i] for i in order]
        self.course = course[order]
        self.count = len(number)
        self.first = np.searchsorted(self.course, np.arange(self.count))
        column = lambda name: np.array([float(row[name] or 0) for row in rows])
        self.x = np.log(column('volume_ml') * column('potency') * column('strength') / 0.1)
        self.grade = np.maximum(column('grade').astype(int), 1)
        status = np.array([STATUS[row['duration_status']] for row in rows])
        self.status = np.where(self.grade >= 3, status, NONE)
        with np.errstate(divide='ignore'):
            self.lower = np.log(column('duration_min'))
            self.upper = np.log(column('duration_upper_min'))
        self.lower = np.where(self.status == NONE, 0.0, self.lower)
        group = [rows[i]['group'] for i in self.first]
        names = sorted(set(group))
        chosen = reference or max(names, key=lambda name: (group.count(name),))
        self.groups = [chosen] + [name for name in names if name != chosen]
        self.group = np.array([self.groups.index(name) for name in group])
        self.rows = len(rows)

    def names(self):
        return (['mu'] + ['gamma.' + name for name in self.groups[1:]]
                + ['omega', 'beta', 'c2', 'c4', 'd0', 'd1', 'tau'])

    def split(self, nodes):
        """Blocks of whole courses of which one array of rows times nodes fits into a cache."""
        ends = np.append(self.first[1:], self.rows)
        blocks, start = [], 0
        for i in range(self.count):
            if i + 1 == self.count or (ends[i + 1] - self.first[start]) * nodes > BLOCK:
                blocks.append(Block(self, start, i + 1, self.first[start], ends[i]))
                start = i + 1
        return blocks


class Block:
    def __init__(self, whole, from_course, to_course, from_row, to_row):
        rows = slice(from_row, to_row)
        self.courses = slice(from_course, to_course)
        self.own = whole.course[rows] - from_course
        self.first = whole.first[self.courses] - from_row
        self.x, self.grade, self.group = whole.x[rows], whole.grade[rows], whole.group[self.courses]
        self.lower, self.upper = whole.lower[rows], whole.upper[rows]
        self.at = {kind: np.nonzero(whole.status[rows] == kind)[0]
                   for kind in (EXACT, RIGHT, INTERVAL)}


def log_expit(t):
    """log(1 / (1 + exp(-t))), of complex t as well."""
    sign = np.where(t.real > 0, 1.0, -1.0)
    return np.where(t.real > 0, 0.0, t) - np.log1p(np.exp(-sign * t))


def log_less(a, b):
    """log(exp(a) - exp(b))"""
    return a + np.log(-np.expm1(b - a))


def log_phi(t):
    return -0.5 * t * t - HALF_LOG_TWO_PI


def natural(theta, groups):
    """What is searched, as the model has it: mu, gamma..., omega, beta, c2, c4, d0, d1, tau."""
    out = theta.copy()
    at = groups
    out[at], out[at + 1] = np.exp(theta[at]), np.exp(theta[at + 1])
    out[at + 2], out[at + 3] = -np.exp(theta[at + 2]), np.exp(theta[at + 3])
    out[at + 5], out[at + 6] = np.exp(theta[at + 5]), np.exp(theta[at + 6])
    return out


def slopes(theta, groups):
    """The derivative of each natural parameter by what is searched."""
    out = natural(theta, groups)
    out[:groups] = 1.0
    out[groups + 4] = 1.0
    return out


def row_terms(block, parts, eta):
    """Of each row at each node: its log probability and the derivatives by everything.

    eta has a row for each injection. Derivatives: by (a = beta (x - eta)), c2, c4, then by the
    mean of ln T and by tau.
    """
    beta, c2, c4, d0, d1, tau = parts
    by_c2, by_c4 = np.zeros_like(eta), np.zeros_like(eta)
    a = beta * (block.x[:, None] - eta)
    value, by_a = np.empty_like(eta), np.empty_like(eta)
    for grade in (1, 2, 3, 4):
        rows = np.nonzero(block.grade == grade)[0]
        t = a[rows]
        if grade == 1:
            no2 = log_expit(c2 - t)
            p2 = 1 - np.exp(no2)
            value[rows], by_a[rows], by_c2[rows] = no2, -p2, p2
        elif grade == 2:
            # expit(u) - expit(v) = expit(u) expit(-v) (1 - exp(v - u))
            at2, no3 = log_expit(t - c2), log_expit(-t)
            p2, p3 = np.exp(at2), 1 - np.exp(no3)
            value[rows] = at2 + no3 + np.log(-np.expm1(c2))
            by_a[rows] = (1 - p2) - p3
            by_c2[rows] = -(1 - p2) + 1 / -np.expm1(-c2)
        elif grade == 3:
            at3, no4 = log_expit(t), log_expit(c4 - t)
            p3, p4 = np.exp(at3), 1 - np.exp(no4)
            value[rows] = at3 + no4 + np.log(-np.expm1(-c4))
            by_a[rows] = (1 - p3) - p4
            by_c4[rows] = p4 + 1 / np.expm1(c4)
        else:
            at4 = log_expit(t - c4)
            value[rows] = at4
            by_a[rows] = 1 - np.exp(at4)
            by_c4[rows] = -by_a[rows]
    by_mean, by_tau = np.zeros_like(eta), np.zeros_like(eta)
    mean = lambda rows: d0 + d1 * (block.x[rows, None] - eta[rows])
    rows = block.at[EXACT]
    if rows.size:
        r = (block.lower[rows, None] - mean(rows)) / tau
        value[rows] += log_phi(r) - np.log(tau) - block.lower[rows, None]
        by_mean[rows] += r / tau
        by_tau[rows] += (r * r - 1) / tau
    rows = block.at[RIGHT]
    rows = rows[np.isfinite(block.lower[rows])]
    if rows.size:
        v = (mean(rows) - block.lower[rows, None]) / tau
        survival = log_ndtr(v)
        h = np.exp(log_phi(v) - survival)
        value[rows] += survival
        by_mean[rows] += h / tau
        by_tau[rows] -= h * v / tau
    rows = block.at[INTERVAL]
    if rows.size:
        m = mean(rows)
        above = (block.upper[rows, None] - m) / tau
        lower = block.lower[rows]
        below = (np.where(np.isfinite(lower), lower, -1e9)[:, None] - m) / tau
        # On the side of the middle where no probability is near 1.
        left = (above + below).real < 0
        high, low = np.where(left, above, -below), np.where(left, below, -above)
        inside = log_less(log_ndtr(high), log_ndtr(low))
        at_above, at_below = np.exp(log_phi(above) - inside), np.exp(log_phi(below) - inside)
        value[rows] += inside
        by_mean[rows] += (at_below - at_above) / tau
        by_tau[rows] += (below * at_below - above * at_above) / tau
    return value, by_a, by_c2, by_c4, by_mean, by_tau


class Likelihood:
    def __init__(self, courses, nodes):
        self.courses, self.nodes = courses, nodes
        self.blocks = courses.split(nodes)
        self.stretch = [None] * len(self.blocks)

    def parts(self, theta):
        groups = len(self.courses.groups)
        p = natural(theta, groups)
        means = p[0] + np.concatenate(([0], p[1:groups]))
        return means, p[groups], p[groups + 1:]

    def place(self, theta):
        """Puts the nodes of every course where its integrand lies for these parameters."""
        means, omega, parts = self.parts(theta)
        for k, block in enumerate(self.blocks):
            self.stretch[k] = stretch(block, means[block.group], omega, parts)

    def value(self, theta):
        """Log-likelihood and its exact derivative by theta; the nodes stay where they are."""
        means, omega, parts = self.parts(theta)
        groups, beta, d1 = len(self.courses.groups), parts[0], parts[4]
        total = 0.0
        by_group = np.zeros(groups, dtype=theta.dtype)
        rest = np.zeros(7, dtype=theta.dtype)
        for block, (low, high) in zip(self.blocks, self.stretch):
            step = (high - low) / (self.nodes - 1)
            z = low[:, None] + step[:, None] * np.arange(self.nodes)
            eta = (means[block.group][:, None] + omega * z)[block.own]
            value, by_a, by_c2, by_c4, by_mean, by_tau = row_terms(block, parts, eta)
            logs = np.add.reduceat(value, block.first, axis=0) + log_phi(z)
            top = logs.real.max(axis=1)
            weights = np.exp(logs - top[:, None])
            sums = weights.sum(axis=1)
            total += (np.log(sums * step) + top).sum()
            w = (weights / sums[:, None])[block.own]
            # a = beta (x - eta), mean = d0 + d1 (x - eta)
            distance = block.x[:, None] - eta
            by_eta = -(beta * by_a + d1 * by_mean) * w
            own = np.add.reduceat(by_eta.sum(axis=1), block.first)
            np.add.at(by_group, block.group, own)
            rest += [(by_eta * z[block.own]).sum(), (by_a * distance * w).sum(),
                     (by_c2 * w).sum(), (by_c4 * w).sum(), (by_mean * w).sum(),
                     (by_mean * distance * w).sum(), (by_tau * w).sum()]
        gradient = np.concatenate(([by_group.sum()], by_group[1:], rest))
        return total, gradient * slopes(theta, groups)

    def second(self, theta):
        """The matrix of second derivatives by theta: the complex step of the gradient."""
        self.place(theta)
        n = len(theta)
        out = np.empty((n, n))
        for k in range(n):
            moved = theta.astype(complex)
            moved[k] += 1e-25j
            out[k] = self.value(moved)[1].imag / 1e-25
        return (out + out.T) / 2


def log_integrand(block, means, omega, parts, z):
    eta = (means[:, None] + omega * z)[block.own]
    return np.add.reduceat(row_terms(block, parts, eta)[0], block.first, axis=0) + log_phi(z)


def stretch(block, means, omega, parts):
    """Where the integrand of each course is above exp(-45) of its top, by grids ever finer."""
    count = len(block.first)
    low, high = np.full(count, -60.0), np.full(count, 60.0)
    for _ in range(4):
        z = low[:, None] + (high - low)[:, None] * np.arange(33) / 32
        with np.errstate(all='ignore'):
            logs = np.nan_to_num(log_integrand(block, means, omega, parts, z), nan=-np.inf)
        keep = logs > logs.max(axis=1)[:, None] - DIED
        first, last = keep.argmax(axis=1), 32 - keep[:, ::-1].argmax(axis=1)
        rows = np.arange(count)
        low, high = z[rows, np.maximum(first - 1, 0)], z[rows, np.minimum(last + 1, 32)]
    return low, high


def start(courses):
    groups = len(courses.groups)
    minutes = courses.lower[(courses.status == EXACT)]
    middle = minutes.mean() if minutes.size else np.log(40.0)
    return np.array([0.5] + [0.0] * (groups - 1)
                    + [np.log(0.7), np.log(2), np.log(1.5), np.log(1.5), middle, np.log(0.5),
                       np.log(0.5)])


def fit(courses, nodes, free=slice(None), stay=0.0):
    """The maximum, by BFGS and then Newton; free are the parameters that are searched.

    While BFGS searches, the nodes stay where they are until a parameter has moved by more than
    stay. Newton's steps place them anew each time.
    """
    likelihood = Likelihood(courses, nodes)
    theta = start(courses)
    placed = np.full(len(theta), np.inf)

    def loss(part):
        nonlocal placed
        theta[free] = part
        if not abs(theta - placed).max() <= stay:
            likelihood.place(theta)
            placed = theta.copy()
        value, gradient = likelihood.value(theta)
        return -value, -gradient[free]

    found = minimize(loss, theta[free], jac=True, method='BFGS', options=dict(gtol=1e-2))
    theta[free] = found.x
    for _ in range(20):
        second = likelihood.second(theta)[free][:, free]
        gradient = likelihood.value(theta)[1][free]
        change = np.linalg.solve(second, gradient)
        theta[free] -= change
        if abs(gradient @ change) < 1e-18 * courses.rows:
            break
    second = likelihood.second(theta)[free][:, free]
    value, gradient = likelihood.value(theta)
    return likelihood, theta, value, np.linalg.inv(-second), abs(gradient[free]).max()


def check_by_differences(likelihood, theta):
    """The exact derivatives against differences of the sums (Richardson): the largest miss."""
    likelihood.place(theta)
    gradient = likelihood.value(theta)[1]
    second = likelihood.second(theta)
    likelihood.place(theta)
    miss = [0.0, 0.0]
    for k in range(len(theta)):
        at = []
        for h in (4e-3, 2e-3, 1e-3):
            up, down = theta.copy(), theta.copy()
            up[k] += h
            down[k] -= h
            (a, ga), (b, gb) = likelihood.value(up), likelihood.value(down)
            at.append(np.append((a - b) / (2 * h), (ga - gb) / (2 * h)))
        one, two = (4 * at[1] - at[0]) / 3, (4 * at[2] - at[1]) / 3
        best = (16 * two - one) / 15
        miss[0] = max(miss[0], abs(best[0] - gradient[k]) / (1 + abs(gradient[k])))
        miss[1] = max(miss[1], (abs(best[1:] - second[k]) / (1 + abs(second[k]))).max())
    return miss


def show(name, courses, theta, value, covariance):
    groups = len(courses.groups)
    error = np.sqrt(np.diag(covariance)) * abs(slopes(theta, groups))
    print(name, 'logLik', repr(float(value)))
    for word, estimate, se in zip(courses.names(), natural(theta, groups), error):
        print(name, word, repr(float(estimate)), repr(float(se)))


def report(name, courses, check):
    likelihood, theta, value, covariance, gradient = fit(courses, NODES)
    print('#', name, 'reference', courses.groups[0], 'patients', courses.count, 'injections',
          courses.rows, 'largest derivative', f'{gradient:.1e}')
    show(name, courses, theta, value, covariance)
    finer = Likelihood(courses, 2 * NODES)
    finer.place(theta)
    coarser = Likelihood(courses, NODES // 2)
    coarser.place(theta)
    print('#', name, 'twice the points change logLik by',
          f'{abs(finer.value(theta)[0] - value):.1e}', 'and half of them by',
          f'{abs(coarser.value(theta)[0] - value):.1e}')
    rng = np.random.default_rng(20261127)
    for at in ('at1', 'at2'):
        away = theta + rng.uniform(-0.5, 0.5, len(theta))
        finer.place(away)
        print(f'{name}.{at} logLik', repr(float(finer.value(away)[0])))
        for word, there in zip(courses.names(), natural(away, len(courses.groups))):
            print(f'{name}.{at}', word, repr(float(there)), 0)
    if check:
        gradient, second = check_by_differences(likelihood, theta + 0.1)
        print('#', name, 'differences miss the gradient by', f'{gradient:.1e}',
              'and the second derivatives by', f'{second:.1e}')
    sys.stdout.flush()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument('files', nargs='*')
    parser.add_argument('--nodes', type=int, default=NODES)
    parser.add_argument('--stay', type=float, default=0.0)
    given = parser.parse_args()
    print('# fit_scipy.py, no seed but 20261127 of the points at1 and at2 - Python',
          sys.version.split()[0], '- NumPy', np.__version__, '- SciPy', scipy.__version__)
    for path in given.files:
        courses = Courses(path)
        begun = time.perf_counter()
        _, theta, value, covariance, _ = fit(courses, given.nodes, stay=given.stay)
        print(f'{time.perf_counter() - begun:.3f} s in the fit', file=sys.stderr)
        show(os.path.basename(path).split('.')[0], courses, theta, value, covariance)
    if not given.files:
        for name in SETS:
            report(name, Courses(os.path.join(FOLDER, name + '.csv.gz')), name in SETS[:2])


if __name__ == '__main__':
    main()

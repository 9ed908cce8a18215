"""Golden forecasts of the one-patient response model, by dense quadrature.

Independent of the product: every probability is written down as the model has it, with SciPy's
log_expit and log_ndtr, and every integral is Simpson's rule on many evenly spaced points over
the whole stretch where the posterior is above exp(-60) of its top. Each case is summed twice,
with all points and with every second one, and the largest difference is printed at the end.

    python3 forecasts.py > forecasts.txt

Lines of the output, all numbers with 17 digits:
    population mu omega beta c2 c4 d0 d1 tau
    trial x grade status lower upper      (status exact, right, interval, none)
    strength centre deviation             (what follows is counted on a second preparation)
    posterior mean sd log_probability q05 q95
    forecast x p p60 p120 p240            (averages)
    low ... / high ...                    (the same at q95 and q05)
    median x minutes                      (of a usable response)
    spread x r1 r2 r3 r4 p p60 p120 p240  (delivered amount uncertain: r1..r4 half-widths)
"""
import sys
import numpy as np
import scipy
from scipy.integrate import simpson
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from scipy.special import log_expit, log_ndtr, ndtr, expit, roots_legendre

SEED = 20261125
CASES = 400
CHANGED = 25
POINTS = 40001
LOGS = [np.log(60.0), np.log(120.0), np.log(240.0)]
worst = 0.0


def log_diff(a, b):
    """log(exp(a) - exp(b))"""
    return a + np.log(-np.expm1(b - a))


def log_grade(p, x, eta, grade):
    c = {2: p['c2'], 3: 0.0, 4: p['c4']}
    at = lambda k: log_expit(p['beta'] * (x - eta) - c[k])
    not_at = lambda k: log_expit(-(p['beta'] * (x - eta) - c[k]))
    g = max(grade, 1)
    if g == 1:
        return not_at(2)
    if g == 4:
        return at(4)
    # The difference of two tails, on the side where neither is near 1.
    t = p['beta'] * (x - eta) - c[g]
    upper = log_diff(at(g), at(g + 1))
    lower = log_diff(not_at(g + 1), not_at(g))
    return np.where(t < 0, upper, lower)


def log_duration(p, x, eta, status, lower, upper):
    mean = p['d0'] + p['d1'] * (x - eta)
    if status == 'exact':
        z = (np.log(lower) - mean) / p['tau']
        return -0.5 * z * z - 0.5 * np.log(2 * np.pi) - np.log(p['tau'] * lower)
    if status == 'right':
        return log_ndtr((mean - np.log(lower)) / p['tau']) if lower > 0 else np.zeros_like(eta)
    if status == 'interval':
        above = (np.log(upper) - mean) / p['tau']
        if lower == 0:
            return log_ndtr(above)
        below = (np.log(lower) - mean) / p['tau']
        width = np.log1p((upper - lower) / lower) / p['tau']
        if width < 0.05:
            # A difference would lose digits: the integral of the density over the stretch.
            middle, half = (above + below) / 2, width / 2
            nodes, w = roots_legendre(10)
            total = sum(v * np.exp(-middle * half * t - (half * t) ** 2 / 2)
                        for t, v in zip(nodes, w))
            return np.log(half * total) - middle ** 2 / 2 - 0.5 * np.log(2 * np.pi)
        left = log_diff(log_ndtr(above), log_ndtr(below))
        right = log_diff(log_ndtr(-below), log_ndtr(-above))
        return np.where(above + below < 0, left, right)
    return np.zeros_like(eta)


def log_trials(p, trials, eta):
    total = np.zeros_like(eta)
    for x, grade, status, lower, upper in trials:
        total = total + log_grade(p, x, eta, grade)
        if grade >= 3:
            total = total + log_duration(p, x, eta, status, lower, upper)
    return total


def log_normal(x, mean, sd):
    z = (x - mean) / sd
    return -0.5 * z * z - 0.5 * np.log(2 * np.pi) - np.log(sd)


def stretch(log_density):
    lo, hi = -60.0, 60.0
    for _ in range(6):
        eta = np.linspace(lo, hi, 20001)
        with np.errstate(all='ignore'):
            v = np.nan_to_num(log_density(eta), nan=-np.inf)
        keep = np.nonzero(v > v.max() - 60)[0]
        a, b = max(keep[0] - 1, 0), min(keep[-1] + 1, len(eta) - 1)
        if b - a > 15000:
            break
        lo, hi = eta[a], eta[b]
    return lo, hi


def probabilities(p, x, eta):
    useful = expit(p['beta'] * (x - eta))
    mean = p['d0'] + p['d1'] * (x - eta)
    return [useful] + [useful * ndtr((mean - t) / p['tau']) for t in LOGS]


def summed(f, eta, fine=True):
    global worst
    whole = simpson(f, x=eta)
    return whole, simpson(f[::2], x=eta[::2])


def average(f, density, eta, mass, mass2):
    global worst
    a, b = summed(f * density, eta)
    worst = max(worst, abs(a / mass - b / mass2))
    return a / mass


def show(word, *numbers):
    print(word, *[n if isinstance(n, (str, int, np.integer)) else repr(float(n)) for n in numbers])


def report(p, log_density, xs, rng):
    lo, hi = stretch(log_density)
    eta = np.linspace(lo, hi, POINTS)
    v = log_density(eta)
    top = v.max()
    d = np.exp(v - top)
    mass, mass2 = summed(d, eta)
    mean = average(eta, d, eta, mass, mass2)
    sd = np.sqrt(average((eta - mean) ** 2, d, eta, mass, mass2))
    below = CubicSpline(eta, d / mass).antiderivative()
    q = [brentq(lambda e: below(e) - part, lo, hi, xtol=1e-14, rtol=1e-15) for part in (0.05, 0.95)]
    show('posterior', mean, sd, np.log(mass) + top, *q)
    for x in xs:
        show('forecast', x, *[average(f, d, eta, mass, mass2) for f in probabilities(p, x, eta)])
        show('low', x, *probabilities(p, x, np.float64(q[1])))
        show('high', x, *probabilities(p, x, np.float64(q[0])))
    x = xs[0]
    useful = expit(p['beta'] * (x - eta))
    target = average(useful, d, eta, mass, mass2) / 2
    a, b = -40.0, 40.0
    for _ in range(90):
        m = (a + b) / 2
        f = useful * ndtr((p['d0'] + p['d1'] * (x - eta) - m) / p['tau'])
        if average(f, d, eta, mass, mass2) > target:
            a = m
        else:
            b = m
    show('median', x, np.exp((a + b) / 2))
    return eta, d, mass, mass2


def spread(p, x, widths, eta, d, mass, mass2):
    """Reading and barrel add in volume; label and potency multiply. All are uniform."""
    nodes, w = roots_legendre(12)
    reading, barrel, label, loss = widths
    total = np.zeros(4)
    # The two that add: their sum has a trapezoid density; integrate both anyway.
    shifts, ws = [], []
    for r, wr in zip(nodes, w):
        for b, wb in zip(nodes, w):
            for l, wl in zip(nodes, w):
                for q, wq in zip(nodes, w):
                    shifts.append(np.log((1 + reading * r + barrel * b) * (1 + label * l)
                                         * (1 - loss * (q + 1) / 2)))
                    ws.append(wr * wb * wl * wq / 16)
    shifts, ws = np.array(shifts), np.array(ws)
    # Coarser in eta, because the rule there has converged long before.
    step = 40
    e, dens = eta[::step], d[::step]
    m = simpson(dens, x=e)
    weights = np.zeros_like(e)
    # Simpson's weights, so that one matrix product does all.
    h = e[1] - e[0]
    weights[:] = 2 * h / 3
    weights[1::2] = 4 * h / 3
    weights[0] = weights[-1] = h / 3
    weights = weights * dens / m
    for block in np.array_split(np.arange(len(shifts)), 40):
        for k, f in enumerate(probabilities(p, x + shifts[block][:, None], e[None, :])):
            total[k] += ws[block] @ (f @ weights)
    show('spread', x, *widths, *total)


def random_population(rng):
    return dict(mu=rng.uniform(-1.5, 2), omega=rng.uniform(0.3, 1.6), beta=rng.uniform(1, 4),
                c2=-rng.uniform(0.3, 4), c4=rng.uniform(0.3, 4), d0=np.log(rng.uniform(20, 90)),
                d1=rng.uniform(0.1, 1.5), tau=rng.uniform(0.2, 0.8))


def random_dose(rng):
    volume = rng.integers(10, 1001) / 1000
    return np.log(volume * rng.uniform(0.5, 1.2) * np.exp(rng.uniform(-1.5, 1.5)) / 0.1)


def random_trials(rng, p, count, conflicting):
    eta = p['mu'] + p['omega'] * rng.standard_normal()
    trials = []
    doses = [random_dose(rng) for _ in range(6)]
    for _ in range(count):
        x = doses[rng.integers(6)]
        if conflicting:
            grade = int(rng.integers(0, 5))
            minutes = np.exp(rng.uniform(np.log(1), np.log(2000)))
        else:
            u = rng.uniform()
            chances = [expit(p['beta'] * (x - eta) - c) for c in (p['c2'], 0.0, p['c4'])]
            grade = 1 + sum(u < c for c in chances)
            minutes = np.exp(p['d0'] + p['d1'] * (x - eta) + p['tau'] * rng.standard_normal())
        status = ['exact', 'right', 'interval', 'none'][rng.integers(4)]
        lower, upper = minutes, 0.0
        if status == 'interval':
            width = [0.001, 0.1, 1.0, 30.0, 300.0][rng.integers(5)]
            lower, upper = (0.0 if rng.uniform() < 0.2 else minutes), minutes + width
        if status == 'none':
            lower = 0.0
        trials.append((x, grade, status, lower, upper))
    return trials


def show_case(p, trials):
    show('population', p['mu'], p['omega'], p['beta'], p['c2'], p['c4'], p['d0'], p['d1'], p['tau'])
    for t in trials:
        show('trial', *t)


def main():
    print('# forecasts.py, seed', SEED, '- Python', sys.version.split()[0], '- NumPy', np.__version__,
          '- SciPy', scipy.__version__)
    rng = np.random.default_rng(SEED)
    for case in range(CASES):
        p = random_population(rng)
        if case % 8 == 0:   # the corners of the range
            p['omega'] = [0.3, 1.6, 2.2][case // 8 % 3]
            p['beta'] = [1.0, 4.0][case // 16 % 2]
            p['tau'] = [0.2, 0.8][case // 32 % 2]
        count = [0, 1, 3, 10, 40][case % 5]
        trials = random_trials(rng, p, count, conflicting=case % 2 == 0)
        show_case(p, trials)
        f = lambda eta: log_normal(eta, p['mu'], p['omega']) + log_trials(p, trials, eta)
        xs = [random_dose(rng) for _ in range(4)]
        eta, d, mass, mass2 = report(p, f, xs, rng)
        if case % 40 == 3:
            spread(p, xs[0], (rng.uniform(0.01, 0.2), rng.uniform(0.01, 0.1), 0.1,
                              rng.uniform(0, 0.2)), eta, d, mass, mass2)
    for case in range(CHANGED):
        p = random_population(rng)
        known = random_trials(rng, p, [0, 2, 10][case % 3], conflicting=case % 2 == 0)
        new = random_trials(rng, p, [0, 1, 4][case % 3], conflicting=case % 2 == 0)
        centre, sd = rng.uniform(-1, 1), rng.uniform(0.1, 0.9)
        show_case(p, known)
        show('strength', centre, sd)
        for t in new:
            show('trial', *t)
        own = lambda eta: log_normal(eta, p['mu'], p['omega']) + log_trials(p, known, eta)
        lo, hi = stretch(own)
        grid = np.linspace(lo, hi, 4001)
        w = np.full(4001, 2.0)
        w[1::2] = 4
        w[0] = w[-1] = 1
        logs = own(grid) + np.log(w * (grid[1] - grid[0]) / 3)

        def both(u, grid=grid, logs=logs, centre=centre, sd=sd, p=p, new=new):
            out = np.empty_like(u)
            for block in np.array_split(np.arange(len(u)), max(1, len(u) // 500)):
                m = logs[None, :] + log_normal(u[block][:, None], grid[None, :] - centre, sd)
                t = m.max(axis=1)
                out[block] = t + np.log(np.exp(m - t[:, None]).sum(axis=1))
            return out + log_trials(p, new, u)
        global POINTS
        before, POINTS = POINTS, 4001
        report_changed(p, both, [random_dose(rng) for _ in range(3)], rng)
        POINTS = before
    print('# largest change where every second point is left out:', worst)


def report_changed(p, both, xs, rng):
    """As report, with a coarse search for the stretch because the density is dear."""
    lo, hi = -40.0, 40.0
    for _ in range(8):
        u = np.linspace(lo, hi, 401)
        with np.errstate(all='ignore'):
            v = np.nan_to_num(both(u), nan=-np.inf)
        keep = np.nonzero(v > v.max() - 60)[0]
        a, b = max(keep[0] - 1, 0), min(keep[-1] + 1, len(u) - 1)
        if b - a > 250:
            break
        lo, hi = u[a], u[b]
    global stretch
    saved, stretch = stretch, (lambda f: (lo, hi))
    report(p, both, xs, rng)
    stretch = saved


if __name__ == '__main__':
    main()

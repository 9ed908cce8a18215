"""One step ahead: what each report of a course was to be, given the earlier ones of the course.

Independent of the product: every course is drawn here with a seed, its doses chosen by the report
before (up after a soft one, down after a long one) or at random, its durations exact, censored,
between bounds or not told. Before each report the density of the standardised requirement z is
the normal one times what the earlier reports say, on evenly spaced points over [-14, 14], and the
probabilities are averages over it by Simpson's rule. Each average is taken a second time with
half as many points; the largest difference is printed, and so is the most that was left at an end
of the stretch, as a part of the top.

    python3 predictive.py > predictive.txt

Lines of the output, numbers with 17 digits:
    population mu omega beta c2 c4 d0 d1 tau GROUP gamma GROUP gamma ...
    course GROUP
    trial x grade status lower upper p2 p3 p4 p60 p120 p240
status is exact, right, interval or none, and a bound that does not matter is 0. p2, p3, p4: of
that grade or more. p60, p120, p240: of grade 3 or more, and so many minutes or longer.
"""
import sys
import numpy as np
import scipy
from scipy.integrate import simpson
from scipy.special import expit, log_expit, log_ndtr, ndtr

SEED = 20261128
POPULATIONS = 40
COURSES = 6
POINTS = 16001
FARTHEST = 14.0
LIMITS = (60.0, 120.0, 240.0)
GROUPS = ('vasculogenic', 'spinal_cord', 'mixed')
STATUS = ('exact', 'exact', 'right', 'interval', 'interval', 'none')
Z = np.linspace(-FARTHEST, FARTHEST, POINTS)
worst = dict(points=0.0, end=0.0)


def drawn_population(rng):
    return dict(
        mu=rng.uniform(-0.5, 1.5), omega=rng.uniform(0.3, 1.6), beta=rng.uniform(1, 4),
        c2=-rng.uniform(0.5, 3), c4=rng.uniform(0.5, 3), d0=np.log(rng.uniform(25, 90)),
        d1=rng.uniform(0.1, 0.9), tau=rng.uniform(0.2, 0.8),
        gamma={GROUPS[0]: 0.0, GROUPS[1]: rng.uniform(-1, 0), GROUPS[2]: rng.uniform(-0.5, 0.5)})


def drawn_course(rng, p, group, count):
    eta = p['mu'] + p['gamma'][group] + p['omega'] * rng.standard_normal()
    volume, stepwise, trials = 0.1, rng.uniform() < 0.7, []
    for _ in range(count):
        if not stepwise:
            volume = 0.05 * rng.integers(1, 13)
        x = np.log(volume * rng.uniform(0.85, 1.1) / 0.1)
        u = rng.uniform()
        grade = 1 + sum(u < expit(p['beta'] * (x - eta) - c) for c in (p['c2'], 0, p['c4']))
        minutes = np.exp(p['d0'] + p['d1'] * (x - eta) + p['tau'] * rng.standard_normal())
        trials.append((x, grade) + told(rng, minutes, grade))
        if grade < 3:
            volume = min(volume + 0.05, 0.6)
        elif minutes >= 120:
            volume = max(volume - 0.05, 0.05)
    return trials


def told(rng, minutes, grade):
    """(status, lower, upper) of a duration."""
    status = STATUS[rng.integers(len(STATUS))] if grade >= 3 else 'none'
    if status == 'right':
        seen = float(rng.choice([15, 30, 60, 120]))
        return ('right', seen, 0.0) if minutes > seen else ('exact', round(minutes, 1) + 0.1, 0.0)
    if status == 'interval':
        width = float(rng.choice([5, 15, 30, 60]))
        lower = np.floor(minutes / width) * width
        return 'interval', lower, lower + width
    return (status, round(minutes, 1) + 0.1, 0.0) if status == 'exact' else ('none', 0.0, 0.0)


def log_said(p, eta, trial):
    """The logarithm of the probability, or density, of one report for each requirement."""
    x, grade, status, lower, upper = trial
    firm = p['beta'] * (x - eta)
    if grade == 1:
        log = log_expit(p['c2'] - firm)
    elif grade == 4:
        log = log_expit(firm - p['c4'])
    else:
        c, above = (p['c2'], 0.0) if grade == 2 else (0.0, p['c4'])
        # expit(a) - expit(b) = expit(a) expit(-b) (1 - exp(b - a))
        log = log_expit(firm - c) + log_expit(above - firm) + np.log(-np.expm1(c - above))
    mean = p['d0'] + p['d1'] * (x - eta)
    deviations = lambda minutes: (np.log(minutes) - mean) / p['tau']
    if status == 'exact':
        log = log - deviations(lower) ** 2 / 2
    elif status == 'right':
        log = log + log_ndtr(-deviations(lower))
    elif status == 'interval':
        high = deviations(upper)
        low = deviations(lower) if lower > 0 else np.full_like(high, -np.inf)
        # On the side where neither tail is near 1.
        mirrored = low + high > 0
        a = np.where(mirrored, -low, high)
        b = np.where(mirrored, -high, low)
        log = log + log_ndtr(a) + np.log(-np.expm1(log_ndtr(b) - log_ndtr(a)))
    return log


def foreseen(p, eta, density, x):
    firm = p['beta'] * (x - eta)
    useful = expit(firm)
    mean = p['d0'] + p['d1'] * (x - eta)
    functions = ([expit(firm - p['c2']), useful, expit(firm - p['c4'])]
                 + [useful * ndtr((mean - np.log(limit)) / p['tau']) for limit in LIMITS])
    averages = []
    for each in (1, 2):
        total = simpson(density[::each], x=Z[::each])
        averages.append([simpson((f * density)[::each], x=Z[::each]) / total for f in functions])
    worst['points'] = max(worst['points'], np.max(np.abs(np.subtract(*averages))))
    worst['end'] = max(worst['end'], density[0], density[-1])
    return averages[0]


def say(*words):
    print(' '.join(w if isinstance(w, str) else f'{w:.17g}' for w in words))


def main():
    rng = np.random.default_rng(SEED)
    print(f'# predictive.py, seed {SEED} - Python {sys.version.split()[0]} - '
          f'NumPy {np.__version__} - SciPy {scipy.__version__}')
    for _ in range(POPULATIONS):
        p = drawn_population(rng)
        say('population', *(float(p[name]) for name in
                            ('mu', 'omega', 'beta', 'c2', 'c4', 'd0', 'd1', 'tau')),
            *(word for group in GROUPS for word in (group, float(p['gamma'][group]))))
        for _ in range(COURSES):
            group = GROUPS[rng.integers(len(GROUPS))]
            say('course', group)
            eta = p['mu'] + p['gamma'][group] + p['omega'] * Z
            log = -Z * Z / 2
            for trial in drawn_course(rng, p, group, rng.choice([1, 2, 4, 8, 8, 12, 30])):
                density = np.exp(log - log.max())
                say('trial', float(trial[0]), str(trial[1]), trial[2], float(trial[3]),
                    float(trial[4]), *map(float, foreseen(p, eta, density, trial[0])))
                log = log + log_said(p, eta, trial)
    print(f'# half as many points change a probability by at most {worst["points"]:.1e}; '
          f'at an end is left {worst["end"]:.1e} of the top')


if __name__ == '__main__':
    main()

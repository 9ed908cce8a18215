"""Generated histories for the checks of the fit, in the format of a history file.

Every course is drawn from the response model: a requirement normal about the mean of its group,
grades by a cumulative logit, log-normal minutes at grades 3 and 4. Nobody in them is real.

    python3 fit_data.py            writes fit/NAME.csv.gz and prints what was written
    python3 fit_data.py --courses 5000 --each 8 > big.csv     one set of any size, not kept

Sets: n60, n300, n1000, n5000 of mixed courses (3 to 10 injections; n60 has two groups of the
same size, so that the tie for the reference group is met); n250 and n1000x6 for the posterior;
grades (no durations) and durations (grades 3 and 4 alone, minutes exact) for programs that know
one half of the model. A packed file holds no time and no name: the same seed, the same bytes.
"""
import argparse
import gzip
import io
import os
import sys
import numpy as np
import scipy
from scipy.special import expit

SEED = 20261127
HEADER = ('patient,group,injection,volume_ml,potency,strength,grade,duration_min,'
          'duration_status,duration_upper_min')
TRUTH = dict(mu=0.75, omega=0.8, beta=2.2, c2=-1.6, c4=1.9, d0=np.log(45.0), d1=0.55, tau=0.5)
GAMMA = dict(vasculogenic=0.0, neurogenic=-0.7, psychogenic=-0.45, mixed=0.15, diabetic=0.3,
             post_prostatectomy=-0.2, unknown=-0.3)
STRENGTHS = (1, 1, 1, 0.5, 0.8, 1.25, 2)
STEP, LOWEST, HIGHEST = 0.05, 0.05, 0.5


def plain(number, decimals):
    text = f'{number:.{decimals}f}'
    return text.rstrip('0').rstrip('.') if '.' in text else text


def drawn_minutes(rng, minutes, kind):
    """What a report says of these minutes: (minutes, status, upper) as text."""
    if kind == 'exact':
        return plain(max(minutes, 0.1), 1), 'exact', ''
    if kind == 'right':
        # Last seen at a fixed time; at 0 the report says nothing.
        seen = rng.choice([0, 15, 30, 60, 120])
        if minutes > seen:
            return plain(seen, 0), 'right', ''
        return plain(max(minutes, 0.1), 1), 'exact', ''
    if kind == 'interval':
        width = rng.choice([1, 5, 15, 30, 60])
        lower = np.floor(minutes / width) * width
        return plain(lower, 0), 'interval', plain(lower + width, 0)
    return '', 'none', ''


def next_volume(volume, grade, minutes):
    """The plain stepwise rule, without its stop: a yardstick, not a protocol."""
    if grade >= 3 and minutes >= 120:
        return max(volume - STEP, LOWEST)
    if grade <= 2:
        return min(volume + STEP, HIGHEST)
    return volume


def course(rng, number, group, count, statuses, only_useful=False):
    p = TRUTH
    eta = p['mu'] + GAMMA[group] + p['omega'] * rng.standard_normal()
    strength = STRENGTHS[rng.integers(len(STRENGTHS))]
    stepwise = rng.uniform() < 0.6
    volume = LOWEST if group == 'neurogenic' else 0.1
    rows = []
    while len(rows) < count:
        if not stepwise:
            volume = STEP * rng.integers(1, 11)
        potency = rng.integers(850, 1101) / 1000
        x = np.log(volume * potency * strength / 0.1)
        u = rng.uniform()
        grade = 1 + sum(u < expit(p['beta'] * (x - eta) - c) for c in (p['c2'], 0.0, p['c4']))
        minutes = np.exp(p['d0'] + p['d1'] * (x - eta) + p['tau'] * rng.standard_normal())
        kind = statuses[rng.integers(len(statuses))]
        if only_useful and grade < 3:
            grade = 3
        if grade < 3:
            # A duration below grade 3 is in the file and not in the model.
            minutes = rng.integers(1, 60)
            kind = kind if kind in ('exact', 'none') else 'none'
        told = 0 if grade == 1 and rng.uniform() < 0.4 else grade
        lasted, status, upper = (
            (plain(max(minutes, 0.01), 4), 'exact', '') if only_useful
            else drawn_minutes(rng, minutes, kind))
        rows.append(','.join([f'P{number}', group, str(len(rows) + 1), plain(volume, 2),
                              plain(potency, 3), plain(strength, 2), str(told), lasted, status,
                              upper]))
        volume = next_volume(volume, grade, minutes)
    return rows


def data_set(seed, groups, fewest, most, statuses, only_useful=False):
    """groups: name to count of courses; the courses of the groups are mixed."""
    rng = np.random.default_rng([SEED, seed])
    order = [name for name, count in groups.items() for _ in range(count)]
    rng.shuffle(order)
    lines = [HEADER]
    for number, group in enumerate(order, start=1):
        count = rng.integers(fewest, most + 1)
        lines += course(rng, number, group, count, statuses, only_useful)
    return '\n'.join(lines) + '\n'


def pack(path, text):
    packed = io.BytesIO()
    with gzip.GzipFile(filename='', mode='wb', fileobj=packed, compresslevel=9, mtime=0) as out:
        out.write(text.encode())
    with open(path, 'wb') as file:
        file.write(packed.getvalue())
    return len(packed.getvalue())


MIXED = ('exact', 'exact', 'exact', 'right', 'interval', 'interval', 'none')
SETS = [
    ('n60', 1, dict(vasculogenic=30, neurogenic=30), 3, 10, MIXED, False),
    ('n300', 2, dict(vasculogenic=160, neurogenic=70, psychogenic=50, mixed=20), 3, 10, MIXED,
     False),
    ('n1000', 3, dict(diabetic=550, post_prostatectomy=450), 3, 10, MIXED, False),
    ('n5000', 4, dict(vasculogenic=2600, psychogenic=1100, neurogenic=800, unknown=500), 3, 10,
     MIXED, False),
    ('n250', 5, dict(vasculogenic=150, neurogenic=100), 3, 10, MIXED, False),
    ('n1000x6', 6, dict(vasculogenic=600, neurogenic=400), 6, 6, MIXED, False),
    ('grades', 7, dict(vasculogenic=220, neurogenic=100, mixed=80), 3, 10, ('none',), False),
    ('durations', 8, dict(vasculogenic=300), 3, 10, ('exact',), True),
]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument('--courses', type=int)
    parser.add_argument('--each', type=int, default=8)
    given = parser.parse_args()
    if given.courses:
        share = dict(vasculogenic=0.5, psychogenic=0.2, neurogenic=0.2, mixed=0.1)
        groups = {name: round(part * given.courses) for name, part in share.items()}
        sys.stdout.write(data_set(9, groups, given.each, given.each, MIXED))
        return
    folder = os.path.join(os.path.dirname(os.path.abspath(__file__)), 'fit')
    os.makedirs(folder, exist_ok=True)
    print('# fit_data.py, seed', SEED, '- Python', sys.version.split()[0], '- NumPy',
          np.__version__, '- SciPy', scipy.__version__)
    print('# truth', ' '.join(f'{name}={float(value)!r}' for name, value in TRUTH.items()))
    print('# gamma', ' '.join(f'{name}={value}' for name, value in GAMMA.items()))
    print('set courses injections bytes')
    for name, seed, groups, fewest, most, statuses, only_useful in SETS:
        text = data_set(seed, groups, fewest, most, statuses, only_useful)
        size = pack(os.path.join(folder, name + '.csv.gz'), text)
        print(name, sum(groups.values()), text.count('\n') - 1, size)


if __name__ == '__main__':
    main()

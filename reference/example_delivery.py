"""What `./rungwise forecast example.csv --population example-population.json --delivery u100-0.5
--lost 0.15 --volumes 0.05,0.2,0.35 --json` must print, by sums of another rule than the program's:
the forecast is tabulated over the logarithm of the dose by the dense sums of forecasts.py, and
Simpson's rule with 21 points runs over each of the four parts of the delivery.
    python3 example_delivery.py > example-delivery.txt
Lines: patient volume p p60 p120 p240, averaged over what may be delivered.

The parts, each uniform and independent: reading, plus or minus half a 0.01 mL line; barrel, plus or
minus 1.5 % of capacity and 2 % of the volume below half the capacity, 5 % of the volume from there
(ISO 7886-1, from memory); label, plus or minus 10 % (USP <797>); lost, from 0 to 15 %.
"""
import csv
import json
import os
import numpy as np
import scipy
from scipy.integrate import simpson
from scipy.interpolate import CubicSpline
import forecasts as f
from example import value

HERE = os.path.dirname(os.path.abspath(__file__))
CAPACITY, LINE, LABEL, LOST = 0.5, 0.01, 0.10, 0.15
POINTS = 21


def barrel(volume):
    return 0.015 * CAPACITY + 0.02 * volume if 2 * volume < CAPACITY else 0.05 * volume


def average(table, volume):
    unit = np.linspace(-1, 1, POINTS)
    w = simpson(np.eye(POINTS), x=unit, axis=1) / 2
    r, b, l, q = np.meshgrid(unit, unit, unit, unit, indexing='ij')
    weight = np.einsum('i,j,k,m->ijkm', w, w, w, w)
    drawn = volume + LINE / 2 * r + barrel(volume) * b
    x = np.log(drawn * (1 + LABEL * l) * (1 - LOST * (1 + q) / 2) / 0.1)
    return [float((weight * spline(x)).sum()) for spline in table]


def main():
    document = json.load(open(os.path.join(HERE, 'example-population.json')))
    p = {k: value(v) for k, v in document['parameters'].items() if k != 'gamma'}
    gamma = {k: value(v) for k, v in document['parameters']['gamma'].items()}
    men = {}
    for row in csv.DictReader(open(os.path.join(HERE, 'example.csv'))):
        men.setdefault(row['patient'], []).append(row)
    print('# example_delivery.py, NumPy', np.__version__, 'SciPy', scipy.__version__)
    grid = np.linspace(np.log(0.25), np.log(6), 3001)
    for name, rows in men.items():
        mean = p['mu'] + gamma.get(rows[0]['group'], 0.0)
        trials = [(np.log(float(r['volume_ml']) * float(r['potency']) * float(r['strength']) / 0.1),
                   int(r['grade']), r['duration_status'], float(r['duration_min'] or 0),
                   float(r['duration_upper_min'] or 0)) for r in rows]
        density = lambda e: f.log_normal(e, mean, p['omega']) + f.log_trials(p, trials, e)
        lo, hi = f.stretch(density)
        eta = np.linspace(lo, hi, 4001)
        v = density(eta)
        d = np.exp(v - v.max())
        d = d / simpson(d, x=eta)
        rows = np.array([[simpson(d * g, x=eta) for g in f.probabilities(p, x, eta)] for x in grid])
        table = [CubicSpline(grid, rows[:, k]) for k in range(4)]
        for volume in (0.05, 0.2, 0.35):
            f.show(name, volume, *average(table, volume))


if __name__ == '__main__':
    main()

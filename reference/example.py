"""What `./rungwise forecast example.csv --population example-population.json --json` must print,
by the dense sums of forecasts.py:  python3 example.py > example-forecast.txt
Lines: patient mean sd / patient volume p p60 p120 p240.
"""
import csv
import json
import os
import numpy as np
import scipy
from scipy.integrate import simpson
import forecasts as f

HERE = os.path.dirname(os.path.abspath(__file__))


def value(v):
    return v['estimate'] if isinstance(v, dict) else v


def main():
    document = json.load(open(os.path.join(HERE, 'example-population.json')))
    p = {k: value(v) for k, v in document['parameters'].items() if k != 'gamma'}
    gamma = {k: value(v) for k, v in document['parameters']['gamma'].items()}
    men = {}
    for row in csv.DictReader(open(os.path.join(HERE, 'example.csv'))):
        men.setdefault(row['patient'], []).append(row)
    print('# example.py, NumPy', np.__version__, 'SciPy', scipy.__version__)
    for name, rows in men.items():
        mean = p['mu'] + gamma.get(rows[0]['group'], 0.0)
        trials = [(np.log(float(r['volume_ml']) * float(r['potency']) * float(r['strength']) / 0.1),
                   int(r['grade']), r['duration_status'], float(r['duration_min'] or 0),
                   float(r['duration_upper_min'] or 0)) for r in rows]
        density = lambda e: f.log_normal(e, mean, p['omega']) + f.log_trials(p, trials, e)
        lo, hi = f.stretch(density)
        eta = np.linspace(lo, hi, 40001)
        v = density(eta)
        d = np.exp(v - v.max())
        d = d / simpson(d, x=eta)
        m = simpson(d * eta, x=eta)
        f.show(name, m, np.sqrt(simpson(d * (eta - m) ** 2, x=eta)))
        for i in range(1, 11):
            volume = 50 * i / 1000
            f.show(name, volume, *[simpson(d * g, x=eta) for g in
                                   f.probabilities(p, np.log(volume / 0.1), eta)])


if __name__ == '__main__':
    main()

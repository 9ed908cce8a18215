#!/usr/bin/env python3
"""Loss of strength by another road than closed forms: rates as roots of integrated equations,
the Arrhenius line by regression, the mean kinetic temperature as a root, sequences of warmth by
integration. Each line: what, its inputs, the answer.

    python3 vial_strength.py > vial_strength.txt
"""
import random
import sys

import numpy
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.stats import linregress

R = 8.314
STEEP = 10000.0


def integrated(rate, order, time):
    """What is left of 1 after a time, by integration."""
    slope = (lambda t, c: -rate * c) if order == 'FIRST' else (lambda t, c: [-rate])
    return solve_ivp(slope, (0, time), [1.0], method='DOP853', rtol=1e-13, atol=1e-15).y[0][-1]


def rate_of(order, left, time):
    return brentq(lambda k: integrated(k, order, time) - left, 1e-9, 10 / time, xtol=1e-16,
                  rtol=1e-14)


def show(what, *figures):
    print(what, *(f if isinstance(f, str) else repr(float(f)) for f in figures))


def main():
    draw = random.Random(19)
    print(f'# Python {sys.version.split()[0]}, NumPy {numpy.__version__}, SciPy '
          f'{scipy.__version__}, seed 19')
    for order in ('FIRST', 'ZERO'):
        for _ in range(20):
            left, time = draw.uniform(0.3, 0.995), draw.uniform(1, 200)
            rate = rate_of(order, left, time)
            show('rate', order, left, time, rate)
            ninety = brentq(lambda t: integrated(rate, order, t) - 0.9, 0.01, 4000, xtol=1e-13,
                            rtol=1e-14)
            show('ninety', order, rate, ninety)
            half = time / 2
            show('left', order, rate, half, integrated(rate, order, half))
    for _ in range(20):
        cold, warm = draw.uniform(2, 8), draw.uniform(20, 30)
        slow, fast = draw.uniform(1e-4, 2e-3), draw.uniform(5e-3, 5e-2)
        line = linregress([1 / (cold + 273.15), 1 / (warm + 273.15)], numpy.log([slow, fast]))
        energy = -line.slope * R / 1000
        between = draw.uniform(cold, warm)
        at = numpy.exp(line.intercept + line.slope / (between + 273.15))
        show('line', cold, slow, warm, fast, energy, between, at)
        inside = numpy.array([draw.uniform(2, 30) for _ in range(7)])
        mean = numpy.mean(numpy.exp(-STEEP / (inside + 273.15)))
        kinetic = brentq(lambda c: numpy.exp(-STEEP / (c + 273.15)) / mean - 1, 0, 40, xtol=1e-13,
                         rtol=1e-14)
        show('kinetic', kinetic, *inside)
    print('# after cold days and warm days of the measured solution, from 2 to 25 degrees')
    slow, fast = rate_of('FIRST', 0.88, 133), rate_of('FIRST', 0.864, 5)
    for _ in range(20):
        cold, warm = draw.uniform(1, 60), draw.uniform(0, 2.5)
        show('sequence', cold, warm, integrated(slow, 'FIRST', cold) * integrated(fast, 'FIRST', warm))


main()

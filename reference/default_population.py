"""The population that is shipped for alprostadil alone, calibrated to published summaries.

Every figure below is in a published text that docs/sources.md or the model card names; none is a
record of a person. Titration is read as one injection at each step, upwards, until the first
usable response. Probabilities are exact sums over the requirement, not simulations.

    python3 default_population.py > default-population.txt

writes the report to standard output and the two population files into the folder of the product.
"""
import json
import os
import sys
import numpy as np
import scipy
from scipy.optimize import least_squares
from scipy.special import expit, ndtr

HERE = os.path.dirname(os.path.abspath(__file__))
TARGET = os.path.join(HERE, '..', 'files', 'src', 'main', 'resources', 'rungwise', 'files',
                      'populations')
REFERENCE_MCG = 2.0                      # 0.1 mL of 20 mcg/mL
STEPS = [2.5, 5, 10, 15, 20, 30, 40, 50, 60]
GROUPS = ['vasculogenic', 'spinal_cord', 'psychogenic', 'mixed']
# Assumed, because no text gives the composition of the European series.
SHARES = {'vasculogenic': 0.45, 'spinal_cord': 0.10, 'psychogenic': 0.20, 'mixed': 0.25}
# The steepness too: read as below, no steepness between 1 and 4 gives the 87 to 88 % of
# satisfactory injections that two series print, because there doses were changed at home.
ASSUMED = {'beta': 3.0, 'c2': -1.5, 'c4': 1.5, 'd1': 0.5, 'tau': 0.45}
Z, W = np.polynomial.hermite_e.hermegauss(120)
W = W / W.sum()


def useful(p, mcg, eta):
    return expit(p['beta'] * (np.log(mcg / REFERENCE_MCG) - eta))


def eta_of(p, group):
    return p['mu'] + p['gamma'].get(group, 0.0) + p['omega'] * Z


def first_success(p, steps, eta):
    """P(first usable response at step k) for each requirement: steps x requirements."""
    left = np.ones_like(eta)
    rows = []
    for mcg in steps:
        now = useful(p, mcg, eta)
        rows.append(left * now)
        left = left * (1 - now)
    return np.array(rows)


def mean_over_groups(f):
    return sum(share * f(group) for group, share in SHARES.items())


def titrated(p, group, steps, most=None):
    rows = first_success(p, steps, eta_of(p, group))
    keep = [i for i, mcg in enumerate(steps) if most is None or mcg <= most]
    return float((rows[keep].sum(axis=0) * W).sum())


def at_home(p, group):
    """For men who found a dose: share of injections usable, mean minutes of those, tails."""
    eta = eta_of(p, group)
    rows = first_success(p, STEPS, eta) * W
    found = rows.sum()
    use = minutes = 0.0
    tails = {240: 0.0, 360: 0.0}
    for row, mcg in zip(rows, STEPS):
        x = np.log(mcg / REFERENCE_MCG)
        ok = useful(p, mcg, eta)
        mean = p['d0'] + p['d1'] * (x - eta)
        use += (row * ok).sum()
        minutes += (row * ok * np.exp(mean + p['tau'] ** 2 / 2)).sum()
        for t in tails:
            tails[t] += (row * ok * ndtr((mean - np.log(t)) / p['tau'])).sum()
    return found, use, minutes, tails


def home(p):
    found = mean_over_groups(lambda g: at_home(p, g)[0])
    use = mean_over_groups(lambda g: at_home(p, g)[1])
    minutes = mean_over_groups(lambda g: at_home(p, g)[2])
    tails = {t: mean_over_groups(lambda g: at_home(p, g)[3][t]) for t in (240, 360)}
    return use / found, minutes / use, {t: v / found for t, v in tails.items()}


def per_man(p, t, injections):
    """Share of men with at least one erection of t minutes in that many home injections."""
    total = found = 0.0
    for group, share in SHARES.items():
        eta = eta_of(p, group)
        rows = first_success(p, STEPS, eta) * W
        for row, mcg in zip(rows, STEPS):
            x = np.log(mcg / REFERENCE_MCG)
            mean = p['d0'] + p['d1'] * (x - eta)
            one = useful(p, mcg, eta) * ndtr((mean - np.log(t)) / p['tau'])
            total += share * (row * (1 - (1 - one) ** injections)).sum()
            found += share * row.sum()
    return total / found


def unpack(v):
    return dict(mu=v[0], gamma=dict(zip(GROUPS[1:], v[1:4])), omega=np.exp(v[4]),
                d0=v[5], **ASSUMED)


def wilson(k, n):
    z = 1.959963984540054
    p = k / n
    centre = (p + z * z / (2 * n)) / (1 + z * z / n)
    half = z / (1 + z * z / n) * np.sqrt(p * (1 - p) / n + z * z / (4 * n * n))
    return 100 * (centre - half), 100 * (centre + half)


# what, model, published, standard error; subgroup sizes are not published: 50 of 201 assumed
TARGETS = [
    ('minimal effective dose <= 2 mcg, vasculogenic, % (Linet 1996)',
     lambda p: 100 * titrated(p, 'vasculogenic', [2]), 20, 5.7),
    ('minimal effective dose <= 2 mcg, spinal cord, % (Linet 1996)',
     lambda p: 100 * titrated(p, 'spinal_cord', [2]), 23, 6.0),
    ('minimal effective dose <= 2 mcg, psychogenic, % (Linet 1996)',
     lambda p: 100 * titrated(p, 'psychogenic', [2]), 38, 6.9),
    ('minimal effective dose <= 2 mcg, mixed, % (Linet 1996)',
     lambda p: 100 * titrated(p, 'mixed', [2]), 23, 6.0),
    ('home dose found, % of 848 (European 1998)',
     lambda p: 100 * mean_over_groups(lambda g: titrated(p, g, STEPS)), 93, 0.9),
    ('of these at 20 mcg or less, % (European 1998)',
     lambda p: 100 * mean_over_groups(lambda g: titrated(p, g, STEPS, 20))
     / mean_over_groups(lambda g: titrated(p, g, STEPS)), 86, 1.2),
    ('mean minutes of an erection at home (US label, Study 1)',
     lambda p: home(p)[1], 70.8, 5.0),
]


def level_mean(p, group, steps):
    rows = first_success(p, steps, eta_of(p, group)) * W
    return float((rows.sum(axis=1) * np.array(steps)).sum() / rows.sum())


def median_dose(p, group):
    rows = (first_success(p, STEPS, eta_of(p, group)) * W).sum(axis=1)
    below = np.cumsum(rows) / rows.sum()
    return STEPS[int(np.searchsorted(below, 0.5))]


SCI = [1.25, 2.5, 5, 10, 15, 20, 25, 30, 35, 40]
KOREAN_SCI = [2.5, 5, 10, 15, 20, 25, 30, 35, 40]
TEN_TWENTY = [10, 20]

# what, model, published, low, high, how the range was made
HELD_OUT = [
    ('diabetic: titrated, % (2001, 316/336)', lambda p: 100 * titrated(p, 'vasculogenic', STEPS),
     94.0, *wilson(316, 336), 'Wilson'),
    ('diabetic: median dose, mcg (2001)', lambda p: median_dose(p, 'vasculogenic'),
     20, 15, 25, 'tolerance of the reference row'),
    ('diabetic: satisfactory injections, % (2001)',
     lambda p: 100 * at_home(p, 'vasculogenic')[1] / at_home(p, 'vasculogenic')[0],
     99, 97, 100, 'plus or minus 2, no count printed'),
    ('10 then 20 mcg, psychogenic, % (1999, 59/60)',
     lambda p: 100 * titrated(p, 'psychogenic', TEN_TWENTY), 98.3, *wilson(59, 60), 'Wilson'),
    ('10 then 20 mcg, vascular, % (1999, 38/45)',
     lambda p: 100 * titrated(p, 'vasculogenic', TEN_TWENTY), 84.4, *wilson(38, 45), 'Wilson'),
    ('10 then 20 mcg, diabetic, % (1999, 37/42)',
     lambda p: 100 * titrated(p, 'vasculogenic', TEN_TWENTY), 88.1, *wilson(37, 42), 'Wilson'),
    ('10 then 20 mcg, neurogenic, % (1999, 13/14)',
     lambda p: 100 * titrated(p, 'spinal_cord', TEN_TWENTY), 92.9, *wilson(13, 14), 'Wilson'),
    ('10 then 20 mcg, undetermined, % (1999, 16/20)',
     lambda p: 100 * titrated(p, 'mixed', TEN_TWENTY), 80.0, *wilson(16, 20), 'Wilson'),
    ('10 then 20 mcg, all, % (1999, 163/181)',
     lambda p: 100 * mean_over_groups(lambda g: titrated(p, g, TEN_TWENTY)),
     90.1, *wilson(163, 181), 'Wilson'),
    ('spinal cord: response up to 40 mcg, % (1999, 30/33)',
     lambda p: 100 * titrated(p, 'spinal_cord', KOREAN_SCI), 90.9, *wilson(30, 33), 'Wilson'),
    ('spinal cord: response to alprostadil, % (meta-analysis 2016)',
     lambda p: 100 * titrated(p, 'spinal_cord', SCI), 80, 64, 90, 'published interval'),
    ('spinal cord, cervical: mean dose, mcg (1999, 12 men)',
     lambda p: level_mean(p, 'spinal_cord', KOREAN_SCI), 5.8, 4.1, 7.5, '30 % of the row'),
    ('spinal cord, thoracic: mean dose, mcg (1999, 12 men)',
     lambda p: level_mean(p, 'spinal_cord', KOREAN_SCI), 13.1, 9.2, 17.0, '30 % of the row'),
    ('spinal cord, lumbar: mean dose, mcg (1999, 6 men)',
     lambda p: level_mean(p, 'spinal_cord', KOREAN_SCI), 33.3, 23.3, 43.3, '30 % of the row'),
    ('spinal cord, all levels: mean dose, mcg (1999, 30 men)',
     lambda p: level_mean(p, 'spinal_cord', KOREAN_SCI), 14.22, 9.95, 18.5, '30 % of the row'),
    ('spinal cord: mean dose, mcg (1994, 14 men, steps of 2.5)',
     lambda p: level_mean(p, 'spinal_cord', list(np.arange(2.5, 61, 2.5))), 6.2, 4.2, 8.2,
     'tolerance of the reference row'),
    ('responders at 2.5 to 10 mcg, % (US label, Study 1, 117/153)',
     lambda p: 100 * mean_over_groups(lambda g: titrated(p, g, [2.5, 5, 7.5, 10])),
     76.5, *wilson(117, 153), 'Wilson; the study went on to higher doses'),
    ('satisfactory injections at home, % (US label, Study 1)',
     lambda p: 100 * home(p)[0], 73, 70, 76, 'tolerance of the reference row'),
    ('satisfactory injections at home, % (European 1998)',
     lambda p: 100 * home(p)[0], 88, 86, 90, 'tolerance of the reference row'),
    ('satisfactory injections at home, % (Linet 1996)',
     lambda p: 100 * home(p)[0], 87, 85, 89, 'plus or minus 2'),
    ('single 20 mcg, no nerve disease, % (UK text: more than 80)',
     lambda p: 100 * (0.5 * titrated(p, 'vasculogenic', [20])
                      + 0.22 * titrated(p, 'psychogenic', [20])
                      + 0.28 * titrated(p, 'mixed', [20])), 80, 80, 100, 'printed as a bound'),
    ('single 30 mcg, adequate, % (Bechara 1997, 30/60)',
     lambda p: 100 * mean_over_groups(lambda g: titrated(p, g, [30])),
     50, *wilson(30, 60), 'Wilson; men who had failed before are likely'),
    ('men with 4 h or more in 6 months, % (Linet 1996, 34/683)',
     lambda p: 100 * per_man(p, 240, 20), 5.0, *wilson(34, 683), 'Wilson; 20 injections a man assumed'),
    ('men with 6 h or more in 6 months, % (Linet 1996, 7/683)',
     lambda p: 100 * per_man(p, 360, 20), 1.0, *wilson(7, 683), 'Wilson; 20 injections a man assumed'),
    ('men with 4 h or more, % (European 1998, 68/848)',
     lambda p: 100 * per_man(p, 240, 20), 8.0, *wilson(68, 848), 'Wilson; 20 injections a man assumed'),
    ('men with priapism, % (European 1998, 8/848)',
     lambda p: 100 * per_man(p, 360, 20), 0.9, *wilson(8, 848), 'Wilson; 20 injections a man assumed'),
    ('men with 4 to 6 h, % (US label, 74/1861)',
     lambda p: 100 * (per_man(p, 240, 20) - per_man(p, 360, 20)), 4.0, *wilson(74, 1861),
     'Wilson; 20 injections a man assumed'),
    ('minimal effective dose curve: P(D <= 5), % (derived row)',
     lambda p: 100 * mean_over_groups(lambda g: titrated(p, g, [2.5, 5])), 43.2, 40, 46,
     'indicative only'),
    ('minimal effective dose curve: P(D <= 10), % (derived row)',
     lambda p: 100 * mean_over_groups(lambda g: titrated(p, g, [2.5, 5, 10])), 63.1, 60, 66,
     'indicative only'),
]


def residuals(v):
    p = unpack(v)
    return [(model(p) - value) / se for _, model, value, se in TARGETS]


def rounded(number):
    return round(float(number), 4)


def main():
    start = np.array([1.0, 0.0, -0.5, 0.0, np.log(1.2), np.log(55.0)])
    fit = least_squares(residuals, start, xtol=1e-12, ftol=1e-12, gtol=1e-12)
    p = unpack(fit.x)
    covariance = np.linalg.inv(fit.jac.T @ fit.jac)
    se = np.sqrt(np.diag(covariance))
    print('default_population.py - Python', sys.version.split()[0], '- NumPy', np.__version__,
          '- SciPy', scipy.__version__, '- no random numbers')
    print('\nidentified by the summaries (estimate, standard error)')
    names = ['mu'] + ['gamma ' + g for g in GROUPS[1:]] + ['ln omega', 'd0']
    for name, value, error in zip(names, fit.x, se):
        print(f'  {name:20s} {value:9.4f} {error:8.4f}')
    print('assumed:', ASSUMED, 'shares', SHARES)
    print('singular values of the fit:', np.round(np.linalg.svd(fit.jac, compute_uv=False), 3))
    print('\n| calibrated to | published | model | in standard errors |\n|---|---|---|---|')
    for (name, model, value, error), r in zip(TARGETS, fit.fun):
        print(f'| {name} | {value} | {model(p):.1f} | {r:+.1f} |')
    print('\n| left out of the calibration | published | range | model | inside | range by |')
    print('|---|---|---|---|---|---|')
    inside = 0
    for name, model, value, low, high, how in HELD_OUT:
        m = model(p)
        hit = low <= m <= high
        inside += hit
        print(f'| {name} | {value} | {low:.1f} to {high:.1f} | {m:.1f} | {"yes" if hit else "NO"} | {how} |')
    print(f'\n{inside} of {len(HELD_OUT)} inside')
    write(p, se)


def write(p, se):
    estimate = lambda v, e: {'estimate': rounded(v), 'se': rounded(e)}
    lowest = min(list(p['gamma'].values()) + [0.0])
    gamma = {g: estimate(p['gamma'][g], se[i + 1]) for i, g in enumerate(GROUPS[1:])}
    gamma['post_prostatectomy'] = rounded(p['gamma']['spinal_cord'])
    gamma['unknown'] = rounded(lowest)
    alprostadil = {
        'name': 'alprostadil-published',
        'version': 1,
        'signed': False,
        'about': 'Calibrated to published summaries of alprostadil alone: docs/model-card.md.',
        'assumed': ['beta', 'c2', 'c4', 'd1', 'tau', 'gamma of post_prostatectomy', 'gamma of unknown',
                    'groups'],
        'reference_preparation': 'alprostadil-20',
        'reference_group': 'vasculogenic',
        'groups': dict(SHARES),
        'parameters': {
            'mu': estimate(p['mu'], se[0]), 'gamma': gamma,
            'omega': estimate(p['omega'], se[4] * p['omega']),
            'beta': p['beta'], 'c2': p['c2'], 'c4': p['c4'],
            'd0': estimate(p['d0'], se[5]), 'd1': p['d1'],
            'tau': p['tau']},
    }
    plain = {g: (v['estimate'] if isinstance(v, dict) else v) for g, v in gamma.items()}
    mixture = {
        'name': 'three-drug-assumed',
        'version': 1,
        'signed': False,
        'about': 'No published table says what a volume of a mixture does. Everything here is an'
                 ' assumption, and wide: docs/model-card.md.',
        'assumed': ['everything'],
        'reference_preparation': 'three-drug-30-1-10',
        'reference_group': 'vasculogenic',
        'groups': dict(SHARES),
        'parameters': {
            'mu': 0.5, 'gamma': plain, 'omega': 1.5, 'beta': rounded(p['beta']), 'c2': p['c2'],
            'c4': p['c4'], 'd0': rounded(p['d0']), 'd1': p['d1'], 'tau': 0.6},
    }
    os.makedirs(TARGET, exist_ok=True)
    for one in (alprostadil, mixture):
        with open(os.path.join(TARGET, one['name'] + '.json'), 'w') as out:
            json.dump(one, out, indent=2)
            out.write('\n')


if __name__ == '__main__':
    main()

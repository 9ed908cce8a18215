"""The two halves of the model by fit_scipy.py, held against R (fit_clmm.txt and fit_lme4.txt).

    python3 fit_halves.py > fit_halves.txt

Grades: the maximum of the grades alone against ordinal::clmm. Minutes: the log-likelihood at
lme4's estimates, where beta is all but 0 so that a grade says nothing of a requirement. Lines:
    grades NAME estimate se          as fit_scipy.txt, of SciPy
    # NAME misses R by ... in standard errors, its standard error by ... (relative)
"""
import os
import sys
import numpy as np
import scipy
from scipy.special import expit
from fit_scipy import FOLDER, NODES, Courses, Likelihood, fit, natural, slopes

HERE = os.path.dirname(os.path.abspath(__file__))
C4 = 1.5
BETA = 1e-12


def read(name):
    with open(os.path.join(HERE, name)) as file:
        words = [line.split() for line in file if not line.startswith('#')]
    return {(w[0], w[1]): [float(v) for v in w[2:]] for w in words}


def grades():
    r = read('fit_clmm.txt')
    courses = Courses(os.path.join(FOLDER, 'grades.csv.gz'))
    groups = len(courses.groups)
    _, theta, value, covariance, _ = fit(courses, NODES, free=slice(0, groups + 4))
    named = courses.names()[:groups + 4]
    print('grades logLik', repr(float(value)))
    error = np.sqrt(np.diag(covariance)) * abs(slopes(theta, groups)[:groups + 4])
    for name, estimate, se in zip(named, natural(theta, groups), error):
        print('grades', name, repr(float(estimate)), repr(float(se)))
    print('# logLik misses R by', f"{abs(value - r['grades', 'logLik'][0]):.1e}")
    for name, estimate, se in zip(named, natural(theta, groups), error):
        there, its = r['grades', name]
        print('#', name, 'misses R by', f'{abs(estimate - there) / se:.1e}',
              'of a standard error, its standard error by', f'{abs(se / its - 1):.1e}')


def minutes():
    r = read('fit_lme4.txt')
    courses = Courses(os.path.join(FOLDER, 'durations.csv.gz'))
    slope, intercept = r['durations', 'slope'][0], r['durations', 'intercept'][0]
    omega = r['durations', 'intercept_deviation'][0] / slope
    tau = r['durations', 'residual_deviation'][0]
    theta = np.array([0.0, np.log(omega), np.log(BETA), 0.0, np.log(C4), intercept, np.log(slope),
                      np.log(tau)])
    likelihood = Likelihood(courses, NODES)
    likelihood.place(theta)
    value, gradient = likelihood.value(theta)
    fours = (courses.grade == 4).sum()
    of_grades = fours * np.log(expit(-C4)) + (courses.rows - fours) * np.log(0.5 - expit(-C4))
    print('# minutes: logLik misses R by',
          f"{abs(value - of_grades - r['durations', 'logLik'][0]):.1e}",
          'and its largest derivative by omega, d0, d1, tau is',
          f'{abs(gradient[[1, 5, 6, 7]]).max():.1e}')


def main():
    print('# fit_halves.py, no seed - Python', sys.version.split()[0], '- NumPy', np.__version__,
          '- SciPy', scipy.__version__)
    grades()
    minutes()


if __name__ == '__main__':
    main()

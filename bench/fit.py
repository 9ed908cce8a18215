#!/usr/bin/env python3
"""The fit of the program against the same fit in SciPy, in one run on the same courses.

    bench/fit.py [--courses 5000] [--large 100000] [--rounds 3]

Writes invented courses of 8 injections (reference/fit_data.py), fits them in turns by
`rungwise fit --json` and by reference/fit_scipy.py with few nodes and one thread, and keeps the
figures in bench/results/fit-and-scipy.json: the seconds of each round inside each process, reading
and start-up left out, their ratio, and how far both answers are apart. Then it fits the large set,
packed, with one thread and with two, and keeps the whole time, that of the fit alone, and the peak
of memory as the kernel counts it.
"""
import argparse
import json
import os
import platform
import re
import statistics
import subprocess
import sys
import tempfile
import time

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
REFERENCE = os.path.join(ROOT, 'reference')
EACH = 8


def courses(folder, count, packed):
    path = os.path.join(folder, f'c{count}.csv')
    with open(path, 'w') as file:
        subprocess.run([sys.executable, os.path.join(REFERENCE, 'fit_data.py'), '--courses',
                        str(count), '--each', str(EACH)], stdout=file, check=True)
    if packed:
        subprocess.run(['gzip', '-n', path], check=True)
    return path + ('.gz' if packed else '')


def watched(command, **environment):
    """The output of a command, its seconds from outside, and its peak of memory in kB."""
    begun = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
                               env={**os.environ, **environment})
    out, err = process.stdout.read(), process.stderr.read()
    _, status, used = os.wait4(process.pid, 0)
    if status != 0:
        sys.exit(f'{" ".join(command)}\n{err}')
    return out, err, time.perf_counter() - begun, used


def rungwise(path, *options):
    out, err, seconds, used = watched([os.path.join(ROOT, 'rungwise'), 'fit', path, '--json',
                                     *options])
    answer = json.loads(out)
    answer['seconds'] = float(re.search(r'Fitted in ([0-9.]+) s', err).group(1))
    return answer, seconds, used


def scipy(path, nodes, stay):
    out, err, seconds, used = watched(
        [sys.executable, os.path.join(REFERENCE, 'fit_scipy.py'), '--nodes', str(nodes), '--stay',
         str(stay), path], OMP_NUM_THREADS='1', OPENBLAS_NUM_THREADS='1')
    answer = {}
    for line in out.splitlines():
        if not line.startswith('#'):
            _, name, *numbers = line.split()
            answer[name] = [float(number) for number in numbers]
    return answer, float(err.split(' s in the fit')[0]), seconds, used


def apart(ours, theirs):
    """The largest distance of an estimate, in standard errors, and of a standard error."""
    pairs = [(ours['parameters'][name], theirs[name]) for name in theirs if name != 'logLik']
    return dict(
        logLik=abs(ours['logLik'] - theirs['logLik'][0]),
        estimates_in_standard_errors=max(
            abs(one['estimate'] - other[0]) / other[1] for one, other in pairs),
        standard_errors_relative=max(abs(one['se'] / other[1] - 1) for one, other in pairs))


def small(path, rounds, nodes, stay):
    ours, theirs, processor, differences = [], [], [], None
    for _ in range(rounds):
        answer, _, used = rungwise(path)
        reference, inside, _, used_there = scipy(path, nodes, stay)
        ours.append(answer['seconds'])
        theirs.append(inside)
        processor.append([used.ru_utime + used.ru_stime, used_there.ru_utime + used_there.ru_stime])
        differences = apart(answer, reference)
        print(f'rungwise {ours[-1]:.3f} s, SciPy {theirs[-1]:.3f} s', file=sys.stderr)
    return dict(injections=answer['injections'], patients=answer['patients'],
                scipy_nodes=nodes, rungwise_seconds=ours, scipy_seconds=theirs,
                ratio_of_medians=statistics.median(theirs) / statistics.median(ours),
                processor_seconds_of_whole_processes=processor, apart=differences)


def large(path):
    figures = []
    for threads in ('1', '2'):
        answer, seconds, used = rungwise(path, '--threads', threads)
        figures.append(dict(threads=int(threads), patients=answer['patients'],
                            injections=answer['injections'], seconds_of_fit=answer['seconds'],
                            seconds_of_whole_process=seconds, peak_kilobytes=used.ru_maxrss))
        print(f'{threads} thread(s): {seconds:.2f} s, {used.ru_maxrss} kB', file=sys.stderr)
    return figures


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument('--courses', type=int, default=5000)
    parser.add_argument('--large', type=int, default=100_000)
    parser.add_argument('--rounds', type=int, default=3)
    parser.add_argument('--nodes', type=int, default=24)
    parser.add_argument('--stay', type=float, default=0.3)
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        path = courses(folder, given.courses, packed=False)
        rungwise(path)      # builds what is missing
        load = os.getloadavg()[0]
        figures = dict(
            machine=f'{os.cpu_count()} processors, {platform.machine()}, load {load:.1f} before',
            python=platform.python_version(),
            small=small(path, given.rounds, given.nodes, given.stay),
            large=large(courses(folder, given.large, packed=True)))
    with open(os.path.join(ROOT, 'bench', 'results', 'fit-and-scipy.json'), 'w') as file:
        json.dump(figures, file, indent=2)
        file.write('\n')
    print('The figures are in bench/results/fit-and-scipy.json.', file=sys.stderr)


if __name__ == '__main__':
    main()

#!/usr/bin/env python3
"""Writes data/cohort_rows.tsv: statistics of a cohort worked out by SciPy and statsmodels, for cohort_test.cpp.

Run by hand on Debian 12 (python3-scipy, python3-statsmodels); the tests only read the file.
"""
import itertools
import random
import sys

import numpy
import scipy
import statsmodels
from scipy.stats import fisher_exact, linregress, t
from statsmodels.stats.inter_rater import cohens_kappa
from statsmodels.stats.multitest import multipletests
from statsmodels.stats.proportion import proportion_confint

out = sys.stdout
draw = random.Random(20)
print(f"# made by make_cohort_rows.py with scipy {scipy.__version__}, statsmodels {statsmodels.__version__}, numpy {numpy.__version__}", file=out)

for count, of in [(0, 1), (1, 1), (0, 10), (3, 10), (10, 10), (15, 30), (29, 30), (1, 1000), (333, 1000), (123456, 1000000)]:
    low, high = proportion_confint(count, of, method="wilson")
    print("wilson", count, of, repr(float(low)), repr(float(high)), sep="\t", file=out)

tables = [(3, 1, 1, 3), (0, 5, 5, 0), (1, 9, 11, 3), (0, 0, 4, 5), (12, 5, 7, 2), (200, 800, 260, 740), (40000, 60000, 400500, 499500), (7, 993, 15, 98985)]
tables += [tuple(draw.randrange(0, 40) for _ in range(4)) for _ in range(40)]
for a, b, c, d in tables:
    print("fisher", a, b, c, d, repr(float(fisher_exact([[a, b], [c, d]])[1])), sep="\t", file=out)

for many in (1, 2, 5, 12):
    chances = [round(draw.random() ** 3, 6) for _ in range(many)]
    raised = multipletests(chances, method="holm")[1]
    print("holm", " ".join(map(repr, chances)), " ".join(repr(float(v)) for v in raised), sep="\t", file=out)

for size in (2, 3, 7, 7, 7):
    table = numpy.array([[draw.randrange(0, 30) if abs(i - j) < 3 else draw.randrange(0, 2) for j in range(size)] for i in range(size)])
    plain = cohens_kappa(table).kappa
    weighted = cohens_kappa(table, wt="quadratic").kappa
    cells = " ".join(f"{i},{j},{table[i][j]}" for i, j in itertools.product(range(size), range(size)) if table[i][j])
    print("kappa", cells, repr(float(plain)), repr(float(weighted)), sep="\t", file=out)

for many in (10, 25, 300):
    places = sorted(draw.sample(range(1, 10 * many), many))
    rows = []
    for place in places:
        low = draw.randrange(0, 5)
        rows.append((place, draw.randrange(0, 7), low, low + draw.randrange(0, 2)))
    x = [r[0] for r in rows]
    y = [r[1] - (r[2] + r[3]) / 2 for r in rows]
    fit = linregress(x, y)
    length = x[-1] - x[0]
    reach = t.ppf(0.975, many - 2) * fit.stderr * length
    change = fit.slope * length
    cells = " ".join(",".join(map(str, r)) for r in rows)
    print("drift", cells, repr(float(change)), repr(float(change - reach)), repr(float(change + reach)), sep="\t", file=out)

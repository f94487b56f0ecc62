# usage: OPENBLAS_NUM_THREADS=1 /usr/bin/python3 reml_check.py <path to checks/reference>  (numpy 1.24.2, scipy 1.10.1)
# Restricted (and plain) maximum likelihood of log zinc, spherical, from dense matrices and Nelder-Mead of scipy: the values in
# fit-likelihood.test.ts. Prints nugget, partial sill, range, log likelihood.
import csv, sys
import numpy as np
from scipy.linalg import cholesky, solve_triangular
from scipy.optimize import minimize

rows = list(csv.DictReader(open(sys.argv[1] + '/meuse.csv')))
x, y, z = (np.array([float(r[k]) for r in rows]) for k in ('x', 'y', 'zinc'))
z = np.log(z)
h = np.hypot(x[:, None] - x, y[:, None] - y)
n = len(z)

def log_likelihood(p, reml):
    nugget, psill, a = p
    if min(p) <= 0: return -1e9
    k = psill * np.where(h < a, 1 - 1.5 * h / a + 0.5 * (h / a) ** 3, 0) + nugget * np.eye(n)
    low = cholesky(k, lower=True)
    w, v = solve_triangular(low, np.c_[np.ones(n), z], lower=True).T
    i = w @ w
    r = v - w * (w @ v) / i
    return -0.5 * (2 * np.log(np.diag(low)).sum() + (np.log(i) if reml else 0) + r @ r + (n - reml) * np.log(2 * np.pi))

def simplex(f, start):
    return minimize(f, start, method='Nelder-Mead', options=dict(xatol=1e-10, fatol=1e-12, maxiter=4000, maxfev=8000))

def held(a, reml):
    o = simplex(lambda p: -log_likelihood([p[0] * .05, p[1] * .6, a], reml), [1, 1])
    return [o.x[0] * .05, o.x[1] * .6, a, -o.fun]

def best(reml):  # the likelihood has several tops: look along the range first, then climb from the best look
    look = max((held(a, reml) for a in 300 * 1.05 ** np.arange(80)), key=lambda r: r[3])
    scale = np.array(look[:3])
    o = simplex(lambda p: -log_likelihood(p * scale, reml), [1, 1, 1])
    return [*(o.x * scale), -o.fun]

print(held(900, True))
print(best(True))
print(best(False))

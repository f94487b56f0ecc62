# usage: OPENBLAS_NUM_THREADS=1 /usr/bin/python3 kernels.py -> JSON: GFLOP/s of matrix product (2 n^3) and Cholesky factor (n^3/3) in numpy, processor time
import json, time
import numpy as np

rng = np.random.default_rng(1)

def best(f, flops):
    f()
    least = min(timed(f) for _ in range(5))
    return flops / least / 1e9

def timed(f):
    t = time.process_time()
    f()
    return time.process_time() - t

a = rng.random((1500, 1500))
out = {'product_1500': best(lambda: a @ a, 2 * 1500 ** 3)}
for n in (155, 500, 1000):
    k = rng.random((n, n))
    k = k @ k.T + n * np.eye(n)
    repeat = max(1, 2000 // n) ** 2
    out[f'cholesky_{n}'] = best(lambda: [np.linalg.cholesky(k) for _ in range(repeat)], repeat * n ** 3 / 3)
print(json.dumps(out))

"""The peer of `cargo xtask bench`: oil left behind tank, plates and mesh, in vectorised numpy.

The same formulas on the same inputs as the handbook's `remaining-oil`: log-normal feed, drag of a sphere by
way of the droplet's own Reynolds number, a mixed tank, laminar gaps in two halves, single-fibre capture.
Six panels of eight Gauss-Legendre nodes, parted at the kink of the plates; samples in blocks that stay in
cache. Prints the seconds of the best of some rounds and the mean share left.
"""

import sys
import time

import numpy as np

X, W = np.polynomial.legendre.leggauss(8)
G, DRAG, POWER, FLOOR = 9.80665, 0.15, 0.687, 0.44
BLOCK = 1024


def inputs(n):
    k = np.arange(1, n + 1, dtype=float)
    u = [np.mod(k * a, 1.0) for a in (0.6180339887, 0.7548776662, 0.8191725134, 0.8566748838, 0.8812714616, 0.8986537126)]
    return (30e-6 + 170e-6 * u[0], 1.5 + 1.5 * u[1], 820.0 + 100.0 * u[2], 0.5e-3 + 2.5e-3 * u[3], 0.1e-3 + 0.5e-3 * u[4], 0.1 + 0.3 * u[5])


def slowing(re):
    slow = DRAG * re**POWER
    q = 1.0 / (1.0 + slow)
    for _ in range(6):
        bend = slow * q**POWER
        q -= (q + bend * q - 1.0) / (1.0 + (1.0 + POWER) * bend)
    return np.minimum(np.minimum(1.0, np.sqrt(24.0 / (FLOOR * re))), q)


def drag(re, ln_re):
    bend = DRAG * np.exp(POWER * ln_re)
    floor = FLOOR / 24.0 * re
    low = 1.0 + bend >= floor
    return np.where(low, 1.0 + bend, floor), np.where(low, POWER * bend / (1.0 + bend), 1.0)


def left(d50, sg, rho_o, v_tank, v_pack, spread):
    rho_w, mu, temperature = 999.1, 1.138e-3, 288.15
    alpha, fibre, depth, face, stick, full = 0.03, 250e-6, 0.1, 3e-3, 0.5, 0.15
    s = np.log(sg)
    v50 = G * (rho_w - rho_o) * d50 * d50 / (18.0 * mu)
    ln_re = np.log(rho_w * v50 * d50 / mu)
    ku = -0.5 * np.log(alpha) - 0.75 + alpha - 0.25 * alpha * alpha
    u_in, edge = face / (1.0 - full), 1.0 / np.sqrt(alpha)
    met = 4.0 * alpha * stick * depth / (np.pi * fibre * (1.0 - alpha))
    brown = 2.6 * ((1.0 - alpha) / ku) ** (1.0 / 3.0) * (u_in * fibre * 3.0 * np.pi * mu / (1.380649e-23 * temperature)) ** (-2.0 / 3.0)

    def variable(y):
        x = ln_re + 3.0 * y
        return x + np.log(slowing(np.exp(x)))

    def at(v):
        stokes = np.sqrt(v / v50)
        size = stokes
        for _ in range(6):
            r = np.exp(ln_re) * v / v50 * size
            c, slope = drag(r, np.log(r))
            nxt = stokes * np.sqrt(c)
            size = size + (nxt - size) / (1.0 - 0.5 * slope * nxt / size)
        return np.log(size)

    def passes(x):
        c, slope = drag(np.exp(x), x)
        y = (x + np.log(c) - ln_re) / 3.0
        size = np.exp(y)
        v, d = v50 * size * size / c, d50 * size
        tank = np.exp(-v / v_tank)
        r = v / v_pack
        pack = 1.0 - ((1.0 + spread) / 2.0 * np.minimum(1.0, r / (1.0 + spread)) + (1.0 - spread) / 2.0 * np.minimum(1.0, r / (1.0 - spread)))
        m = 1.0 + d / fibre
        touched = np.where(m < edge, m / (2.0 * ku) * (2.0 * np.log(m) - 1.0 + alpha + (1.0 - alpha / 2.0) / (m * m) - alpha / 2.0 * m * m), edge)
        mesh = np.exp(-met * (touched + v / u_in + brown * d ** (-2.0 / 3.0)))
        z = y / s
        return tank * pack * mesh * np.exp(-0.5 * z * z) / (s * np.sqrt(2.0 * np.pi)) * (1.0 + slope) / 3.0

    low, top, kink = -5.0 * s, np.minimum(5.0 * s, at(v_pack * (1.0 + spread))), at(v_pack * (1.0 - spread))
    kink = np.clip(kink, low, top)
    total = np.zeros_like(d50)
    for a, b, panels in ((low, kink, 4), (kink, top, 2)):
        start = variable(a)
        for i in range(panels):
            end = variable(a + (b - a) * (i + 1) / panels)
            middle, half = 0.5 * (start + end), 0.5 * (end - start)
            for x, w in zip(X, W):
                total += w * half * passes(middle + half * x)
            start = end
    return total


def main():
    n = int(sys.argv[1])
    columns = inputs(n)
    best, out = np.inf, np.empty(n)
    for _ in range(5):
        begin = time.perf_counter()
        for k in range(0, n, BLOCK):
            out[k : k + BLOCK] = left(*(c[k : k + BLOCK] for c in columns))
        best = min(best, time.perf_counter() - begin)
    print(best, out.mean(), np.__version__)


main()

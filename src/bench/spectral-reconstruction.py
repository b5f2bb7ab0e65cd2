"""Compares two published ways to a reflectance spectrum from a Lab value, and the program's three bands, on overprints.

Each coloured solid of the bundled data becomes a spectrum, relative to its paper; the spectra of the solids of an overprint are
multiplied, as pure filters are, and the product's colour is compared with the measured overprint (dE00). What was measured was
seen by neither method. Needs numpy and scipy. Run from the project's folder: python3 src/bench/spectral-reconstruction.py

LHTSS   S. A. Burns, "Numerical methods for smoothest reflectance reconstruction", Color Res. Appl. 45 (2020)
sigmoid W. Jakob, J. Hanika, "A low-dimensional function space for efficient spectral upsampling", Computer Graphics Forum 38 (2019)
"""
import re
import numpy as np
from scipy.optimize import least_squares, minimize

ROOT = "src/main/"
source = open(ROOT + "java/inkground/colour/Spectra.java", encoding="utf-8").read()


def table(name):
    text = re.search(r"double\[\] " + name + r" = \{(.*?)\};", source, re.S).group(1)
    return np.array([float(v) for v in text.split(",")])


LIGHT = table("D50")
EYE = np.stack([table("X"), table("Y"), table("Z")]) * LIGHT
EYE /= EYE.sum(axis=1, keepdims=True)  # the perfect diffuser is 1, 1, 1
NM = 380 + 10 * np.arange(36)
BANDS = np.array([[1, -0.18, -0.12], [-0.375, 1, 0.055], [0.055, -0.015, 1]])
WHITE = np.array([0.9642, 1, 0.8249])


def f(t):
    return np.where(t > 216 / 24389, np.cbrt(t), (24389 / 27 * t + 16) / 116)


def to_lab(relative):
    x, y, z = f(relative)
    return np.array([116 * y - 16, 500 * (x - y), 200 * (y - z)])


def to_relative(lab):
    y = (lab[0] + 16) / 116
    v = np.array([y + lab[1] / 500, y, y - lab[2] / 200])
    return np.where(v**3 > 216 / 24389, v**3, (116 * v - 16) / (24389 / 27))


def de00(p, q):
    c = (np.hypot(*p[1:]) + np.hypot(*q[1:])) / 2
    g = 1 + 0.5 * (1 - np.sqrt(c**7 / (c**7 + 25**7)))
    c1, c2 = np.hypot(p[1] * g, p[2]), np.hypot(q[1] * g, q[2])
    h1, h2 = (np.degrees(np.arctan2(v[2], v[1] * g)) % 360 for v in (p, q))
    dh = (h2 - h1 + 180) % 360 - 180
    h = (h1 + dh / 2) % 360
    L, c = (p[0] + q[0]) / 2, (c1 + c2) / 2
    cos = lambda d: np.cos(np.radians(d))
    t = 1 - 0.17 * cos(h - 30) + 0.24 * cos(2 * h) + 0.32 * cos(3 * h + 6) - 0.2 * cos(4 * h - 63)
    dl = (q[0] - p[0]) / (1 + 0.015 * (L - 50) ** 2 / np.sqrt(20 + (L - 50) ** 2))
    dc = (c2 - c1) / (1 + 0.045 * c)
    dH = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(dh / 2)) / (1 + 0.015 * c * t)
    rt = -np.sin(np.radians(60 * np.exp(-(((h - 275) / 25) ** 2)))) * 2 * np.sqrt(c**7 / (c**7 + 25**7))
    return np.sqrt(dl**2 + dc**2 + dH**2 + rt * dc * dH)


def lhtss(relative):
    """Smoothest in the hyperbolic tangent: least squared steps of z, reflectance (tanh z + 1) / 2."""
    reflect = lambda z: (np.tanh(z) + 1) / 2
    result = minimize(
        lambda z: np.sum(np.diff(z) ** 2),
        np.zeros(36),
        jac=lambda z: 2 * (np.append(0, np.diff(z)) - np.append(np.diff(z), 0)),
        constraints={
            "type": "eq",
            "fun": lambda z: 100 * (EYE @ reflect(z) - relative),
            "jac": lambda z: 100 * EYE * ((1 - np.tanh(z) ** 2) / 2),
        },
        method="SLSQP",
        options={"maxiter": 500, "ftol": 1e-10},
    )
    return reflect(result.x)


def sigmoid(relative):
    """A sigmoid of a parabola over the wavelength: three numbers."""
    t = (NM - 555) / 175
    curve = lambda c: 0.5 + (p := c[0] * t**2 + c[1] * t + c[2]) / (2 * np.sqrt(1 + p**2))
    starts = ([0, 0, 0], [1, 1, 0], [1, -1, 0], [-1, 0, 0])
    best = min(
        (least_squares(lambda c: 100 * (f(EYE @ curve(c)) - f(relative)), s) for s in starts), key=lambda r: r.cost
    )
    return curve(best.x)


def bands(relative):
    scale = BANDS @ WHITE
    return np.maximum(0, BANDS @ (relative * WHITE) / scale)


def from_bands(values):
    return np.linalg.solve(BANDS, values * (BANDS @ WHITE)) / WHITE


def patches(name):
    lines = open(ROOT + "resources/inkground/colour/" + name + ".ti3", encoding="latin-1").read()
    fields = re.search(r"BEGIN_DATA_FORMAT\s+(.*?)END_DATA_FORMAT", lines, re.S).group(1).split()
    rows = re.search(r"BEGIN_DATA\s+(.*?)END_DATA\s", lines, re.S).group(1).split()
    at = [fields.index(k) for k in ("CMYK_C", "CMYK_M", "CMYK_Y", "CMYK_K")]
    lab = [fields.index(k) for k in ("LAB_L", "LAB_A", "LAB_B")]
    out = {}
    for i in range(0, len(rows) - len(fields) + 1, len(fields)):
        row = rows[i : i + len(fields)]
        out[tuple(float(row[k]) for k in at)] = np.array([float(row[k]) for k in lab])
    return out


for name in ("FOGRA39L", "TR006"):
    data = patches(name)
    paper = to_relative(data[0, 0, 0, 0])
    solids = [tuple(100.0 * (k == i) for k in range(4)) for i in range(4)]
    relative = [to_relative(data[s]) / paper for s in solids]
    ways = {"LHTSS": (lhtss, lambda v: EYE @ v), "sigmoid": (sigmoid, lambda v: EYE @ v), "bands": (bands, from_bands)}
    print(name)
    for way, (spectrum, colour) in ways.items():
        parts = [spectrum(r) for r in relative]
        own = max(de00(to_lab(colour(p) * paper), data[s]) for p, s in zip(parts, solids))
        found = []
        for inks in ((0, 1), (0, 2), (1, 2), (0, 1, 2), (0, 3), (1, 3), (2, 3)):
            asked = tuple(100.0 * (k in inks) for k in range(4))
            if asked in data:
                product = np.prod([parts[i] for i in inks], axis=0)
                found.append((inks, de00(to_lab(np.maximum(0, colour(product)) * paper), data[asked])))
        words = "  ".join("".join("CMYK"[i] for i in inks) + f" {d:.1f}" for inks, d in found)
        print(f"  {way:8} mean {np.mean([d for _, d in found]):.2f}  {words}  (solids back within {own:.2f})")

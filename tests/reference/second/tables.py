"""Published tables, by the names that the program's input uses.

Lengths in mm, stresses in MPa, forces in N. Each table names where its rows were seen. Where two published rows
disagree, the lower strength stands here.
"""

INCH = 25.4
KSI = 6.894757293168
LBF = 4.4482216152605
LB = 0.45359237
G = 9.80665  # m/s2, standard gravity

# Threads. ASME B1.1 sizes as in Shigley 9e Table 8-2 (turns per inch); ISO 261 coarse pitches in mm.
_UNC = {"1.4": 20, "5.16": 18, "3.8": 16, "7.16": 14, "1.2": 13, "9.16": 12, "5.8": 11, "3.4": 10, "7.8": 9, "1": 8}
_UNF = {"1.4": 28, "5.16": 24, "3.8": 24, "7.16": 20, "1.2": 20, "9.16": 18, "5.8": 18, "3.4": 16, "7.8": 14, "1": 12}
_METRIC = {6: 1.0, 8: 1.25, 10: 1.5, 12: 1.75, 14: 2.0, 16: 2.0, 18: 2.5, 20: 2.5, 22: 2.5, 24: 3.0}


def _fraction(text):
    top, _, bottom = text.partition(".")
    return float(top) / float(bottom or 1)


# name -> (system, diameter, pitch, size as in the tables below)
THREADS = {
    **{f"unc-{s}": ("inch", _fraction(s) * INCH, INCH / n, s) for s, n in _UNC.items()},
    **{f"unf-{s}": ("inch", _fraction(s) * INCH, INCH / n, s) for s, n in _UNF.items()},
    **{f"m{d}": ("metric", float(d), p, f"m{d}") for d, p in _METRIC.items()},
}

# Bolt strength: (proof, yield, tensile). SAE J429, ASTM F3125 in ksi as printed by Shigley & Mischke; ISO 898-1:2013
# Table 3 and ISO 3506-1 in MPa as reproduced by suppliers. Stainless has no proof stress: its yield stands in.


def bolt_strength(grade, d, length):
    over_16 = d > 16.0
    inch = {
        # J429, note under the table: longer than 6 in, grade 2 has what grade 1 has.
        "sae-2": (55, 57, 74) if d <= 0.75 * INCH + 1e-6 and length <= 6 * INCH else (33, 36, 60),
        "sae-5": (85, 92, 120),
        "sae-8": (120, 130, 150),
        "a325": (85, 92, 120),
        "a490": (120, 130, 150),
    }
    metric = {
        "iso-4.6": (225, 240, 400),
        "iso-4.8": (310, 340, 420),
        "iso-5.6": (280, 300, 500),
        "iso-5.8": (380, 420, 520),
        "iso-6.8": (440, 480, 600),
        "iso-8.8": (600, 660, 830) if over_16 else (580, 640, 800),
        "iso-9.8": (650, 720, 900),
        "iso-10.9": (830, 940, 1040),
        "iso-12.9": (970, 1100, 1220),
        "a2-70": (450, 450, 700),
        "a4-80": (600, 600, 800),
    }
    if grade in inch:
        return tuple(v * KSI for v in inch[grade])
    return tuple(float(v) for v in metric[grade])


# Plain washers: ASME B18.21.1 type A, narrow and wide (Machinery's Handbook 31e p. 1694; 3/4 wide and up from
# distributors or memory), in inches: bore, outside, thickness; ISO 7089 and ISO 7093 in mm, nominal thickness.
_WASHERS = {
    ("1.4", "narrow"): (0.281, 0.625, 0.065), ("1.4", "wide"): (0.312, 0.734, 0.065),
    ("5.16", "narrow"): (0.344, 0.688, 0.065), ("5.16", "wide"): (0.375, 0.875, 0.083),
    ("3.8", "narrow"): (0.406, 0.812, 0.065), ("3.8", "wide"): (0.438, 1.000, 0.083),
    ("7.16", "narrow"): (0.469, 0.922, 0.065), ("7.16", "wide"): (0.500, 1.250, 0.083),
    ("1.2", "narrow"): (0.531, 1.062, 0.095), ("1.2", "wide"): (0.562, 1.375, 0.109),
    ("9.16", "narrow"): (0.594, 1.156, 0.095), ("9.16", "wide"): (0.625, 1.469, 0.109),
    ("5.8", "narrow"): (0.656, 1.312, 0.095), ("5.8", "wide"): (0.688, 1.750, 0.134),
    ("3.4", "narrow"): (0.812, 1.469, 0.134), ("3.4", "wide"): (0.812, 2.000, 0.148),
    ("7.8", "narrow"): (0.938, 1.750, 0.134), ("7.8", "wide"): (0.938, 2.250, 0.165),
    ("1", "narrow"): (1.062, 2.000, 0.134), ("1", "wide"): (1.062, 2.500, 0.165),
}
_WASHERS_MM = {
    "m6": ((6.4, 12, 1.6), (6.4, 18, 1.6)), "m8": ((8.4, 16, 1.6), (8.4, 24, 2.0)),
    "m10": ((10.5, 20, 2.0), (10.5, 30, 2.5)), "m12": ((13, 24, 2.5), (13, 37, 3.0)),
    "m14": ((15, 28, 2.5), (15, 44, 3.0)), "m16": ((17, 30, 3.0), (17, 50, 3.0)),
    "m20": ((21, 37, 3.0), (21, 60, 4.0)), "m24": ((25, 44, 4.0), (25, 72, 5.0)),
}


def washer(size, series):
    """Outside diameter and nominal thickness, mm."""
    if size in _WASHERS_MM:
        row = _WASHERS_MM[size][0 if series == "narrow" else 1]
        return row[1], row[2]
    row = _WASHERS[size, series]
    return row[1] * INCH, row[2] * INCH


# Clearance holes, normal: ASME B18.2.8; ISO 273 medium (from memory).
_HOLES = {"1.4": 9 / 32, "5.16": 11 / 32, "3.8": 13 / 32, "7.16": 15 / 32, "1.2": 9 / 16, "5.8": 11 / 16,
          "3.4": 13 / 16, "7.8": 15 / 16, "1": 1 + 3 / 32}
_HOLES_MM = {"m6": 6.6, "m8": 9, "m10": 11, "m12": 13.5, "m14": 15.5, "m16": 17.5, "m18": 20, "m20": 22, "m22": 24,
             "m24": 26}


def hole(size):
    return _HOLES_MM[size] if size in _HOLES_MM else _HOLES[size] * INCH


# Hexagon nuts, greatest or basic height: ASME B18.2.2, ISO 4032.
_NUTS = {"1.4": 0.2188, "5.16": 0.2656, "3.8": 0.3281, "7.16": 0.375, "1.2": 0.4375, "9.16": 0.4844, "5.8": 0.5469,
         "3.4": 0.6406, "7.8": 0.75, "1": 0.8594}
_NUTS_MM = {"m6": 5.2, "m8": 6.8, "m10": 8.4, "m12": 10.8, "m14": 12.8, "m16": 14.8, "m18": 15.8, "m20": 18.0,
            "m22": 19.4, "m24": 21.5}


def nut_height(size):
    return _NUTS_MM[size] if size in _NUTS_MM else _NUTS[size] * INCH


# Metals: yield, tensile; the same near a weld; E; Poisson; thermal expansion in 1e-6/K; share of the nominal wall that
# counts. Aluminium: the lower of the US extrusion minima and EN 1999-1-1 Table 3.2b, welded the lower of ADM and
# EN 1999-1-1. Steel: ASTM minima with E 29 000 ksi, EN 1993-1-1 Table 3.1 with E 210 GPa.
METALS = {
    "6061-t6": (240, 260, 15 * KSI, 24 * KSI, 10100 * KSI, 0.33, 23.6, 1.0),
    "6063-t5": (110, 22 * KSI, 8 * KSI, 100, 10100 * KSI, 0.33, 23.6, 1.0),
    "6063-t6": (160, 195, 8 * KSI, 110, 10100 * KSI, 0.33, 23.6, 1.0),
    "6005a-t6": (215, 255, 13 * KSI, 165, 10100 * KSI, 0.33, 23.6, 1.0),
    "a36": (36 * KSI, 58 * KSI, 36 * KSI, 58 * KSI, 29000 * KSI, 0.3, 11.7, 1.0),
    "a500-b": (46 * KSI, 58 * KSI, 46 * KSI, 58 * KSI, 29000 * KSI, 0.3, 11.7, 0.93),
    "a500-c": (50 * KSI, 62 * KSI, 50 * KSI, 62 * KSI, 29000 * KSI, 0.3, 11.7, 0.93),
    "a513-1020": (55 * KSI, 65 * KSI, 55 * KSI, 65 * KSI, 29000 * KSI, 0.3, 11.7, 1.0),
    "s235": (235, 360, 235, 360, 210000, 0.3, 11.7, 1.0),
    "s355": (355, 490, 355, 490, 210000, 0.3, 11.7, 1.0),
}
ALUMINIUM = {"6061-t6", "6063-t5", "6063-t6", "6005a-t6"}

# Sleeves: outside diameter and wall, inches. ASME B36.10M; common round stock.
PIPES = {"nps-3.8-40": (0.675, 0.091), "nps-1.2-40": (0.840, 0.109), "nps-1.2-80": (0.840, 0.147),
         "nps-3.4-40": (1.050, 0.113), "nps-3.4-80": (1.050, 0.154), "nps-1-40": (1.315, 0.133),
         "nps-1-80": (1.315, 0.179)}


def sleeve(name):
    """Outside diameter and wall, mm."""
    if name in PIPES:
        return tuple(v * INCH for v in PIPES[name])
    outer, wall = name.removeprefix("rt-").split("x")
    return float(outer) * INCH, float(wall) * INCH


# Nut factors: Shigley & Mischke 5e Table 8-11 (9e 8-15), typical column; waxed zinc and paste from memory.
NUT_FACTORS = {"zinc": 0.20, "oiled": 0.18, "cadmium": 0.16, "anti-seize": 0.12, "black": 0.30}
# Least, usual and greatest nut factor found for a state: a maker's page; on stainless the friction classes of VDI 2230.
NUT_FACTOR_RANGES = {"zinc": (0.17, 0.20, 0.35), "oiled": (0.10, 0.18, 0.26), "anti-seize": (0.11, 0.12, 0.16)}
STAINLESS_RANGES = {"zinc": (0.30, 0.40, 0.50), "oiled": (0.26, 0.35, 0.44), "anti-seize": (0.12, 0.20, 0.31)}
# Scatter of the clamp: Machinery's Handbook; NASA for the last two; of two printed values the wider.
SCATTER = {"feel": 0.35, "wrench": 0.25, "turn": 0.15, "indicating-washer": 0.10, "elongation": 0.10,
           "nasa-dry": 0.35, "nasa-oiled": 0.25}
# Friction of the clamped faces: NASA-STD-5020B TFSR 14, AISC 360-22 J3.9, EN 1090-2 Table 18.
FRICTION = {"bare-clean": 0.20, "painted": 0.10, "steel-mill-scale": 0.30, "steel-blasted": 0.50, "en-a": 0.50,
            "en-b": 0.40, "en-c": 0.30, "en-d": 0.20}

#!/usr/bin/env python3
"""Follows work sheets by hand: writes ../sheets.toml, each number with the sum that gives it.

No line here comes from calc-core. Sizes of bolts, nuts, washers, holes and drills are those of the tables that a shop
has on the wall; minutes are the default rates.
"""
import math
from pathlib import Path

# Bolt: diameter, threads an inch or pitch, nut height, washer thickness and outside, normal hole; mm.
INCH = 25.4
BOLTS = {
    "unc-1.2": dict(d=12.7, p=INCH / 13, nut=INCH * 7 / 16, wt=INCH * 0.095, wo=INCH * 1.062, hole=INCH * 9 / 16, inch=True),
    "unc-5.8": dict(d=15.875, p=INCH / 11, nut=INCH * 35 / 64, wt=INCH * 0.095, wo=INCH * 1.312, hole=INCH * 11 / 16, inch=True),
    "m12": dict(d=12.0, p=1.75, nut=10.8, wt=2.5, wo=24.0, hole=13.5, inch=False),
}
# Sleeve stock: outside and wall, in.
SLEEVES = {"rt-0.750x0.120": (0.75, 0.12), "rt-1.000x0.188": (1.0, 0.188), "rt-0.875x0.156": (0.875, 0.156),
           "rt-1.250x0.250": (1.25, 0.25), "rb-1.250x0.531": (1.25, (1.25 - 17 / 32) / 2)}
KERF = 3.175
SAW = 0.8
MINUTES = dict(layout=5, hole=6, cut=5, file=10, machine=15, saddle=30, weld=28, bolt=4, surface=8)
DEFAULT = dict(tube_width_mm=50.8, tube_depth_mm=76.2, tube_wall_mm=3.175, tube_material="6061-t6", bolt="unc-1.2",
               bolts_along=2, bolt_rows=1, spacing_along_mm=90.0, spacing_across_mm=40.0, mount="through-sides",
               member="rectangular-tube", fitting_thickness_mm=5.0, support="bare", shaped_washer="no",
               faying_surface="bare-clean", spreader_thickness_mm=6.35, spreader_length_mm=76.2, sleeve_short_mm=0.25,
               sleeve="rt-0.750x0.120", sleeve_welded="no", joint="coupler", ball_ahead_mm=130.0,
               hanger_offset_mm=0.0, bolt_grade="sae-5", fitting_material="a36")
ALUMINUM = ("6061-t6", "6063-t6")


def f(x):
    return f"{x:.4g}" if abs(x) < 1 else f"{x:.2f}"


def drill_in(mm):
    """Smallest drill in 64ths of an inch that is no smaller."""
    return math.ceil(mm / INCH * 64 - 1e-4) / 64


def outside_varies(t):
    depth = t["tube_depth_mm"] / INCH
    if t["tube_material"] in ALUMINUM:
        table = [(2, 0.018), (4, 0.025), (5, 0.035), (99, 0.045)]
    else:
        table = [(2.5, 0.020), (3.5, 0.025), (5.5, 0.030), (99, depth * 0.01)]
    return next(v for top, v in table if depth < top) * INCH


def sold(length, inch):
    if inch:
        step = 6.35 if length <= 152.4 else 12.7
    else:
        step = 5 if length <= 70 else 10 if length <= 160 else 20
    return math.ceil(length / step - 1e-6) * step


class Sheet:
    def __init__(self, ident, kind, before, after):
        self.id, self.kind, self.before, self.after = ident, kind, before, after
        self.b = {**DEFAULT, **before}
        self.a = {**self.b, **after}
        self.why, self.cuts, self.holes, self.weld = [], [], [], None
        self.buy, self.steps, self.needs, self.effects = {}, {}, [], []
        self.follow()

    def say(self, text):
        self.why.append(text)

    def step(self, name, count, each, how=None):
        if count:
            self.steps[name] = (count, count * each)

    def follow(self):
        a, b = self.a, self.b
        bolt, old_bolt = BOLTS[a["bolt"]], BOLTS[b["bolt"]]
        n, was = (int(x["bolts_along"] * x["bolt_rows"]) for x in (a, b))
        added = n - was
        member, round_ = a["member"], a["member"] == "round-tube"
        opened = member in ("channel", "angle")
        sides = a["mount"] == "through-sides" and not opened
        D, t = a["tube_depth_mm"], a["tube_wall_mm"]
        inside = D - 2 * t
        walls, plies = (1, 1) if opened else (2, 2 if sides else 1)
        aluminum = a["tube_material"] in ALUMINUM
        washer_t = a.get("washer_thickness_mm", bolt["wt"])
        washer_o = a.get("washer_outer_mm", bolt["wo"])
        hole = a.get("hole_mm", bolt["hole"])
        old_hole = b.get("hole_mm", old_bolt["hole"])
        kind = self.kind
        on = added if kind == "tightening" else n
        short = a["sleeve_short_mm"]
        through = kind in ("through-sleeve", "welded-sleeve")
        wall_hole = SLEEVES[a["sleeve"]][0] * INCH if through else hole
        cuts = 0
        piece_holes = deep = saddles = 0
        filed = machined = 0
        passes = 1
        fit = None
        sawn = 1.0
        self.say(f"{n} bolts" + (f", {added} of them added" if added else "") + ".")
        ov = outside_varies(a)
        iv = ov + 0.2 * t
        if kind in ("loose-sleeve", "through-sleeve", "welded-sleeve"):
            od, wall = (x * INCH for x in SLEEVES[a["sleeve"]])
            bar = a["sleeve"].startswith("rb-")
            if through:
                fit, length, plus, var = "flush", D, 0.254, ov
                self.say(f"Sleeves as long as the tube is deep, {f(D)}, dressed flush; the tube may be {f(var)} deeper, "
                         f"and the saw leaves {SAW}: {f(D)} + 0.25 + {f(var)} + {SAW} = {f(D + plus + var + SAW)} of stock each.")
                filed = n
            else:
                length, plus, var = inside - short, short, iv
                fit = "sawn" if short >= 1.6 else "faced" if short < 0.2 else "filed"
                filed, machined = (n, 0) if fit == "filed" else (0, n if fit == "faced" else 0)
                self.say(f"Space inside {f(D)} - 2*{f(t)} = {f(inside)}; at most {f(short)} shorter: {f(length)}. Outside "
                         f"±{f(ov)} and walls ±10 %: the space ±{f(iv)}, so each takes {f(length)} + {f(plus)} + {f(iv)}"
                         f" + {SAW} = {f(length + plus + iv + SAW)} of stock.")
                if fit == "sawn":
                    self.say("Sawn to the measured place, nothing is left to file.")
            if bar:
                machined += 2 * n
                area = math.pi / 4 * od ** 2
                sawn = max(1, area / 1290)
                self.say(f"Bored from bar: two set-ups in a lathe for each, {2 * n}; a saw cut goes through {f(area)} mm2.")
            rough = length + plus + var + (0 if fit == "sawn" else SAW)
            self.cut("piece-sleeve", n, length, plus, 0.0, [od], fit, rough)
            cuts = n
            self.buy["piece-sleeve"] = n
        elif kind == "solid-insert":
            length = (a["bolts_along"] - 1) * a["spacing_along_mm"] + 1.5 * a["tube_width_mm"]
            depth, width = inside - short, a["tube_width_mm"] - 2 * t - 0.5
            area = math.pi / 4 * depth ** 2 if round_ else depth * width
            fit, machined, filed = ("turned", 3, 1) if round_ else ("milled", 4, 1)
            sawn = max(1, area / 1290)
            self.say(f"Block {f(length)} long: {a['bolts_along'] - 1:g} spaces of {a['spacing_along_mm']:g} and one and a half widths of "
                     f"{f(a['tube_width_mm'])}. {f(depth)} deep" + ("" if round_ else f", {f(width)} wide") + f"; two saw cuts "
                     f"through {f(area)} mm2, {f(sawn)} times 2 sq in.")
            self.cut("piece-block", 1, length, 1.0, 1.0, [depth] if round_ else [width, depth], fit, length)
            cuts, piece_holes, deep = 2, n, n
            # Six inches of it in one setting.
            passes = max(1, length / (6 * INCH))
            self.buy["piece-block"] = 1
        elif kind == "spreader":
            one = a["spreader_length_mm"]
            joined = a["bolts_along"] > 1 and one > a["spacing_along_mm"]
            faces = 1 if opened else 2
            per = 1 if joined else int(n / a["bolt_rows"])
            length = one + (a["bolts_along"] - 1) * a["spacing_along_mm"] * joined
            # On a flange a plate reaches from the edge to the upright part.
            # and stays off the fillet there, as thick as the wall.
            width = a.get("spreader_width_mm", a["tube_width_mm"] - (2 * a["tube_wall_mm"] if opened else 0))
            cuts = faces * per
            self.say(f"Plates {'joined' if joined else 'one a bolt'}: {cuts} of {f(length)} by {f(width)}; longer grip: new bolts.")
            self.cut("piece-plate", cuts, length, 1.0, 1.0, [width, a["spreader_thickness_mm"]], None, length)
            piece_holes = faces * n
            self.buy["piece-plate"] = cuts
        elif kind == "thick-washer":
            cuts = piece_holes = 2 * n
            sawn = max(1, math.pi * washer_o * washer_t / 1290)
            self.say(f"Two washers a bolt: {cuts}. Cut round pi*{f(washer_o)}*{f(washer_t)} = {f(math.pi * washer_o * washer_t)} mm2, "
                     f"{f(sawn)} times 2 sq in at 5 min.")
            self.cut("piece-washer", cuts, washer_o, 1.0, 1.0, [washer_t], None, washer_o)
            self.buy["piece-washer"] = cuts
        # Holes.
        to_open = was * walls if wall_hole > self.wall_before() + 0.05 else 0
        new = added * walls
        place = "place-one-ply" if opened else "place-tube-wall"
        for count, frm in ((to_open, self.wall_before()), (new, None)):
            self.hole(place, count, frm, wall_hole)
        f_open = was * plies if hole > old_hole + 0.05 else 0
        for count, frm in ((f_open, old_hole), (added * plies, None)):
            self.hole("place-fitting", count, frm, hole)
        names = {"solid-insert": "place-block", "spreader": "place-plate", "thick-washer": "place-washer"}
        if piece_holes:
            self.hole(names[kind], piece_holes, None, hole, inside - short if deep else None)
        depth_drilled = inside - short
        if kind == "tightening" and a["support"] == "solid-insert" and added:
            deep, depth_drilled = added, D
            self.hole("place-block", added, None, hole, inside)
            self.say(f"The hole of the bolt that is added goes through walls and block, {f(D)}.")
        # Seats.
        seat = 0.0
        if a["shaped_washer"] == "yes":
            fresh = n if b["shaped_washer"] == "no" or washer_o > b.get("washer_outer_mm", old_bolt["wo"]) + 0.01 else added
            if round_ and not through:
                saddles, seat = 2 * fresh, 2 * 6.35
                R, half = D / 2, washer_o / 2
                blank = 6.35 + R - math.sqrt(R * R - half * half)
                self.say(f"Saddles {f(washer_o)} square, 1/4 in over the crown, blank 6.35 + {f(R)} - sqrt({f(R)}^2 - "
                         f"{f(half)}^2) = {f(blank)}; two a bolt make the bolt 12.7 longer.")
                if saddles:
                    self.cut("piece-saddle", saddles, washer_o, 1.0, 1.0, [washer_o, blank], None, washer_o)
                    self.hole("place-saddle", saddles, None, hole)
                    self.buy["piece-saddle"] = saddles
            elif member == "channel" and a["mount"] == "from-top":
                seat = 7.94
                if fresh:
                    self.buy["piece-tapered"] = fresh
                self.say(f"One bought tapered washer a bolt, 5/16 in at the bolt.")
        # Bore of a sleeve that is tight.
        reamed = 0
        if "sleeve" in kind and not bar:
            bore = (SLEEVES[a["sleeve"]][0] - 2 * SLEEVES[a["sleeve"]][1]) * INCH
            if bore - bolt["d"] < 0.794:
                self.hole("place-sleeve-bore", n, bore, bolt["d"] + 0.794)
                reamed = n
                ream_deep = D if through else inside - short
                self.say(f"The bore of {f(bore)} leaves the bolt less than 0.79: {n} to ream, {f(ream_deep)} deep, "
                         f"{f(ream_deep / INCH)} times 1 in.")
        # Welds.
        welds = 2 * n if kind == "welded-sleeve" else 0
        if welds:
            r, R = SLEEVES[a["sleeve"]][0] * INCH / 2, D / 2
            # On a round wall the line is z = sqrt(R^2 - r^2 sin^2), its length a series in k = r/R.
            length = 2 * math.pi * r * (1 + (r / R) ** 2 / 16 + 0.0283 * (r / R) ** 4 if round_ else 1)
            self.say(f"Welds at both ends, {welds}, each 2*pi*{f(r)}" + (f"*(1 + k^2/16 + 0.028*k^4) with k = {f(r)}/{f(R)}" if round_ else "")
                     + f" = {f(length)} long, as deep as the wall" + ("; half as long again on a round wall" if round_ else "") + ".")
            self.weld = dict(joint="weld-round-groove" if round_ else "weld-bevel-groove", count=welds, length_mm=length,
                             depth_mm=t, filler="5356" if aluminum else "er70s-6")
        # Bolts.
        plates = a["spreader_thickness_mm"] * (1 if opened else 2) if a["support"] == "spreader" else 0.0
        depth = t if opened else D
        grip = depth + a["fitting_thickness_mm"] * plies + 2 * washer_t + plates
        # A lock nut is up to one and a quarter diameters high.
        nut = max(bolt["nut"], 1.25 * bolt["d"])
        total = grip + seat + nut + 2 * bolt["p"]
        self.bolt, self.sold = total, sold(total, bolt["inch"])
        self.say(f"Bolt {f(depth)} + {plies}*{f(a['fitting_thickness_mm'])} + 2*{f(washer_t)}"
                 + (f" + plates {f(plates)}" if plates else "") + (f" + seats {f(seat)}" if seat else "")
                 + f" + lock nut {f(nut)} + 2*{f(bolt['p'])} = {f(total)}: sold as {f(self.sold)}.")
        other = a["bolt"] != b["bolt"] or a["bolt_grade"] != b["bolt_grade"]
        new_bolts = n if kind in ("spreader", "thick-washer") or other or saddles or self.buy.get("piece-tapered") else added
        if new_bolts:
            self.buy["piece-bolt-nut" if kind == "thick-washer" else "piece-bolt"] = new_bolts
        # A bracket that the added bolts are beyond, or that plates or saddles push apart, is another one.
        if added or (sides and (saddles or (kind == "spreader" and not opened))):
            self.buy["piece-bracket"] = 1
        planes = plies
        # A plate between bracket and tube makes two pairs of faces of one.
        surfaces = 2 * planes * (2 if plates and not opened else 1) if a["faying_surface"] != b["faying_surface"] else 0
        holes = sum(h["count"] for h in self.holes if h["place"] not in ("place-sleeve-bore",)) - deep
        self.step("work-layout", added, MINUTES["layout"])
        self.step("work-cuts", cuts, MINUTES["cut"] * sawn)
        self.step("work-machine", machined, MINUTES["machine"] * passes)
        self.step("work-saddles", saddles, MINUTES["saddle"] + MINUTES["cut"])
        self.step("work-holes", holes, MINUTES["hole"])
        if deep:
            self.step("work-deep-holes", deep, MINUTES["hole"] * max(1, depth_drilled / INCH))
            self.say(f"Holes {f(depth_drilled)} deep are {f(depth_drilled / INCH)} holes of 1 in each.")
        self.step("work-fit", filed, MINUTES["file"])
        self.step("work-welds", welds, MINUTES["weld"] * (1.5 if round_ else 1))
        self.step("work-surfaces", surfaces, MINUTES["surface"])
        if reamed:
            self.step("work-ream", reamed, MINUTES["hole"] * max(1, ream_deep / INCH))
        self.step("work-new-bolts" if new_bolts == n else "work-bolts", n, MINUTES["bolt"])
        self.say("Minutes " + " + ".join(f"{m:.2f}" for _, m in self.steps.values())
                 + f" = {sum(m for _, m in self.steps.values()):.2f}.")
        # Needs, in the order of the list.
        def need(name, wanted):
            if wanted:
                self.needs.append(name)
        need("lathe", fit in ("faced", "turned") or ("sleeve" in kind and bar))
        need("mill", fit == "milled" or saddles)
        need("drill-press", deep)
        reach = 7.5 * hole if hole <= 14 else 76.2
        need("long-drill", deep and D > reach)
        need("open-end", fit in ("sawn", "filed", "faced", "milled", "turned"))
        need("steel-welder", welds and not aluminum)
        need("aluminum-welder", welds and aluminum)
        need("longer-fitting", a["bolts_along"] > b["bolts_along"] or a["bolt_rows"] > b["bolt_rows"])
        need("new-bracket", sides and (saddles or (kind == "spreader" and not opened)))
        need("saddles", saddles)
        if deep:
            self.say(f"A usual drill of {f(hole)} reaches {f(reach)}; the tube is {f(D)}.")
        # Side effects.
        if a["bolts_along"] > b["bolts_along"]:
            self.effects.append("caution-fitting-reaches")
            name = "hanger_offset_mm" if a["joint"] == "spring-hanger" else "ball_ahead_mm"
            if a[name] != b[name]:
                self.effects.append("effect-hanger-offset" if a["joint"] == "spring-hanger" else "effect-ball-ahead")
        if a["bolt_rows"] > b["bolt_rows"]:
            self.effects.append("caution-fitting-wide")
        if new_bolts > added:
            self.effects.append("effect-new-bolts")
        if f_open:
            self.effects.append("effect-fitting-hole")
        if kind == "spreader":
            self.effects.append("effect-plate-under-nut" if opened else "effect-cheeks-apart" if sides else "effect-fitting-out")
        if saddles:
            self.effects.append("effect-saddles-out")

    def wall_before(self):
        b = self.b
        if b["support"] == "through-sleeve":
            return SLEEVES[b["sleeve"]][0] * INCH
        return b.get("hole_mm", BOLTS[b["bolt"]]["hole"])

    def cut(self, what, count, length, plus, minus, section, fit, rough):
        stock = count * (rough + KERF) + KERF
        self.say(f"Stock {count}*({f(rough)} + 3.175) + 3.175 = {f(stock)}.")
        self.cuts.append(dict(what=what, count=count, length_mm=length, plus_minus_mm=[plus, minus], section_mm=section,
                              fit=fit, rough_mm=rough, stock_mm=stock))

    def hole(self, place, count, frm, to, deep=None):
        if count:
            self.holes.append(dict(place=place, count=count, from_mm=frm, to_mm=to, drill_in=drill_in(to), deep_mm=deep))

    def toml(self):
        a = self.a
        rows, along = int(a["bolt_rows"]), int(a["bolts_along"])
        order = {(1, 1): [1], (1, 2): [1, 2], (2, 1): [1, 2], (3, 1): [2, 1, 3], (2, 2): [1, 4, 2, 3], (4, 1): [2, 3, 1, 4]}[(along, rows)]
        lines = ["[[sheet]]", f'id = "{self.id}"', f'kind = "{self.kind}"', f"before = {table(self.before)}",
                 f"after = {table(self.after)}", 'why = """'] + wrapped(self.why) + ['"""']
        lines += [f"buy = {table(self.buy)}", f"bolt_mm = {self.bolt:.3f}", f"bolt_sold_mm = {self.sold:.3f}",
                  f"order = {order}",
                  "steps = {" + ", ".join(f"{k} = [{c}, {m:.3f}]" for k, (c, m) in self.steps.items()) + "}",
                  f"minutes = {sum(m for _, m in self.steps.values()):.3f}",
                  f"needs = {value(self.needs)}", f"effects = {value(self.effects)}"]
        for name, rows_ in (("cut", self.cuts), ("hole", self.holes)):
            lines += [f"{name} = ["] + [f"    {table(row)}," for row in rows_] + ["]"] if rows_ else []
        if self.weld:
            lines.append(f"weld = {table(self.weld)}")
        return "\n".join(lines) + "\n"


def value(v):
    if isinstance(v, str):
        return f'"{v}"'
    if isinstance(v, list):
        return "[" + ", ".join(value(x) for x in v) + "]"
    return str(v) if isinstance(v, int) else repr(round(v, 4))


def table(t):
    return "{" + ", ".join(f"{k} = {value(v)}" for k, v in t.items() if v is not None) + "}"


def wrapped(sentences):
    lines, line = [], ""
    for word in " ".join(sentences).split():
        if len(line) + len(word) > 115:
            lines.append(line)
            line = ""
        line = f"{line} {word}".strip()
    return lines + [line]


RECT = {}
STEEL = dict(tube_material="a500-b", tube_wall_mm=4.7625, tube_depth_mm=50.8)
HANGER = dict(joint="spring-hanger", tube_material="a500-b", tube_width_mm=60.0, tube_depth_mm=80.0, tube_wall_mm=3.0,
              bolt="m12", bolt_grade="iso-8.8")
TOP = dict(mount="from-top", tube_material="a500-b")
DEEP = dict(tube_material="a500-b", tube_width_mm=76.2, tube_depth_mm=101.6, bolt="m12", bolt_grade="iso-8.8")
CHAIN = dict(joint="chain-bracket", tube_width_mm=76.2, bolts_along=1, bolt_rows=2)
ROUND = dict(member="round-tube", tube_width_mm=76.2, tube_wall_mm=4.0, tube_material="a500-b", bolts_along=3)
ROUND_AL = dict(member="round-tube", tube_width_mm=101.6, tube_depth_mm=101.6, tube_wall_mm=6.35)
CHANNEL = dict(member="channel", mount="from-top", tube_depth_mm=101.6, tube_wall_mm=6.35, tube_material="a36")
ANGLE = dict(member="angle", mount="from-top", tube_width_mm=76.2, tube_wall_mm=6.35, tube_material="a36")

BACK = dict(bolts_along=3, ball_ahead_mm=175.0)
BIG = dict(bolt="unc-5.8", bolt_grade="sae-8")


def loose(sleeve, short=0.3, **more):
    return dict(support="loose-sleeve", sleeve=sleeve, sleeve_short_mm=short, **more)


def sleeve(stock, welded="yes", **more):
    return dict(support="through-sleeve", sleeve=stock, sleeve_welded=welded, **more)


def insert(**more):
    return dict(support="solid-insert", insert_material="a36", sleeve_short_mm=0.3, **more)


def plate(thick, length, **more):
    return dict(support="spreader", spreader_thickness_mm=thick, spreader_length_mm=length, **more)


SHEETS = [
    ("tightening-other-bolts", "tightening", RECT, BIG),
    ("tightening-one-more-and-clean", "tightening", {**STEEL, "faying_surface": "painted"}, {**BACK, "faying_surface": "en-c"}),
    ("tightening-channel-tapered", "tightening", CHANNEL, dict(bolt_grade="sae-8", shaped_washer="yes")),
    ("tightening-block-there", "tightening", {**STEEL, "support": "solid-insert"}, BACK),
    ("washer-rect", "thick-washer", RECT, dict(washer_outer_mm=45.0, washer_thickness_mm=9.525)),
    ("washer-angle", "thick-washer", ANGLE, dict(washer_outer_mm=45.0, washer_thickness_mm=6.35)),
    ("washer-channel", "thick-washer", CHANNEL, dict(washer_outer_mm=34.0, washer_thickness_mm=12.7, shaped_washer="yes")),
    ("plates-joined", "spreader", RECT, plate(9.525, 101.5)),
    ("plates-from-top", "spreader", TOP, plate(12.7, 76.2)),
    ("plates-hanger-clean", "spreader", {**HANGER, "faying_surface": "painted"}, plate(9.525, 120.0, faying_surface="en-c")),
    ("plates-channel", "spreader", CHANNEL, plate(4.7625, 101.5, shaped_washer="yes")),
    ("loose-filed", "loose-sleeve", RECT, loose("rt-1.250x0.250", **BIG, **BACK)),
    ("loose-faced", "loose-sleeve", HANGER, loose("rt-0.875x0.156", 0.1)),
    ("loose-sawn-from-top", "loose-sleeve", TOP, loose("rt-1.000x0.188", 2.0)),
    ("loose-steel-clean", "loose-sleeve", {**STEEL, "faying_surface": "painted"}, loose("rt-1.000x0.188", faying_surface="en-c")),
    ("through-rect", "through-sleeve", RECT, sleeve("rt-0.750x0.120", "no")),
    ("through-round", "through-sleeve", ROUND, sleeve("rt-1.000x0.188", "no")),
    ("through-top-chain", "through-sleeve", CHAIN, sleeve("rt-0.875x0.156", "no")),
    ("welded-hanger", "welded-sleeve", HANGER, sleeve("rt-0.875x0.156", bolt_grade="iso-10.9")),
    ("welded-aluminum", "welded-sleeve", RECT, sleeve("rt-0.750x0.120", sleeve_material="6061-t6")),
    ("welded-bored-bar", "welded-sleeve", RECT, sleeve("rb-1.250x0.531", sleeve_material="6061-t6")),
    ("loose-bored-bar", "loose-sleeve", RECT, loose("rb-1.250x0.531", sleeve_material="6061-t6")),
    ("welded-round", "welded-sleeve", ROUND, sleeve("rt-1.000x0.188")),
    ("welded-round-aluminum", "welded-sleeve", ROUND_AL, sleeve("rt-0.750x0.120", sleeve_material="6061-t6")),
    ("insert-steel", "solid-insert", {**STEEL, "faying_surface": "painted"}, insert(bolt_grade="sae-8", faying_surface="bare-clean")),
    ("insert-round-saddles", "solid-insert", ROUND, insert(shaped_washer="yes")),
    ("insert-round-aluminum", "solid-insert", ROUND_AL, insert(shaped_washer="yes", **BIG)),
    ("insert-deep-long-drill", "solid-insert", DEEP, insert(**BACK)),
]

if __name__ == "__main__":
    head = ("# Work sheets followed by hand, from the stock to the last turn of the wrench; read by tests/tests/sheets.rs.\n"
            "# Written by sheets/regenerate.py, which holds the sums and nothing of calc-core. Lengths in mm, drills in inches.\n\n")
    target = Path(__file__).resolve().parent.parent / "sheets.toml"
    target.write_text(head + "\n".join(Sheet(*row).toml() for row in SHEETS))

#!/usr/bin/env python3
"""Tube face, ring-loaded, with neighbours (row / pair), outward pull (one face or both),
continuous spreader plates. N, mm, MPa. Built on run_case.py (mesh helpers, dat parser).
neighbours.py NAME key=value ...   keys: id(case) kind=single|row|pair p  pull=0|both|mid|ends  tp lp Ep fyp
 load=ring|rigid  dmax(in b)  level"""
import sys, os, csv, json, math, time, subprocess
import numpy as np
from run_case import Mesh, grade, geom, parse_dat
HERE = os.path.dirname(os.path.abspath(__file__))

CASES = "cases_neighbours.csv"

def cases():
    o = {}
    for r in csv.DictReader(open(os.path.join(HERE, CASES))):
        o[r["id"]] = {k: (v if k in ("id", "set", "section") else float(v)) for k, v in r.items()}
    return o

def build(c, o):
    b, h, t, ro = c["b"], c["h"], c["t"], c["ro"]
    rh, rw = c["dh"] / 2, c["dw"] / 2
    bf = b / 2 - ro
    level = o.get("level", 1.0)
    R = lambda n: max(1, int(round(n * level)))
    nth = R(o.get("nth", 5))
    nr1 = R(max(2, min(3, (rw - rh) / t)))
    nr2 = R(max(4, min(7, 2 + (bf - rw) / (1.2 * t))))
    nc, nt = R(2), 2
    nw = R(max(4, min(8, (h / 2 - ro) / (1.8 * t))))
    full = o.get("pull") in ("mid", "ends")
    W = np.linspace(0, 1, nt + 1)
    m = Mesh()
    zf = h / 2 - t
    L = o.get("L", max(3 * b, 2 * h))
    p = o.get("p", 0) * b
    kind = o["kind"]
    sides = {"single": [(1, L)], "row": [(1, p / 2)], "pair": [(1, o.get("L", 2.5 * b)), (-1, p / 2)]}[kind]
    tp, lp = o.get("tp", 0), o.get("lp", 0) / 2
    Ur1, Ur2 = grade(nr1, 1.0, 0.5), grade(nr2, 0.35, 0.8)
    V1, V2 = np.linspace(0, 1, nth + 1), np.linspace(1, 2, nth + 1)
    Y = np.linspace(0, bf, nth + 1)
    ri, hw = ro - t, h / 2 - ro
    for s, Lx in sides:
        ax = Lx if Lx <= 1.2 * bf else bf
        first = ax / nth
        def fc(x, y, z0, th, w, s=s):
            return (s * x, y, z0 + w * th)
        def ann(z0, th):
            def f(u, v, w):
                a = v * math.pi / 4; r = rh + (rw - rh) * u
                return fc(r * math.cos(a), r * math.sin(a), z0, th, w)
            return f
        def tra(z0, th, ax=ax):
            # the corner direction follows the rectangle
            def f(u, v, w):
                a = v * math.pi / 4
                ox, oy = (ax, bf * v) if v <= 1 else (ax * (2 - v), bf)
                return fc((1 - u) * rw * math.cos(a) + u * ox, (1 - u) * rw * math.sin(a) + u * oy, z0, th, w)
            return f
        for V in (V1, V2):
            m.block(ann(zf, t), Ur1, V, W, "WASH")
            m.block(tra(zf, t), Ur2, V, W, "FACE")
        X1 = np.linspace(0, ax, nth + 1)
        X2 = None
        if Lx > ax + 1e-9:
            D = Lx - ax
            if tp and lp < Lx - 1e-6:
                n1 = max(1, int(math.ceil((lp - ax) / (1.4 * first))))
                a_ = ax + (lp - ax) * np.linspace(0, 1, n1 + 1)
                b_ = lp + (Lx - lp) * geom(R(7), min(0.3, 1.4 * first / (Lx - lp)))
                X2 = np.concatenate([a_, b_[1:]])
            else:
                n = max(1, min(R(9), int(math.ceil(D / (1.3 * first)))))
                X2 = ax + D * geom(n, 1.2 * first / D)
            m.block(lambda u, v, w: fc(u, v, zf, t, w), X2, Y, W, "FACE")
        def corner(u, v, w):
            r, a = ri + w * t, v * math.pi / 2
            return (s * u, bf + r * math.sin(a), h / 2 - ro + r * math.cos(a))
        def web(u, v, w):
            return (s * u, b / 2 - t + w * t, hw * (1 - v))
        def webl(u, v, w):
            return (s * u, b / 2 - t + w * t, -hw * (1 - v))
        def cornl(u, v, w):
            q = corner(u, v, w); return (q[0], q[1], -q[2])
        for X in (X1, X2):
            if X is None: continue
            m.block(corner, X, np.linspace(0, 1, nc + 1), W, "CORNER")
            m.block(web, X, grade(nw, 0.5, 1.0), W, "WEB")
            if full:
                m.block(cornl, X, np.linspace(0, 1, nc + 1), W, "LOW")
                m.block(webl, X, np.linspace(0, 1, 4), W, "LOW")
                m.block(lambda u, v, w: (s * u, v, -zf - w * t), X, np.linspace(0, bf, 4), W, "LOW")
        if tp:
            Wp = np.linspace(0, 1, 3)
            for V in (V1, V2):
                m.block(ann(h / 2, tp), Ur1, V, Wp, "PWASH", 1)
                m.block(tra(h / 2, tp), Ur2, V, Wp, "PLATE", 1)
            XA = X1
            if X2 is not None:
                XP = X2[X2 <= lp + 1e-6]
                if len(XP) > 1:
                    m.block(lambda u, v, w: fc(u, v, h / 2, tp, w), XP, Y, Wp, "PLATE", 1)
                    XA = np.concatenate([X1, XP[1:]])
            m.block(lambda u, v, w: fc(u, v, h / 2, tp, w), XA, np.linspace(bf, b / 2, 3), Wp, "PLATO", 1)
    return m, sides

def write(path, c, o, m, sides):
    X = np.array(m.xyz); els = m.els
    b, h, t = c["b"], c["h"], c["t"]; rw = c["dw"] / 2
    tol = 1e-6 * b + 1e-3
    al = lambda nm: {n for e in m.sets.get(nm, []) for n in els[e - 1]}
    tubesets = [k for k in ("WASH", "FACE", "CORNER", "WEB", "LOW") if k in m.sets]
    tube = set().union(*[al(k) for k in tubesets])
    plate = al("PWASH") | al("PLATE") | al("PLATO")
    tp = o.get("tp", 0); pull = o.get("pull", "0")
    out = pull != "0"
    zload = h / 2 + tp if not out else h / 2 - t
    r = np.hypot(X[:, 0], X[:, 1])
    body = plate if tp else tube
    top = [n for n in sorted(body) if abs(X[n - 1, 2] - zload) < tol and r[n - 1] <= rw + tol]
    if o.get("load", "ring") == "ring":
        top = [n for n in top if r[n - 1] >= rw - tol]
    ids = range(1, len(X) + 1)
    sx = set()
    if o["kind"] != "pair":
        sx |= {n for n in ids if abs(X[n - 1, 0]) < tol}
    if o["kind"] == "row":
        sx |= {n for n in ids if abs(X[n - 1, 0] - sides[0][1]) < tol and not (o.get("cut") and n in plate)}
    if o["kind"] == "pair":
        sx |= {n for n in ids if abs(X[n - 1, 0] + sides[1][1]) < tol}
    sy = {n for n in ids if abs(X[n - 1, 1]) < tol}
    if pull == "mid":
        sz = {n for n in tube if abs(X[n - 1, 2]) < tol and abs(X[n - 1, 1] - (b / 2 - t / 2)) < tol}
    elif pull == "ends":
        sz = {n for n in tube if abs(X[n - 1, 0] - sides[0][1]) < tol}
    else:
        sz = {n for n in tube if abs(X[n - 1, 2]) < tol}
    def near(q, pool):
        pool = list(pool); d = np.linalg.norm(X[np.array(pool) - 1] - np.array(q), axis=1)
        return pool[int(np.argmin(d))]
    track = dict(load_node=near((0, rw, zload), top), web_top=near((0, b / 2 - t / 2, h / 2 - c["ro"]), tube),
                 web_mid=near((0, b / 2 - t / 2, 0), tube), hole=near((0, c["dh"] / 2, zload), body),
                 bottom=near((0, 0, -h / 2), tube))
    with open(path, "w") as f:
        f.write("*NODE,NSET=NALL\n")
        for n, p in enumerate(m.xyz, 1): f.write("%d,%.7g,%.7g,%.7g\n" % (n, *p))
        f.write("*ELEMENT,TYPE=C3D20R,ELSET=EALL\n")
        for n, e in enumerate(els, 1):
            s = [n] + e
            f.write(",".join(map(str, s[:11])) + ",\n" + ",".join(map(str, s[11:])) + "\n")
        def setw(k, nm, l):
            l = sorted(l); f.write("*%s,%s=%s\n" % (k, k, nm))
            for i in range(0, len(l), 10): f.write(",".join(map(str, l[i:i + 10])) + ",\n")
        setw("ELSET", "TUBE", sum((m.sets[k] for k in tubesets), []))
        setw("NSET", "SX", sx); setw("NSET", "SY", sy); setw("NSET", "SZ", sz); setw("NSET", "TOP", top)
        setw("NSET", "TRACK", set(track.values()))
        def mat(nm, E, fy, nu):
            f.write("*MATERIAL,NAME=%s\n*ELASTIC\n%g,%g\n*PLASTIC\n%g,0.\n%g,1.\n" % (nm, E, nu, fy, fy + E / 1000.))
        mat("MT", c["E"], c["fy"], c["nu"])
        f.write("*SOLID SECTION,ELSET=TUBE,MATERIAL=MT\n")
        if tp:
            setw("ELSET", "SPREAD", sum((m.sets.get(k, []) for k in ("PWASH", "PLATE", "PLATO")), []))
            mat("MP", o.get("Ep", 200000), o.get("fyp", 317), 0.3)
            f.write("*SOLID SECTION,ELSET=SPREAD,MATERIAL=MP\n")
            pn = {(round(X[n - 1, 0] * 500), round(X[n - 1, 1] * 500)): n for n in plate if abs(X[n - 1, 2] - h / 2) < tol}
            k_ = 0
            for n in sorted(tube):
                k = (round(X[n - 1, 0] * 500), round(X[n - 1, 1] * 500))
                if abs(X[n - 1, 2] - h / 2) < tol and X[n - 1, 1] <= b / 2 - c["ro"] + tol and k in pn:
                    f.write("*EQUATION\n2\n%d,3,1.,%d,3,-1.\n" % (n, pn[k])); k_ += 1
            print("tied", k_)
        f.write("*BOUNDARY\nSX,1,1\nSY,2,2\nSZ,3,3\n")
        stops = [(1e-4 * b, 1, 1), (0.01 * b, 0.2, 0.3), (0.03 * b, 0.25, 0.4)]
        if o.get("six"): stops.append((0.06 * b, 0.34, 0.5))
        for n, (d, i0, im) in enumerate(stops):
            f.write("*STEP,NLGEOM,INC=400\n*STATIC,SOLVER=SPOOLES\n%g,1.,%g,%g\n" % (i0, 0.2 if n == 0 else 1e-4, im))
            f.write("*BOUNDARY\nTOP,3,3,%.8g\n" % (d if out else -d))
            f.write("*NODE PRINT,NSET=SZ,TOTALS=ONLY\nRF\n*NODE PRINT,NSET=TRACK\nU\n")
            f.write("*EL PRINT,ELSET=TUBE%s\nS\n" % ("" if n == 0 else ",FREQUENCY=999"))
            f.write("*END STEP\n")
    return track

def ccx(wd):
    env = dict(os.environ, OMP_NUM_THREADS="1", CCX_NPROC_EQUATION_SOLVER="1")
    t0 = time.time()
    with open(os.path.join(wd, "log"), "w") as lg:
        subprocess.call(["nice", "ccx", "m"], cwd=wd, stdout=lg, stderr=lg, env=env)
    for f in ("m.frd", "m.12d", "m.cvg", "spooles.out"):
        q = os.path.join(wd, f)
        if os.path.exists(q): os.remove(q)
    return time.time() - t0, "Job finished" in open(os.path.join(wd, "log")).read()

def main():
    name = sys.argv[1]; o = {}
    for a in sys.argv[2:]:
        k, v = a.split("=")
        try: o[k] = float(v) if k not in ("id", "pull") else v
        except ValueError: o[k] = v
    c = dict(cases()[o["id"]])
    for k in list(o):
        if k.startswith("c_"): c[k[2:]] = o[k]
    wd = os.path.join(HERE, "scratch", name); os.makedirs(wd, exist_ok=True)
    m, sides = build(c, o)
    track = write(os.path.join(wd, "m.inp"), c, o, m, sides)
    if o.get("mesh"): print(len(m.xyz), len(m.els)); return
    wall, done = ccx(wd)
    mult = 2 if o["kind"] == "pair" else 4
    b = c["b"]
    curT, pend, cur, vm = None, {}, [(0., 0., None)], 0.
    def flush():
        if "F" in pend and "tr" in pend:
            tr = pend["tr"]
            ref = tr["web_mid"][2] if o.get("pull") in ("mid", "ends") else 0.
            cur.append((abs(tr["load_node"][2] - ref), pend["F"], tr))
        pend.clear()
    for tm, kd, st, rows in parse_dat(os.path.join(wd, "m.dat")):
        if curT is None or abs(tm - curT) > 1e-12: flush(); curT = tm
        if kd == "RF": pend["F"] = mult * abs(rows[0][2])
        elif kd == "U":
            d = {int(q[0]): q[1:4] for q in rows}; pend["tr"] = {k: d[n] for k, n in track.items()}
        elif kd == "S" and len(cur) == 1:      # first increment only
            for q in rows:
                a, b_, c_, d_, e_, f_ = q[2:8]
                vm = max(vm, math.sqrt(.5 * ((a - b_) ** 2 + (b_ - c_) ** 2 + (c_ - a) ** 2) + 3 * (d_ ** 2 + e_ ** 2 + f_ ** 2)))
    flush()
    d = np.array([q[0] for q in cur]); F = np.array([q[1] for q in cur])
    at = lambda x: float(np.interp(x, d, F)) if x <= d[-1] * 1.0001 else (float(F[-1]) if x <= d[-1] * 1.002 else None)
    res = dict(ke=F[1] / d[1], F1=at(.01 * b), F3=at(.03 * b), F6=at(.06 * b) if o.get("six") else None, dmax=float(d[-1]),
               wt3=float(-np.interp(.03 * b, d, [0 if q[2] is None else q[2]["web_top"][2] for q in cur]) / (.03 * b)),
               wm3=float(np.interp(.03 * b, d, [0 if q[2] is None else q[2]["web_mid"][1] for q in cur]) / c["t"]),
               Ffy=F[1] * c["fy"] / vm if vm else None, complete=done, wall=round(wall, 1), nodes=len(m.xyz), els=len(m.els))
    json.dump(dict(name=name, case=c, opts=o, results=res, curve=[(q[0], q[1]) for q in cur],
                   last={k: v for k, v in (cur[-1][2] or {}).items()}), open(os.path.join(HERE, "out", name + ".json"), "w"))
    print(name, json.dumps({k: (round(v, 4) if isinstance(v, float) else v) for k, v in res.items()}), flush=True)

if __name__ == "__main__":
    main()

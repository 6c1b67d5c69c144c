#!/usr/bin/env python3
"""Leg of an angle / flange of a channel pulled at a bolt by a washer ring. N, mm, MPa.
Half model: x >= 0 (symmetry at x=0, bolt at (0, g)); y from the heel/back (0) to the free edge (B);
z: the flange fills 0..t, the upright part stands up from it (y 0..tw). The ring (r = dw/2, on the inner
surface z = t) is pushed down: the flange is pulled away from the upright part. Nothing under the flange.
flange.py NAME B= t= g= tw= c=(root chamfer leg) H=(0: fixed at root, else upright fixed at z=H) dh= dw=
  E= fy= nu= tilt=1 (ring stays plane, free to turn about x) | 0 (ring does not turn)  p=(row pitch, 0 single) L=
  taper=(flange thickness slope, growing to the web; t at the bolt)"""
import sys, os, json, math
import numpy as np
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "fe"))
from neighbours import ccx
from run_case import Mesh, grade, geom, parse_dat

def main():
    name = sys.argv[1]
    o = dict(B=50., t=5., g=30., tw=5., c=0., H=0., dh=13.5, dw=24., E=210000., fy=235., nu=.3, tilt=1., p=0., L=0., nth=5., taper=0., lat=0.)
    for a in sys.argv[2:]:
        k, v = a.split("="); o[k] = float(v)
    B, t, g, tw, ch, H = (o[k] for k in ("B", "t", "g", "tw", "c", "H"))
    rh, rw = o["dh"] / 2, o["dw"] / 2
    L = o["p"] / 2 if o["p"] else (o["L"] or 5 * g)
    nth = int(o["nth"]); nt = int(o.get('nt', 2))
    W = np.linspace(0, 1, nt + 1)
    m = Mesh()
    s1 = min(g - tw - ch, 1.7 * rw)              # towards the root
    s2 = min(B - g, 1.7 * rw)
    sx = min(L, max(1.5 * rw, min(s1, s2)))
    if L < 1.2 * sx: sx = L
    def top(y):
        z = t + o["taper"] * (g - y) if y < g else t - o["taper"] * (y - g)
        if y < tw + ch - 1e-9: z += (tw + ch - y)
        return z
    def plate(x, y, w): return (x, y, w * top(y))
    U1, U2 = grade(max(2, int(round((rw - rh) / (0.5 * t)))) if rw - rh < 2 * t else 3, 1, .6), grade(5, .4, .8)
    def ann(u, v, w):
        a = v * math.pi / 4; r = rh + (rw - rh) * u
        return plate(r * math.cos(a), g + r * math.sin(a), w)
    def tra(u, v, w):
        a = v * math.pi / 4
        if v <= -1: ox, oy = sx * (2 + v), -s1
        elif v <= 0: ox, oy = sx, s1 * v
        elif v <= 1: ox, oy = sx, s2 * v
        else: ox, oy = sx * (2 - v), s2
        return plate((1 - u) * rw * math.cos(a) + u * ox, g + (1 - u) * rw * math.sin(a) + u * oy, w)
    for k in (-2, -1, 0, 1):
        V = np.linspace(k, k + 1, nth + 1)
        m.block(ann, U1, V, W, "WASH"); m.block(tra, U2, V, W, "FACE")
    X1 = np.linspace(0, sx, nth + 1)
    X2 = None
    if L > sx + 1e-6:
        D = L - sx; f0 = 1.2 * sx / nth
        X2 = sx + D * geom(max(1, min(11, int(math.ceil(D / f0)))), f0 / D)
    Yg = np.concatenate([g - s1 + s1 * np.linspace(0, 1, nth + 1), (g + s2 * np.linspace(0, 1, nth + 1))[1:]])
    if X2 is not None:
        m.block(plate, X2, Yg, W, "FACE")
    Yroot = []
    y0, y1 = tw + ch, g - s1
    if y1 > y0 + 1e-6: Yroot.append((np.linspace(y0, y1, max(1, int(round((y1 - y0) / (0.5 * t)))) + 1), "ROOT"))
    if ch > 0: Yroot.append((np.linspace(tw, tw + ch, 3), "CHAM"))
    Yroot.append((np.linspace(0, tw, 3), "HEEL"))
    if B > g + s2 + 1e-6: Yroot.append((np.linspace(g + s2, B, max(1, int(round((B - g - s2) / (2 * t)))) + 1), "EDGE"))
    # HEEL: flat on top at z = t + ch, so that the upright part can stand on it
    def heel(x, y, w): return (x, y, w * (top(tw)))
    zt = top(tw)
    for X in (X1, X2):
        if X is None: continue
        for Y, nm in Yroot:
            m.block(heel if nm == "HEEL" else plate, X, Y, W, nm)
        if H:
            Z = np.concatenate([[zt], zt + (H - zt) * np.linspace(0, 1, max(2, int(round((H - zt) / (1.5 * tw)))) + 1)[1:]])
            m.block(lambda u, v, w: (u, tw * w, v), X, Z, np.linspace(0, 1, 3), "UP")
    P = np.array(m.xyz); els = m.els
    r = np.hypot(P[:, 0], P[:, 1] - g)
    tol = 2e-3
    ids = range(1, len(P) + 1)
    wn = {n for e in m.sets["WASH"] for n in els[e - 1]}
    ring = [n for n in sorted(wn) if abs(r[n - 1] - rw) < tol and abs(P[n - 1, 2] - top(P[n - 1, 1])) < tol]
    sxn = [n for n in ids if abs(P[n - 1, 0]) < tol or (o["p"] and abs(P[n - 1, 0] - L) < tol)]
    ztop = H if H else zt
    fix = [n for n in ids if abs(P[n - 1, 2] - ztop) < tol and P[n - 1, 1] <= tw + tol]
    nA, nB = len(P) + 1, len(P) + 2
    wd = os.path.join(HERE, "scratch", name); os.makedirs(wd, exist_ok=True)
    near = lambda q: int(np.argmin(np.linalg.norm(P - np.array(q), axis=1))) + 1
    tr = dict(edge=near((0, B, t)), r1=near((0, g - rw, t)), r2=near((0, g + rw, t)), heel=near((0, 0, 0)))
    dmax = [1e-3 * g, .01 * g, .03 * g, .06 * g] + ([.12 * g, .2 * g] if o.get('big') else [])
    with open(os.path.join(wd, "m.inp"), "w") as f:
        f.write("*NODE,NSET=NALL\n")
        for n, p in enumerate(m.xyz, 1): f.write("%d,%.7g,%.7g,%.7g\n" % (n, *p))
        if o["tilt"]: f.write("%d,0,%g,%g\n%d,0,%g,%g\n" % (nA, g, t + 50, nB, g, t + 60))
        f.write("*ELEMENT,TYPE=C3D20R,ELSET=EALL\n")
        for n, e in enumerate(els, 1):
            s = [n] + e
            f.write(",".join(map(str, s[:11])) + ",\n" + ",".join(map(str, s[11:])) + "\n")
        def setw(k, nm, l):
            l = sorted(set(l)); f.write("*%s,%s=%s\n" % (k, k, nm))
            for i in range(0, len(l), 10): f.write(",".join(map(str, l[i:i + 10])) + ",\n")
        setw("NSET", "SX", sxn); setw("NSET", "FIX", fix); setw("NSET", "RING", ring)
        setw("NSET", "TRACK", list(tr.values()) + ([nA, nB] if o["tilt"] else [ring[0]]))
        f.write("*MATERIAL,NAME=MT\n*ELASTIC\n%g,%g\n*PLASTIC\n%g,0.\n%g,1.\n" % (o["E"], o["nu"], o["fy"], o["fy"] + o["E"] / 1000))
        f.write("*SOLID SECTION,ELSET=EALL,MATERIAL=MT\n")
        if o["tilt"]:
            for n in ring:
                f.write("*EQUATION\n3\n%d,3,1.,%d,3,-1.,%d,3,%.8g\n" % (n, nA, nB, -(P[n - 1, 1] - g)))
        f.write("*BOUNDARY\nSX,1,1\nFIX,1,3\n")
        if o["tilt"]: f.write("%d,1,2\n%d,1,2\n" % (nA, nB))
        if o["lat"]: f.write("RING,2,2\n")
        for i, d in enumerate(dmax):
            f.write("*STEP,NLGEOM,INC=300\n*STATIC,SOLVER=SPOOLES\n%g,1.,%g,%g\n" % ((1, .2, 1) if i == 0 else (.3, 1e-4, .5)))
            f.write("*BOUNDARY\n%s,3,3,%.8g\n" % (nA if o["tilt"] else "RING", -d))
            f.write("*NODE PRINT,NSET=FIX,TOTALS=ONLY\nRF\n*NODE PRINT,NSET=TRACK\nU\n")
            f.write("*EL PRINT,ELSET=EALL%s\nS\n" % ("" if i == 0 else ",FREQUENCY=999"))
            f.write("*END STEP\n")
    print(name, "nodes", len(P), "els", len(els), "ring", len(ring), "fix", len(fix), flush=True)
    if o.get("mesh"): return
    wall, done = ccx(wd)
    e2s = {e: k for k, v in m.sets.items() for e in v if "_" not in k}
    cur, pend, curT, vm = [(0., 0.)], {}, None, {}
    last = {}
    def flush():
        if "F" in pend and "d" in pend: cur.append((pend["d"], pend["F"]))
        pend.clear()
    for tm, kd, st, rows in parse_dat(os.path.join(wd, "m.dat")):
        if curT is None or abs(tm - curT) > 1e-12: flush(); curT = tm
        if kd == "RF": pend["F"] = 2 * abs(rows[0][2])
        elif kd == "U":
            d = {int(q[0]): q[1:4] for q in rows}
            pend["d"] = -d[nA][2] if o["tilt"] else -d[ring[0]][2]
            last = {k: d[n] for k, n in tr.items()}
            if o["tilt"]: last["turn"] = d[nB][2]
        elif kd == "S" and len(cur) == 1:
            for q in rows:
                a, b_, c_, d_, e_, f_ = q[2:8]
                v = math.sqrt(.5 * ((a - b_) ** 2 + (b_ - c_) ** 2 + (c_ - a) ** 2) + 3 * (d_ ** 2 + e_ ** 2 + f_ ** 2))
                k = e2s[int(q[0])]; vm[k] = max(vm.get(k, 0), v)
    flush()
    d = np.array([q[0] for q in cur]); F = np.array([q[1] for q in cur])
    at = lambda x: float(np.interp(x, d, F)) if x <= d[-1] * 1.001 else None
    ke = F[1] / d[1]
    gg = F - .5 * ke * d
    tes = None
    for i in range(2, len(d)):
        if gg[i] <= 0 < gg[i - 1]:
            s = gg[i - 1] / (gg[i - 1] - gg[i]); tes = float(F[i - 1] + s * (F[i] - F[i - 1])); break
    res = dict(ke=ke, Fy_root=F[1] * o["fy"] / max(v for k, v in vm.items() if k in ("ROOT", "CHAM", "HEEL", "UP")),
               Fy_any=F[1] * o["fy"] / max(vm.values()), where=max(vm, key=vm.get),
               F1=at(.01 * g), F3=at(.03 * g), F6=at(.06 * g), F12=at(.12 * g), F20=at(.2 * g), F_tes=tes, dmax=float(d[-1]),
               complete=done, wall=round(wall, 1), nodes=len(P), els=len(els))
    json.dump(dict(name=name, opts=o, results=res, curve=cur, last=last, vm=vm), open(os.path.join(HERE, "out", name + ".json"), "w"))
    print(name, json.dumps({k: (round(v, 3) if isinstance(v, float) else v) for k, v in res.items()}), flush=True)

if __name__ == "__main__":
    main()

"""Reads problems as JSON on standard input, writes the optimum of each on a line.

An integer programme, solved by HiGHS through scipy, made from the statement
of the problem alone: every terminal has one unit of flow from the root, on
the turns from half-arc to half-arc; an arc is open, once for both ways, if
any flow travels it. With the arcs open or not, the cheapest flow is a path,
so only the arcs need whole numbers. Where an arc's price has holes, every so many
cables pay for another one, and flows there are whole as well.
"""

import json
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_matrix

OPPOSITE = {"east": "west", "west": "east", "north": "south", "south": "north", "up": "down", "down": "up", "": ""}


class Rows:
    """Rows of a constraint matrix."""

    def __init__(self):
        self.row, self.col, self.val, self.low, self.high = [], [], [], [], []

    def add(self, terms, low, high):
        for col, val in terms:
            self.row.append(len(self.low))
            self.col.append(col)
            self.val.append(val)
        self.low.append(low)
        self.high.append(high)

    def constraint(self, columns):
        shape = (len(self.low), columns)
        return LinearConstraint(csr_matrix((self.val, (self.row, self.col)), shape), self.low, self.high)


def halves(problem):
    """All (from, to, heading, arc), each arc both ways."""
    out = []
    for i, a in enumerate(problem["arcs"]):
        out.append((a["from"], a["to"], a["heading"], i))
        out.append((a["to"], a["from"], OPPOSITE[a["heading"]], i))
    return out


def turns(problem, half):
    """All (half-arc, half-arc, bend) that a cable may take one after the other."""
    leaves = {t["node"] for t in problem["terminals"]}
    leaving = {}
    for h, (start, _, _, _) in enumerate(half):
        leaving.setdefault(start, []).append(h)
    out = []
    for h, (_, at, way, arc) in enumerate(half):
        if at in leaves:
            continue
        for g in leaving.get(at, []):
            onward = half[g][2]
            if half[g][3] == arc or way and onward == OPPOSITE[way]:
                continue
            out.append((h, g, bool(way and onward and way != onward) * problem["bend"][at]))
    return out


def optimum(problem):
    half = halves(problem)
    turn = turns(problem, half)
    cost = [a["fixed"] for a in problem["arcs"]]
    most = [1] * len(cost)
    rows = Rows()
    carried = {}
    for i, a in enumerate(problem["arcs"]):
        if a.get("takes"):
            carried[i] = [(len(cost), a["takes"])]
            rows.add([(len(cost), 1), (i, -1)], 0, np.inf)
            cost[i] -= a.get("hole", 0)
            cost.append(a.get("hole", 0))
            most.append(a["holes"])
    whole = set(range(len(cost)))
    for t in problem["terminals"]:
        q, into, outof = t["cables"], {}, {}
        start, stop = [], []
        for h, g, bend in turn:
            into.setdefault(g, []).append((len(cost), 1))
            outof.setdefault(h, []).append((len(cost), 1))
            cost.append(q * bend)
        for h, (begin, end, _, arc) in enumerate(half):
            if begin == problem["root"]:
                start.append((len(cost), 1))
                into.setdefault(h, []).append((len(cost), 1))
                cost.append(0)
            if end == t["node"]:
                stop.append((len(cost), 1))
                outof.setdefault(h, []).append((len(cost), 1))
                cost.append(0)
            travel = (len(cost), -1)
            if arc in carried:
                whole.add(len(cost))
                carried[arc].append((len(cost), -q))
            cost.append(q * problem["arcs"][arc]["per_cable"])
            rows.add(into.get(h, []) + [travel], 0, 0)
            rows.add(outof.get(h, []) + [travel], 0, 0)
            rows.add([travel, (arc, 1)], 0, np.inf)
        rows.add(start, 1, 1)
        rows.add(stop, 1, 1)
    for terms in carried.values():
        rows.add(terms, 0, np.inf)
    result = milp(
        cost,
        integrality=[i in whole for i in range(len(cost))],
        bounds=Bounds(0, most + [1] * (len(cost) - len(most))),
        constraints=rows.constraint(len(cost)),
        options={"mip_rel_gap": 0},
    )
    if result.status != 0:
        raise SystemExit(result.message)
    return round(result.fun)


for line in json.load(sys.stdin):
    print(optimum(line), flush=True)

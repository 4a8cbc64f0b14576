#!/usr/bin/env python3
"""Short geodesics on WGS-84 by GeographicLib's GeodSolve (Debian: geographiclib-tools).

    python3 make.py > steps.csv

Steps of 0.5 m to 50 km at random latitudes and courses, at the equator, at and over the poles, and across 180 degrees.
"""
import random
import subprocess

random.seed(20260501)


def solve(option, lines):
    out = subprocess.run(["GeodSolve", *option], input="\n".join(lines), capture_output=True, text=True, check=True)
    return [line.split() for line in out.stdout.splitlines()]


starts = []
for step in (0.5, 3, 30, 500, 5000, 50000):
    for _ in range(12):
        starts.append((random.uniform(-89, 89), random.uniform(-180, 180), random.uniform(0, 360), step))
    starts += [(0, 30, 0, step), (0, 30, 90, step), (0, 30, 45, step)]
    starts += [(90, 0, 10, step), (-90, 0, 200, step), (89.99999, 20, 15, step), (-89.9999, 20, 170, step)]
    starts += [(20, 179.999999, 80, step), (-41, -179.999999, 265, step), (0, 180, 270, step)]

ends = solve(["-p", "9"], ["%.12f %.12f %.6f %.3f" % s for s in starts])
pairs = ["%.12f %.12f %.12f %.12f" % (s[0], s[1], float(e[0]), float(e[1])) for s, e in zip(starts, ends)]
print("latitude1,longitude1,latitude2,longitude2,metres")
for pair, inverse in zip(pairs, solve(["-i", "-p", "6"], pairs)):
    print(pair.replace(" ", ",") + "," + inverse[2])

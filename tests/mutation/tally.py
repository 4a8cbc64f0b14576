#!/usr/bin/env python3
"""Reads mutation reports: python3 tests/mutation/tally.py StrykerOutput/*/found.json

Prints, for each folder, how many mutants were tried and how many were noticed, then every survivor with its line and its change."""
import collections
import json
import sys

tried, noticed = collections.Counter(), collections.Counter()
survivors = []
for path in sys.argv[1:]:
    for name, file in json.load(open(path, encoding="utf-8"))["files"].items():
        short = name.replace("\\", "/").split("src/")[-1]
        for mutant in file["mutants"]:
            if mutant["status"] not in ("Killed", "Timeout", "Survived", "NoCoverage"):
                continue
            folder = short.rsplit("/", 1)[0]
            tried[folder] += 1
            noticed[folder] += mutant["status"] in ("Killed", "Timeout")
            if mutant["status"] in ("Survived", "NoCoverage"):
                line = mutant["location"]["start"]["line"]
                source = file["source"].split("\n")[line - 1].strip()
                survivors.append((short, line, mutant["status"], mutant["mutatorName"], source[:100], mutant.get("replacement", "")[:80]))

print("| folder | mutants | noticed |\n|---|---|---|")
for folder in sorted(tried):
    print(f"| {folder} | {tried[folder]} | {100 * noticed[folder] / tried[folder]:.0f} % |")
print(f"| all | {sum(tried.values())} | {100 * sum(noticed.values()) / max(1, sum(tried.values())):.0f} % |\n")
for short, line, status, mutator, source, replacement in sorted(survivors):
    print(f"{short}:{line} {status} {mutator}\n    {source}\n    -> {' '.join(replacement.split())}")

#!/usr/bin/env python3
"""Decodes a FIT workout by the published protocol, with Python's standard library alone, and prints a table.

Run here:  ./read-workout.py workout.fit > workout.csv
Shares nothing with the program: definitions are followed as the file states them, checksums are computed bit by bit.
"""
import datetime
import struct
import sys


def check(data):
    value = 0
    for byte in data:
        value ^= byte
        for _ in range(8):
            value = (value >> 1) ^ 0xA001 if value & 1 else value >> 1
    return value


def messages(data):
    header, size = data[0], struct.unpack_from("<I", data, 4)[0]
    assert data[8:12] == b".FIT" and len(data) == header + size + 2, "not one whole FIT file"
    assert check(data[:12]) == struct.unpack_from("<H", data, 12)[0], "header check"
    assert check(data[:-2]) == struct.unpack_from("<H", data, len(data) - 2)[0], "file check"
    codes = {0x00: "B", 0x02: "B", 0x84: "H", 0x86: "I"}
    at, local = header, {}
    while at < header + size:
        head = data[at]
        at += 1
        if head & 0x40:
            order = ">" if data[at + 1] else "<"
            number, count = struct.unpack_from(order + "H", data, at + 2)[0], data[at + 4]
            fields = [tuple(data[at + 5 + 3 * i:at + 8 + 3 * i]) for i in range(count)]
            local[head & 15] = (order, number, fields)
            at += 5 + 3 * count
            continue
        order, number, fields = local[head & 15]
        values = {}
        for field, length, kind in fields:
            raw = data[at:at + length]
            at += length
            values[field] = raw.split(b"\0")[0].decode() if kind == 7 else struct.unpack(order + codes[kind], raw)[0]
        yield number, values


for number, values in messages(open(sys.argv[1], "rb").read()):
    if number == 0:
        made = datetime.datetime(1989, 12, 31) + datetime.timedelta(seconds=values[4])
        print(f"file,{values[0]},{values[1]},{made.isoformat()}")
    elif number == 26:
        print(f"workout,{values[4]},{values[6]},{values[8]}")
    elif number == 27:
        kind = {0: "active", 1: "rest", 2: "warm-up", 3: "cool-down"}[values[7]]
        until, scale = {0: ("time", 1000), 1: ("distance", 100), 5: ("open", None)}[values[1]]
        print(f"{values[254]},{kind},{until},{values[2] / scale if scale else ''},{values[0]}")

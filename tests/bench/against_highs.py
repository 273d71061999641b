#!/usr/bin/env python3
"""The same plans by our solver and by HiGHS, directly and through scipy, in one run.

Needs numpy, scipy (1.17.1) and highspy (1.16.0): python3 -m venv V && V/bin/pip install numpy scipy highspy
Run from the root of the project: V/bin/python tests/bench/against_highs.py [shared]
"""

import json
import pathlib
import subprocess
import sys
import tempfile
import time

import highspy
import numpy
import scipy.optimize
import scipy.sparse

# Seconds: as our bench allows itself where the share is of what is planted.
LONGEST_S, LONGEST_PLANTED_S = 60.0, 10.0


def program(instance):
    """Values, and rows as (columns, times, limit): the model in the words of tests/reference/matching.json."""
    value, ways = instance["value"], []
    for group in instance["groups"]:
        for bed in instance["beds"]:
            for opening in bed["open"]:
                if opening["species"] != group["species"]:
                    continue
                for week in range(max(group["ready_week"], opening["from_week"]), min(group["last_week"], opening["until_week"]) + 1):
                    worth = (value["base"] - value["wait_penalty_per_week"][group["species"]] * (week - group["ready_week"])
                             - value["mismatch"][group["species"]][bed["id"]] - value["block_distance"][group["block"]][bed["id"]])
                    ways.append((group, bed, opening, week, worth))
    rows = {}

    def add(key, column, times, limit):
        rows.setdefault(key, ([], [], limit))
        rows[key][0].append(column)
        rows[key][1].append(times)

    share, of_planted = round(instance["max_source_share"] * 100), instance["share_basis"] == "assigned"
    sources = sorted({group["source"] for group in instance["groups"]})
    for column, (group, bed, opening, week, _) in enumerate(ways):
        add(("group", group["id"]), column, 1, group["supply"])
        add(("opening", bed["id"], opening["species"]), column, 1, opening["positions"])
        add(("week", week), column, 1, instance["labour_per_week"][week - 1])
        if share < 100 and not of_planted:
            positions = sum(each["positions"] for each in bed["open"])
            add(("source", bed["id"], group["source"]), column, 1, share * positions // 100)
        if share < 100 and of_planted:
            for source in sources:
                add(("source", bed["id"], source), column, (100 if source == group["source"] else 0) - share, 0)
    return [way[4] for way in ways], list(rows.values())


def by_scipy(worths, rows, longest):
    at = [number for number, row in enumerate(rows) for _ in row[0]]
    columns = [column for row in rows for column in row[0]]
    times = [each for row in rows for each in row[1]]
    matrix = scipy.sparse.csr_array((times, (at, columns)), shape=(len(rows), len(worths)))
    limits = numpy.array([row[2] for row in rows], float)
    begun = time.perf_counter()
    found = scipy.optimize.milp(-numpy.array(worths, float), integrality=numpy.ones(len(worths)),
                                constraints=scipy.optimize.LinearConstraint(matrix, -numpy.inf, limits),
                                options={"mip_rel_gap": 0, "time_limit": longest})
    return time.perf_counter() - begun, None if found.x is None else round(-found.fun), found.status == 0


def direct(worths, rows, longest):
    matrix = highspy.HighsLp()
    matrix.num_col_, matrix.num_row_ = len(worths), len(rows)
    matrix.sense_ = highspy.ObjSense.kMaximize
    matrix.col_cost_ = numpy.array(worths, float)
    matrix.col_lower_, matrix.col_upper_ = numpy.zeros(len(worths)), numpy.full(len(worths), highspy.kHighsInf)
    matrix.row_lower_ = numpy.full(len(rows), -highspy.kHighsInf)
    matrix.row_upper_ = numpy.array([row[2] for row in rows], float)
    matrix.a_matrix_.num_col_, matrix.a_matrix_.num_row_ = len(worths), len(rows)
    matrix.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    matrix.a_matrix_.start_ = numpy.cumsum([0] + [len(row[0]) for row in rows]).astype(numpy.int32)
    matrix.a_matrix_.index_ = numpy.array([column for row in rows for column in row[0]], numpy.int32)
    matrix.a_matrix_.value_ = numpy.array([each for row in rows for each in row[1]], float)
    matrix.integrality_ = [highspy.HighsVarType.kInteger] * len(worths)
    solver = highspy.Highs()
    for option, value in (("output_flag", False), ("threads", 1), ("mip_rel_gap", 0.0), ("time_limit", longest)):
        solver.setOptionValue(option, value)
    solver.passModel(matrix)
    begun = time.perf_counter()
    solver.run()
    seconds = time.perf_counter() - begun
    proven = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    objective = solver.getInfo().objective_function_value
    return seconds, round(objective) if abs(objective) < 1e15 else None, proven


def main():
    with tempfile.TemporaryDirectory() as folder:
        asked = ["cargo", "bench", "-q", "--bench", "matching", "--", *sys.argv[1:], "write", folder]
        printed = subprocess.run(asked, check=True, capture_output=True, text=True).stdout
        ours = {}
        for line in printed.splitlines()[2:]:
            name, *figures = [part.strip() for part in line.strip("| ").split("|")]
            ours[name.replace(" ", "_").replace(",", "_")] = (name, figures)
        print("| instance | ours, s | direct, s | scipy, s | better of both : ours | ours | other |")
        print("| --- | --- | --- | --- | --- | --- | --- |")
        name, figures = next(iter(ours.values()))
        print(f"| {name} | {figures[0]} | | | | {figures[1]} | |")
        for file in sorted(pathlib.Path(folder).iterdir()):
            worths, rows = program(json.loads(file.read_text()))
            name, (seconds, objective, bound) = ours[file.stem]
            longest = LONGEST_PLANTED_S if "planted" in name else LONGEST_S
            direct_s, other, done = direct(worths, rows, longest)
            scipy_s, again, done_too = by_scipy(worths, rows, longest)
            if done and done_too:
                assert other == again, (name, other, again)
            if done and objective == bound:
                assert other == int(objective), (name, other, objective)
            proof = "" if objective == bound else f" (at most {int(bound) - int(objective)} better)"
            factor = min(direct_s, scipy_s) / float(seconds)
            unproven = "" if done else " (not proven)"
            print(f"| {name} | {seconds} | {direct_s:.4f} | {scipy_s:.4f} | {factor:.1f} | {objective}{proof} | {other}{unproven} |", flush=True)


main()

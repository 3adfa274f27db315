#!/usr/bin/env python3
"""A ceiling on the error of the times, over real recordings.

    check_time.py PROGRAM FOLDER

FOLDER holds `sample.tsv`: public-domain sentences with the seconds of their recordings. The ceilings
are the goals of the study for a calibrated reader's sentences (10.3 and 26.5 %) and, uncalibrated, the
figures of this model on all of that reader's sentences with a little air (16.0 / 25.1 measured).
"""
import os
import sys

os.environ["SAYLINE"] = sys.argv[1]
import judge_calibrated  # noqa: E402 (it reads the variable)

CEILINGS = {"nobody timed": (18.0, 28.0), "calibrated": (10.3, 26.5)}
LEAST_INSIDE = {"nobody timed": 60, "calibrated": 80}


def main():
    failed = False
    for name, table in judge_calibrated.tables(sys.argv[2]).items():
        for (source, length), (median, ninetieth, inside, count) in table.items():
            print(f"{name}: {source} {length}: {median:.1f} / {ninetieth:.1f}, "
                  f"{inside:.0f} % inside, {count} items")
            most = CEILINGS[name]
            if median > most[0] or ninetieth > most[1] or inside < LEAST_INSIDE[name]:
                print(f"  at most {most[0]} / {most[1]}, at least {LEAST_INSIDE[name]} % inside")
                failed = True
    sys.exit(failed)


main()

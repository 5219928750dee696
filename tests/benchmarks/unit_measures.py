"""Writes the table of usual units behind ``grading.unit_spellings``, with what pint says of each.

Run it after a change of the spellings or of pint: ``python tests/benchmarks/unit_measures.py``.
"""

import csv
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]

from grading import unit_spellings as units  # noqa: E402, after the path is set

# Beside every unit alone, and with the powers 2 and 3 where it is a length.
LENGTHS = ("mm", "cm", "m", "um", "in", "ft")
TOGETHER = """
N/mm2 kN/mm2 N/m2 N/cm2 N/mm kN/mm N/m kN/m J/mm2 J/cm2 J/m2 kJ/mm2 kJ/m2 J/mm kJ/mm J/cm kJ/cm J/m J/mm3
W/mm2 W/cm2 W/m2 kW/mm2 A/mm2 A/cm2 A/m2 mA/cm2 uA/cm2 mA/m2 V/mm V/m Ohm/m mOhm/m W/(m*K) J/(kg*K) J/(g*K)
g/cm3 kg/m3 kg/m g/m L/min L/h L/s mL/min m3/h m3/min ft3/h ft3/min in3/min m/s mm/s mm/min cm/min m/min um/s
m/h km/h in/min in/s ft/min ft/s 1/min 1/s 1/h 1/mm 1/m 1/K K/s degree/s mm/K
"""
PRODUCTS = "N m, N mm, kN m, kN mm, N cm, lbf in, lbf ft, W s, A s, V A"


def usual_units():
    """Return the usual units as lists of pint's name and power."""
    exact, lower = units._spellings()
    alone = [[(name, 1)] for name in {**exact, **lower}.values()]
    powers = [f"{length}{power}" for length in LENGTHS for power in (2, 3)]
    written = [units.factors_of(text) for text in (*powers, *TOGETHER.split(), *PRODUCTS.split(", "))]
    return {units.measured_name(factors): factors for factors in (*alone, *filter(None, written))}


def main():
    """Write the table."""
    found = {name: units.measure(factors) for name, factors in usual_units().items()}
    with units.MEASURES_FILE.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(units.MEASURES_COLUMNS)
        for name, unit in sorted(found.items()):
            if unit:
                writer.writerow([name, unit.kind, repr(unit.scale), repr(unit.offset)])
    print(f"wrote {len(found)} units into {units.MEASURES_FILE}")


if __name__ == "__main__":
    main()

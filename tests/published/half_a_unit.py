"""Every row that somebody else printed is held to half a unit of its last printed digit.

usage: half_a_unit.py ROOT

A row with a wider tolerance says why under "wider"; one that says so without need fails as well.
"""

import decimal
import json
import pathlib
import sys


def main():
    faults = []
    held = wider = 0
    for file in sorted((pathlib.Path(sys.argv[1]) / "tests/published").glob("*.json")):
        document = json.loads(file.read_text(), parse_float=decimal.Decimal, parse_int=decimal.Decimal)
        for row in document if isinstance(document, list) else document["checks"]:
            expected, tolerance = row["expected"], row.get("tolerance")
            where = f"{file.name}: {row['id']}"
            if not row.get("published") or not isinstance(expected, decimal.Decimal):
                if row.get("wider"):
                    faults.append(f"{where}: says why it is wider, and no printed figure stands there")
                continue
            if not isinstance(tolerance, decimal.Decimal) or tolerance < 0:
                faults.append(f"{where}: no tolerance")
                continue
            half = decimal.Decimal(1).scaleb(expected.as_tuple().exponent) / 2
            is_wider = tolerance > half * decimal.Decimal("1.0001")
            wider += is_wider
            held += not is_wider
            if is_wider and not row.get("wider"):
                faults.append(f"{where}: {tolerance} is wider than half a unit, {half}; say why under \"wider\"")
            if not is_wider and row.get("wider"):
                faults.append(f"{where}: says why it is wider, and is not")
    print("\n".join(faults) or f"{held} rows within half a unit of their last digit, {wider} wider with a reason")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())

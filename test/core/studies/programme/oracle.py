"""Figures that the tests of a programme are held against, by other means than the program's.

python3 oracle.py ../../../../content/studies
Written with Python 3, PyYAML 6.0.3, numpy 2.4.6, scipy 1.17.1. The programme is counted from its YAML, mortar by mortar and
day by day; the design's figures come from scipy.stats (norm, chi, t, chi2, beta), scipy.integrate and scipy.optimize.
"""
import datetime as dt
import hashlib
import itertools
import json
import math
import sys
from collections import defaultdict

import yaml
from scipy import integrate, optimize, stats


def share(text):
    return float(text.split()[0]) / 100


def count(path):
    study = yaml.load(open(path, encoding="utf8"), yaml.BaseLoader)
    plan = study["programme"]
    factors = plan["crossed"]
    # A level is -1 where it is the first of its factor; curing is the product of replacement and cement.
    sign = {f: {code: -1 if place == 0 else 1 for place, code in enumerate(levels)} for f, levels in factors.items()}
    conditions = []
    for codes in itertools.product(*factors.values()):
        level = dict(zip(factors, codes))
        if sign["curing"][level["curing"]] == sign["replacement"][level["replacement"]] * sign["cement"][level["cement"]]:
            conditions.append(level)
    left_out = {(m, c) for entry in plan["left-out"] for m in entry["materials"] for c in entry["conditions"]}
    holidays = set(plan["casting"]["except"])
    day = dt.date.fromisoformat(plan["casting"]["first"])
    capacity = int(plan["casting"]["mortars-a-day"])
    cementitious = float(plan["batch"]["cementitious"].split()[0])
    sand = float(plan["batch"]["sand"].split()[0])
    cubes = sum(int(age["strength"]) for age in plan["ages"]) + int(plan["spare"])
    cement, material = defaultdict(float), defaultdict(float)
    moulds, tests, cast = defaultdict(int), defaultdict(int), defaultdict(int)
    test_mortars = control_mortars = weekend = 0
    for batch in range(int(study["plan"]["batches"])):
        for level in conditions:
            code = "-".join(level.values())
            own = [m for m in study["materials"] if (m, code) not in left_out]
            # A condition with its control just fits a day or is smaller than half of two, so each has a day of its own.
            assert len(own) + 1 <= capacity < 2 * (len(own) + 1)
            while day.strftime("%A").lower() not in plan["casting"]["on"] or day.isoformat() in holidays:
                day += dt.timedelta(days=1)
            replaced = share(factors["replacement"][level["replacement"]]) * cementitious
            name = factors["cement"][level["cement"]]
            control_mortars += 1
            test_mortars += len(own)
            cement[name] += cementitious + len(own) * (cementitious - replaced)
            for one in own:
                material[one] += replaced
            cast[day.isoformat()] += len(own) + 1
            moulds[day.isoformat()] += (len(own) + 1) * cubes
            for age in plan["ages"]:
                tested = day + dt.timedelta(days=int(age["age"].split()[0]))
                specimens = (len(own) + 1) * (int(age["strength"]) + int(age["resistivity"]))
                tests[tested.isoformat()] += specimens
                weekend += specimens if tested.weekday() >= 5 else 0
            day += dt.timedelta(days=1)
    mortars = test_mortars + control_mortars
    peak = max(tests.values())
    return {
        "conditions": ["-".join(level.values()) for level in conditions],
        "testMortars": test_mortars,
        "controlMortars": control_mortars,
        "specimens": mortars * cubes,
        "strengthTests": mortars * sum(int(age["strength"]) for age in plan["ages"]),
        "castingDays": len(cast),
        "firstCast": min(cast),
        "lastCast": max(cast),
        "lastTest": max(tests),
        "cementG": {k: round(v, 6) for k, v in cement.items()},
        "materialG": {k: round(v, 6) for k, v in material.items()},
        "sandG": mortars * sand,
        "moulds": [max(moulds.values()), min(d for d, n in moulds.items() if n == max(moulds.values()))],
        "tests": [peak, min(d for d, n in tests.items() if n == peak)],
        "weekendTests": weekend,
    }


def plan_digest(path):
    """SHA-256 of the plan's texts as JSON with sorted keys; RFC 8785 is that for texts in ASCII keys and whole numbers."""
    study = yaml.load(open(path, encoding="utf8"), yaml.BaseLoader)
    whole = {"batches", "strength", "resistivity", "mortars-a-day", "spare"}
    real = {"w/cm"}

    def typed(value, key=None):
        if isinstance(value, dict):
            return {k: typed(v, k) for k, v in value.items()}
        if isinstance(value, list):
            return [typed(v) for v in value]
        if key == "dummy":
            return value == "true"
        return int(value) if key in whole else float(value) if key in real else value.strip()

    study = typed(study)
    kept = {k: study[k] for k in ("kind", "question", "usual", "factors", "runs", "programme") if k in study}
    if "crossed" in kept.get("programme", {}):
        crossed = kept["programme"]["crossed"]
        kept["programme"]["crossed"] = [[f, [list(level) for level in levels.items()]] for f, levels in crossed.items()]
    kept["plan"] = {k: v for k, v in study["plan"].items() if k != "digest"}
    kept["materials"] = {c: {k: m[k] for k in ("class", "shown-by") if k in m} for c, m in study["materials"].items()}
    kept["conditions"] = study.get("conditions", {})
    text = json.dumps(kept, sort_keys=True, ensure_ascii=False, separators=(",", ":"))
    return "sha256-" + hashlib.sha256(text.encode()).hexdigest()


def smallest_shift(batches, df, level, power):
    critical = stats.t.ppf((1 + level) / 2, df)

    def seen(noncentrality):
        # Both tails of (Z + noncentrality)/(s/sigma), averaged over s/sigma: nct gives NaN for the far one.
        def at(ratio):
            tails = stats.norm.sf(critical * ratio - noncentrality) + stats.norm.cdf(-critical * ratio - noncentrality)
            return tails * stats.chi.pdf(ratio, df, scale=1 / math.sqrt(df))

        return integrate.quad(at, 0, 6, epsabs=1e-13, epsrel=1e-12, limit=400)[0] - power

    return optimize.brentq(seen, 1e-6, 60, xtol=1e-12) * math.sqrt(2 / batches)


def log_deviation(cv):
    spread = lambda s: stats.lognorm(s=s).std() / stats.lognorm(s=s).mean() - cv
    return optimize.brentq(spread, 1e-6, 2)


if __name__ == "__main__":
    figures = {
        "smallestShift": [
            [n, df, level, power, smallest_shift(n, df, level, power)]
            for n, df, level, power in [(2, 6, 0.95, 0.8), (3, 34, 0.95, 0.8), (3, 4, 0.95, 0.9), (2, 2, 0.95, 0.8), (10, 200, 0.99, 0.95)]
        ],
        "meanHalfWidth": [[n, df, stats.t.ppf(0.975, df) / math.sqrt(n)] for n, df in [(2, 6), (3, 34)]],
        "effectHalfWidth": [[n, df, stats.t.ppf(0.975, df) * math.sqrt(4 / n)] for n, df in [(24, 88), (16, 8)]],
        "deviationFactors": [[df, *(math.sqrt(df / stats.chi2.ppf(p, df)) for p in (0.975, 0.025))] for df in (1, 5, 11)],
        "logDeviation": [[cv, log_deviation(cv)] for cv in (0.02, 0.05, 0.3)],
        "noErrors": [[n, stats.beta.ppf(0.95, 1, n)] for n in (3, 4, 6)],
    }
    folder = sys.argv[1]
    digests = {name: plan_digest(f"{folder}/{name}.yaml") for name in ("S-01", "R-01", "G-01", "G-02", "P-01")}
    print(json.dumps({"programme": count(f"{folder}/P-01.yaml"), "resolution": figures, "digests": digests}, indent=1))

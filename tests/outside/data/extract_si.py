#!/usr/bin/env python3
"""Makes si_prefixes.tsv and si_units.tsv of the BIPM's files: extract_si.py prefixes.ttl units.ttl

Only what the tests need is taken: English label, symbol, factor to SI base units, exponents of the base units.
"""
import re
import sys

BASE = ["metre", "kilogram", "second", "ampere", "kelvin", "mole", "candela", "radian"]
TOKEN = re.compile(r'"""(?:.|\n)*?"""(?:@\w+|\^\^\S+)?|"[^"\n]*"(?:@\w+|\^\^[\w:]+)?|<[^>]*>|[\[\];,]|\.(?=\s)|[^\s\[\];,"]+')


def statements(text):
    tokens = TOKEN.findall(re.sub(r"(?m)^@prefix.*$", "", text))
    at = 0

    def properties(end):
        nonlocal at
        out = {}
        while tokens[at] != end:
            verb = tokens[at]
            at += 1
            values = out.setdefault(verb, [])
            while True:
                if tokens[at] == "[":
                    at += 1
                    values.append(properties("]"))
                else:
                    values.append(tokens[at])
                    at += 1
                if tokens[at] != ",":
                    break
                at += 1
            if tokens[at] == ";":
                at += 1
        at += 1
        return out

    while at < len(tokens):
        subject = tokens[at]
        at += 1
        yield subject, properties(".")


def english(values):
    return next(v[1:-4] for v in values if v.endswith("@en"))


def plain(value):
    return re.match(r'"([^"]*)"', value).group(1)


def main():
    prefixes = dict(statements(open(sys.argv[1], encoding="utf-8").read()))
    units = dict(statements(open(sys.argv[2], encoding="utf-8").read()))
    with open("si_prefixes.tsv", "w", encoding="utf-8") as out:
        out.write("name\tsymbol\texponent\n")
        for name, p in sorted(prefixes.items()):
            if "si:hasSymbol" in p:
                out.write("\t".join([english(p["skos:prefLabel"]), plain(p["si:hasSymbol"][0]), p["si:hasExponent"][0]]) + "\n")

    def worth(term):  # (factor, exponents)
        if isinstance(term, str):
            name = term.removeprefix("units:")
            if name in BASE:
                return "1", [int(name == base) for base in BASE]
            if name == "steradian":
                return "1", [0, 0, 0, 0, 0, 0, 0, 2]
            return of(units[term])
        kind = term["a"][0]
        if kind == "si:UnitPower":
            factor, dimension = worth(term["si:hasUnitBase"][0])
            assert factor == "1"
            n = int(plain(term["si:hasNumericExponent"][0]))
            return "1", [n * d for d in dimension]
        if kind == "si:UnitProduct":
            (f, a), (g, b) = worth(term["si:hasLeftUnitTerm"][0]), worth(term["si:hasRightUnitTerm"][0])
            assert f == "1" and g == "1"
            return "1", [x + y for x, y in zip(a, b)]
        assert kind == "si:UnitMultiple", kind
        factor, dimension = worth(term["si:hasUnitTerm"][0])
        assert factor == "1"
        return term["si:hasNumericFactor"][0], dimension

    def of(unit):
        for way in ("si:inBaseSIUnits", "si:inOtherSIUnits"):
            if way in unit:
                return worth(unit[way][0])
        return None

    with open("si_units.tsv", "w", encoding="utf-8") as out:
        out.write("\t".join(["name", "symbol", "factor"] + BASE) + "\n")
        for name, unit in sorted(units.items()):
            kinds = unit.get("a", [])
            if not any(k in kinds for k in ("si:SIBaseUnit", "si:SISpecialNamedUnit", "si:nonSIUnit")):
                continue
            label = name.removeprefix("units:")
            known = ("1", [int(label == base) for base in BASE]) if label in BASE else of(unit)
            if label == "degreeCelsius":
                known = ("1", [int(base == "kelvin") for base in BASE])
            if known is None:
                continue
            out.write("\t".join([english(unit["skos:prefLabel"]), plain(unit["si:hasSymbol"][0]), known[0]] + [str(d) for d in known[1]]) + "\n")


main()

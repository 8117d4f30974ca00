"""Every rubric against rubrics/rubric.schema.json, and broken ones refused. Uses Debian's python3-jsonschema."""
import copy
import json
import pathlib
import sys

import jsonschema

root = pathlib.Path(sys.argv[1])
schema = json.loads((root / "rubrics/rubric.schema.json").read_text())
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
checked = 0
for path in sorted((root / "rubrics").glob("*.json")):
    rubric = json.loads(path.read_text())
    if "steps" not in rubric:
        continue
    for error in validator.iter_errors(rubric):
        sys.exit(f"{path.name}: {list(error.absolute_path)}: {error.message[:200]}")
    checked += 1
    sample = rubric
assert checked >= 8, checked


def broken(change):
    copied = copy.deepcopy(sample)
    change(copied)
    return not validator.is_valid(copied)


assert broken(lambda r: r.pop("id"))
assert broken(lambda r: r.update(format=2))
assert broken(lambda r: r.update(oops=1))
assert broken(lambda r: r["steps"][0].update(facet="x"))
assert broken(lambda r: r["steps"][0].update(present=[{"no": 1}]))
assert broken(lambda r: r.update(include=["../x.json"]))
assert broken(lambda r: r.update(results={"x": ["force"]}))
assert broken(lambda r: r.update(results={"x": ["force"], "y": ["extension"], "gradient": {"name": "k", "of": "square", "unit": ""}}))
print(f"{checked} rubrics fit the schema")

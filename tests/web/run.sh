#!/usr/bin/env bash
# HTML that the program writes and serves, in Chromium. Usage: run.sh reports|page PROGRAM SOURCE_DIR BUILD_DIR [FOLDER-FOR-PICTURES]
set -euo pipefail
what=$1 program=$2 source=$3 build=$4 pictures=${5:-}
export RETORT_RUBRICS=$source/rubrics
here=$source/tests/web
web=$build/web-$what
mkdir -p "$web"
cp "$here"/package.json "$here"/package-lock.json "$here"/*.mjs "$web"
cd "$web"
if ! cmp -s package-lock.json node_modules/.locked; then
  npm ci --no-audit --no-fund --ignore-scripts --loglevel=error
  cp package-lock.json node_modules/.locked
fi
if [ "$what" = page ]; then
  # The page's script, type-checked by its comments and linted.
  rm -rf checked && mkdir checked
  cp "$source"/src/serve/page/*.mjs checked
  node_modules/.bin/tsc --noEmit --allowJs --checkJs --strict --noUnusedLocals --target es2023 --lib es2023,dom,dom.iterable --module nodenext --moduleResolution nodenext --skipLibCheck checked/*.mjs
  node_modules/.bin/eslint --config eslint.config.mjs --max-warnings 0 checked
  exec node page.mjs "$program" "$source" $pictures
fi

pages=$web/pages
rm -rf "$pages" && mkdir "$pages"
demo=$source/corpus/demo
"$program" class spring-extension "$demo/spring-extension" --format html -o "$pages/class.html" --slips "$pages/slips-two.html" --slips-per-sheet 2
"$program" class spring-extension "$demo/spring-second" --before "$demo/spring-extension" --with-range --format html -o "$pages/class-change.html" --slips "$pages/slips.html"
"$program" check spring-extension "$demo/calculations" --format html -o "$pages/check.html"
"$program" moderate "$demo/pile/answers.jsonl" --format html -o "$pages/moderate.html"
python3 - <<'PY' >hostile.jsonl
import json
texts = ["<script>alert(1)</script></style><img src=x onerror=alert(1)> measure the length with a ruler", "\u202ereversed\u2066 hang the spring from a clamp \u0000\u0007",
         "x" * 100000, "long words " + " ".join("w" * 400 for _ in range(50)), "\"quotes\" & <b>bold</b> k = 5 N / 10 cm = 5 N/m", "", "\ud83d\ude00 1.5 N " * 200]
for i, text in enumerate(texts):
    print(json.dumps({"id": f"<b id='x'>{i}</b> \"name\"", "text": text, "mark": i % 7, "mark2": i % 5, "group": "<i>9A</i>"}))
PY
"$program" class spring-extension hostile.jsonl --format html -o "$pages/hostile-class.html" --slips "$pages/hostile-slips.html" 2>/dev/null
"$program" moderate --rubric spring-extension hostile.jsonl --format html -o "$pages/hostile-moderate.html" 2>/dev/null
node reports.mjs "$pages" $pictures

#!/usr/bin/env bash
# Compares outputs with the ones kept here. Usage: run.sh PROGRAM SOURCE_DIR; refresh.sh writes them anew.
set -u
program=$1 source=$2 mode=${3:-compare}
export RETORT_RUBRICS=$source/rubrics
cd "$source" || exit 1
failed=0
golden() {
  local name=$1
  shift
  if [ "$mode" = refresh ]; then
    "$@" >"tests/golden/$name" || failed=1
  elif ! diff -u "tests/golden/$name" <("$@"); then
    echo "FAILED: $name differs; if the change is meant, run tests/golden/refresh.sh"
    failed=1
  fi
}
golden check-spring.txt "$program" check spring-extension corpus/demo/spring-extension/draft-01.txt --width 80
golden check-spring.jsonl "$program" check spring-extension corpus/demo/spring-extension --format jsonl --threads 2
golden check-emission.txt "$program" check infrared-emission corpus/demo/infrared-emission/draft-02.txt --width 60
golden calc.txt "$program" calc corpus/demo/calculations --width 72
golden calc.jsonl "$program" calc corpus/demo/calculations --format jsonl --threads 1
golden list.txt "$program" rubric list
golden show-mirror.txt "$program" rubric show reflection-mirror
golden results-spring.txt "$program" results corpus/demo/results/spring.csv --rubric spring-extension --width 80
golden results-spring.json "$program" results corpus/demo/results/spring.csv --rubric spring-extension --format json
golden results-spring.svg "$program" results corpus/demo/results/spring.csv --format svg
golden results-refraction.txt "$program" results corpus/demo/results/refraction.csv --rubric refraction-block --width 60
golden results-trolley.txt "$program" results corpus/demo/results/trolley.csv --rubric trolley-acceleration --width 80
golden results-pendulum.txt "$program" results corpus/demo/results/pendulum.csv --width 80
golden results-pendulum.svg "$program" results corpus/demo/results/pendulum.csv --format svg
golden class-spring.txt "$program" class spring-extension corpus/demo/spring-extension --width 80
golden class-spring.json "$program" class spring-extension corpus/demo/spring-extension --format json
golden class-spring.html "$program" class spring-extension corpus/demo/spring-extension --format html
golden class-change.html "$program" class spring-extension corpus/demo/spring-second --before corpus/demo/spring-extension --with-range --format html
golden slips.html "$program" check spring-extension corpus/demo/spring-extension/draft-06.txt corpus/demo/calculations --format html
golden class-change.txt "$program" class spring-extension corpus/demo/spring-second --before corpus/demo/spring-extension --with-range --width 60
golden class-change.json "$program" class spring-extension corpus/demo/spring-second --before corpus/demo/spring-extension --with-range --format json
golden class-change.csv "$program" class spring-extension corpus/demo/spring-second --before corpus/demo/spring-extension --with-range --format csv
golden moderate.txt "$program" moderate corpus/demo/pile/answers.jsonl --width 80
golden moderate-narrow.txt "$program" moderate corpus/demo/pile/answers.jsonl --width 40 --sample 3
golden moderate.json "$program" moderate corpus/demo/pile/answers.jsonl --format json
golden moderate.csv "$program" moderate corpus/demo/pile/answers.jsonl --format csv
golden moderate.html "$program" moderate corpus/demo/pile/answers.jsonl --format html
golden moderate-tally.jsonl "$program" moderate corpus/demo/pile/answers.jsonl --tally
exit $failed

#!/usr/bin/env bash
# A pile spread over processes by GNU parallel gives the bytes of one run. Usage: parallel.sh PROGRAM SOURCE_DIR
set -euo pipefail
program=$1 source=$2
export RETORT_RUBRICS=$source/rubrics PARALLEL_HOME
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
PARALLEL_HOME=$work
cd "$work"

# Some hundred answers, each with a name of its own.
for copy in 1 2 3 4 5 6 7 8; do sed "s/\"id\": \"/&$copy-/" "$source/corpus/demo/pile/answers.jsonl"; done >answers.jsonl
[ "$(wc -l <answers.jsonl)" = 432 ]

"$program" check spring-extension answers.jsonl --format jsonl --threads 1 >whole.jsonl
"$program" moderate whole.jsonl --tally >whole.tally.jsonl
"$program" moderate whole.jsonl >whole.txt

# The checks alone: the same lines in the same order.
parallel --will-cite --pipe --block 20k --keep-order -j3 "$program" check spring-extension --format jsonl --threads 1 <answers.jsonl >spread.jsonl
cmp whole.jsonl spread.jsonl

# Checked and tallied in each part, in whatever order the parts end.
parallel --will-cite --pipe --block 20k -j3 "$program check spring-extension --format jsonl --threads 1 | $program moderate --tally --threads 1" \
  <answers.jsonl >parts.tally.jsonl
[ "$(grep -c '"core"' parts.tally.jsonl)" -gt 3 ]  # there are several parts
"$program" moderate parts.tally.jsonl --tally | cmp whole.tally.jsonl -
"$program" moderate parts.tally.jsonl | cmp whole.txt -

# Parts in another order.
tac parts.tally.jsonl | "$program" moderate --tally | cmp whole.tally.jsonl -
echo "the same bytes"

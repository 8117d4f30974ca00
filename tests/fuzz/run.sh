#!/usr/bin/env bash
# Runs each fuzz target: first all inputs kept (every crash ever found stays there), then new ones for a while.
# Usage: run.sh FOLDER-OF-TARGETS SECONDS-EACH. A crash file is written to tests/fuzz/kept and belongs in git.
set -euo pipefail
targets=$1 seconds=$2
here=$(cd "$(dirname "$0")" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
for name in text rubric input results calc document tally request; do
  kept=$here/kept/$name
  mkdir -p "$kept" "$scratch/$name"
  "$targets/fuzz_$name" -runs=0 "$kept" >"$scratch/log" 2>&1 || { cat "$scratch/log"; exit 1; }
  "$targets/fuzz_$name" -max_total_time="$seconds" -max_len=4096 -timeout=10 -rss_limit_mb=4096 -artifact_prefix="$kept/" \
    "$scratch/$name" "$kept" >"$scratch/log" 2>&1 || { tail -40 "$scratch/log"; exit 1; }
  echo "$name: $(grep -c . <<<"$(ls "$kept")") kept inputs, $(grep -oE '^#[0-9]+' "$scratch/log" | tail -1 | tr -d '#') runs, no crash"
done

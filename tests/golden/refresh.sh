#!/usr/bin/env bash
# Writes the golden outputs anew. Usage: tests/golden/refresh.sh PROGRAM; then read the difference in git.
here=$(cd "$(dirname "$0")/../.." && pwd)
exec bash "$here/tests/golden/run.sh" "$(realpath "$1")" "$here" refresh

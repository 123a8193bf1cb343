#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# validity.sh [BUILD]: runs the tests that hold the simulation against the outside and writes what they expected and
# got into the validity page of DEVELOPERS.md.  BUILD is a build folder, .build/dev unless given; nothing is written
# if a test fails.
set -euo pipefail
export LC_ALL=C.UTF-8
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
build=${1:-.build/dev}
begin='<!-- validity: made by tests/reports/validity.sh -->'
end='<!-- end of validity -->'

rows=$(mktemp)
page=$(mktemp "$build/validity.XXXXXX")
trap 'rm -f "$rows" "$page"' EXIT

# Rows come from every program of tests/published; a suite elsewhere that records some is added below by a `run`.
run() {
    [[ -x $1 ]] || { echo "validity.sh: $1 is not built" >&2; exit 1; }
    BOWBAND_VALIDITY_ROWS=$rows QT_QPA_PLATFORM=offscreen "$1" --gtest_brief=1 "${@:2}" >&2
}
published=("$build"/tests/published/*_test)
for program in "${published[@]}"; do run "$program"; done
run "$build"/tests/sim/strings_test --gtest_filter='FretsTest.*'
grep -qxF "$begin" DEVELOPERS.md && grep -qxF "$end" DEVELOPERS.md ||
    { echo "validity.sh: DEVELOPERS.md has no place for the page" >&2; exit 1; }

# By test, in the order of its checks.
table() {
    echo '| check | source | flag | expected | margin | got | test |'
    echo '|---|---|---|---|---|---|---|'
    sort -s -t $'\t' -k 1,1 "$rows" |
        awk -F '\t' '{ gsub(/\|/, "\\|"); printf "| %s | %s | %s | %s | %s | %s | %s |\n", $2, $3, $4, $5, $6, $7, $1 }'
}
{
    awk -v mark="$begin" '{ print } $0 == mark { exit }' DEVELOPERS.md
    table
    awk -v mark="$end" '$0 == mark { found = 1 } found' DEVELOPERS.md
} >"$page"
chmod --reference=DEVELOPERS.md "$page"
mv "$page" DEVELOPERS.md
echo "validity.sh: $(wc -l <"$rows") checks"

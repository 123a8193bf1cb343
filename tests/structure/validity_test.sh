#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# The validity page of DEVELOPERS.md has a row for every test of tests/published, a known flag in every row, and no row
# of a test that has gone.  Made by tests/reports/validity.sh.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

again='run tests/reports/validity.sh'
flags='^(seen|second-hand|from memory|derived|common practice|own runs, no source)$'
page=$(awk '/^<!-- validity:/ { inside = 1; next }  /^<!-- end of validity -->/ { inside = 0 }
            inside && /^\| / && !/^\| check / { print }' DEVELOPERS.md 2>/dev/null || true)
mapfile -t tests < <(files '*_test.cpp' | { grep '^tests/' || true; } | xargs -r -d '\n' \
    sed -nE 's/^TEST(_F)?\(([A-Za-z0-9]+), ([A-Za-z0-9]+)\).*/\2.\3/p')
mapfile -t published < <(files '*_test.cpp' | { grep '^tests/published/' || true; } | xargs -r -d '\n' \
    sed -nE 's/^TEST(_F)?\(([A-Za-z0-9]+), ([A-Za-z0-9]+)\).*/\2.\3/p')

for test in "${published[@]}"; do
    grep -qF " $test |" <<<"$page" ||
        breach "$test has no row in the validity page (record its checks by tests/validity.hpp, then $again)"
done
looked=0
while IFS='|' read -r _ check source flag expected margin got test _; do
    [[ -n $check ]] || continue
    looked=$((looked + 1))
    [[ ${flag# } =~ ${flags/\$/ \$} ]] || breach "validity page, \"${check# }\": no such flag \"$flag\""
    for cell in "$check" "$source" "$expected" "$margin" "$got"; do
        [[ -n ${cell// /} ]] || breach "validity page, \"${check# }\": an empty cell ($again)"
    done
    test=${test// /}
    [[ " ${tests[*]} " == *" $test "* ]] || breach "validity page, \"${check# }\": there is no test $test ($again)"
done <<<"$page"
finish "$looked"

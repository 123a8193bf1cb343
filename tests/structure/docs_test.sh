#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Every key of a source, such as the name and year in brackets that stand above a formula, is listed in DEVELOPERS.md.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

key='\[[A-Z][A-Za-z]+(19|20)[0-9]{2}[a-z]?\]'
example='\[Name1999[a-z]?\]'  # how a key is written, not one
looked=0
[[ -e DEVELOPERS.md ]] || breach "DEVELOPERS.md is missing"
while IFS=: read -r file line found; do
    looked=$((looked + 1))
    grep -qF "$found" DEVELOPERS.md 2>/dev/null || breach "$file:$line: $found is not in DEVELOPERS.md"
done < <(files '*.cpp' '*.hpp' '*.json' '*.csv' '*.txt' '*.cmake' README.md |
             xargs -d '\n' grep -noE "$key" /dev/null | grep -vE "$example")
finish "$looked"

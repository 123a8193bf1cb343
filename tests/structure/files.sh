#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# files.sh [PATTERN...]: the project's files, from the root, that match a pattern (of their names); without git as well.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

all_files() {
    if [[ $(git rev-parse --show-toplevel 2>/dev/null) == "$PWD" ]]; then
        git ls-files --cached --others --exclude-standard --deduplicate | while IFS= read -r file; do
            [[ ! -e $file ]] || printf '%s\n' "$file"
        done
    else
        find . \( -path ./.git -o -path ./.build -o -path ./out \) -prune -o \( -type f -o -type l \) -printf '%P\n'
    fi
}

all_files | LC_ALL=C sort | while IFS= read -r file; do
    (( $# )) || printf '%s\n' "$file"
    for pattern in "$@"; do
        # shellcheck disable=SC2053
        if [[ ${file##*/} == $pattern ]]; then
            printf '%s\n' "$file"
            break
        fi
    done
done

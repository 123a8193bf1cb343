#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Headers have up to 120 lines, sources up to 300; one that has to be longer says why in its first five lines:
# "// long: reason".  Every file of code starts with its licence, every header has #pragma once.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

looked=0
while IFS= read -r file; do
    looked=$((looked + 1))
    limit=300
    [[ $file != *.hpp ]] || limit=120
    lines=$(wc -l <"$file")
    if (( lines > limit )) && ! head -n 5 "$file" | grep -qE '^// long: .{10,}'; then
        breach "$file: $lines lines, the limit is $limit (split it, or give a \"// long: reason\")"
    fi
    [[ $(head -n 1 "$file") == '// SPDX-License-Identifier: GPL-3.0-or-later' ]] ||
        breach "$file: the first line is not the licence"
    [[ $file != *.hpp ]] || grep -q '^#pragma once$' "$file" || breach "$file: no #pragma once"
done < <(files '*.cpp' '*.hpp')
finish "$looked"

#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Nothing stands at the top of the tree but what is listed here, and hidden files.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

allowed=' CMakeLists.txt README.md DEVELOPERS.md LICENSE sim analysis gui cli tests presets recordings play check '
looked=0
while IFS= read -r name; do
    looked=$((looked + 1))
    [[ $name == .* || $allowed == *" $name "* ]] || breach "$name: not a name for the top of the tree"
done < <(files | cut -d/ -f1 | sort -u)
finish "$looked"

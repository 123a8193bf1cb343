#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Includes run only analysis <- sim <- {cli, gui/model, gui/charts, gui/sound}, gui/model <- gui/view,
# gui/charts <- {cli, gui/view}, gui/sound <- gui/view.
# Every project include is written from the root.  Qt stands only under gui/ and in the chart calls of cli/.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

# The folders a file of `$1` may include from, as a regular expression.
allowed_from() {
    case $1 in
        analysis/*)   echo '^analysis/' ;;
        sim/*)        echo '^(analysis|sim)/' ;;
        gui/charts/*) echo '^(analysis|sim|gui/charts)/' ;;
        gui/model/*)  echo '^(analysis|sim|gui/model)/' ;;
        gui/sound/*)  echo '^(analysis|sim|gui/sound)/' ;;
        gui/view/*)   echo '^gui/(view|model|charts|sound)/' ;;
        gui/*)        echo '^gui/' ;;
        cli/*)        echo '^(analysis|sim|gui/charts|cli)/' ;;
        tests/*)      echo '^(analysis|sim|gui|cli|tests)/' ;;
        *)            echo '^$' ;;
    esac
}

may_use_qt() { [[ $1 == gui/* || $1 == tests/gui/* || $1 == cli/*chart* ]]; }

check_include() {
    local file=$1 line=$2 name=$3 allowed=$4
    [[ -e $name ]] || { breach "$file:$line: \"$name\" is no file seen from the root"; return; }
    [[ $name =~ $allowed ]] || { breach "$file:$line: may not include \"$name\""; return; }
    [[ $name != sim/kernel/* || $file == sim/* || $file == tests/* ]] ||
        breach "$file:$line: sim/kernel is for sim/ only"
}

looked=0
quoted='^([0-9]+):[[:space:]]*#[[:space:]]*include[[:space:]]*"([^"]+)"'
angled='^([0-9]+):[[:space:]]*#[[:space:]]*include[[:space:]]*<(Q[A-Z][A-Za-z0-9]*|Qt[A-Z][A-Za-z0-9]*/.*|q[a-z0-9]+\.h)>'
while IFS= read -r file; do
    looked=$((looked + 1))
    allowed=$(allowed_from "$file")
    while IFS= read -r include; do
        if [[ $include =~ $quoted ]]; then
            # what moc writes stands in the build tree
            [[ ${BASH_REMATCH[2]} == *.moc ]] ||
                check_include "$file" "${BASH_REMATCH[1]}" "${BASH_REMATCH[2]}" "$allowed"
        elif [[ $include =~ $angled ]] && ! may_use_qt "$file"; then
            breach "$file:${BASH_REMATCH[1]}: Qt (${BASH_REMATCH[2]}) is for gui/ and the chart calls of cli/"
        fi
    done < <(grep -nE '^[[:space:]]*#[[:space:]]*include' "$file" || true)
done < <(files '*.cpp' '*.hpp')
finish "$looked"

#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# readme_test.sh PROGRAM: every command of README.md is one that the program has, with options that its help knows.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"
program=$1

# The lines of the README's sh blocks, those continued by a backslash joined.
shell_lines() {
    awk '/^```sh[[:space:]]*$/ { inside = 1; next }  /^```/ { inside = 0 }
         inside { if (sub(/\\$/, "")) { held = held $0 } else { print held $0; held = "" } }' README.md
}

check_command() {
    local line=$1 words command=() help
    line=${line%%[|>;#]*}
    read -ra words <<<"${line%%&&*}"
    [[ ${words[1]:---help} == -* ]] || command=("${words[1]}")
    if ! help=$("$program" "${command[@]}" --help 2>&1); then
        breach "README.md: \"$line\": there is no such command"
        return
    fi
    local word
    for word in "${words[@]:1}"; do
        [[ $word != --* ]] || grep -qE -- "(^|[ ,])${word%%=*}([ ,=]|\$)" <<<"$help" ||
            breach "README.md: \"$line\": the help of ${command[*]:-the program} has no ${word%%=*}"
    done
}

looked=0
[[ -e README.md ]] || breach "README.md is missing"
while IFS= read -r line; do
    case $line in
        'bowband '*|'.build/release/cli/bowband '*)
            looked=$((looked + 1))
            check_command "$line" ;;
    esac
done < <([[ ! -e README.md ]] || shell_lines)
finish "$looked"

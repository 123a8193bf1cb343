#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# labels_test.sh CTEST BUILD: every test is quick or slow; one with neither label would be run by nobody.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

count() { "$1" --test-dir "$2" -N "${@:3}" | sed -n 's/^Total Tests: //p'; }
total=$(count "$@")
chosen=$(count "$@" -L '^(quick|slow)')
if (( total != chosen )); then
    "$1" --test-dir "$2" -N -LE '^(quick|slow)'
    breach "$((total - chosen)) of $total tests are neither quick nor slow (use bowband_test)"
fi
finish "$total"

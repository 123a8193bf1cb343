#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# kernel_symbols_test.sh OBJECT: what is compiled for one instruction set may not stand in for what others call.  A weak
# function compiled with wide vectors, picked by the linker for the whole program, would stop it on older processors.
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

looked=0
while IFS= read -r symbol; do
    looked=$((looked + 1))
    case $symbol in
        *" T "* | *" t "*) ;;
        *::N_* | *" V DW.ref.__gxx_personality_v0") ;;  # of a set by name; of the run-time library
        *) breach "weak symbol outside the instruction sets: $symbol" ;;
    esac
done < <(nm -C --defined-only "$1" | grep -E ' [TtWVu] ' | cut -c18- | sed 's/^/ /')
finish "$looked"

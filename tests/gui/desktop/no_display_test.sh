#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# no_display_test.sh PROGRAM: without a display the program says so in a sentence, and leaves with 1, not by a crash.
set -euo pipefail
status=0
said=$(env -u DISPLAY -u WAYLAND_DISPLAY QT_QPA_PLATFORM=xcb "$1" 2>&1) || status=$?
echo "$said"
(( status == 1 ))
grep -q 'there is no display' <<<"$said"

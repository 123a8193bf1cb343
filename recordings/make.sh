#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# recordings/make.sh PROGRAM: renders the demonstration recordings anew.  Wants sox, to shrink 24 bits to 16.
set -euo pipefail
program=$(realpath "$1")
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT
cd "$made"
"$program" climb division_bass_viol --stop 5:12 --wav sounds --quiet
for name in bow_left_behind bow_follows; do
    sox -D "sounds/$name.wav" -b 16 "$here/$name.flac"
done

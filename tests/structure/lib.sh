# SPDX-License-Identifier: GPL-3.0-or-later
# Sourced by the tests of this folder.  BOWBAND_ROOT names another tree to look at (for self_test.sh).
set -euo pipefail
export LC_ALL=C.UTF-8
root=${BOWBAND_ROOT:-$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)}
cd "$root"
breaches=0

# files PATTERN... : as files.sh
files() { tests/structure/files.sh "$@"; }

# breach WHAT... : prints it and remembers that the test has failed.
breach() {
    echo "$*"
    breaches=$((breaches + 1))
}

# finish LOOKED_AT: fails on a breach, and where there was nothing to look at.
finish() {
    if (( $1 == 0 )); then
        echo "nothing to look at in $root"
        exit 1
    fi
    echo "looked at $1, breaches: $breaches"
    (( breaches == 0 ))
}

#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# self_test.sh SCRATCH: the tests beside this one pass a sound tree and find each breach planted in it.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
tree=$1/self
spdx='// SPDX-License-Identifier: GPL-3.0-or-later'
failures=0

fresh() {
    rm -rf "$tree"
    mkdir -p "$tree"/{analysis,sim/kernel,gui/charts,gui/sound,cli,tests/structure,tests/published}
    cp "$here"/*.sh "$tree/tests/structure"
    header analysis/level.hpp
    header sim/string.hpp
    header sim/kernel/rosin.hpp
    header gui/charts/chart.hpp
    header gui/sound/bow.hpp
    source_file sim/string.cpp '#include "analysis/level.hpp"' '#include "sim/kernel/rosin.hpp"' '// [Known2001]'
    source_file gui/charts/chart.cpp '#include <QChart>' '#include "sim/string.hpp"'
    source_file cli/main.cpp '#include "gui/charts/chart.hpp"' '#include "sim/string.hpp"'
    source_file tests/published/known_test.cpp 'TEST(Known2001, Holds) {'
    printf '%s\n' '<!-- validity: made by a script -->' '| check | source | flag | expected | margin | got | test |' \
        '|---|---|---|---|---|---|---|' '| speed | [Known2001] | seen | 1 m/s | ± 0.1 m/s | 1.01 m/s | Known2001.Holds |' \
        '<!-- end of validity -->' '- [Known2001] A title' >"$tree/DEVELOPERS.md"
    # shellcheck disable=SC2016
    printf '%s\n' '```sh' 'bowband climb viol \' '  --string 1' '```' >"$tree/README.md"
    # shellcheck disable=SC2016
    printf '%s\n' '#!/bin/bash' '[[ $1 != climb ]] || echo "  --string NAME"' '[[ $1 == climb || $1 == --help ]]' \
        >"$tree/tests/program"
    chmod +x "$tree/tests/program"
}

header() { printf '%s\n' "$spdx" '#pragma once' >"$tree/$1"; }
source_file() { printf '%s\n' "$spdx" "${@:2}" >"$tree/$1"; }

# expect pass|fail TEST WHAT [ARGUMENT...]
expect() {
    local outcome=pass
    BOWBAND_ROOT=$tree bash "$here/$2_test.sh" "${@:4}" >"$tree.log" 2>&1 || outcome=fail
    if [[ $outcome != "$1" ]]; then
        echo "$2_test.sh: $3: expected to $1"
        cat "$tree.log"
        failures=$((failures + 1))
    fi
}

# planted TEST WHAT FILE LINE... : with such a file in the tree the test fails.
planted() {
    fresh
    source_file "$3" "${@:4}"
    expect fail "$1" "$2"
}

fresh
for name in layering sizes docs validity top_level; do expect pass "$name" "a sound tree"; done
expect pass readme "a sound README" "$tree/tests/program"

planted layering "analysis includes sim" analysis/a.cpp '#include "sim/string.hpp"'
planted layering "sim includes gui" sim/a.cpp '#include "gui/charts/chart.hpp"'
planted layering "cli includes the kernel" cli/a.cpp '#include "sim/kernel/rosin.hpp"'
planted layering "an include not from the root" sim/a.cpp '#include "string.hpp"'
planted layering "sound includes a chart" gui/sound/a.cpp '#include "gui/charts/chart.hpp"'
planted layering "cli includes the sound output" cli/a.cpp '#include "gui/sound/bow.hpp"'
planted layering "Qt in sim" sim/a.cpp '#include <QtCore/QString>'
planted layering "Qt in a command" cli/a.cpp '#include <QString>'
planted docs "an unlisted key" sim/a.cpp '// [Unknown2001b]'
planted validity "a published test without a row" tests/published/a_test.cpp 'TEST(Known2001, HoldsToo) {'
fresh
sed -i 's/| seen |/| believed |/' "$tree/DEVELOPERS.md"
expect fail validity "a flag of no meaning"
sed -i 's/| believed |/| |/' "$tree/DEVELOPERS.md"
expect fail validity "a row without a flag"
fresh
rm "$tree/tests/published/known_test.cpp"
expect fail validity "a row of a test that has gone"
planted top_level "a strange name" a.cpp
mapfile -t long < <(seq -f '// %g' 300)
planted sizes "a long source" sim/a.cpp "${long[@]}"
planted sizes "a long header" sim/a.hpp '#pragma once' "${long[@]:0:120}"
planted sizes "a header without #pragma once" sim/a.hpp ''
fresh
source_file sim/a.cpp '// long: one table that is read as a whole' "${long[@]}"
expect pass sizes "a long source with its reason"
echo 'int a;' >"$tree/sim/a.cpp"
expect fail sizes "a source without its licence"
# shellcheck disable=SC2016
printf '%s\n' '```sh' 'bowband dance viol' '```' >"$tree/README.md"
expect fail readme "an unknown command" "$tree/tests/program"
sed -i 's/.*dance.*/bowband climb viol --rope 1/' "$tree/README.md"
expect fail readme "an unknown option" "$tree/tests/program"
echo >"$tree/README.md"
expect fail readme "no commands at all" "$tree/tests/program"

(( failures == 0 ))

// SPDX-License-Identifier: GPL-3.0-or-later
// How well places are found on recordings to design with; run by hand: match_design SEED RECORDINGS NOTES
// [known] [changed] [other] [points=N]
#include "tests/match/coverage.hpp"

#include <cstdio>
#include <cstdlib>
#include <string>

int main(int argc, char** argv) {
    if (argc < 4) return 2;
    tests::CoveragePlan plan{.bowed = {.presets = tests::design_presets(),
                                       .seed = static_cast<std::uint32_t>(std::atoi(argv[1])),
                                       .recordings = std::atoi(argv[2]),
                                       .notes = std::atoi(argv[3])}};
    for (int i = 4; i < argc; ++i) {
        const std::string word = argv[i];
        if (word == "known") plan.string_known = true;
        if (word.starts_with("points=")) plan.match.grid.contact_points = std::stoi(word.substr(7));
        if (word == "other") plan.bowed.speaking = false;
        if (word == "changed") plan.bowed.string_change = 0.3;
    }
    const tests::Coverage coverage = tests::covered(plan, {.threads = 2, .progress = {}, .stop = {}});
    std::printf("%s\n%s", tests::coverage_lines(coverage).c_str(),
                tests::coverage_table({{"design", coverage}}).c_str());
    return 0;
}

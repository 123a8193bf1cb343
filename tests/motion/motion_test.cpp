// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/heard_strokes.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>

namespace {

using analysis::HeardMotion;
using analysis::motion_count;

/// Scenes of the test's seed: the first 130, and those among the next 700 in which S-motion is found; it is rare.
std::vector<int> scenes() {
    std::vector<int> numbers;
    for (int n = 0; n < 130; ++n) numbers.push_back(n);
    for (const int n :
         {136, 156, 162, 166, 173, 187, 200, 208, 218, 221, 222, 224, 230, 245, 252, 287, 288, 309, 316, 318,
          320, 321, 325, 344, 349, 356, 374, 396, 402, 405, 419, 453, 461, 466, 479, 480, 492, 534, 535, 543,
          549, 594, 602, 626, 630, 649, 696, 733, 740, 752, 761, 773, 779, 787, 794, 803, 812, 824})
        numbers.push_back(n);
    return numbers;
}

/// [true motion][what was said], unclear last.
using Counts = std::array<std::array<int, motion_count + 1>, motion_count>;

double recall(const Counts& counts, std::initializer_list<std::size_t> group) {
    int right = 0;
    int all = 0;
    for (const std::size_t m : group) {
        for (const int count : counts[m]) all += count;
        for (const std::size_t said : group) right += counts[m][said];
    }
    return static_cast<double>(right) / all;
}

double precision(const Counts& counts, std::initializer_list<std::size_t> group) {
    int right = 0;
    int said_so = 0;
    for (const std::size_t said : group)
        for (std::size_t m = 0; m < motion_count; ++m) {
            said_so += counts[m][said];
            if (std::ranges::find(group, m) != group.end()) right += counts[m][said];
        }
    return static_cast<double>(right) / said_so;
}

std::string percent(double share) {
    char text[16];
    std::snprintf(text, sizeof text, "%.0f %%", 100.0 * share);
    return text;
}

std::string table(const Counts& counts) {
    std::string text = "| is, heard as | ";
    for (std::size_t m = 0; m <= motion_count; ++m)
        text += std::string(heard_motion_name(static_cast<HeardMotion>(m))) + " | ";
    text += "recall | precision |\n|---|---|---|---|---|---|---|---|---|---|\n";
    for (std::size_t m = 0; m < motion_count; ++m) {
        text += "| " + std::string(heard_motion_name(static_cast<HeardMotion>(m))) + " | ";
        for (const int count : counts[m]) text += std::to_string(count) + " | ";
        text += percent(recall(counts, {m})) + " | " + percent(precision(counts, {m})) + " |\n";
    }
    return text;
}

/// source   the judge of the simulation, who sees the string, on strokes of five presets and bodies that the fit has
///          not seen, with white noise 40 dB under a good stroke
/// expects  60 or more of each motion; silence, and too much force (raucous or anomalous low), named with recall and
///          precision of 85 % or more where the note is known.  The other motions fall short of 90 %: what one steady
///          stretch through an unknown body tells is not enough (tests/reports/motions.md)
/// margin   85 %, a bound under what was seen (92 and 97 %, 95 and 95 %), chosen after seeing it: so was the taking
///          together of the two
TEST(MotionTest, NamesMotionsOfUnseenInstruments) {
    const auto strokes = tests::recorded_strokes(
        {.presets = tests::test_presets(), .seed = 2, .of_each = 62, .scenes = scenes()}, {.threads = 2});
    std::string report =
        "# Motions by ear\n\nMade by motion_test. Simulated strokes of five presets, over bodies that the fit has not "
        "seen, white noise 40 dB under a good stroke: what the string does, and what its sound is taken for.\n";
    Counts counts{};
    for (const bool known : {false, true}) {
        counts = {};
        for (const tests::RecordedStroke& stroke : strokes) {
            const auto note = tests::heard_note(stroke, known);
            const HeardMotion said = note ? note->motion.motion : HeardMotion::silent;
            ++counts[static_cast<std::size_t>(stroke.motion)][static_cast<std::size_t>(said)];
        }
        report += std::string("\n## ") + (known ? "The note is known (--note)" : "The note is not known") + "\n\n" +
                  table(counts) + "\nRaucous or anomalous low, taken together (too much force): recall " +
                  percent(recall(counts, {2, 3})) + ", precision " + percent(precision(counts, {2, 3})) + ".\n";
    }
    std::printf("%s", report.c_str());
    write_report("motions.md", report);
    for (const auto& row : counts) {
        int all = 0;
        for (const int count : row) all += count;
        EXPECT_GE(all, 60);
    }
    EXPECT_GE(recall(counts, {2, 3}), 0.85);
    EXPECT_GE(precision(counts, {2, 3}), 0.85);
    EXPECT_GE(recall(counts, {5}), 0.85);
    EXPECT_GE(precision(counts, {5}), 0.85);
}

}  // namespace

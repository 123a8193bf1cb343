// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <string>

/// Checks that also leave a line for the validity page of DEVELOPERS.md (made by tests/reports/validity.sh), so that
/// what stands there is what was tested.
namespace tests {

/// How the expected value was seen.
enum class Flag { seen, second_hand, from_memory, derived, common_practice, own_runs };

inline const char* flag_words(Flag flag) {
    constexpr std::array<const char*, 6> words{"seen",    "second-hand",     "from memory",
                                               "derived", "common practice", "own runs, no source"};
    return words[static_cast<std::size_t>(flag)];
}

/// What is claimed, and on whose word.
struct Claim {
    std::string what;    ///< "slip fraction at 0.3 N"
    std::string source;  ///< a key of DEVELOPERS.md in brackets, or "" where the flag says it all
    Flag flag;
    std::string unit = {};  ///< "N"; empty where there is none
};

/// Five significant digits, with the unit.
inline std::string digits(double value, const std::string& unit = {}) {
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, 5);
    return std::string(text.data(), end.ptr) + (unit.empty() || unit == "%" ? unit : " " + unit);
}

/// A line for the page, for what the checks below can't say; the test itself must hold it.
struct Row {
    std::string expected;
    std::string margin;
    std::string got;
};
inline void record(const Claim& claim, const Row& row) {
    const char* place = std::getenv("BOWBAND_VALIDITY_ROWS");
    if (place == nullptr) return;
    const auto* test = testing::UnitTest::GetInstance()->current_test_info();
    std::string line = std::string(test->test_suite_name()) + "." + test->name();
    for (const std::string& cell : {claim.what, claim.source.empty() ? std::string("-") : claim.source,
                                    std::string(flag_words(claim.flag)), row.expected, row.margin, row.got})
        line += "\t" + cell;
    std::ofstream(place, std::ios::app) << line + "\n";
}

/// got = expected, give or take `within`.
struct Near {
    double got;
    double expected;
    double within;
};
inline void check(const Claim& claim, const Near& v) {
    EXPECT_NEAR(v.got, v.expected, v.within) << claim.what;
    record(claim, {digits(v.expected, claim.unit), "± " + digits(v.within, claim.unit), digits(v.got, claim.unit)});
}

/// As above, the margin a share of the expected value.
struct NearShare {
    double got;
    double expected;
    double within_share;
};
inline void check(const Claim& claim, const NearShare& v) {
    EXPECT_NEAR(v.got, v.expected, v.within_share * std::abs(v.expected)) << claim.what;
    record(claim,
           {digits(v.expected, claim.unit), "± " + digits(100.0 * v.within_share, "%"), digits(v.got, claim.unit)});
}

/// Up to `factor` (> 1) times more or less than expected.
struct WithinFactor {
    double got;
    double expected;
    double factor;
};
inline void check(const Claim& claim, const WithinFactor& v) {
    EXPECT_GT(v.got, v.expected / v.factor) << claim.what;
    EXPECT_LT(v.got, v.expected * v.factor) << claim.what;
    record(claim, {digits(v.expected, claim.unit), "factor " + digits(v.factor), digits(v.got, claim.unit)});
}

/// A bound.
struct AtLeast {
    double got;
    double least;
};
inline void check(const Claim& claim, const AtLeast& v) {
    EXPECT_GE(v.got, v.least) << claim.what;
    record(claim, {"at least " + digits(v.least, claim.unit), "a bound", digits(v.got, claim.unit)});
}
struct AtMost {
    double got;
    double most;
};
inline void check(const Claim& claim, const AtMost& v) {
    EXPECT_LE(v.got, v.most) << claim.what;
    record(claim, {"at most " + digits(v.most, claim.unit), "a bound", digits(v.got, claim.unit)});
}

}  // namespace tests

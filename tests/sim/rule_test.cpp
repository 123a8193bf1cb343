// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/rule.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace {

using namespace sim;

/// Best places in mm at stops 0, 5, 10, 15, 20 of a 690 mm string, as many as are given.
std::vector<RulePlace> places(const std::vector<double>& best_mm) {
    std::vector<RulePlace> result;
    for (std::size_t i = 0; i < best_mm.size(); ++i) {
        const double stop = 5.0 * static_cast<double>(i);
        result.push_back({stop, 0.69 * std::exp2(-stop / 12.0), best_mm[i] * 1e-3});
    }
    return result;
}

RuleVerdict verdict(const std::vector<double>& best_mm) { return judge_rule(places(best_mm)).verdict; }

}  // namespace

TEST(RuleVerdictTest, PlacesInProportionToTheSoundingLengthHold) {
    std::vector<RulePlace> row = places({80, 60, 50, 30, 25});
    for (RulePlace& place : row) place.best = place.sounding_length / 9.0;
    const RuleAnswer answer = judge_rule(row);
    EXPECT_EQ(answer.verdict, RuleVerdict::holds);
    EXPECT_DOUBLE_EQ(answer.correlation, -1.0);
    EXPECT_NEAR(answer.follows, 1.0, 1e-12);
    EXPECT_NEAR(answer.ratio, std::exp2(-20.0 / 12.0), 1e-12);
    EXPECT_EQ(answer.stops, 5);
}

/// expects  one neighbouring pair changed over leaves a correlation of -0.9 (1 - 6 * 2 / (5 * 24)), two such -0.8
TEST(RuleVerdictTest, AStepBackOrTwoStillHolds) {
    EXPECT_NEAR(judge_rule(places({80, 50, 60, 30, 25})).correlation, -0.9, 1e-12);
    EXPECT_EQ(verdict({80, 50, 60, 30, 25}), RuleVerdict::holds);
    EXPECT_NEAR(judge_rule(places({60, 80, 30, 40, 25})).correlation, -0.8, 1e-12);
    EXPECT_EQ(verdict({60, 80, 30, 40, 25}), RuleVerdict::holds);
}

TEST(RuleVerdictTest, AnUnevenFallWeakens) { EXPECT_EQ(verdict({40, 80, 50, 60, 30}), RuleVerdict::weakens); }

/// expects  falling all the way, but by less than half of the octaves of the string: 80 -> 50 mm over 20 semitones
TEST(RuleVerdictTest, AnEvenFallThatIsTooSmallWeakens) {
    const RuleAnswer answer = judge_rule(places({80, 70, 60, 55, 50}));
    EXPECT_DOUBLE_EQ(answer.correlation, -1.0);
    EXPECT_LT(answer.follows, rule_holds_follows);
    EXPECT_EQ(answer.verdict, RuleVerdict::weakens);
}

TEST(RuleVerdictTest, RisingOrNotEndingNearerReverses) {
    EXPECT_EQ(verdict({30, 40, 50, 60, 70}), RuleVerdict::reverses);
    EXPECT_EQ(verdict({60, 50, 40, 30, 60}), RuleVerdict::reverses);  // ends where it began
    EXPECT_EQ(verdict({60, 20, 30, 40, 59}), RuleVerdict::reverses);  // in order it rises: correlation 0
    EXPECT_EQ(verdict({50, 50, 50, 50, 50}), RuleVerdict::reverses);  // stays where it was
}

TEST(RuleVerdictTest, FewerThanThreeStopsDecideNothing) {
    EXPECT_EQ(verdict({}), RuleVerdict::undecided);
    EXPECT_EQ(verdict({80}), RuleVerdict::undecided);
    EXPECT_EQ(verdict({80, 20}), RuleVerdict::undecided);
    EXPECT_EQ(verdict({80, 60, 30}), RuleVerdict::holds);
}

/// expects  ties share their mean rank: of 1 2 2 3 with 1 2 3 4 the coefficient is 4.5 / sqrt(4.5 * 5)
TEST(RankCorrelationTest, SharesRanksOfTies) {
    const std::vector<double> tied{1, 2, 2, 3};
    const std::vector<double> rising{1, 2, 3, 4};
    EXPECT_NEAR(rank_correlation(tied, rising), 4.5 / std::sqrt(22.5), 1e-12);
    EXPECT_DOUBLE_EQ(rank_correlation(rising, rising), 1.0);
}

TEST(RuleVerdictTest, ItsSentenceNamesTheThresholds) {
    EXPECT_NE(rule_in_words().find("-0.8"), std::string::npos);
    EXPECT_NE(rule_in_words().find("50 %"), std::string::npos);
}

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace sim {

/// What becomes of the rule "the higher the stop, the nearer the bridge the bow".  Common practice, no source.
enum class RuleVerdict {
    holds,     ///< order and ends both say so
    weakens,   ///< neither clearly so nor against it
    reverses,  ///< the best place moves out as the stop climbs, by its order or by its ends
    undecided  ///< too few stops with a best place
};
std::string_view rule_verdict_name(RuleVerdict verdict);

/// One stop's best place.
struct RulePlace {
    double stop = 0.0;             ///< semitones
    double sounding_length = 0.0;  ///< m, > 0
    double best = 0.0;             ///< best contact point, m, > 0
};

/// The verdict with the figures behind it.
struct RuleAnswer {
    RuleVerdict verdict = RuleVerdict::undecided;
    int stops = 0;             ///< that have a best place
    double correlation = 0.0;  ///< Spearman's, best place against stop; -1 = falls all the way
    double ratio = 1.0;        ///< best place at the top stop over that at the lowest
    double follows = 0.0;      ///< ln ratio / ln (length at the top stop / at the lowest): 1 = in proportion to the
                               ///< sounding length, 0 = stays where it was, under 0 = moves out

    bool operator==(const RuleAnswer&) const = default;
};

// Where the verdicts part.
inline constexpr int rule_least_stops = 3;
inline constexpr double rule_holds_correlation = -0.8;  ///< holds: at or under this
inline constexpr double rule_holds_follows = 0.5;  ///< holds: follows the length by at least this share, in octaves

/// Judges places in the order of rising stops.
///
/// holds: correlation <= -0.8 and the best place has come in by at least half of the octaves by which the string has
/// shortened (follows >= 0.5).  reverses: correlation >= 0 or ratio >= 1.  weakens: anything between.
RuleAnswer judge_rule(std::span<const RulePlace> places);

/// The same in one sentence, for the heading of tables.
std::string rule_in_words();

/// Spearman's rank correlation of two lists of equal length; 0 where either does not vary.
double rank_correlation(std::span<const double> a, std::span<const double> b);

}  // namespace sim

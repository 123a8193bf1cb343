// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/match/match.hpp"
#include "tests/match/bowed_recordings.hpp"

#include <string>
#include <vector>

namespace tests {

std::vector<std::string> design_presets();
std::vector<std::string> test_presets();

struct CoveragePlan {
    BowedPlan bowed;
    bool string_known = false;  ///< it is told
    sim::match::MatchPlan match{.known = {}, .grid = {}, .periods = false, .bands = false, .prior = {}};
};

/// One true stroke beside what was said of it.
struct CoveredNote {
    std::string preset;
    BowedNote truth;
    std::string abstains;  ///< why; "not found" where no note was heard there
    std::string said_string;
    bool string_told = false;
    double low = 0.0;  ///< contact ratio, over all strings
    double high = 0.0;
    double force_low = 0.0;  ///< N
    double force_high = 0.0;
    double possible = 0.0;  ///< width of all places compared, a factor
    double misfit = 0.0;

    bool said() const { return abstains.empty(); }
    bool covers() const { return said() && truth.contact_ratio >= low && truth.contact_ratio <= high; }
    bool covers_force() const { return said() && truth.force >= force_low && truth.force <= force_high; }
};

struct Coverage {
    std::vector<CoveredNote> notes;
};

Coverage covered(const CoveragePlan& plan, const sim::Workers& workers);

/// Shares of a list of notes.
struct CoverageFigures {
    int notes = 0;
    int abstained = 0;
    int covering = 0;
    int covering_force = 0;
    int right_string = 0;
    double median_width = 0.0;      ///< factor, of those that said something
    double median_width_low = 0.0;  ///< of those under 300 Hz
    double median_possible = 0.0;

    /// Covering over those that said something; abstentions past a fifth of all count as misses.
    double covered_share() const;
};
CoverageFigures figures_of(const Coverage& coverage);

/// A line for each note, for people.
std::string coverage_lines(const Coverage& coverage);
/// A row for each set of recordings.
struct NamedCoverage {
    std::string name;
    Coverage coverage;
};
std::string coverage_table(const std::vector<NamedCoverage>& sets);
/// The table with what it shows, as kept in tests/reports/match.md.
std::string coverage_report(const std::string& table);

}  // namespace tests

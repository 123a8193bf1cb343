// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// A partial in a recording and in a simulated stroke.
struct MatchPartial {
    double hz = 0.0;
    double heard_db = 0.0;
    double simulated_db = 0.0;   ///< the stroke's bridge force, with body, room and gain as estimated
    double body_db = 0.0;        ///< what these add, moved to have a mean of 0
    double body_error_db = 0.0;  ///< its standard deviation

    bool operator==(const MatchPartial&) const = default;
};

/// A region of contact points, mm.
struct MatchRegion {
    double near_mm = 0.0;
    double far_mm = 0.0;

    bool operator==(const MatchRegion&) const = default;
};

/// One note held against simulated strokes: how likely each contact point is, beside the contact band; the levels of
/// the partials; one period.
struct MatchChart {
    std::string title;
    std::string subtitle;
    std::vector<double> contact_mm;  ///< rising
    std::vector<double> likelihood;  ///< share of each of these
    std::optional<MatchRegion> region;
    std::string region_name;               ///< "80 % of the likelihood"
    std::optional<MatchRegion> band;       ///< the note's contact band
    double best_mm = 0.0;                  ///< of the likeliest stroke
    std::vector<MatchPartial> partials;    ///< rising
    std::vector<double> period_heard;      ///< evenly over one period; may be empty
    std::vector<double> period_simulated;  ///< as many
    std::vector<std::string> remarks;      ///< sentences beside the chart

    bool operator==(const MatchChart&) const = default;
};

}  // namespace gui::charts

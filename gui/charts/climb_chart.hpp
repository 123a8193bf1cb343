// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

struct ClimbBand {
    double near_mm = 0.0;
    double far_mm = 0.0;

    bool operator==(const ClimbBand&) const = default;
};

/// One stop of a climb.
struct ClimbChartStop {
    double stop_semitones = 0.0;             ///< above the open string, fractions allowed
    std::string note_name;                   ///< "F#4"; may be empty
    std::optional<double> best_mm;           ///< none where nothing speaks
    std::optional<double> best_ratio;        ///< best_mm / sounding length
    std::optional<ClimbBand> band;           ///< none: the stop is marked as one without a band
    std::optional<ClimbBand> stretch;        ///< the most secure stretch; drawn only where there is no band
    std::optional<double> security_follows;  ///< 0 … 1
    std::optional<double> security_left_behind;
    std::string reason;  ///< why there is no band

    bool operator==(const ClimbChartStop&) const = default;
};

/// A climb: contact points in mm, best ratio and security, each against the stop; one above the other.
///
/// Stops rise.  Values that are not finite are left out.
struct ClimbChart {
    std::string title;
    std::string subtitle;  ///< instrument, string, force range, speed
    std::vector<ClimbChartStop> stops;
    std::optional<double> left_behind_mm;  ///< where the bow left behind stays
    std::optional<double> band_share;      ///< security asked of a band, 0 … 1, drawn as a line
    std::vector<std::string> notes;        ///< further sentences beside the chart

    bool operator==(const ClimbChart&) const = default;
};

}  // namespace gui::charts

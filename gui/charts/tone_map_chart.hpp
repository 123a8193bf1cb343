// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/window_chart.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// What one stroke of a window sounds like.
struct ToneCell {
    double contact_mm = 0.0;              ///< from the bridge, > 0
    double force_newtons = 0.0;           ///< > 0
    bool speaks = false;                  ///< cells that don't are hatched
    std::optional<double> pitch_cents;    ///< from the note; none: no pitch was found
    std::optional<double> brightness_f0;  ///< centroid in fundamentals
    std::optional<double> level_db;
    std::optional<double> clarity_db;

    bool operator==(const ToneCell&) const = default;
};

/// The tone over the window of one note: four maps of bow force against contact point, both logarithmic, in shaded
/// steps.
///
/// Where no pitch was found or the clarity lies under 0 dB (more noise than tone) a cross stands for pitch and
/// brightness.  The steps of level and brightness fit the strokes that speak.  Cells stand on a grid: every contact
/// point with every force; what is not finite and above 0 there is left out.
struct ToneMapChart {
    std::string title;
    std::string subtitle;  ///< instrument, string, stop, pitch, speed
    std::vector<ToneCell> cells;
    std::optional<ForceRange> player_force;
    std::optional<BandStrip> band;
    std::optional<BandStrip> stretch;  ///< drawn only where there is no band
    std::optional<double> best_mm;
    std::string reason;  ///< why there is no band

    bool operator==(const ToneMapChart&) const = default;
};

}  // namespace gui::charts

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// What the string does in one cell of a window chart.  Each is drawn with a shape of its own.
enum class CellMotion { helmholtz, multiple_slip, raucous, anomalous_low, s_motion, silent };

/// One stroke: a place and a force, and what came of it.
struct WindowCell {
    double contact_mm = 0.0;     ///< from the bridge, > 0
    double force_newtons = 0.0;  ///< > 0
    CellMotion motion = CellMotion::silent;
    bool speaks = false;
    bool keeps_tone = false;  ///< counts only where it speaks

    bool operator==(const WindowCell&) const = default;
};

struct WindowPointOfCurve {
    double contact_mm = 0.0;
    double force_newtons = 0.0;

    bool operator==(const WindowPointOfCurve&) const = default;
};

/// A limit by formula, as a line; what lies outside the axes is cut off.
struct LimitCurve {
    std::string name;  ///< in the legend, e.g. "greatest force (Schelleng)"
    std::vector<WindowPointOfCurve> points;

    bool operator==(const LimitCurve&) const = default;
};

struct ForceRange {
    double min_newtons = 0.0;
    double max_newtons = 0.0;

    bool operator==(const ForceRange&) const = default;
};

struct BandStrip {
    double near_mm = 0.0;
    double far_mm = 0.0;
    std::string near_bound;  ///< what fails beyond, in words; may be empty
    std::string far_bound;

    bool operator==(const BandStrip&) const = default;
};

/// Where the level has fallen by `loss_db`; an upright line, as the level goes as speed / contact point.
struct LevelLossLine {
    double loss_db = 0.0;
    double contact_mm = 0.0;

    bool operator==(const LevelLossLine&) const = default;
};

/// The window of one note: bow force against contact point, both axes logarithmic.
///
/// Places and forces that are not finite and above 0 are left out.  The axes hold all cells, the force range, the band,
/// the floor and the best contact point.
struct WindowChart {
    std::string title;
    std::string subtitle;  ///< instrument, string, stop, pitch, speed
    std::vector<WindowCell> cells;
    std::vector<LimitCurve> limits;
    std::optional<ForceRange> player_force;
    std::optional<BandStrip> band;
    std::vector<BandStrip> other_bands;
    std::optional<BandStrip> stretch;  ///< the most secure stretch; drawn only where there is no band
    std::optional<double> best_mm;
    std::optional<double> floor_mm;  ///< no contact point lies under it
    std::vector<LevelLossLine> level_loss;
    std::string reason;              ///< why there is no band; drawn large where `band` is empty
    std::vector<std::string> notes;  ///< further sentences beside the chart

    bool operator==(const WindowChart&) const = default;
};

}  // namespace gui::charts

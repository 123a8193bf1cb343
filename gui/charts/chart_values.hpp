// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

/// What charts are drawn from: plain values in the units of their names.
namespace gui::charts {

/// How one stroke of a window is shown; each has a symbol and a colour of its own.
enum class Mark { good, tone_lost, slow, multiple_slip, raucous, anomalous_low, s_motion, silent };

struct WindowCell {
    double contact_mm = 0.0;
    double force_newtons = 0.0;
    Mark mark = Mark::silent;
};

struct ForcePoint {
    double contact_mm = 0.0;
    double force_newtons = 0.0;
};

/// A limit of bow force over contact point.
struct LimitCurve {
    std::string name;
    std::vector<ForcePoint> points;
};

struct LevelLine {
    std::string label;        ///< "-6 dB"
    double contact_mm = 0.0;
};

struct ContactStrip {
    double near_mm = 0.0;
    double far_mm = 0.0;
    std::string near_bound;   ///< what fails beyond the near edge
    std::string far_bound;
};

/// The window of one note: bow force against contact point, both logarithmic.
struct WindowChart {
    std::string title;
    std::string subtitle;
    std::vector<WindowCell> cells;
    std::vector<LimitCurve> limits;
    std::vector<LevelLine> level_lines;      ///< places that lose so much level
    std::optional<ContactStrip> band;
    std::optional<ContactStrip> stretch;     ///< where security reaches band_share of the best's
    std::optional<double> best_mm;
    double force_low_newtons = 0.0;          ///< the player's range
    double force_high_newtons = 0.0;
    double floor_mm = 0.0;
    std::string reason;                      ///< why there is no band; shown large
};

struct ClimbPoint {
    double stop_semitones = 0.0;
    std::string note_name;
    std::optional<double> best_mm;
    std::optional<double> near_mm;           ///< of the band; both or neither
    std::optional<double> far_mm;
    std::optional<double> stretch_near_mm;   ///< where security reaches band_share of the best's; both or neither
    std::optional<double> stretch_far_mm;
    std::optional<double> best_ratio;
    double security_follows = 0.0;
    double security_left_behind = 0.0;
    double left_behind_mm = 0.0;
};

/// A climb: contact points over stops above, ratio and security below.
struct ClimbChart {
    std::string title;
    std::string subtitle;
    std::vector<ClimbPoint> points;
    double band_share = 0.8;                 ///< security from which a place is in the band
};

struct SweepSeries {
    std::string name;
    std::vector<double> x;
    std::vector<double> y;                   ///< as many as x
    bool dashed = false;
};

/// Any curves over one quantity.
struct SweepChart {
    std::string title;
    std::string subtitle;
    std::string x_title;                     ///< with its unit
    std::string y_title;
    bool x_logarithmic = false;
    bool y_logarithmic = false;
    std::vector<SweepSeries> series;
};

}  // namespace gui::charts

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// A pitch or a brightness at one moment.
struct HeardValue {
    double time = 0.0;  ///< s
    double hz = 0.0;

    bool operator==(const HeardValue&) const = default;
};

/// One note that was heard.
struct HeardNote {
    double from = 0.0;  ///< s
    double to = 0.0;    ///< s
    std::optional<double> hz;
    std::vector<HeardValue> brightness;

    bool operator==(const HeardNote&) const = default;
};

/// Levels of one note's partials.
struct HeardPartials {
    std::string name;
    struct Level {
        double hz = 0.0;
        double level_db = 0.0;  ///< under the strongest

        bool operator==(const Level&) const = default;
    };
    std::vector<Level> levels;

    bool operator==(const HeardPartials&) const = default;
};

/// A recording: pitch over time, brightness over time, and below the partials of up to four notes over log frequency.
struct RecordingChart {
    std::string title;
    std::string subtitle;
    std::vector<HeardValue> pitch;  ///< moment by moment, as far as one is heard
    std::vector<HeardNote> notes;
    std::vector<HeardPartials> partials;  ///< of some notes; more than four are left out
    std::vector<std::string> remarks;     ///< sentences beside the chart

    bool operator==(const RecordingChart&) const = default;
};

}  // namespace gui::charts

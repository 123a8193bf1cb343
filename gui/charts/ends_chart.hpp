// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// Forces that hold at one contact point; none where nothing holds.
struct EndsForce {
    double contact_mm = 0.0;
    std::optional<double> min_newtons;
    std::optional<double> max_newtons;

    bool operator==(const EndsForce&) const = default;
};

struct EndsRinging {
    int partial = 0;
    double seconds = 0.0;  ///< to fall 60 dB

    bool operator==(const EndsRinging&) const = default;
};

/// One way to end the string.
struct EndsSeries {
    std::string name;
    bool soft = false;                 ///< a finger, not a hard end
    std::vector<EndsForce> forces;     ///< rising contact point
    std::vector<EndsRinging> ringing;  ///< rising partial

    bool operator==(const EndsSeries&) const = default;
};

/// Ends of the string side by side: above, the forces that hold against the contact point; below, how long each partial
/// rings.
struct EndsChart {
    std::string title;
    std::string subtitle;
    std::optional<double> contact_mm;  ///< where the stroke was played
    std::vector<EndsSeries> series;
    std::vector<std::string> notes;

    bool operator==(const EndsChart&) const = default;
};

}  // namespace gui::charts

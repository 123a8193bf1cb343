// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/pitch.hpp"

#include <memory>
#include <span>
#include <vector>

namespace analysis {

/// Level and pitch of a recording at one moment.
struct TrackPoint {
    double time = 0.0;        ///< s from the start
    double level = 0.0;       ///< RMS over 10 ms, full scale = 1
    double hz = 0.0;          ///< pitch over 60 ms around; 0 = none
    double clarity_db = 0.0;  ///< of that pitch; -60 without one

    bool operator==(const TrackPoint&) const = default;
};

inline constexpr double track_step = 0.005;  ///< s between points

/// Follows level and pitch while samples come in; keeps a point every 5 ms and a tenth of a second of sound.
///
/// What lies under 20 Hz (offset, handling) is taken away first.  Pitch is measured every 10 ms at 16 kHz or a little
/// above, where the level is within 60 dB of the loudest so far; the points between take the pitch before them. Octaves
/// are not made sure of here: measure_tone does that for a whole note.
class Tracker {
public:
    Tracker(double sample_rate, const PitchRange& range);
    ~Tracker();
    Tracker(const Tracker&) = delete;
    Tracker& operator=(const Tracker&) = delete;

    void add(std::span<const double> samples);
    /// All points; nothing can be added after it.
    std::vector<TrackPoint> finish();

private:
    struct State;
    std::unique_ptr<State> state_;
};

/// The whole at once.
std::vector<TrackPoint> track(std::span<const double> samples, double sample_rate, const PitchRange& range);

}  // namespace analysis

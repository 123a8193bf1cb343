// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/note.hpp"

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace sim::kernel {

/// What may differ between the lanes of a batch.
struct LaneStroke {
    Profile speed;  ///< m/s
    Profile force;  ///< N
    Start start;
    Wanted wanted;
};

/// Strokes of one note at one contact point (fixed or moving), advanced together in single precision by a vector
/// kernel: all that `run_reference` knows, sample by sample in the same order, ribbons up to `most_hair_points`.
///
/// A stroke's record is the same bits on every instruction set and beside every neighbour.  Against the reference it
/// differs by rounding, which a bowed string soon blows up to another run of the same kind: to be compared by verdicts
/// and edges.
/// source   as run_reference; the forms of the recursions are in lane_work.hpp
class LaneBatch {
public:
    /// How many strokes fit.
    static constexpr std::size_t capacity = 16;
    /// Points of a ribbon; more stand so close together that their forces take thousands of rounds to settle.
    static constexpr int most_hair_points = 5;

    /// `lengthwise` m/s for all strokes, see Drive; 1 … capacity strokes.
    LaneBatch(const Note& note, const Profile& contact_point, double lengthwise, std::span<const LaneStroke> strokes);
    ~LaneBatch();
    LaneBatch(LaneBatch&&) noexcept;
    LaneBatch& operator=(LaneBatch&&) noexcept;

    /// Advances every stroke by that many samples; one whose own `wanted.steps` are over is no longer recorded.
    /// The division into calls changes no bit.
    void advance(int steps);
    /// Samples until the last stroke is over.
    int steps_left() const;
    /// From now on, one lane's bow moves by these profiles; their times count from the start of the run.
    void drive(std::size_t lane, const Profile& speed, const Profile& force);

    /// From here on the bridge force goes, instead of into the records, into what `heard` returns: 25 times cheaper to
    /// thin out than record by record.  For strokes that all last equally long.
    void listen_from(int step);
    /// Every step-th sample of the force listened to, after a symmetric low-pass of an odd number of taps, where the
    /// whole filter lies inside; in single precision.
    struct Heard {
        std::vector<double> samples;  ///< N
        double peak_to_peak = 0.0;    ///< N, of the whole force
    };
    std::vector<Heard> heard(std::span<const double> taps, int step) const;

    /// One a stroke, once it is over; before that, what has been kept so far.
    std::vector<Record> take_records();

private:
    struct State;
    std::unique_ptr<State> state_;
};

/// Runs all strokes to their ends, as many batches as it takes.
std::vector<Record> run_lanes(const Note& note, const Drive& shared, std::span<const LaneStroke> strokes);

}  // namespace sim::kernel

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/board.hpp"
#include "sim/passage/weights.hpp"
#include "sim/preset.hpp"
#include "sim/score/tune.hpp"

#include <optional>
#include <vector>

namespace sim::passage {

/// How one note is taken: string, finger, and where the hand stands.
struct HandState {
    int string = 0;  ///< index into Preset::strings
    int finger = 0;  ///< 0 = open … 4
    int place = 0;   ///< semitones above the nut at which the first finger stands, from 1; 0: not placed yet

    bool operator==(const HandState&) const = default;
};

/// What the notes of a tune and the steps between them cost a hand on an instrument.
///
/// The cost of a fingering is begin(first) + note(each) + move(each step) + end(last).  All terms are >= 0; a term
/// without value can't be played.
class Hand {
public:
    Hand(const score::Tune& tune, const Preset& preset, const FingeringWeights& weights);

    std::size_t notes() const { return notes_.size(); }
    int strings() const { return static_cast<int>(preset_.strings.size()); }
    /// The highest hand place on the board.
    int places() const { return places_; }

    std::optional<double> note(std::size_t i, const HandState& state) const;
    std::optional<double> begin(const HandState& state) const;
    std::optional<double> move(std::size_t to_note, const HandState& from, const HandState& to) const;
    double end(const HandState& state) const;

    /// Where the note lies on that string, if it does.
    const std::optional<BoardPlace>& on_board(std::size_t i, int string) const;
    /// Whether the tune's own string and finger leave this choice.
    bool is_free(std::size_t i, int string, int finger) const;

    /// Whether some finger can stop the note on that string from that place.
    bool reaches(std::size_t i, int string, int place) const;

    /// Semitones and m from the nut at which the first finger stands.
    double place_stop(int place) const;
    double place_from_nut(int place, int string) const;
    /// m from first to fourth finger at that place.
    double span(int place, int string) const;
    /// Whether the hand finds that place by a fret, the guide fret or the octave's harmonic.
    bool has_landmark(int place) const;

private:
    struct Timed {
        double length = 0.0;  ///< s
        double rest = 0.0;    ///< s before it
        score::Stress stress = score::Stress::downbeat;
        std::optional<int> string;
        std::optional<int> finger;
        bool has_fret = false;                          ///< some string has a fret for it, or its open sound
        std::vector<std::optional<BoardPlace>> places;  ///< by string
    };

    Timed timed(std::size_t i) const;
    std::optional<double> finger_cost(const HandState& state, const BoardPlace& at) const;
    double place_cost(std::size_t i, const HandState& state) const;
    double shift_cost(std::size_t to_note, const HandState& from, const HandState& to) const;
    double step_cost(std::size_t to_note, const HandState& from, const HandState& to) const;
    double crossing_cost(int from, int to) const;
    double landmark_cost(int place) const;

    const score::Tune& tune_;
    const Preset& preset_;
    FingeringWeights weights_;
    int places_ = 0;
    std::vector<Timed> notes_;
};

/// The preset's string that a tune's name for one means: by name, by pitch, or by number with 1 for the first.
std::optional<int> string_index(const Preset& preset, const std::string& name);

}  // namespace sim::passage

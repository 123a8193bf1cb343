// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

namespace sim::passage {

/// What a fingering costs: 1 is about the pains of one change of hand place.  All of it is common practice, no source:
/// the order of what players avoid is well known, the numbers are ours.
struct FingeringWeights {
    double shift = 1.0;          ///< for each change of hand place
    double shift_span = 1.5;     ///< more for each hand's span that it moves along the string
    double shift_on_beat = 0.2;  ///< more where the new place begins on a beat that isn't the bar's first
    double shift_offbeat = 0.6;  ///< more where it begins off the beat: a shift is heard least at the bar's beginning
    double shift_hurried = 0.6;  ///< more, up to this much, where the note before lasts less than `unhurried`
    double unhurried = 0.3;      ///< s
    double open_share = 0.5;     ///< of a shift's cost that is left while an open string sounds: the hand is free
    double rest_share = 0.5;     ///< of it that is left over a rest
    double least_rest = 0.15;    ///< s, from which a rest counts
    double guide_share = 0.85;   ///< of it that is left where the same finger stays on the string as a guide
    double no_landmark = 0.5;    ///< a hand place begins where nothing tells the hand its place
    double weak_end = 0.5;       ///< a hand place, or the tune, ends on a weak finger (times its weakness)
    double weak_note = 0.08;     ///< any note by a weak finger (times its weakness)
    double stretch = 3.0;        ///< for each hand's span by which a finger reaches out of the hand's comfort
    double stretch_limit = 0.3;  ///< hand's spans beyond comfort that no finger reaches
    double reach_back = 0.6;     ///< the first finger drawn back by a semitone while the hand stays
    double squeeze = 1.0;        ///< for each hand's span by which fingers draw together more than they like
    double crowd = 1.0;          ///< for each finger pad that doesn't find room beside its neighbours
    double crossed = 3.0;        ///< a higher finger set lower than a lower one in the same hand place
    double hop = 1.0;            ///< the same finger goes to another stop while the hand stays
    double lie_across = 0.3;     ///< the same finger lies across two neighbouring strings
    double next_string = 0.35;   ///< the bow goes to the neighbouring string
    double passed_string = 0.5;  ///< more for each string that it passes over
    double height = 1.0;  ///< a note at the bridge's end of the string would cost so much, one at the nut nothing
    double thick_string =
        5.0;  ///< more, on the lowest string, times the square of that: thick strings speak unwillingly when short
    double bare = 1.0;  ///< a note on the bare board of a fretted instrument: a fret makes it surer and clearer
    double bare_for_fret = 1.0;   ///< more, where some string had a fret for it, or its open sound
    double fret_to_bare = 0.8;    ///< a shift between a fret and the bare board
    double open_unfretted = 0.3;  ///< an open string where there are no frets: its sound stands out

    /// How weak each finger is, open string first.  1 and 2 are taken as strong: they bear the hand and leave it free
    /// to go on; the fourth is the shortest.
    std::array<double, 5> weakness{0.0, 0.0, 0.0, 0.5, 1.0};
    /// Where each finger stands when the hand is open, first to fourth, in hand's spans: the gap between first and
    /// second is the widest.
    std::array<double, 4> finger_place{0.0, 0.46, 0.74, 1.0};
    double close_share = 0.75;  ///< of its open place to which a finger draws in without pains
    double high_span = 0.82;    ///< of the hand's span that is left from the octave on, where the arm reaches round
    double pad = 0.010;         ///< m, room that a finger pad takes along the string
    double crowd_limit = 0.4;   ///< of the room that fingers would like, which they can't do without
    double beside = 0.5;        ///< semitones by which the first finger's note may lie off its hand place
    int guide_reach = 1;        ///< semitones on either side of the guide fret that the hand finds by it

    bool operator==(const FingeringWeights&) const = default;
};

}  // namespace sim::passage

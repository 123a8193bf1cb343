// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/weights.hpp"
#include "sim/preset.hpp"
#include "sim/score/tune.hpp"

#include <string>
#include <vector>

/// How a tune is played on an instrument: where the fingers fall and how the bow travels.
namespace sim::passage {

/// Where one note is played.
struct FingeredNote {
    int string = 0;         ///< index into Preset::strings
    double stop = 0.0;      ///< semitones above the open string; the fret's own place where a fret stops it
    int finger = 0;         ///< 0 = open … 4
    int hand_place = -1;    ///< index into Fingering::hand_places; -1 for an open string before any
    double from_nut = 0.0;  ///< m
    double pitch = 0.0;     ///< Hz at that stop
    double cents = 0.0;     ///< of that pitch from the note in the preset's temperament

    bool operator==(const FingeredNote&) const = default;
};

/// Where the hand stands, and which notes it reaches from there.
struct HandPlace {
    double stop = 0.0;      ///< semitones above the nut at which the first finger stands
    double from_nut = 0.0;  ///< m
    std::size_t first = 0;  ///< first note that is played from here …
    std::size_t last = 0;   ///< … and the last
    std::string name;       ///< "fret 3", "the guide fret", "31 mm above the guide fret"
    std::string landmark;   ///< what it is found by: "fret 3", "guide fret"; empty for none
    std::string why;        ///< why the hand comes here, in words; empty for the first place

    bool operator==(const HandPlace&) const = default;
};

/// One way of playing the whole tune.
struct Fingering {
    std::vector<FingeredNote> notes;  ///< as many as the tune has
    std::vector<HandPlace> hand_places;
    double cost = 0.0;

    bool operator==(const Fingering&) const = default;
};

/// How many ways to give back, and what counts.
struct FingeringPlan {
    int alternatives = 3;  ///< >= 1
    FingeringWeights weights;
};

/// The best ways to finger the tune, cheapest first, at least one: a shortest path over string, hand place and finger
/// of every note, with the costs of sim/passage/hand.hpp.  The others are each the cheapest through some other string
/// or hand place that differs from those before on a tenth of the notes (on two to eight); there may be fewer than
/// asked for.  Strings and fingers that the tune gives are kept.  Fingers 1 to 4 only: no thumb on the string.
/// InputError names the bar and the note that can't be played, and what could be.
std::vector<Fingering> find_fingerings(const score::Tune& tune, const Preset& preset, const FingeringPlan& plan = {});

}  // namespace sim::passage

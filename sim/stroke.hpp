// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/judge.hpp"
#include "sim/note.hpp"

#include <optional>
#include <span>
#include <vector>

namespace sim {

/// How a stroke begins.
enum class Beginning {
    started,  ///< from rest, the speed rising to its value
    held      ///< from the ideal Helmholtz motion at full speed, the contact cold
};

/// One bow stroke at constant force.
struct Stroke {
    double contact_point = 0.0;  ///< m from the bridge
    double force = 0.0;          ///< N
    double speed = 0.0;          ///< m/s
    double rise = 0.0;           ///< s, of a started stroke
    double duration = 0.0;       ///< s
    Beginning beginning = Beginning::started;
    double lengthwise = 0.0;  ///< m/s, at which the hair slides along the string (laws thermal and coulomb only)

    bool operator==(const Stroke&) const = default;
};

/// What is heard over the last 0.1 s of a run.
struct Tone {
    std::optional<double> pitch;       ///< Hz
    double clarity = -60.0;            ///< dB, how clearly the note is heard; a number without a pitch as well
    double level = 0.0;                ///< N RMS through the body's radiation weights
    double centroid = 0.0;             ///< Hz, of the radiated partials; 0 without a pitch
    double bridge_fundamental = 0.0;   ///< N, first harmonic of the bridge force
    double bridge_peak_to_peak = 0.0;  ///< N

    bool operator==(const Tone&) const = default;
};

/// What one stroke gave.
struct StrokeResult {
    Stroke stroke;
    double sample_rate = 0.0;  ///< Hz, of the simulation
    Verdict verdict;
    Tone tone;
    std::optional<double> speak_time;  ///< s from the first main slip to Helmholtz motion

    bool operator==(const StrokeResult&) const = default;
};

/// A stroke whose speed, force and place run freely; what `run_drive` takes.
struct FreeStroke {
    kernel::Drive drive;
    kernel::Start start;
    double duration = 0.0;  ///< s
};

/// What is heard at the end of a run, s.
inline constexpr double heard_for = 0.1;
/// The end of a bridge force that judging it takes: that, and the ends of the filter that thins it out, s.
inline constexpr double judged_for = heard_for + 0.004;
/// How long a run goes on once it speaks, s: 18 periods or 0.1 s to be heard, and a little more.
double listening_time(const Note& note);
/// How long a started stroke runs: its rise, the time within which it must speak, and the listening time.
double started_duration(const Note& note, const Player& player);
/// How long a held run lasts: 5 / (pi f0 / Q1) s, at least 300 periods.
double held_duration(const Note& note);

/// Where and how firmly the bow touches.
struct Touch {
    double contact_point;  ///< m from the bridge
    double force;          ///< N
};
/// The player's stroke from rest: speed, rise and duration as usual.
Stroke started_stroke(const Note& note, const Player& player, const Touch& touch);

/// Simulates and judges one stroke.  `times` multiplies the sample rate.
StrokeResult play(const Note& note, const Stroke& stroke, int times = 1);

/// As `play`, and hands over the record too, with the whole bridge force and the waveforms.
struct Played {
    StrokeResult result;
    kernel::Record record;
};
Played play_recorded(const Note& note, const Stroke& stroke, int times = 1);

/// Simulates any drive at the sample rate of the smallest contact point; the whole record, unjudged.
struct FreePlayed {
    double sample_rate = 0.0;  ///< Hz
    kernel::Record record;
};
FreePlayed play_freely(const Note& note, const FreeStroke& stroke, int times = 1);

/// What a run sounds like at its end, and the judge's word on it.
struct Judged {
    Tone tone;
    Verdict verdict;
};
/// How the bow moved at the end of the run, and how it got there.
struct BowAtEnd {
    const Profile& speed;  ///< m/s, of the whole run
    double last_speed;     ///< m/s
    double contact_point;  ///< m
    double duration;       ///< s
};
Judged judged(const Note& note, const kernel::Record& record, double sample_rate, const BowAtEnd& bow);

/// Pitch, level and brightness of the last 0.1 s of a bridge force.
struct ToneWindow {
    double sample_rate;  ///< Hz
    double expected_hz;  ///< pitch is looked for around here
};
Tone tone_of(std::span<const double> bridge_force, const ToneWindow& window, const Bridge& bridge);

}  // namespace sim

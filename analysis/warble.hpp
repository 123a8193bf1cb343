// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

namespace analysis {

/// A tone whose level goes up and down slowly and regularly, as a wolf note's does.
struct Warble {
    double depth_db = 0.0;  ///< from the trough to the crest of the mean cycle, > 0
    double rate_hz = 0.0;   ///< cycles a second
    double share = 0.0;     ///< 0 … 1, of the level's slow variance, what that cycle explains

    bool operator==(const Warble&) const = default;
};

inline constexpr double warble_lowest_hz = 2.0;
inline constexpr double warble_highest_hz = 15.0;
inline constexpr double warble_least_db = 1.0;     ///< shallower cycles are called steady
inline constexpr double warble_least_share = 0.5;  ///< less regular changes are no warble

/// The regular beating of the samples' level between 2 and 15 times a second; nothing where there is none.
///
/// The level (dB of the mean square under a Hann window of 20 ms, no lower than 60 dB under its greatest) is taken
/// every 2.5 ms and freed of its straight trend, so that a steady decay is no warble.  Its rate is the peak of its
/// spectrum under a Hann window, at least four cycles of it in the record; the mean cycle is the sum of the first three
/// harmonics of that rate, fitted by least squares; its share is taken of the variance of the level below 45 Hz, where
/// pitch does not show.  Records under half a second, silence and what is not finite: nothing.
///
/// accuracy depth within 10 % (the 20 ms window rounds quick cycles), rate within 0.1 Hz from 2 s of sound on; lowest
///          pitch 50 Hz
/// threads  any
std::optional<Warble> measure_warble(std::span<const double> samples, double sample_rate);

}  // namespace analysis

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace sim {

/// A driving-point admittance as measured: velocity of the bridge at the string's notch over the force there.
struct MeasuredBridge {
    std::vector<double> hz;                        ///< rising, > 0
    std::vector<std::complex<double>> admittance;  ///< m/s/N, e^(+i w t)
    double usual_low = 0.0;                        ///< Hz, from where it is used unless said otherwise
    double usual_high = 0.0;                       ///< Hz, up to where
    std::vector<std::string> remarks;              ///< sentences: what was taken as what, what was left out

    bool operator==(const MeasuredBridge&) const = default;
};

/// Reads a measurement from a table or from an impulse response, told apart by the file's ending.
///
/// A sound file (.wav, .flac, .aif, .aiff) holds, in one channel, the velocity that follows a unit impulse of force at
/// the first sample: its numbers times `scale` are m/s per N s.  The admittance is its Fourier transform.  Anything
/// else is a table (number_table.hpp) with a column `hz` and either `real`, `imag` (m/s/N), or `magnitude` (m/s/N) or
/// `magnitude_db` (dB re 1 m/s/N) with `phase_deg` or `phase_rad`; a plain `phase` is in degrees where it goes beyond
/// 30, in radians where it stays within 6.3, and is refused between.  Falling order is turned round; the point at 0 Hz
/// is left out.
///
/// InputError naming the file, and for tables the line: for missing columns, numbers that are none, frequencies that
/// are negative or neither rise nor fall, too few points, more than one channel, silence, or a `scale` beside a table.
MeasuredBridge read_measured_bridge(const std::filesystem::path& file, std::optional<double> scale = {});

inline constexpr int least_points = 10;     ///< of a measurement, in the range in use
inline constexpr double lowest_hz = 20.0;   ///< used unless said otherwise
inline constexpr double highest_hz = 10e3;  ///< used unless said otherwise

/// Only for measured_bridge.cpp: the sound file's part of the above.
MeasuredBridge bridge_from_impulse(const std::filesystem::path& file, double scale);

}  // namespace sim

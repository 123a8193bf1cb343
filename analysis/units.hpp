// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

/// The only place where units are converted.  Inside, everything is SI.
namespace analysis {

constexpr double metres_from_mm(double mm) { return mm * 1e-3; }
constexpr double mm_from_metres(double metres) { return metres * 1e3; }
constexpr double seconds_from_ms(double ms) { return ms * 1e-3; }
constexpr double ms_from_seconds(double seconds) { return seconds * 1e3; }
constexpr double kg_m_from_g_m(double g_m) { return g_m * 1e-3; }
constexpr double g_m_from_kg_m(double kg_m) { return kg_m * 1e3; }
inline double radians_from_degrees(double degrees) { return degrees * 3.14159265358979323846 / 180.0; }

inline double degrees_from_radians(double radians) { return radians * 180.0 / 3.14159265358979323846; }

/// 1200 log2(frequency / reference): cents by which `frequency` lies above `reference`, both in Hz.
inline double cents_between(double frequency, double reference) { return 1200.0 * std::log2(frequency / reference); }
/// 2^(semitones/12), equal temperament.
inline double ratio_from_semitones(double semitones) { return std::exp2(semitones / 12.0); }
/// 20 log10 of an amplitude ratio.
inline double db_from_ratio(double ratio) { return 20.0 * std::log10(ratio); }
inline double ratio_from_db(double db) { return std::pow(10.0, db / 20.0); }

}  // namespace analysis

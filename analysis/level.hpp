// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <span>

namespace analysis {

/// Root of the mean square, in the samples' unit; 0 for no samples.
double rms(std::span<const double> samples);

/// Magnitude of a frequency response, >= 0, at a frequency in Hz.
using Response = std::function<double(double hz)>;

/// RMS that the steady part of the samples would have after a filter of this response; 0 for under 2 samples.
///
/// From the spectrum under a Hann window, whose energy is corrected for; the (window-weighted) mean is removed first.
/// Onsets and ringing are not followed: the response acts on what the record holds, as if it went on for ever.
/// `response` is called once a bin, from 1/duration to half the sample rate; decimate first to call it less.
///
/// threads  any, if `response` may be called so
double weighted_rms(std::span<const double> samples, double sample_rate, const Response& response);

}  // namespace analysis

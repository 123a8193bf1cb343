// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace analysis {

/// Every `factor`-th (>= 1) sample after a low-pass; factor 1 returns the samples as they are.
///
/// Filter   Kaiser-windowed sinc of 32 factor + 1 taps.  With r the new sample rate: within 0.001 dB of 1 up to 0.4 r,
///          under -95 dB from 0.6 r up, so that nothing folds to below 0.4 r; -6 dB at r/2.
/// shape    Only outputs for which the whole filter lies inside the record: the first lies 16 factor samples after
///          the record's start, and 32 factor samples are lost in all.  Shorter records give no samples.
/// threads  pure
Signal decimate(std::span<const double> samples, double sample_rate, int factor);

/// The filter of `decimate`, symmetric, 32 factor + 1 taps; for factor 1 the single tap 1.
std::vector<double> decimation_taps(int factor);

/// `decimate` without an end: a sample in, and every `factor`-th time one out.
///
/// promise  no heap, no locks, no throw but in the constructor
class Decimator {
public:
    explicit Decimator(int factor);

    void push(double sample);
    /// The filter over the last 32 factor + 1 samples; what came before the first counts as 0.
    double output() const;

private:
    std::vector<double> taps_;
    std::vector<double> ring_;  // kept twice, one after the other: the last samples then lie in one piece
    std::size_t next_ = 0;
};

/// The greatest whole factor that leaves at least `lowest_rate`, 1 or more.
int decimation_factor(double sample_rate, double lowest_rate);

/// The rate that the measures here work at when more is given: 48 kHz up to (not including) 96 kHz is left.
inline constexpr double analysis_rate = 48000.0;

/// decimate() by the greatest factor that leaves at least `analysis_rate`.  pitch and partials do this by themselves;
/// a caller that asks for several measures of one record saves time by doing it once.
Signal decimated_for_analysis(std::span<const double> samples, double sample_rate);

}  // namespace analysis

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <cstddef>
#include <span>
#include <vector>

/// Fourier transforms of real samples.
///
/// threads  every function may be called from any number of threads at once; results do not depend on the thread,
///          nor on what was computed before.  Plans and their buffers are kept by each thread (a few lengths).
namespace analysis {

/// The least even length >= `at_least` with no prime factor above 5: quick to transform.
std::size_t fast_length(std::size_t at_least);
/// The greatest such length <= at_most (2 or more): some hundredths less at the most.
std::size_t fast_length_within(std::size_t at_most);

/// A length >= at_least out of a short list (2^k, 5/4 and 3/2 of it, from 64 up): for many transforms of ever other
/// lengths, which would spend their time on plans.
std::size_t common_length(std::size_t at_least);

/// X_k = sum_j x_j exp(-2 pi i j k / length), k = 0 … length/2, the samples padded with zeros to `length` (even).
std::vector<std::complex<double>> spectrum(std::span<const double> samples, std::size_t length);

/// The `length` samples (even) whose spectrum was given: spectrum() undone, scale included.
std::vector<double> inverse_spectrum(std::span<const std::complex<double>> bins, std::size_t length);

/// sum_j x_j x_(j+lag), lag = 0 … max_lag (< number of samples), j over all that fit; not normalised.
std::vector<double> autocorrelation(std::span<const double> samples, std::size_t max_lag);

/// Hann window 0.5 - 0.5 cos(2 pi j / length) at the whole j in [0, length); `length` need not be whole.
std::vector<double> hann_window(double length);

}  // namespace analysis

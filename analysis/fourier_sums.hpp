// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <complex>
#include <cstddef>
#include <span>

namespace analysis {

/// How many frequencies are looked at together.
inline constexpr std::size_t fourier_lanes = 8;

/// sum_j x_j exp(-i j w) for each w (radians a sample): a phasor turned by w from sample to sample, which after some
/// ten thousand is off by 1e-12.  The same bits on every instruction set.
std::array<std::complex<double>, fourier_lanes> fourier_sums(std::span<const double> x,
                                                             const std::array<double, fourier_lanes>& omega);

}  // namespace analysis

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/fit_points.hpp"

#include <complex>
#include <span>
#include <vector>

namespace sim {

/// Poles of a rational function of i w, rad/s, all in the left half-plane; of a conjugate pair the upper one.
///
/// Starts from `pairs` lightly damped pairs spread evenly over log frequency and moves them by the zeros of a weight
/// function that is fitted along with Y, `rounds` times; poles that would grow are turned round into decaying ones.
/// source   [Gustavsen1999]: poles moved by solving linear least squares; [Gustavsen2006]: the weight function's own
///          constant left free (both forms from memory)
std::vector<std::complex<double>> vector_fit_poles(std::span<const FitPoint> points, int pairs, int rounds);

}  // namespace sim

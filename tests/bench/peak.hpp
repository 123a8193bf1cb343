// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace tests {

/// What one core does at most in single precision without fused multiply-add, on the instruction set that the vector
/// kernel takes here: as many multiplications as additions, none waiting for another.  Measured, 1/s.
double peak_operations_per_second();

/// That instruction set's name.
std::string instruction_set();

}  // namespace tests

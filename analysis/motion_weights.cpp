// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion_weights.hpp"

namespace analysis {

const MotionWeights motion_weights{};

}  // namespace analysis

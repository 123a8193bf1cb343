// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"
#include "analysis/sound_blocks.hpp"

#include <vector>

namespace sim::match {

/// The samples of the first `count` notes' steady parts that analyse measured, at most the middle 3 s of each.
std::vector<analysis::Signal> note_samples(const analysis::SoundBlocks& sound, const analysis::Recording& recording,
                                           std::size_t count);

}  // namespace sim::match

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"
#include "analysis/signal.hpp"
#include "analysis/sound_blocks.hpp"

#include <vector>

namespace sim::match {

/// Part of a note's measured stretch.
struct NoteSamples {
    analysis::Signal signal;
    double skipped = 0.0;  ///< s of the stretch before it
};

/// Of the first `count` notes' steady parts that analyse measured the middle 3 s at the most.
std::vector<NoteSamples> note_samples(const analysis::SoundBlocks& sound, const analysis::Recording& recording,
                                      std::size_t count);

}  // namespace sim::match

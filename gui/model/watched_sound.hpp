// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/sound_blocks.hpp"
#include "sim/batch.hpp"

namespace gui {

/// The same sound, told about and stopped on the way; it is all done when it was played `passes` times.
analysis::SoundBlocks watched(const analysis::SoundBlocks& blocks, const sim::Workers& workers, double passes);

}  // namespace gui

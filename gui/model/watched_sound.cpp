// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/watched_sound.hpp"

#include <algorithm>
#include <memory>

namespace gui {

analysis::SoundBlocks watched(const analysis::SoundBlocks& blocks, const sim::Workers& workers, double passes) {
    analysis::SoundBlocks result = blocks;
    const auto played = std::make_shared<double>(0.0);  // s, over all passes
    result.play = [blocks, workers, passes, played](const analysis::BlockTaker& take) {
        blocks.play([&](const analysis::SoundBlock& block) {
            if (workers.stop.stop_requested()) throw sim::Stopped();
            take(block);
            *played += static_cast<double>(block.mono.size()) / blocks.sample_rate;
            if (workers.progress && blocks.duration > 0.0)
                workers.progress(std::min(1.0, *played / (passes * blocks.duration)));
        });
    };
    return result;
}

}  // namespace gui

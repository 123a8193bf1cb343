// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>
#include <span>

namespace analysis {

/// Some 40 ms of a recording.
struct SoundBlock {
    std::span<const double> mono;  ///< mean of the channels
    int clipped = 0;               ///< samples of any channel in runs that ClipCounter calls clipped
    double power = 0.0;            ///< mean square over all channels
};
using BlockTaker = std::function<void(const SoundBlock& block)>;

/// A recording that can be played through more than once, block by block.
struct SoundBlocks {
    double sample_rate = 0.0;  ///< Hz
    std::size_t channels = 1;
    bool length_unknown = false;                       ///< see SoundReader
    double duration = 0.0;                             ///< s, as announced; 0 = not known
    std::function<void(const BlockTaker& take)> play;  ///< from the start, in order; throws what SoundReader throws
};

inline constexpr std::size_t block_frames = 2048;

/// Reads the file anew each time.  InputError also for more than two channels.
SoundBlocks blocks_of_file(const std::filesystem::path& file);
/// Borrows the samples.
SoundBlocks blocks_of(std::span<const double> samples, double sample_rate);

/// Finds clipped samples of one channel as they pass: runs of 3 or more at 0.999 of full scale or beyond, and of 8 or
/// more of one value above a quarter of it (a wave cut flat before it was recorded).
class ClipCounter {
public:
    /// How many samples are known to be clipped by this one.
    int take(double sample);

private:
    double value_ = 0.0;
    int equal_ = 0;
    int full_ = 0;
};

}  // namespace analysis

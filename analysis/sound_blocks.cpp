// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/sound_blocks.hpp"

#include "analysis/errors.hpp"
#include "analysis/sound_reader.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace analysis {
namespace {

constexpr std::size_t most_channels = 2;
constexpr double longest = 4.0 * 3600.0;  // s

void require_channels(const std::filesystem::path& file, std::size_t channels) {
    if (channels <= most_channels) return;
    throw InputError(file.string(),
                     "has " + std::to_string(channels) +
                         " channels; one or two are needed (save the one you want as a file of its own)");
}

void play_file(const std::filesystem::path& file, const BlockTaker& take) {
    SoundReader reader(file);
    const std::size_t channels = reader.channels();
    require_channels(file, channels);
    std::vector<double> samples(block_frames * channels);
    std::vector<double> mono(block_frames);
    std::vector<ClipCounter> counters(channels);
    double frames_so_far = 0.0;
    while (const std::size_t frames = reader.read(samples)) {
        SoundBlock block;
        for (std::size_t j = 0; j < frames; ++j) {
            double sum = 0.0;
            for (std::size_t c = 0; c < channels; ++c) {
                const double sample = samples[j * channels + c];
                sum += sample;
                block.power += sample * sample;
                block.clipped += counters[c].take(sample);
            }
            mono[j] = sum / static_cast<double>(channels);
        }
        block.mono = std::span(mono).first(frames);
        block.power /= static_cast<double>(frames * channels);
        frames_so_far += static_cast<double>(frames);
        if (frames_so_far > longest * reader.sample_rate())
            throw InputError(file.string(), "is longer than 4 hours; cut it into shorter files");
        take(block);
    }
}

}  // namespace

int ClipCounter::take(double sample) {
    constexpr double full_scale = 0.999;
    constexpr double loud = 0.25;
    constexpr int full_run = 3;
    constexpr int flat_run = 8;
    equal_ = sample == value_ ? equal_ + 1 : 1;
    value_ = sample;
    full_ = std::abs(sample) >= full_scale ? full_ + 1 : 0;
    if (full_ >= full_run) return full_ == full_run ? full_run : 1;
    if (std::abs(sample) < loud || equal_ < flat_run) return 0;
    return equal_ == flat_run ? flat_run : 1;
}

SoundBlocks blocks_of_file(const std::filesystem::path& file) {
    const SoundReader reader(file);
    require_channels(file, reader.channels());
    return {.sample_rate = reader.sample_rate(),
            .channels = reader.channels(),
            .length_unknown = reader.length_unknown(),
            .duration = reader.duration(),
            .play = [file](const BlockTaker& take) { play_file(file, take); }};
}

SoundBlocks blocks_of(std::span<const double> samples, double sample_rate) {
    const auto play = [samples](const BlockTaker& take) {
        ClipCounter counter;
        for (std::size_t at = 0; at < samples.size(); at += block_frames) {
            SoundBlock block{.mono = samples.subspan(at, std::min(block_frames, samples.size() - at))};
            for (const double sample : block.mono) {
                block.clipped += counter.take(sample);
                block.power += sample * sample / static_cast<double>(block.mono.size());
            }
            take(block);
        }
    };
    return {.sample_rate = sample_rate,
            .channels = 1,
            .length_unknown = false,
            .duration = static_cast<double>(samples.size()) / sample_rate,
            .play = play};
}

}  // namespace analysis

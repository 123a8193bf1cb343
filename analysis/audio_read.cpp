// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/audio_file.hpp"
#include "analysis/sound_reader.hpp"

namespace analysis {

Audio read_audio(const std::filesystem::path& path) {
    constexpr std::size_t block = 4096;  // frames
    SoundReader reader(path);
    const std::size_t channels = reader.channels();
    Audio audio{std::vector<std::vector<double>>(channels), reader.sample_rate()};
    std::vector<double> samples(block * channels);
    while (const std::size_t frames = reader.read(samples))
        for (std::size_t c = 0; c < channels; ++c)
            for (std::size_t j = 0; j < frames; ++j) audio.channels[c].push_back(samples[j * channels + c]);
    return audio;
}

}  // namespace analysis

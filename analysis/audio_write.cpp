// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/audio_file.hpp"
#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"

#include <sndfile.h>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstring>
#include <memory>
#include <random>
#include <string>

namespace analysis {
namespace {

/// A file in memory.  The library reports a full disk unreliably (FLAC's last block is written while closing), so
/// it encodes here, and the bytes are then written by code that checks.
struct Memory {
    std::string bytes;
    std::size_t position = 0;
};

sf_count_t length(void* user) { return static_cast<sf_count_t>(static_cast<Memory*>(user)->bytes.size()); }

sf_count_t tell(void* user) { return static_cast<sf_count_t>(static_cast<Memory*>(user)->position); }

sf_count_t seek(sf_count_t offset, int whence, void* user) {
    Memory& memory = *static_cast<Memory*>(user);
    if (whence == SEEK_CUR) offset += tell(user);
    if (whence == SEEK_END) offset += length(user);
    if (offset < 0) return -1;
    memory.position = static_cast<std::size_t>(offset);
    return offset;
}

sf_count_t read(void* to, sf_count_t count, void* user) {
    Memory& memory = *static_cast<Memory*>(user);
    const std::size_t start = std::min(memory.position, memory.bytes.size());
    const std::size_t size = std::min(static_cast<std::size_t>(count), memory.bytes.size() - start);
    std::memcpy(to, memory.bytes.data() + start, size);
    memory.position = start + size;
    return static_cast<sf_count_t>(size);
}

sf_count_t write(const void* from, sf_count_t count, void* user) {
    Memory& memory = *static_cast<Memory*>(user);
    const auto size = static_cast<std::size_t>(count);
    memory.bytes.resize(std::max(memory.bytes.size(), memory.position + size));
    std::memcpy(memory.bytes.data() + memory.position, from, size);
    memory.position += size;
    return count;
}

/// 0 where the ending is not one that we write.
int format_by_ending(const std::filesystem::path& place) {
    std::string ending = place.extension().string();
    for (char& c : ending) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    if (ending == ".wav") return SF_FORMAT_WAV | SF_FORMAT_PCM_24;
    if (ending == ".flac") return SF_FORMAT_FLAC | SF_FORMAT_PCM_24;
    return 0;
}

/// 24 bits at the top of 32, as the library takes them: exact steps of 2^-23, which is what reading gives back.
int quantised(double sample) {
    assert(std::isfinite(sample));
    const double scaled = std::clamp(std::round(sample * 8388608.0), -8388608.0, 8388607.0);
    return static_cast<int>(scaled) * 256;
}

std::vector<int> interleaved(const Audio& audio) {
    const std::size_t channels = audio.channels.size();
    std::vector<int> result(channels * audio.channels.front().size());
    for (std::size_t c = 0; c < channels; ++c) {
        assert(audio.channels[c].size() == audio.channels.front().size());
        for (std::size_t j = 0; j < audio.channels[c].size(); ++j) {
            result[j * channels + c] = quantised(audio.channels[c][j]);
        }
    }
    return result;
}

/// `samples` interleaved, at the top of 32 bits; `name` stands in errors.
std::string encoded(const std::vector<int>& samples, SF_INFO info, const std::string& name) {
    const auto frames = static_cast<sf_count_t>(samples.size()) / info.channels;
    Memory memory;
    SF_VIRTUAL_IO functions{length, seek, read, write, tell};
    std::unique_ptr<SNDFILE, int (*)(SNDFILE*)> file(sf_open_virtual(&functions, SFM_WRITE, &info, &memory), sf_close);
    if (!file) throw OutputError(name, std::string("can't be encoded: ") + sf_strerror(nullptr));
    if (sf_writef_int(file.get(), samples.data(), frames) != frames)
        throw OutputError(name, std::string("can't be encoded: ") + sf_strerror(file.get()));
    file.reset();  // writes the last block and the header
    return memory.bytes;
}

std::string encoded(const Audio& audio, const std::filesystem::path& place) {
    assert(!audio.channels.empty());
    SF_INFO info{};
    info.samplerate = static_cast<int>(std::lround(audio.sample_rate));
    info.channels = static_cast<int>(audio.channels.size());
    info.format = format_by_ending(place);
    return encoded(interleaved(audio), info, place.string());
}

/// From -0.5 to 0.5, evenly.
double even_noise(std::mt19937& random) { return static_cast<double>(random()) * 0x1p-32 - 0.5; }

/// 16 bits at the top of 32, with triangular dither of one step either way.
std::vector<int> dithered(const std::vector<double>& samples) {
    std::mt19937 random;  // NOLINT: the same every time is what is wanted
    std::vector<int> result;
    result.reserve(samples.size());
    for (const double sample : samples) {
        assert(std::isfinite(sample));
        const double noise = even_noise(random) + even_noise(random);
        const double steps = std::clamp(std::round(sample * 32768.0 + noise), -32768.0, 32767.0);
        result.push_back(static_cast<int>(steps) * 65536);
    }
    return result;
}

}  // namespace

void require_audio_ending(const std::filesystem::path& place) {
    if (format_by_ending(place) == 0) throw InputError(place.string(), "a sound file's name must end in .wav or .flac");
}

void fill_audio(const OutputFile& file, const Audio& audio) {
    require_audio_ending(file.place());
    write_bytes(file, encoded(audio, file.place()));
}

std::string flac_bytes(const Signal& signal) {
    assert(!signal.samples.empty());
    SF_INFO info{};
    info.samplerate = static_cast<int>(std::lround(signal.sample_rate));
    info.channels = 1;
    info.format = SF_FORMAT_FLAC | SF_FORMAT_PCM_16;
    return encoded(dithered(signal.samples), info, "sound");
}

void write_audio(const std::filesystem::path& place, const Audio& audio) {
    require_audio_ending(place);
    OutputFile file(place);
    fill_audio(file, audio);
    file.commit();
}

void write_audio(const std::filesystem::path& place, const Signal& signal) {
    write_audio(place, Audio{{signal.samples}, signal.sample_rate});
}

Signal mixed_down(const Audio& audio) {
    Signal result{{}, audio.sample_rate};
    if (audio.channels.empty()) return result;
    result.samples = audio.channels.front();
    for (std::size_t c = 1; c < audio.channels.size(); ++c) {
        for (std::size_t j = 0; j < result.samples.size(); ++j) result.samples[j] += audio.channels[c][j];
    }
    for (double& sample : result.samples) sample /= static_cast<double>(audio.channels.size());
    return result;
}

}  // namespace analysis

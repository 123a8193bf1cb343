// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/audio_file.hpp"
#include "analysis/errors.hpp"

#include <sndfile.h>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <fstream>
#include <memory>
#include <optional>
#include <string>

namespace fs = std::filesystem;

namespace analysis {
namespace {

constexpr int lowest_sample_rate = 1000;  // Hz
constexpr sf_count_t block = 4096;        // frames

[[noreturn]] void reject(const fs::path& file, const std::string& why) { throw InputError(file.string(), why); }

/// What a WAV or AIFF file says of itself and the library doesn't tell.
struct Header {
    std::uint64_t bytes_missing = 0;           ///< announced by the data chunk but beyond the end of the file
    std::optional<std::uint32_t> sample_rate;  ///< Hz; WAV only
};

std::uint32_t number(const unsigned char* bytes, bool low_first) {
    std::uint32_t result = 0;
    for (std::size_t k = 0; k < 4; ++k) result = result * 256 + bytes[low_first ? 3 - k : k];
    return result;
}

/// Walks over the chunks of a WAV or AIFF file; other files give an empty header.
///
/// The library quietly plays what is there of a file cut short.  Sizes of 0 and of about 2^31 or more are what
/// programs write that don't know the length yet (pipes); they announce nothing.
Header header_of(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::array<char, 12> head{};
    Header header;
    if (!file.read(head.data(), head.size())) return header;
    const bool wav = std::memcmp(head.data(), "RIFF", 4) == 0 && std::memcmp(head.data() + 8, "WAVE", 4) == 0;
    const bool aiff = std::memcmp(head.data(), "FORM", 4) == 0 && std::memcmp(head.data() + 8, "AIF", 3) == 0;
    if (!wav && !aiff) return header;
    const std::uint64_t end = fs::file_size(path);
    // A chunk's name and size, and as much of it as the sample rate needs.
    std::array<unsigned char, 16> chunk{};
    for (std::uint64_t at = 12; file.seekg(static_cast<std::streamoff>(at));) {
        file.read(reinterpret_cast<char*>(chunk.data()), chunk.size());
        if (file.gcount() < 8) break;
        file.clear();
        const std::uint64_t size = number(chunk.data() + 4, wav);
        at += 8;
        if (wav && std::memcmp(chunk.data(), "fmt ", 4) == 0) header.sample_rate = number(chunk.data() + 12, true);
        if (std::memcmp(chunk.data(), wav ? "data" : "SSND", 4) == 0) {
            const bool known = size > 0 && size < 0x7FFF0000U;
            if (known && at + size > end) header.bytes_missing = at + size - end;
            break;
        }
        at += size + size % 2;
    }
    return header;
}

void require_sample_rate(const fs::path& path, std::int64_t rate) {
    if (rate >= lowest_sample_rate) return;
    reject(path, "has a sample rate of " + std::to_string(rate) + " Hz; " + std::to_string(lowest_sample_rate) +
                     " Hz or more is needed");
}

void require_readable(const fs::path& path) {
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (status.type() == fs::file_type::not_found) reject(path, "there is no such file");
    if (error) reject(path, "can't be read: " + error.message());
    if (status.type() == fs::file_type::directory) reject(path, "is a folder; a sound file is needed");
    if (status.type() != fs::file_type::regular) reject(path, "is not a plain file; a sound file is needed");
    if (fs::file_size(path) == 0) reject(path, "is empty; a sound file is needed");
    if (!std::ifstream(path)) reject(path, "can't be opened for reading");
}

struct Closer {
    void operator()(SNDFILE* file) const { sf_close(file); }
};
using SoundFile = std::unique_ptr<SNDFILE, Closer>;

SoundFile opened(const fs::path& path, SF_INFO& info) {
    SoundFile file(sf_open(path.c_str(), SFM_READ, &info));
    // Some endings (.vox, .gsm) make the library take any bytes for sound.
    if (!file || (info.format & SF_FORMAT_TYPEMASK) == SF_FORMAT_RAW) {
        reject(path, "is not a sound file that can be read; WAV, FLAC, AIFF, Ogg and MP3 are accepted");
    }
    require_sample_rate(path, info.samplerate);
    if (info.channels < 1) reject(path, "has no channels");
    return file;
}

/// Appends a block of interleaved samples; a sample that is not finite is told by its place.
void append(Audio& audio, const std::vector<double>& samples, std::size_t frames, const fs::path& path) {
    const std::size_t channels = audio.channels.size();
    for (std::size_t c = 0; c < channels; ++c) {
        for (std::size_t j = 0; j < frames; ++j) {
            const double sample = samples[j * channels + c];
            if (!std::isfinite(sample)) {
                reject(path, "frame " + std::to_string(audio.channels[c].size()) + " of channel " +
                                 std::to_string(c + 1) + " is not a finite number");
            }
            audio.channels[c].push_back(sample);
        }
    }
}

}  // namespace

Audio read_audio(const fs::path& path) {
    require_readable(path);
    const Header header = header_of(path);
    if (header.sample_rate) require_sample_rate(path, *header.sample_rate);
    SF_INFO info{};
    const SoundFile file = opened(path, info);
    if (header.bytes_missing > 0) {
        reject(path, "is cut short: " + std::to_string(header.bytes_missing) + " bytes of the sound are missing");
    }
    Audio audio{std::vector<std::vector<double>>(static_cast<std::size_t>(info.channels)),
                static_cast<double>(info.samplerate)};
    std::vector<double> samples(static_cast<std::size_t>(block * info.channels));
    while (true) {
        const sf_count_t frames = sf_readf_double(file.get(), samples.data(), block);
        if (frames <= 0) break;
        append(audio, samples, static_cast<std::size_t>(frames), path);
    }
    const std::size_t frames = audio.channels.front().size();
    const bool length_known = info.frames > 0 && info.frames < SF_COUNT_MAX;
    if (sf_error(file.get()) != SF_ERR_NO_ERROR || (length_known && static_cast<sf_count_t>(frames) < info.frames)) {
        reject(path, "is damaged or cut short: only " + std::to_string(frames) + " frames can be read");
    }
    if (frames == 0) reject(path, "holds no sound");
    return audio;
}

}  // namespace analysis

// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/sound_reader.hpp"

#include "analysis/errors.hpp"
#include "analysis/sound_header.hpp"

#include <sndfile.h>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <string>

namespace fs = std::filesystem;

namespace analysis {
namespace {

constexpr int lowest_sample_rate = 1000;  // Hz

[[noreturn]] void reject(const fs::path& file, const std::string& why) { throw InputError(file.string(), why); }

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

[[noreturn]] void reject_format(const fs::path& path) {
    const std::string kind = compressed_kind(path);
    if (!kind.empty())
        reject(path, "is " + kind +
                         ", which can't be read here; save or export it as WAV or FLAC, or convert it: "
                         "ffmpeg -i IN OUT.wav");
    reject(path, "is not a sound file that can be read; WAV, FLAC, AIFF, Ogg and MP3 are accepted");
}

struct Closer {
    void operator()(SNDFILE* file) const { sf_close(file); }
};
using SoundFile = std::unique_ptr<SNDFILE, Closer>;

SoundFile opened(const fs::path& path, SF_INFO& info) {
    SoundFile file(sf_open(path.c_str(), SFM_READ, &info));
    // Some endings (.vox, .gsm) make the library take any bytes for sound.
    if (!file || (info.format & SF_FORMAT_TYPEMASK) == SF_FORMAT_RAW) reject_format(path);
    require_sample_rate(path, info.samplerate);
    if (info.channels < 1) reject(path, "has no channels");
    return file;
}

}  // namespace

struct SoundReader::Source {
    fs::path path;
    SF_INFO info{};
    SoundFile file;
    bool length_unknown = false;
    sf_count_t frames = 0;  // read so far
};

SoundReader::SoundReader(const fs::path& path) : source_(std::make_unique<Source>()) {
    require_readable(path);
    const SoundHeader header = sound_header(path);
    if (header.sample_rate) require_sample_rate(path, *header.sample_rate);
    source_->path = path;
    source_->file = opened(path, source_->info);
    source_->length_unknown = header.length_unknown;
    if (header.bytes_missing > 0)
        reject(path, "is cut short: " + std::to_string(header.bytes_missing) + " bytes of the sound are missing");
}

SoundReader::~SoundReader() = default;

std::size_t SoundReader::channels() const { return static_cast<std::size_t>(source_->info.channels); }
double SoundReader::sample_rate() const { return source_->info.samplerate; }
double SoundReader::duration() const {
    const sf_count_t frames = source_->info.frames;
    const bool known = frames > 0 && frames < SF_COUNT_MAX && !source_->length_unknown;
    return known ? static_cast<double>(frames) / sample_rate() : 0.0;
}
bool SoundReader::length_unknown() const { return source_->length_unknown; }

std::size_t SoundReader::read(std::span<double> interleaved) {
    const std::size_t count = interleaved.size() / channels();
    assert(count > 0);
    Source& source = *source_;
    const sf_count_t frames = sf_readf_double(source.file.get(), interleaved.data(), static_cast<sf_count_t>(count));
    if (frames <= 0) {
        const bool known = source.info.frames > 0 && source.info.frames < SF_COUNT_MAX && !source.length_unknown;
        if (sf_error(source.file.get()) != SF_ERR_NO_ERROR || (known && source.frames < source.info.frames))
            reject(source.path,
                   "is damaged or cut short: only " + std::to_string(source.frames) + " frames can be read");
        if (source.frames == 0) reject(source.path, "holds no sound");
        return 0;
    }
    const std::size_t values = static_cast<std::size_t>(frames) * channels();
    for (std::size_t i = 0; i < values; ++i)
        if (!std::isfinite(interleaved[i]))
            reject(source.path, "frame " + std::to_string(source.frames + static_cast<sf_count_t>(i / channels())) +
                                    " of channel " + std::to_string(i % channels() + 1) + " is not a finite number");
    source.frames += frames;
    return static_cast<std::size_t>(frames);
}

}  // namespace analysis

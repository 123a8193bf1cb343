// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <filesystem>
#include <memory>
#include <span>

namespace analysis {

/// A sound file read block by block, so that its length costs no memory.
class SoundReader {
public:
    /// InputError, one line, for a file that is missing, empty, cut short by its own header, no sound, or has a sample
    /// rate under 1000 Hz; compressed recordings that can't be read are told with how to convert them.
    explicit SoundReader(const std::filesystem::path& file);
    ~SoundReader();
    SoundReader(const SoundReader&) = delete;
    SoundReader& operator=(const SoundReader&) = delete;

    std::size_t channels() const;
    double sample_rate() const;  ///< Hz
    double duration() const;     ///< s, as announced; 0 = not known
    /// Whether the header announces about 2 GB or more that are not there, as programs write that don't know the
    /// length.
    bool length_unknown() const;

    /// The next frames, interleaved, as many as fit (a whole number of frames); how many came, 0 at the end.
    /// InputError for a sample that is not finite, and at the end if frames are missing or there were none at all.
    std::size_t read(std::span<double> interleaved);

private:
    struct Source;
    std::unique_ptr<Source> source_;
};

}  // namespace analysis

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace analysis {

/// What a sound file says of itself and the library that reads it doesn't tell.
struct SoundHeader {
    std::uint64_t bytes_missing = 0;           ///< announced by the data chunk but beyond the end of the file
    bool length_unknown = false;               ///< announces about 2^31 bytes or more that are not there
    std::optional<std::uint32_t> sample_rate;  ///< Hz; WAV only
};

/// Walks over the chunks of a WAV or AIFF file; other files give an empty header.
///
/// The library quietly plays what is there of a file cut short.  Sizes of 0 and of about 2^31 or more are what
/// programs write that don't know the length yet (pipes); they announce nothing.
SoundHeader sound_header(const std::filesystem::path& file);

/// Name of a compressed format that phones and browsers record in and that can't be read here, by the file's first
/// bytes: "MPEG-4 (m4a, as phones record)"; empty for anything else.
std::string compressed_kind(const std::filesystem::path& file);

}  // namespace analysis

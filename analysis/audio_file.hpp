// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/output_file.hpp"
#include "analysis/signal.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace analysis {

/// Sound of one or more channels, full scale = 1.
struct Audio {
    std::vector<std::vector<double>> channels;  ///< [channel][frame], all of one length
    double sample_rate = 0.0;                   ///< Hz, whole when written

    bool operator==(const Audio&) const = default;
};

/// InputError unless the name ends in .wav or .flac (capitals allowed): for a command to ask before it computes.
void require_audio_ending(const std::filesystem::path& place);

/// Writes 24-bit WAV or FLAC by ending, whole or not at all.  Beyond full scale is clipped; samples are finite.
/// InputError for another ending, OutputError if it can't be written.
void write_audio(const std::filesystem::path& place, const Audio& audio);
/// As above, one channel.
void write_audio(const std::filesystem::path& place, const Signal& signal);
/// As above into a place made ready before; the caller commits.
void fill_audio(const OutputFile& file, const Audio& audio);

/// The sound as the bytes of a 16-bit FLAC file, for what has to be small.  Dithered over two steps with noise that is
/// the same every time: what is far below full scale stays free of distortion, and the bytes repeat.  Beyond full scale
/// is clipped; samples are finite, at least one.
std::string flac_bytes(const Signal& signal);

/// Reads any format that libsndfile knows by its header (WAV, FLAC, AIFF, Ogg, …), all channels.
///
/// InputError, one line, for a file that is missing, empty, cut short, no sound, holds samples that are not finite, or
/// has a sample rate under 1000 Hz.  (A cut in Ogg or MP3 can't be told from an end.)
Audio read_audio(const std::filesystem::path& file);

/// Mean of all channels.
Signal mixed_down(const Audio& audio);

}  // namespace analysis

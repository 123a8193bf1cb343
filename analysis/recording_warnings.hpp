// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"

namespace analysis {

/// What is known of a recording beside its notes.
struct RecordingFacts {
    bool length_unknown = false;
    double first_clip = 0.0;  ///< s
    double mix_share = 1.0;   ///< power of the channels' mean over their mean power
};

/// What a listener should know, in whole sentences: silence, clipping, two notes at once, noise, channels that cancel.
std::vector<std::string> warnings_of(const Recording& recording, const RecordingFacts& facts);

/// Whether two tones seem to sound in this note.
bool is_polyphonic(const RecordedNote& note);

}  // namespace analysis

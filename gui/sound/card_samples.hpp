// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAudioFormat>

#include <span>
#include <vector>

namespace gui {

/// Writes samples (full scale = 1) as a card wants them, the same on every channel.
///
/// shape    `bytes` holds samples.size() frames of this format
/// promise  no heap
void write_frames(std::span<const float> samples, const QAudioFormat& format, char* bytes);

/// Appends the mean of all channels of each whole frame to `samples`, full scale = 1.
void read_frames(std::span<const char> bytes, const QAudioFormat& format, std::vector<float>& samples);

}  // namespace gui

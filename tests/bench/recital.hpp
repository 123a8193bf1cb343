// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

namespace tests {

/// Writes ten minutes of invented stereo sound at 48 kHz, 16 bit: some 700 notes of a quarter to two seconds, 60 to
/// 1300 Hz, one in three with vibrato, a third of them slurred, their partials weighed by a few resonances, over noise
/// 55 dB under them.
void write_recital(const std::filesystem::path& file);

}  // namespace tests

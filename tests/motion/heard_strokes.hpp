// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"
#include "tests/motion/strokes.hpp"

#include <optional>

namespace tests {

/// Instruments whose strokes the fit sees, and those it is tested with.
std::vector<std::string> design_presets();
std::vector<std::string> test_presets();

/// The note that is heard over the last third of a second of a stroke; nothing where none is.
std::optional<analysis::RecordedNote> heard_note(const RecordedStroke& stroke, bool note_known);

}  // namespace tests

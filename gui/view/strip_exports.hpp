// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/answers.hpp"
#include "gui/model/export.hpp"

namespace gui {

/// Strips to print at true size, as files.
Export fret_strip_file(const sim::Preset& preset);
Export contact_ruler_file(const sim::Preset& preset, const ClimbAnswerPointer& answer);

}  // namespace gui

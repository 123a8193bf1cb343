// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/limits.hpp"
#include "sim/report/window_report.hpp"
#include "sim/wolf.hpp"

#include <string>

/// The answer of `note` as text.
namespace sim::report {

/// One stroke and what the closed forms say of it.
struct NoteAnswer {
    StrokeResult stroke;
    Limits limits;
    bool speaks = false;  ///< in time, by the player's measure
    Beating beating;      ///< of strokes of two seconds and more
};

std::string note_json(const Asked& asked, const NoteAnswer& answer);
std::string note_csv(const Asked& asked, const NoteAnswer& answer);
std::string note_table(const Asked& asked, const NoteAnswer& answer);

/// A line for each sample: time, bridge force, string's velocity at the bow, friction, slipping, temperature above
/// ambient, at 6 significant digits.
std::string waveform_csv(const Played& played);

}  // namespace sim::report

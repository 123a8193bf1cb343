// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/climb.hpp"
#include "sim/frets.hpp"
#include "sim/report/run_record.hpp"

#include <optional>
#include <string>

/// The answer of `frets` as text.
namespace sim::report {

/// What the texts of a board speak of.
struct AskedFrets {
    RunRecord run;
    Preset preset;  ///< in force
};

/// "1/4 comma meantone, fret 1 chromatic, the others diatonic".
std::string temperament_words(const Preset& preset);
/// What the places are corrected for.
std::string height_words(const StringHeight& height);

/// `ruler`: the climb behind the contact ruler, where one was asked for.
std::string frets_json(const AskedFrets& asked, const FretTable& table, const std::optional<Climb>& ruler);
/// A line for each fret and string, then for the guide fret and for each semitone of the bare board.
std::string frets_csv(const AskedFrets& asked, const FretTable& table);
std::string frets_table(const AskedFrets& asked, const FretTable& table);
/// How to use the places, and what the contact ruler says where there is one.
std::string frets_in_words(const FretTable& table, const std::optional<Climb>& ruler);

}  // namespace sim::report

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/run_record.hpp"
#include "sim/window.hpp"

#include <string>

/// The answers of `window` as text.
namespace sim::report {

/// What all texts of one note's answer speak of.
struct Asked {
    RunRecord run;
    Note note;
    Player player;                 ///< in force
    double reference_pitch = 0.0;  ///< Hz of A4, in force
};

std::string window_json(const Asked& asked, const Window& window);
/// A line for each contact point.
std::string window_csv(const Asked& asked, const Window& window);
/// A line for each stroke of the map: the tone over contact point and force.
std::string window_map_csv(const Asked& asked, const Window& window);
std::string window_table(const Asked& asked, const Window& window);
/// Two plain sentences: where the bow does best, and what bounds its freedom.
std::string window_in_words(const Asked& asked, const BandResult& band);

// The same for one contact point: "I bow here".
std::string here_json(const Asked& asked, const HereResult& here);
std::string here_csv(const Asked& asked, const HereResult& here);
std::string here_table(const Asked& asked, const HereResult& here);
std::string here_in_words(const HereResult& here);

/// "division bass viol, string 1, stop 5: G4, 369.7 Hz, 517 mm sounding"
std::string note_heading(const Asked& asked);
/// "bow at 0.2 m/s, 0.1 to 0.4 N": what the player does.
std::string player_line(const Player& player);

}  // namespace sim::report

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What a careful maker or teacher would warn of: one place for tables, JSON and pages alike.
namespace sim {

/// How near a plain gut string is to breaking.
enum class BreakingRisk { none, near_limit, likely };
/// "near the limit", "likely to break"; empty for none.
std::string_view breaking_risk_words(BreakingRisk risk);

/// Pitch times length of the open string, Hz m.  Plain gut breaks at about 260 (240 to 280) whatever its diameter.
/// source   common practice of makers; from memory
double breaking_product(const PresetString& string, double reference_pitch);
/// Near the limit from 220, likely to break from 240; none for anything but plain gut, whose limits are the only ones
/// known here.
BreakingRisk breaking_risk(const PresetString& string, double reference_pitch);
/// Pitch times length from which a risk counts, Hz m.
double breaking_limit(BreakingRisk risk);

/// Pull of all open strings together, N.
double total_pull(const Preset& preset);

/// One thing to mind, as plain values.
struct Caution {
    std::string key;    ///< "string_likely_to_break", "string_near_breaking", "pull_above_set_up", "breaking_strings",
                        ///< "ask_a_maker", "loud_playback", "strain"
    std::string about;  ///< the string's name; empty for the whole instrument or the player
    std::string text;   ///< whole sentences for people
    std::optional<double> value;  ///< what was found …
    std::optional<double> limit;  ///< … and what it passes …
    std::string unit;             ///< … both in this unit: "Hz m", "N"; empty without them

    bool operator==(const Caution&) const = default;
};

/// Cautions for an instrument strung and tuned as `now` that was set up as `set_up` (the same preset before strings or
/// pitch were changed; alike: nothing was).  First strings that can break, in their order, then the pull where it rises
/// by more than 1 %, then, where there were any of these or where anything differs from the set-up, how to string
/// safely.
std::vector<Caution> stringing_cautions(const Preset& set_up, const Preset& now);

/// For whoever listens to sounds of the program.
/// source   85 dB(A) for 8 hours: EU directive 2003/10/EC, second-hand; 3 dB a halving: ISO and NIOSH, second-hand
Caution listening_caution();
/// For whoever practises above the frets.
/// source   common practice
Caution strain_caution();

}  // namespace sim

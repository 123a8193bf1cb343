// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/cautions.hpp"
#include "sim/climb.hpp"
#include "sim/gauge_candidates.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sim {

/// What candidates are ranked by, at one of the stops.
enum class GaugeAim { widest_band, most_forgiving, least_force, nearest_pull };
std::string_view gauge_aim_name(GaugeAim aim);
std::optional<GaugeAim> gauge_aim_from_name(std::string_view name);
/// "the widest contact band", …
std::string_view gauge_aim_words(GaugeAim aim);

/// What is worked out of every candidate.
struct GaugePlan {
    std::vector<double> stops;  ///< semitones, rising, at least one
    MapGrid grid{.contact_points = 40, .player_forces = 12, .more_forces = 0};
    std::optional<StopEnd> end;
    GaugeAim aim = GaugeAim::widest_band;
    std::optional<double> aim_stop;  ///< one of the stops; unless given, 12 if it is among them, else the last
};

/// One string with one gauge.
struct GaugeRow {
    PresetString string;
    String open;
    bool present = false;                   ///< as the instrument is strung
    std::vector<ClimbStop> stops;           ///< as in the plan
    double set_pull = 0.0;                  ///< N, of all strings with this one among them
    std::optional<double> to_likely_break;  ///< semitones up to where plain gut is likely to break, negative beyond it
    std::vector<Caution> cautions;          ///< of the set with it, against the set-up
};

/// Candidates for one string, best first; or the strings of a whole set, in their order.
struct GaugeStudy {
    Player player;
    std::vector<double> stops;
    bool whole_set = false;
    GaugeAim aim = GaugeAim::widest_band;  ///< of candidates
    double aim_stop = 0.0;
    double set_up_pull = 0.0;  ///< N, of all strings as the instrument was set up
    double pull = 0.0;         ///< N, of all strings now: the set's, or that with the present gauge
    std::vector<GaugeRow> rows;
    std::vector<Caution> cautions;  ///< all that any row draws, each once, with the greatest value found
};

/// Candidates side by side.  `now`: the preset with its pitch in force; `set_up`: as the instrument was set up.
GaugeStudy find_gauges(const Preset& set_up, const Preset& now, const std::vector<PresetString>& candidates,
                       const GaugePlan& plan, const Workers& workers);

/// Every string of `now`, whose gauges may differ from those of `set_up`.
GaugeStudy find_set(const Preset& set_up, const Preset& now, const GaugePlan& plan, const Workers& workers);

/// The row's stop at which candidates are ranked.
const ClimbStop& aim_stop_of(const GaugeStudy& study, const GaugeRow& row);

}  // namespace sim

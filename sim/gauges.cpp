// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/gauges.hpp"

#include "sim/text.hpp"
#include "sim/window.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

namespace sim {
namespace {

struct AimName {
    GaugeAim aim;
    std::string_view name;
    std::string_view words;
};
constexpr std::array<AimName, 4> aims{{
    {GaugeAim::widest_band, "widest_band", "the widest contact band"},
    {GaugeAim::most_forgiving, "most_forgiving", "the greatest forgiveness of bow force"},
    {GaugeAim::least_force, "least_force", "the least bow force needed"},
    {GaugeAim::nearest_pull, "nearest_pull", "the pull nearest to the present string's"},
}};

const AimName& entry_of(GaugeAim aim) { return *std::ranges::find(aims, aim, &AimName::aim); }

double usual_aim_stop(const std::vector<double>& stops) {
    constexpr double octave = 12.0;
    return std::ranges::find(stops, octave) != stops.end() ? octave : stops.back();
}

std::optional<double> to_likely_break(const PresetString& string, double reference_pitch) {
    if (string.gauge.material != "gut") return std::nullopt;
    return 12.0 * std::log2(breaking_limit(BreakingRisk::likely) / breaking_product(string, reference_pitch));
}

GaugeRow row_of(const Preset& set_up, const Preset& now, const PresetString& string, const GaugePlan& plan,
                const Workers& workers) {
    const Preset strung = with_string(now, string);
    GaugeRow row{.string = string,
                 .open = open_string(now, string),
                 .present = string == preset_string(set_up, string.name),
                 .stops = {},
                 .set_pull = total_pull(strung),
                 .to_likely_break = to_likely_break(string, now.reference_pitch),
                 .cautions = stringing_cautions(set_up, strung)};
    const ClimbPlan climb{.stops = plan.stops, .grid = plan.grid, .end = plan.end};
    row.stops = find_climb(now, string, now.player, climb, workers).stops;
    return row;
}

std::vector<GaugeRow> rows_of(const Preset& set_up, const Preset& now, const std::vector<PresetString>& strings,
                              const GaugePlan& plan, const Workers& workers) {
    std::vector<GaugeRow> rows;
    const double count = static_cast<double>(strings.size());
    for (const PresetString& string : strings) {
        const double done = static_cast<double>(rows.size());
        rows.push_back(row_of(set_up, now, string, plan, part_of(workers, {done / count, (done + 1.0) / count})));
    }
    return rows;
}

/// Greater is better; what has no answer comes last.  The second decides where the first ties.
using Merit = std::pair<double, double>;
Merit merit_of(const GaugeStudy& study, const GaugeRow& row, double present_pull) {
    constexpr double none = -std::numeric_limits<double>::infinity();
    const ClimbStop& stop = aim_stop_of(study, row);
    const double security = stop.band.at_best.security;
    const bool speaks = stop.speaking && stop.speaking->main;
    switch (study.aim) {
        case GaugeAim::widest_band:
            return {stop.band.band ? stop.band.band->far - stop.band.band->near : none, security};
        case GaugeAim::most_forgiving:
            return {speaks ? *forgiveness(*stop.speaking) : none, security};
        case GaugeAim::least_force:
            return {speaks ? -stop.speaking->intervals[*stop.speaking->main].low : none, security};
        case GaugeAim::nearest_pull:
            return {-std::abs(row.open.tension - present_pull), security};
    }
    return {none, none};
}

void rank(GaugeStudy& study, double present_pull) {
    std::ranges::stable_sort(study.rows, [&](const GaugeRow& a, const GaugeRow& b) {
        return merit_of(study, a, present_pull) > merit_of(study, b, present_pull);
    });
}

/// Strings first, then the pull, then what holds for all; who is told to ask a maker by the pull need not be told
/// twice.
void put_in_order(std::vector<Caution>& cautions) {
    const auto place = [](const Caution& caution) {
        return caution.key == "pull_above_set_up" ? 1 : caution.about.empty() ? 2 : 0;
    };
    std::ranges::stable_sort(cautions, {}, place);
    if (std::ranges::find(cautions, "pull_above_set_up", &Caution::key) != cautions.end())
        std::erase_if(cautions, [](const Caution& caution) { return caution.key == "ask_a_maker"; });
}

/// Each kind about each string once, with the greatest value; a pull says which gauge draws it.
void gather_cautions(GaugeStudy& study) {
    for (const GaugeRow& row : study.rows) {
        for (Caution caution : row.cautions) {
            const auto known = std::ranges::find_if(study.cautions, [&](const Caution& other) {
                return other.key == caution.key && (other.key == "pull_above_set_up" || other.about == caution.about);
            });
            if (caution.key == "pull_above_set_up" && !study.whole_set) {
                caution.about = gauge_words(row.string.gauge);
                caution.text = "With " + caution.about + ", a" + caution.text.substr(1);  // "All strings …"
            }
            if (known == study.cautions.end())
                study.cautions.push_back(caution);
            else if (caution.value && *caution.value > *known->value)
                *known = caution;
        }
    }
    put_in_order(study.cautions);
}

GaugeStudy begun(const Preset& set_up, const Preset& now, const GaugePlan& plan) {
    assert(!plan.stops.empty());
    GaugeStudy study{.player = now.player,
                     .stops = plan.stops,
                     .whole_set = false,
                     .aim = plan.aim,
                     .aim_stop = plan.aim_stop.value_or(usual_aim_stop(plan.stops)),
                     .set_up_pull = total_pull(set_up),
                     .pull = total_pull(now),
                     .rows = {},
                     .cautions = {}};
    assert(std::ranges::find(plan.stops, study.aim_stop) != plan.stops.end());
    return study;
}

}  // namespace

std::string_view gauge_aim_name(GaugeAim aim) { return entry_of(aim).name; }

std::string_view gauge_aim_words(GaugeAim aim) { return entry_of(aim).words; }

std::optional<GaugeAim> gauge_aim_from_name(std::string_view name) {
    const auto found = std::ranges::find(aims, name, &AimName::name);
    return found == aims.end() ? std::nullopt : std::optional(found->aim);
}

const ClimbStop& aim_stop_of(const GaugeStudy& study, const GaugeRow& row) {
    const auto place = std::ranges::find(study.stops, study.aim_stop) - study.stops.begin();
    return row.stops[static_cast<std::size_t>(place)];
}

GaugeStudy find_gauges(const Preset& set_up, const Preset& now, const std::vector<PresetString>& candidates,
                       const GaugePlan& plan, const Workers& workers) {
    assert(!candidates.empty());
    GaugeStudy study = begun(set_up, now, plan);
    study.rows = rows_of(set_up, now, candidates, plan, workers);
    gather_cautions(study);
    rank(study, open_string(now, preset_string(now, candidates.front().name)).tension);
    return study;
}

GaugeStudy find_set(const Preset& set_up, const Preset& now, const GaugePlan& plan, const Workers& workers) {
    GaugeStudy study = begun(set_up, now, plan);
    study.whole_set = true;
    study.rows = rows_of(set_up, now, now.strings, plan, workers);
    study.cautions = stringing_cautions(set_up, now);
    return study;
}

}  // namespace sim

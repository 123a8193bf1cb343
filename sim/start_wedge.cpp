// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/start_wedge.hpp"

#include "analysis/units.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace sim {

namespace {

constexpr int least_columns = 3;

double middle_in_ratio(Range range) { return std::sqrt(range.low * range.high); }

StartIntervals intervals_of(const std::vector<double>& values, const std::function<bool(std::size_t)>& is_clean) {
    StartIntervals found;
    for (std::size_t i = 0; i < values.size();) {
        if (!is_clean(i)) {
            ++i;
            continue;
        }
        std::size_t end = i;
        while (end < values.size() && is_clean(end)) ++end;
        StartInterval interval{
            .low_open = i == 0, .high_open = end == values.size(), .cells = static_cast<int>(end - i)};
        interval.low = interval.low_open ? values[i] : middle_in_ratio({values[i - 1], values[i]});
        interval.high = interval.high_open ? values[end - 1] : middle_in_ratio({values[end - 1], values[end]});
        if (!found.main || interval.cells > found.all[*found.main].cells) found.main = found.all.size();
        found.all.push_back(interval);
        i = end;
    }
    return found;
}

struct EdgePoint {
    double pace;
    double force;
};

std::optional<EdgeSlope> slope_of(const std::vector<EdgePoint>& edge) {
    if (edge.size() < least_columns) return std::nullopt;
    const auto n = static_cast<double>(edge.size());
    double x = 0.0, y = 0.0, xx = 0.0, xy = 0.0;
    for (const EdgePoint& point : edge) {
        const double a = std::log(point.pace);
        const double f = std::log(point.force);
        x += a;
        y += f;
        xx += a * a;
        xy += a * f;
    }
    return EdgeSlope{(n * xy - x * y) / (n * xx - x * x), static_cast<int>(edge.size())};
}

void add_slopes(Wedge& wedge) {
    std::vector<EdgePoint> low;
    std::vector<EdgePoint> high;
    for (const WedgeColumn& column : wedge.columns) {
        const StartInterval* main = column.forces.chosen();
        if (main != nullptr && !main->low_open) low.push_back({column.pace, main->low});
        if (main != nullptr && !main->high_open) high.push_back({column.pace, main->high});
    }
    wedge.low_edge = slope_of(low);
    wedge.high_edge = slope_of(high);
}

std::size_t nearest_in_ratio(const std::vector<double>& values, double wanted) {
    const auto distance = [&](double value) { return std::abs(std::log(value / wanted)); };
    return static_cast<std::size_t>(std::ranges::min_element(values, {}, distance) - values.begin());
}

/// Two significant digits or so: what a hand can tell apart.
std::string hand_number(double value) {
    constexpr double whole = 10.0;
    if (value >= whole) return fixed_number(value, 0);
    return fixed_number(value, value >= 1.0 ? 1 : 2);
}

/// "6.0 to 33 ms or more": open at an end where the map ends.
std::string range_words(const StartInterval& interval, double factor, const std::string& unit) {
    const std::string open = interval.low_open && interval.high_open ? " or beyond"
                             : interval.low_open                     ? " or less"
                             : interval.high_open                    ? " or more"
                                                                     : "";
    return hand_number(interval.low * factor) + " to " + hand_number(interval.high * factor) + " " + unit + open;
}

std::string how(const StartMap& map, const StartInterval& paces, double best) {
    const double speed = map.plan.start.speed;
    if (map.plan.start.kind == StartKind::crossing) {
        const double ms = analysis::ms_from_seconds(1.0);
        return "let the force rise in " + range_words(paces, ms, "ms") + ", best " + hand_number(best * ms);
    }
    return "let the bow gather speed by " + range_words(paces, 1.0, "m/s a second") + ", best " + hand_number(best) +
           "; " + short_number(speed) + " m/s is then reached in " + fixed_number(speed / paces.high, 2) + " to " +
           fixed_number(speed / paces.low, 2) + " s";
}

}  // namespace

Wedge find_wedge(const StartMap& map, StartLimit limit, double middle_force) {
    Wedge wedge{.limit = limit, .columns = {}, .low_edge = {}, .high_edge = {}, .middle_paces = {}, .best_pace = {}};
    for (std::size_t i = 0; i < map.paces.size(); ++i)
        wedge.columns.push_back(
            {map.paces[i], intervals_of(map.forces, [&](std::size_t j) { return map.at(i, j).clean(limit); })});
    add_slopes(wedge);
    const std::size_t row = nearest_in_ratio(map.forces, middle_force);
    wedge.middle_force = map.forces[row];
    wedge.middle_paces = intervals_of(map.paces, [&](std::size_t i) { return map.at(i, row).clean(limit); });
    if (const StartInterval* main = wedge.middle_paces.chosen())
        wedge.best_pace = middle_in_ratio({main->low, main->high});
    for (const StartCell& cell : map.cells) {
        wedge.clean_cells += cell.clean(limit) ? 1 : 0;
        wedge.unsure_cells += cell.unsure(limit) ? 1 : 0;
    }
    return wedge;
}

StartAnswer find_start(const Note& note, const StartPlan& plan, double middle_force, const Workers& workers) {
    StartAnswer answer{.map = start_map(note, plan, workers), .strict = {}, .lenient = {}};
    answer.strict = find_wedge(answer.map, StartLimit::strict, middle_force);
    answer.lenient = find_wedge(answer.map, StartLimit::lenient, middle_force);
    return answer;
}

std::string wedge_in_words(const StartMap& map, const Wedge& wedge) {
    const StartCase& start = map.plan.start;
    const Acceptance& limit = wedge.limit == StartLimit::strict ? start.strict : start.lenient;
    const double within = analysis::ms_from_seconds(accepted_time(limit, 1.0 / fundamental(map.note.string)));
    const std::string within_words = "within " + fixed_number(within, 0) + " ms of the first slip (" +
                                     std::string(start_limit_name(wedge.limit)) + ")";
    const std::string force = fixed_number(wedge.middle_force, 2) + " N ";
    const StartInterval* main = wedge.middle_paces.chosen();
    if (main != nullptr) {
        const std::string more = wedge.middle_paces.all.size() > 1 ? " More ranges: see JSON." : "";
        return "To settle " + within_words + ": at " + force + how(map, *main, *wedge.best_pace) + "." + more;
    }
    if (wedge.clean_cells == 0) return "No beginning of this map settles " + within_words + ".";
    return "No beginning at " + force + "settles " + within_words + "; " + std::to_string(wedge.clean_cells) + " of " +
           std::to_string(map.cells.size()) + " at other forces do.";
}

}  // namespace sim

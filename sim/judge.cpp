// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/judge.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <vector>

namespace sim {

namespace {

constexpr double least_spacing = 0.88;  // of the period
constexpr double greatest_spacing = 1.14;
constexpr double least_distance = 0.35;  // of bow speed * period
constexpr double greatest_distance = 1.6;
constexpr double micro_distance = 0.1;  // a slip over less than this of bow speed * period is no main slip
constexpr double least_periods = 18.0;
constexpr double late_periods = 36.0;      // from which a motion other than Helmholtz's is named, at most half the run
constexpr double least_fundamental = 0.5;  // of the ideal
constexpr double s_motion_ratio = 0.12;    // contact ratio from which a single, weak slip is called S-motion
constexpr double regular_spread = 0.1;     // standard deviation over mean of the spacings
constexpr double more_than_one = 1.2;      // main slips a period
constexpr double fewer_than_one = 0.85;
constexpr double least_covered = 0.25;   // of the way the bow goes meanwhile
constexpr double always_slipping = 0.9;  // of the time

constexpr std::array<std::string_view, 6> names{"helmholtz",     "multiple_slip", "raucous",
                                                "anomalous_low", "s_motion",      "silent"};

double ideal_distance(const kernel::Slip& slip, const Profile& speed, double period) {
    return value_at(speed, slip.start) * period;
}

bool full_slip(const kernel::Slip& slip, const Profile& speed, double period) {
    const double ideal = ideal_distance(slip, speed, period);
    return slip.distance >= least_distance * ideal && slip.distance <= greatest_distance * ideal;
}

/// Index of the first slip of the unbroken once-a-period chain that reaches the end of the run, or size() if none.
/// The run may end within a slip: then that one's start must be due, and it must not have lasted a whole period.
std::size_t chain_start(const kernel::Record& record, std::span<const kernel::Slip> slips, const Profile& speed,
                        const Hearing& h) {
    const bool unfinished = record.slipping_since >= 0.0;
    if (slips.empty() || (unfinished && h.duration - record.slipping_since > h.period)) return slips.size();
    const double rest = (unfinished ? record.slipping_since : h.duration) - slips.back().start;
    if (rest > greatest_spacing * h.period || (unfinished && rest < least_spacing * h.period)) return slips.size();
    std::size_t first = slips.size();
    for (std::size_t i = slips.size(); i-- > 0;) {
        if (!full_slip(slips[i], speed, h.period)) break;
        if (i + 1 < slips.size()) {
            const double spacing = (slips[i + 1].start - slips[i].start) / h.period;
            if (spacing < least_spacing || spacing > greatest_spacing) break;
        }
        first = i;
    }
    return first;
}

struct Spacing {
    double mean = 0.0;    // s
    double spread = 0.0;  // standard deviation over mean
};

/// From each slip to the `apart`-th after it: a pattern of that many slips which repeats has a small spread.
Spacing spacing_of(std::span<const kernel::Slip> slips, std::size_t apart) {
    if (apart == 0 || slips.size() < apart + 2) return {};
    const std::size_t count = slips.size() - apart;
    double sum = 0.0;
    double squares = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const double spacing = slips[i + apart].start - slips[i].start;
        sum += spacing;
        squares += spacing * spacing;
    }
    const double mean = sum / static_cast<double>(count);
    const double variance = std::max(0.0, squares / static_cast<double>(count) - mean * mean);
    return {mean, std::sqrt(variance) / mean};
}

/// Slips that come again and again in the same way.
struct Pattern {
    std::size_t slips = 0;  // of which it consists; 0 = none is found
    double length = 0.0;    // s, until it comes again
};

/// The shortest pattern that has come three times or more.  Each slip must come when it is due, within a tenth of the
/// mean spacing of two: the longer a pattern, the less its whole length would tell.
Pattern pattern_of(std::span<const kernel::Slip> slips) {
    constexpr std::size_t times = 3;
    if (slips.size() < times) return {};
    const double spacing = (slips.back().start - slips.front().start) / static_cast<double>(slips.size() - 1);
    for (std::size_t apart = 1; times * apart <= slips.size(); ++apart) {
        const Spacing whole = spacing_of(slips, apart);
        if (whole.mean > 0.0 && whole.spread * whole.mean < regular_spread * spacing) return {apart, whole.mean};
    }
    return {};
}

/// Do these slips take the string back as far as the bow carries it between the first and the last of them?
bool covers_the_bow(std::span<const kernel::Slip> slips, const Profile& speed) {
    double distance = 0.0;
    for (const kernel::Slip& slip : slips.first(slips.size() - 1)) distance += slip.distance;
    const double carried = value_at(speed, slips.back().start) * (slips.back().start - slips.front().start);
    return distance >= least_covered * carried;
}

/// Slips fall in with the period, though not in every one: those between are too slow to count.
bool keeps_time(std::span<const kernel::Slip> slips, double period) {
    for (std::size_t i = 1; i < slips.size(); ++i) {
        const double periods = (slips[i].start - slips[i - 1].start) / period;
        if (std::abs(periods - std::round(periods)) > regular_spread) return false;
    }
    return true;
}

Motion other_motion(std::span<const kernel::Slip> late, const Verdict& verdict, const kernel::Record& record,
                    const Profile& speed, const Hearing& h) {
    const double slipping = record.slipped_time_late / (0.5 * h.duration);
    if (late.size() < 2) {
        const bool small_slips = slipping > 0.0 && slipping < always_slipping && late.empty();
        return small_slips && record.slipping_since < 0.0 ? Motion::multiple_slip : Motion::silent;
    }
    if (slipping > always_slipping) return Motion::silent;
    if (verdict.slips_per_period > more_than_one) {
        // Two or three a period, unequal and a little uneven.
        const Spacing each = spacing_of(late, static_cast<std::size_t>(std::lround(verdict.slips_per_period)));
        const bool even = each.mean > 0.0 && each.spread < regular_spread;
        if (even && each.mean <= greatest_spacing * h.period) return Motion::multiple_slip;
    }
    // Where these slips take the string back too little, the rest of the way goes in small ones.
    if (verdict.slips_per_period < fewer_than_one && !covers_the_bow(late, speed)) return Motion::multiple_slip;
    const Pattern pattern = pattern_of(late);
    if (pattern.slips == 0) return keeps_time(late, h.period) ? Motion::multiple_slip : Motion::raucous;
    if (pattern.length > greatest_spacing * h.period) return Motion::anomalous_low;
    const bool weak = h.fundamental_share < least_fundamental;
    return pattern.slips == 1 && weak && h.contact_ratio > s_motion_ratio ? Motion::s_motion : Motion::multiple_slip;
}

double slip_share(std::span<const kernel::Slip> slips, double from, double to) {
    double sum = 0.0;
    for (const kernel::Slip& slip : slips) sum += std::max(0.0, std::min(slip.end, to) - std::max(slip.start, from));
    return sum / (to - from);
}

}  // namespace

std::string_view motion_name(Motion motion) { return names[static_cast<std::size_t>(motion)]; }

std::vector<kernel::Slip> main_slips(const kernel::Record& record, const Profile& bow_speed, double period) {
    // Schelleng's ripples may break the stick for a moment where hardly anything damps them: such slips are none.
    std::vector<kernel::Slip> slips;
    for (const kernel::Slip& slip : record.slips)
        if (slip.distance >= micro_distance * ideal_distance(slip, bow_speed, period)) slips.push_back(slip);
    return slips;
}

Verdict judge(const kernel::Record& record, const Profile& bow_speed, const Hearing& h) {
    Verdict verdict;
    if (record.diverged) {
        verdict.motion = Motion::raucous;
        return verdict;
    }
    const std::vector<kernel::Slip> all = main_slips(record, bow_speed, h.period);
    const std::span<const kernel::Slip> slips(all);
    if (!record.slips.empty()) verdict.first_slip = record.slips.front().start;
    const double late_time = std::min(0.5 * h.duration, late_periods * h.period);
    const auto late_from = std::ranges::lower_bound(slips, h.duration - late_time, {}, &kernel::Slip::start);
    const std::span<const kernel::Slip> late = slips.subspan(static_cast<std::size_t>(late_from - slips.begin()));
    verdict.slips_per_period = static_cast<double>(late.size()) * h.period / late_time;
    const double window = std::min(h.duration, least_periods * h.period);
    verdict.slip_fraction = slip_share(slips, h.duration - window, h.duration);

    const std::size_t first = chain_start(record, slips, bow_speed, h);
    const bool long_enough = first < slips.size() && h.duration - slips[first].start >= least_periods * h.period;
    const bool whole = h.fundamental_share >= least_fundamental && verdict.slip_fraction >= h.least_slip_fraction;
    if (long_enough && whole) {
        verdict.motion = Motion::helmholtz;
        verdict.helmholtz_from = slips[first].start;
        return verdict;
    }
    verdict.motion = other_motion(late, verdict, record, bow_speed, h);
    verdict.never_sticks =
        verdict.motion == Motion::silent && record.slipped_time_late > always_slipping * 0.5 * h.duration;
    return verdict;
}

}  // namespace sim

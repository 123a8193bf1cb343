// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/security.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>

namespace sim {

namespace {

constexpr int places = 41;  // at which the wander is averaged

constexpr std::array<std::string_view, fault_count> names{
    "none",      "slow to speak", "never slips", "force too small", "force too great", "wrong motion",
    "tone weak", "tone dull",     "flat",        "sharp",           "floor",           "finger"};

using Shares = std::array<double, fault_count>;

double& share_of(Shares& shares, Fault fault) { return shares[static_cast<std::size_t>(fault)]; }

double speaking_share(const Shares& shares) {
    double sum = 0.0;
    for (std::size_t f = 0; f < fault_count; ++f)
        if (is_speaking(static_cast<Fault>(f))) sum += shares[f];
    return sum;
}

}  // namespace

std::string_view fault_name(Fault fault) { return names[static_cast<std::size_t>(fault)]; }

Security security_of(double contact_point, const Shares& faults) {
    Security result{.contact_point = contact_point, .faults = faults};
    result.security = result.faults.front();
    result.speaks_share = speaking_share(result.faults);
    result.tone_share = result.speaks_share > 0.0 ? result.security / result.speaks_share : 0.0;
    const auto worst = std::max_element(result.faults.begin() + 1, result.faults.end());
    if (*worst > 0.0) result.fails_by = static_cast<Fault>(worst - result.faults.begin());
    return result;
}

bool is_speaking(Fault fault) {
    return fault == Fault::none || fault == Fault::tone_weak || fault == Fault::tone_dull || fault == Fault::flat ||
           fault == Fault::sharp;
}

Assessment::Assessment(const StrokeMap& map, const Player& player)
    : map_(&map), player_(player), force_count_(map.forces.size()) {
    find_speaking();
    find_references();
    find_tone();
}

Assessment::Assessment(const StrokeMap& map, const Player& player, const std::vector<ToneReference>& references)
    : map_(&map), player_(player), force_count_(map.forces.size()), references_(references) {
    find_speaking();
    find_tone();
}

void Assessment::find_speaking() {
    for (const StrokeResult& stroke : map_->strokes) faults_.push_back(speaking_fault(stroke));
    shares_ = columns();
}

void Assessment::find_tone() {
    for (std::size_t i = 0; i < faults_.size(); ++i)
        if (faults_[i] == Fault::none) faults_[i] = tone_fault(map_->strokes[i], references_[i % force_count_]);
    shares_ = columns();
}

Fault Assessment::speaking_fault(const StrokeResult& result) const {
    const Verdict& verdict = result.verdict;
    switch (verdict.motion) {
        case Motion::helmholtz: {
            const double within = std::max(player_.speak_time, player_.speak_periods / fundamental(map_->note.string));
            return *result.speak_time <= within ? Fault::none : Fault::slow_to_speak;
        }
        case Motion::silent:
            return verdict.never_sticks ? Fault::force_too_small : Fault::never_slips;
        case Motion::multiple_slip:
            return Fault::force_too_small;
        case Motion::raucous:
        case Motion::anomalous_low:
            return Fault::force_too_great;
        case Motion::s_motion:
            break;
    }
    return Fault::wrong_motion;
}

Fault Assessment::tone_fault(const StrokeResult& result, const ToneReference& reference) const {
    if (!result.tone.pitch) return Fault::wrong_motion;
    const double f0 = fundamental(map_->note.string);
    if (result.tone.level < reference.level * analysis::ratio_from_db(-player_.tone_level)) return Fault::tone_weak;
    if (result.tone.centroid / *result.tone.pitch < reference.brightness * player_.tone_brightness_ratio)
        return Fault::tone_dull;
    const double cents = analysis::cents_between(*result.tone.pitch, f0);
    if (cents < -player_.pitch_tolerance) return Fault::flat;
    return cents > player_.pitch_tolerance ? Fault::sharp : Fault::none;
}

std::vector<Shares> Assessment::columns() const {
    std::vector<Shares> columns(map_->contact_points.size(), Shares{});
    const double each = 1.0 / static_cast<double>(map_->player_force_count);
    for (std::size_t x = 0; x < columns.size(); ++x)
        for (std::size_t j = 0; j < map_->player_force_count; ++j)
            share_of(columns[x], fault(x, map_->first_player_force + j)) += each;
    return columns;
}

Security Assessment::averaged(double contact_point, const std::vector<Shares>& columns) const {
    Shares faults{};
    const std::vector<double>& points = map_->contact_points;
    for (int i = 0; i < places; ++i) {
        const double place = contact_point + player_.wander * ((2.0 * i + 1.0) / places - 1.0);
        if (place < points.front() || place > points.back()) {
            share_of(faults, place < points.front() ? Fault::under_floor : Fault::past_finger) += 1.0 / places;
            continue;
        }
        const auto after = std::ranges::upper_bound(points, place);
        const std::size_t k = std::min(static_cast<std::size_t>(after - points.begin()), points.size() - 1);
        const double part = std::log(place / points[k - 1]) / std::log(points[k] / points[k - 1]);
        for (std::size_t f = 0; f < fault_count; ++f)
            faults[f] += ((1.0 - part) * columns[k - 1][f] + part * columns[k][f]) / places;
    }
    return security_of(contact_point, faults);
}

Security Assessment::at(double contact_point) const { return averaged(contact_point, shares_); }

void Assessment::find_references() {
    const std::vector<double>& points = map_->contact_points;
    std::vector<double> speaks_shares;
    for (double point : points) speaks_shares.push_back(averaged(point, shares_).speaks_share);
    const double enough = std::min(player_.band_share, *std::ranges::max_element(speaks_shares));
    references_.assign(force_count_, {});
    for (std::size_t x = 0; x < points.size(); ++x) {
        if (speaks_shares[x] < enough) continue;
        for (std::size_t j = 0; j < force_count_; ++j) {
            const Tone& tone = map_->at(x, j).tone;
            if (fault(x, j) != Fault::none || !tone.pitch) continue;
            references_[j].level = std::max(references_[j].level, tone.level);
            references_[j].brightness = std::max(references_[j].brightness, tone.centroid / *tone.pitch);
        }
    }
}

}  // namespace sim

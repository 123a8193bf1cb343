// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sound/live_ear.hpp"

#include "sim/stroke_run.hpp"

#include <algorithm>
#include <cmath>

namespace sim::sound {

namespace {

constexpr double judged_periods = 20.0;  // two more than Helmholtz motion needs
constexpr double judged_time = 0.25;     // s
constexpr double least_periods = 2.0;    // to be heard at all
constexpr int speed_spacing = 32;        // samples between moments of the profile of speeds

}  // namespace

LiveEar::LiveEar(double card_rate) : card_rate_(card_rate) {}

void LiveEar::expect(const LiveScore& score) { expected_.push_back(score); }

/// The score of a note that begins; earlier ones will not come again.
bool LiveEar::knows(long note) {
    if (score_ && score_->serial == note) return true;
    while (!expected_.empty() && expected_.front().serial < note) expected_.pop_front();
    if (expected_.empty() || expected_.front().serial != note) return false;
    if (!meter_ || !(score_->note.bridge == expected_.front().note.bridge))
        meter_.emplace(expected_.front().note.bridge);
    score_ = std::move(expected_.front());
    expected_.pop_front();
    return true;
}

void LiveEar::take(const LiveTrace& trace) {
    if (!knows(trace.note)) return;
    if (!past_.empty() && (trace.sample != past_.back().trace.sample + 1 || trace.begun != past_.back().trace.begun))
        past_.clear();
    const double before = past_.empty() ? 0.0 : past_.back().periods;
    const double f0 = fundamental(score_->note.string);
    past_.push_back({.trace = trace, .periods = before + f0 / card_rate_, .period = 1.0 / f0});
}

void LiveEar::forget_old() {
    const auto wanted = static_cast<std::size_t>(
        card_rate_ * std::max({judged_periods / fundamental(score_->note.string), judged_time, heard_for}));
    if (past_.size() > wanted) past_.erase(past_.begin(), past_.end() - static_cast<std::ptrdiff_t>(wanted));
}

double LiveEar::periods_at(double sample) const {
    const double place = sample - static_cast<double>(past_.front().trace.sample);
    const double whole = std::clamp(std::floor(place), 0.0, static_cast<double>(past_.size() - 1));
    const Moment& moment = past_[static_cast<std::size_t>(whole)];
    return moment.periods - (whole + 1.0 - place) / (moment.period * card_rate_);
}

Tone LiveEar::tone() {
    const auto heard = std::min(past_.size(), static_cast<std::size_t>(heard_for * card_rate_));
    analysis::Signal force{{}, card_rate_};
    force.samples.reserve(heard);
    for (auto moment = past_.end() - static_cast<std::ptrdiff_t>(heard); moment != past_.end(); ++moment)
        force.samples.push_back(moment->trace.force);
    const auto [low, high] = std::ranges::minmax(force.samples);
    return meter_->tone(
        {.force = std::move(force), .peak_to_peak = high - low, .expected_hz = fundamental(score_->note.string)});
}

/// The slips of all that is remembered, in periods since it begins.
kernel::Record LiveEar::record() const {
    const double start = past_.front().periods;
    const double middle = 0.5 * (start + past_.back().periods);
    kernel::Record record;
    double before = start;
    for (const Moment& moment : past_) {
        if (moment.periods > middle) record.slipped_time_late += moment.trace.slipped * (moment.periods - before);
        before = moment.periods;
        const double began = periods_at(moment.trace.slip_start);
        if (moment.trace.slip_distance < 0.0F || began < start) continue;
        record.slips.push_back(
            {.start = began - start, .end = moment.periods - start, .distance = moment.trace.slip_distance});
    }
    const LiveTrace& last = past_.back().trace;
    if (last.slip_lasts) record.slipping_since = std::max(0.0, periods_at(last.slip_start) - start);
    return record;
}

/// m that the bow goes in a period.
Profile LiveEar::way_a_period() const {
    Profile profile;
    for (std::size_t i = 0; i < past_.size(); i += speed_spacing)
        profile.points.push_back({past_[i].periods - past_.front().periods, past_[i].trace.speed * past_[i].period});
    return profile;
}

Verdict LiveEar::verdict(const Tone& tone) const {
    const auto late = std::min(past_.size(), static_cast<std::size_t>(heard_for * card_rate_));
    double speed = 0.0;
    double contact = 0.0;
    for (auto moment = past_.end() - static_cast<std::ptrdiff_t>(late); moment != past_.end(); ++moment) {
        speed += moment->trace.speed / static_cast<double>(late);
        contact += moment->trace.contact / static_cast<double>(late);
    }
    const Profile way = way_a_period();
    Hearing hearing =
        hearing_of(score_->note, tone, {.speed = way, .last_speed = speed, .contact_point = contact, .duration = 0.0});
    hearing.period = 1.0;
    hearing.duration = past_.back().periods - past_.front().periods;
    return judge(record(), way, hearing);
}

std::optional<LiveEar::Heard> LiveEar::hear(LiveVoice& voice) {
    for (LiveTrace trace; voice.take(trace);) take(trace);
    if (past_.empty()) return std::nullopt;
    forget_old();
    const double periods = past_.back().periods - past_.front().periods;
    if (periods < least_periods) return std::nullopt;
    Heard heard{.tone = tone(), .verdict = {}, .fundamental_hz = fundamental(score_->note.string)};
    heard.verdict = verdict(heard.tone);
    heard.long_enough = periods >= judged_periods - 1.0;
    return heard;
}

}  // namespace sim::sound

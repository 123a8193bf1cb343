// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/lanes.hpp"

#include "sim/kernel/lane_arithmetic.hpp"
#include "sim/kernel/lane_plan.hpp"
#include "sim/kernel/lane_profile.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cassert>
#include <limits>

namespace sim::kernel {

namespace {

constexpr int block_steps = 128;  // what the time loop writes meanwhile stays near the core

/// One stroke's side of the batch, outside the time loop.
struct Lane {
    Wanted wanted;
    LaneProfile speed, force;
    Record record;
    Slip now;
    bool on = false;
    bool over = false;
};

struct Buffers {
    std::array<LaneRow, block_steps> bridge_force, distance, velocity, friction, temperature, slips;
    std::array<std::uint32_t, block_steps> turns;
};

}  // namespace

struct LaneBatch::State {
    State(const Note& note, const Profile& contact, double lengthwise, std::span<const LaneStroke> strokes);

    int span_from_here(int steps) const;
    void aim();
    void place();
    void advance_span(int steps);
    void keep(Lane& lane, std::size_t i, int steps);
    void keep_slips(int steps);
    void end(Lane& lane, std::size_t i);

    Note note;
    Profile contact_point;
    LaneGeometry geometry;
    LaneWork work;
    std::vector<Lane> lanes;
    std::vector<LaneBowPlace> places;
    Buffers buffers;
    std::vector<LaneRow> heard;
    int heard_from = -1;  // < 0 = the records keep the force
    bool waveforms = false;
    int now = 0;
};

LaneBatch::State::State(const Note& the_note, const Profile& contact, double lengthwise,
                        std::span<const LaneStroke> strokes)
    : note(the_note), contact_point(contact), geometry(note), work(lane_work(note, geometry)) {
    assert(!strokes.empty() && strokes.size() <= lane_count);
    const double place = contact.points.front().value;
    std::array<double, lane_count> speeds{};
    for (std::size_t i = 0; i < strokes.size(); ++i) {
        const LaneStroke& stroke = strokes[i];
        lanes.push_back({.wanted = stroke.wanted,
                         .speed = LaneProfile(stroke.speed, note.sample_rate),
                         .force = LaneProfile(stroke.force, note.sample_rate),
                         .record = {},
                         .now = {}});
        if (stroke.start.helmholtz) speeds[i] = stroke.start.speed;
        warm(work, i, stroke.start.warmth);
        waveforms = waveforms || stroke.wanted.waveforms;
    }
    if (std::ranges::any_of(speeds, [](double speed) { return speed != 0.0; }))
        fill_with_helmholtz(work, note, place, speeds);
    if (lengthwise > 0.0) {
        assert(work.contact.law == LaneLaw::thermal || work.contact.law == LaneLaw::coulomb);
        work.contact.law = work.contact.law == LaneLaw::thermal ? LaneLaw::thermal_askew : LaneLaw::coulomb_askew;
        std::ranges::fill(work.lengthwise.lane, static_cast<float>(lengthwise));
    }
    places.resize(contact.points.size() > 1 ? block_steps : 1);
    for (LaneBowPlace& each : places) place_bow(geometry, place, each);
}

/// Samples from here that need no look outside: nothing begins or ends within them.
int LaneBatch::State::span_from_here(int steps) const {
    int span = std::min(steps, block_steps);
    const auto until = [&](int step) {
        if (step > now) span = std::min(span, step - now);
    };
    until(heard_from);
    for (const Lane& lane : lanes) {
        until(lane.speed.next_step());
        until(lane.force.next_step());
        until(lane.wanted.steps / 2);
        until(lane.wanted.steps);
    }
    return span;
}

/// Sets what changes at this sample.
void LaneBatch::State::aim() {
    for (std::size_t i = 0; i < lanes.size(); ++i) {
        lanes[i].speed.aim(now, work.speed, i);
        lanes[i].force.aim(now, work.force, i);
        if (now >= lanes[i].wanted.steps / 2) work.late.lane[i] = 1.0F;
        if (now >= lanes[i].wanted.steps && !lanes[i].over) end(lanes[i], i);
    }
    for (LaneRamp* ramp : {&work.speed, &work.force})
        ramp->flat = std::ranges::all_of(ramp->slope.lane, [](float slope) { return slope == 0.0F; });
}

void LaneBatch::State::keep(Lane& lane, std::size_t i, int steps) {
    const int first = std::max(0, lane.wanted.bridge_from - now);
    for (int t = first; t < steps && heard_from < 0; ++t)
        lane.record.bridge_force.push_back(buffers.bridge_force[static_cast<std::size_t>(t)].lane[i]);
    if (!lane.wanted.waveforms) return;
    for (std::size_t t = 0; t < static_cast<std::size_t>(steps); ++t) {
        lane.record.velocity.push_back(buffers.velocity[t].lane[i]);
        lane.record.friction.push_back(buffers.friction[t].lane[i]);
        lane.record.temperature.push_back(buffers.temperature[t].lane[i]);
        lane.record.slipping.push_back(buffers.slips[t].lane[i] > 0.5F ? 1 : 0);
    }
}

/// What SlipWatch notes.
void LaneBatch::State::keep_slips(int steps) {
    const double time_step = 1.0 / note.sample_rate;
    for (int t = 0; t < steps; ++t) {
        for (std::uint32_t turns = buffers.turns[static_cast<std::size_t>(t)]; turns != 0; turns &= turns - 1) {
            const auto bit = static_cast<std::size_t>(std::countr_zero(turns));
            const std::size_t i = bit % lane_count;
            if (i >= lanes.size() || lanes[i].over) continue;
            Lane& lane = lanes[i];
            lane.on = bit < lane_count;
            if (lane.on) {
                lane.now = {.start = (now + t) * time_step};
                continue;
            }
            lane.now.end = (now + t) * time_step;
            lane.now.distance = buffers.distance[static_cast<std::size_t>(t)].lane[i];
            lane.record.slips.push_back(lane.now);
        }
    }
}

void LaneBatch::State::end(Lane& lane, std::size_t i) {
    lane.over = true;
    Record& record = lane.record;
    record.slipping_since = lane.on ? lane.now.start : -1.0;
    record.slipped_time_late = static_cast<double>(work.late_slips.lane[i]) / note.sample_rate;
    record.warmth = warmth_of(work, i);
    if (work.insane.lane[i] == 0.0F) return;
    record = {};
    record.diverged = true;
}

void LaneBatch::State::place() {
    for (std::size_t t = 0; t < places.size(); ++t)
        place_bow(geometry, value_at(contact_point, (now + static_cast<int>(t)) / note.sample_rate), places[t]);
}

void LaneBatch::State::advance_span(int steps) {
    const bool moves = places.size() > 1;
    if (moves) place();
    LaneBlock block{.steps = steps, .places = places.data(), .moves = moves};
    block.bridge_force = buffers.bridge_force.data();
    if (heard_from >= 0 && now >= heard_from) {
        heard.resize(heard.size() + static_cast<std::size_t>(steps));
        block.bridge_force = &heard[heard.size() - static_cast<std::size_t>(steps)];
    }
    block.distance = buffers.distance.data();
    block.turns = buffers.turns.data();
    if (waveforms) {
        block.velocity = buffers.velocity.data();
        block.friction = buffers.friction.data();
        block.temperature = buffers.temperature.data();
        block.slips = buffers.slips.data();
    }
    {
        const LaneArithmetic arithmetic;
        advance_lanes(work, block);
    }
    keep_slips(steps);
    for (std::size_t i = 0; i < lanes.size(); ++i)
        if (!lanes[i].over) keep(lanes[i], i, steps);
    now += steps;
}

LaneBatch::LaneBatch(const Note& note, const Profile& contact_point, double lengthwise,
                     std::span<const LaneStroke> strokes)
    : state_(std::make_unique<State>(note, contact_point, lengthwise, strokes)) {
    static_assert(capacity == lane_count && most_hair_points == static_cast<int>(most_lane_points));
    assert(note.hair.points <= most_hair_points);
}
LaneBatch::~LaneBatch() = default;
LaneBatch::LaneBatch(LaneBatch&&) noexcept = default;
LaneBatch& LaneBatch::operator=(LaneBatch&&) noexcept = default;

void LaneBatch::advance(int steps) {
    while (steps > 0) {
        state_->aim();
        const int span = state_->span_from_here(steps);
        state_->advance_span(span);
        steps -= span;
    }
    state_->aim();
}

int LaneBatch::steps_left() const {
    int last = 0;
    for (const Lane& lane : state_->lanes) last = std::max(last, lane.wanted.steps);
    return std::max(0, last - state_->now);
}

void LaneBatch::drive(std::size_t lane, const Profile& speed, const Profile& force) {
    const double rate = state_->note.sample_rate;
    state_->lanes[lane].speed = LaneProfile(speed, rate);
    state_->lanes[lane].force = LaneProfile(force, rate);
}

void LaneBatch::listen_from(int step) {
    state_->heard_from = step;
    state_->heard.reserve(static_cast<std::size_t>(std::max(0, state_->lanes.front().wanted.steps - step)));
}

std::vector<LaneBatch::Heard> LaneBatch::heard(std::span<const double> taps, int step) const {
    const std::vector<LaneRow>& rows = state_->heard;
    std::vector<Heard> all(state_->lanes.size());
    if (rows.empty()) return all;
    LaneThinning thinning{.taps = {taps.begin(), taps.end()}, .step = static_cast<std::size_t>(step), .outputs = 0};
    if (rows.size() >= taps.size()) thinning.outputs = (rows.size() - taps.size()) / thinning.step + 1;
    std::vector<LaneRow> thin(thinning.outputs);
    LaneRow span;
    {
        const LaneArithmetic arithmetic;
        thin_lanes(rows.data(), thinning, thin.data());
        span_of_lanes(rows.data(), rows.size(), &span);
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].peak_to_peak = span.lane[i];
        for (const LaneRow& row : thin) all[i].samples.push_back(row.lane[i]);
    }
    return all;
}

std::vector<Record> LaneBatch::take_records() {
    std::vector<Record> records;
    for (Lane& lane : state_->lanes) records.push_back(std::move(lane.record));
    for (Lane& lane : state_->lanes) lane.record = {};
    return records;
}

std::vector<Record> run_lanes(const Note& note, const Drive& shared, std::span<const LaneStroke> strokes) {
    std::vector<Record> records;
    while (!strokes.empty()) {
        const std::size_t count = std::min(strokes.size(), LaneBatch::capacity);
        LaneBatch batch(note, shared.contact_point, shared.lengthwise, strokes.first(count));
        batch.advance(batch.steps_left());
        std::ranges::move(batch.take_records(), std::back_inserter(records));
        strokes = strokes.subspan(count);
    }
    return records;
}

}  // namespace sim::kernel

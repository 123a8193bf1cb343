// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/bow_contact.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace sim::kernel {

namespace {

constexpr double close_enough = 1e-9;  // of the bow force, by which a round may still move a point's force
constexpr int most_rounds = 60;
constexpr std::size_t few_points = 6;  // whose rounds are given all that time
constexpr int rounds_of_many = 8;
constexpr int most_solutions = 3;

}  // namespace

BowContact::BowContact(const Note& note, double sample_rate, const Warmth& warmth) : time_step_(1.0 / sample_rate) {
    const Hair& hair = note.hair;
    const int count = hair.points;
    assert(count <= static_cast<int>(JointForces::most_points));
    for (int i = 0; i < count; ++i)
        points_.push_back(
            {.offset = hair.width * ((i + 0.5) / count - 0.5), .rosin = Rosin(note.contact, sample_rate, warmth)});
    const double share = 1.0 / count;
    stiffness_ = share * hair.stiffness;
    resistance_ = share * hair.resistance;
    inertia_ = share * hair.mass * sample_rate;
    gives_ = hair.stiffness > 0.0;
    // m dw/dt + r w + k z = f by backward Euler, w = dz/dt: w = yield (f + m/dt w_old - k z_old).
    if (gives_) hair_yield_ = 1.0 / (inertia_ + resistance_ + stiffness_ * time_step_);
}

void BowContact::place(double contact_point, WaveLines& string, WaveLines& twist) {
    for (std::size_t i = 0; i < points_.size(); ++i) {
        Point& point = points_[i];
        string.place_bow(contact_point + point.offset, i);
        twist.place_bow(contact_point + point.offset, i);
    }
    together_.points = points_.size();
    for (std::size_t i = 0; i < points_.size(); ++i)
        for (std::size_t j = 0; j < points_.size(); ++j)
            together_.yield[i][j] = j != i ? string.shared_yield(i, j) + twist.shared_yield(i, j)
                                           : string.yield(i) + twist.yield(i) + hair_yield_;
}

void BowContact::take_up(const BowContact& before) {
    for (std::size_t i = 0; i < points_.size(); ++i) {
        const Point& old = before.points_[i];
        points_[i].rosin.take_up(old.rosin);
        points_[i].stretch = old.stretch;
        points_[i].speed = old.speed;
        points_[i].force = old.force;
    }
}

double BowContact::felt_from_others(std::size_t point) const {
    double sum = 0.0;
    for (std::size_t j = 0; j < points_.size(); ++j)
        if (j != point) sum += together_.yield[point][j] * points_[j].force;
    return sum;
}

/// Each point's force from all the others'.  Returns by how much the one that moved most did.
double BowContact::rub_round(double bow_force, double lengthwise) {
    double moved = 0.0;
    for (std::size_t i = 0; i < points_.size(); ++i) {
        Point& point = points_[i];
        const double force = point.rosin.try_out({.free_slip = point.free_slip + felt_from_others(i),
                                                  .yield = together_.yield[i][i],
                                                  .lengthwise = lengthwise},
                                                 bow_force);
        moved = std::max(moved, std::abs(force - point.force));
        point.force = force;
    }
    return moved;
}

/// All points' forces at once, where the law is one of sign alone.
bool BowContact::solve_together(double bow_force) {
    JointForces::Values forces;
    for (std::size_t i = 0; i < points_.size(); ++i) {
        const Point& point = points_[i];
        if (!point.rosin.of_sign_alone()) return false;
        together_.free_slip[i] = point.free_slip;
        together_.bears[i] = point.rosin.bears(bow_force);
        forces[i] = point.force;
    }
    JointForces::settle(together_, forces);
    for (std::size_t i = 0; i < points_.size(); ++i) points_[i].force = forces[i];
    return true;
}

/// Round after round until none moves (a contraction: a push moves its own place most).
bool BowContact::go_round(int rounds, double bow_force, double lengthwise) {
    for (int round = 0; round < rounds; ++round) {
        const double moved = rub_round(bow_force, lengthwise);
        if (points_.size() == 1 || moved <= close_enough * bow_force) return true;
    }
    return false;
}

/// The forces of the sample before are the first guess.  Where many points share few samples rounds close in too
/// slowly: all are solved at once then, and rounds see whether they stay.
bool BowContact::rub_together(double bow_force, double lengthwise) {
    const int patience = points_.size() > few_points ? rounds_of_many : most_rounds;
    if (go_round(patience, bow_force, lengthwise)) return true;
    for (int times = 0; times < most_solutions && lengthwise == 0.0 && solve_together(bow_force); ++times)
        if (go_round(patience, bow_force, lengthwise)) return true;
    return go_round(most_rounds - patience, bow_force, lengthwise);
}

void BowContact::rub(WaveLines& string, WaveLines& twist, const Hand& hand) {
    const double bow_force = hand.force / static_cast<double>(points_.size());
    for (std::size_t i = 0; i < points_.size(); ++i) {
        Point& point = points_[i];
        const double lag = gives_ ? hair_yield_ * (inertia_ * point.speed - stiffness_ * point.stretch) : 0.0;
        point.free_slip = string.velocity_at_bow(i) + twist.velocity_at_bow(i) - hand.speed + lag;
        point.rosin.begin(hand.lengthwise);
        point.rosin.look();
    }
    settled_ = rub_together(bow_force, hand.lengthwise);
    if (!std::ranges::all_of(points_, [](const Point& point) { return point.rosin.settled(); })) {
        for (Point& point : points_) point.rosin.look();
        settled_ = rub_together(bow_force, hand.lengthwise) && settled_;
    }
    for (Point& point : points_) point.rosin.finish();
    keep(string, twist);
    for (std::size_t i = 0; i < points_.size(); ++i) {
        string.push(points_[i].force, i);
        twist.push(points_[i].force, i);
    }
}

void BowContact::keep(const WaveLines& string, const WaveLines& twist) {
    friction_ = slip_ = surface_ = 0.0;
    slipping_ = 0;
    const double share = 1.0 / static_cast<double>(points_.size());
    for (std::size_t i = 0; i < points_.size(); ++i) {
        Point& point = points_[i];
        if (gives_) {
            const double lag = hair_yield_ * (inertia_ * point.speed - stiffness_ * point.stretch);
            point.speed = lag + hair_yield_ * point.force;
            point.stretch += time_step_ * point.speed;
        }
        friction_ += point.force;
        slip_ += share * point.rosin.slip();
        surface_ += share * (string.velocity_at_bow(i) + twist.velocity_at_bow(i) + felt_from_others(i) +
                             (string.yield(i) + twist.yield(i)) * point.force);
        slipping_ += point.rosin.slips() ? 1 : 0;
    }
}

double BowContact::temperature() const {
    double sum = 0.0;
    for (const Point& point : points_) sum += point.rosin.temperature();
    return sum / static_cast<double>(points_.size());
}

}  // namespace sim::kernel

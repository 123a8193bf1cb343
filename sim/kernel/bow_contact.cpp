// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/bow_contact.hpp"

namespace sim::kernel {

BowContact::BowContact(const Note& note, double sample_rate, const Warmth& warmth) : time_step_(1.0 / sample_rate) {
    const Hair& hair = note.hair;
    const int count = hair.points;
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
        point.felt.resize(i);
        for (std::size_t j = 0; j < i; ++j) point.felt[j] = string.shared_yield(i, j) + twist.shared_yield(i, j);
    }
}

void BowContact::rub(WaveLines& string, WaveLines& twist, const Hand& hand) {
    friction_ = slip_ = surface_ = 0.0;
    slipping_ = 0;
    const double share = 1.0 / static_cast<double>(points_.size());
    for (std::size_t i = 0; i < points_.size(); ++i) {
        Point& point = points_[i];
        double free_surface = string.velocity_at_bow(i) + twist.velocity_at_bow(i);
        for (std::size_t j = 0; j < i; ++j) free_surface += point.felt[j] * points_[j].force;
        const double yield = string.yield(i) + twist.yield(i);
        const double lag = gives_ ? hair_yield_ * (inertia_ * point.speed - stiffness_ * point.stretch) : 0.0;
        const double force = point.rosin.rub(
            {.free_slip = free_surface - hand.speed + lag, .yield = yield + hair_yield_, .lengthwise = hand.lengthwise},
            share * hand.force);
        if (gives_) {
            point.speed = lag + hair_yield_ * force;
            point.stretch += time_step_ * point.speed;
        }
        point.force = force;
        friction_ += force;
        slip_ += share * point.rosin.slip();
        surface_ += share * (free_surface + yield * force);
        slipping_ += point.rosin.slips() ? 1 : 0;
    }
    for (std::size_t i = 0; i < points_.size(); ++i) {
        string.push(points_[i].force, i);
        twist.push(points_[i].force, i);
    }
}

double BowContact::temperature() const {
    double sum = 0.0;
    for (const Point& point : points_) sum += point.rosin.temperature();
    return sum / static_cast<double>(points_.size());
}

}  // namespace sim::kernel

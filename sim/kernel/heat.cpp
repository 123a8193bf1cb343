// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/heat.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace sim::kernel {

Heat::Heat(const HeatPath& path, double time_step, const Warmth& warmth)
    : path_(path),
      time_step_(time_step),
      layer_(warmth.layer),
      string_(warmth.string_side),
      hair_(path.branches.size(), 0.0) {
    assert(string_.empty() || string_.size() == path.branches.size());
    string_.resize(path.branches.size(), 0.0);
    // A branch's warmth after a step is keep * old + (1 - keep) * layer, so conductance * keep * (layer - old) flows
    // in.
    stuck_sum_ = path.capacity / time_step + 2.0 * path.spread;
    for (const HeatPath::Branch& branch : path.branches) {
        pull_.push_back(time_step / branch.time);
        keep_.push_back(1.0 / (1.0 + pull_.back()));
        stuck_sum_ += 2.0 * branch.conductance * keep_.back();
    }
    left_ = keep_;
}

void Heat::begin(double slip_speed) {
    renewal_ = slip_speed / path_.renewal_length;
    inflow_ = path_.capacity / time_step_ * layer_;
    if (slip_speed == 0.0) {
        sum_ = stuck_sum_;
        for (std::size_t i = 0; i < keep_.size(); ++i)
            inflow_ += path_.branches[i].conductance * keep_[i] * (string_[i] + hair_[i]);
        return;
    }
    // As above, while fresh hair takes the place of warm hair.
    sum_ = path_.capacity / time_step_ + 2.0 * path_.spread + renewal_ * path_.renewed_capacity;
    for (std::size_t i = 0; i < keep_.size(); ++i) {
        left_[i] = 1.0 / (1.0 + pull_[i] + time_step_ * renewal_);
        sum_ += path_.branches[i].conductance * (keep_[i] + (1.0 - pull_[i] * left_[i]));
        inflow_ += path_.branches[i].conductance * (keep_[i] * string_[i] + left_[i] * hair_[i]);
    }
}

void Heat::finish(double power) {
    layer_ = temperature_with(power);
    const std::vector<double>& left = renewal_ == 0.0 ? keep_ : left_;
    for (std::size_t i = 0; i < keep_.size(); ++i) {
        string_[i] = layer_ + keep_[i] * (string_[i] - layer_);
        hair_[i] = (hair_[i] + pull_[i] * layer_) * left[i];
    }
}

void Heat::take_up(const Heat& before) {
    layer_ = before.layer_;
    std::ranges::copy(before.string_, string_.begin());
    std::ranges::copy(before.hair_, hair_.begin());
}

Warmth Heat::warmth() const { return {.layer = layer_, .string_side = string_}; }

double Heat::stored() const {
    double heat = path_.capacity * layer_;
    for (std::size_t i = 0; i < string_.size(); ++i)
        heat += path_.branches[i].conductance * path_.branches[i].time * (string_[i] + hair_[i]);
    return heat;
}

double Heat::lost() const {
    double power = (2.0 * path_.spread + renewal_ * path_.renewed_capacity) * layer_;
    for (std::size_t i = 0; i < hair_.size(); ++i)
        power += renewal_ * path_.branches[i].conductance * path_.branches[i].time * hair_[i];
    return power;
}

Warmth rested(const HeatPath& path, const Warmth& warmth, double seconds) {
    constexpr int steps = 400;  // each 3 % longer than the one before
    constexpr double growth = 1.03;
    const double capacity = path.capacity - path.renewed_capacity;
    Warmth left = warmth;
    double step = seconds * (growth - 1.0) / (std::pow(growth, steps) - 1.0);
    for (int i = 0; i < steps && seconds > 0.0 && !left.string_side.empty(); ++i, step *= growth) {
        double inflow = capacity / step * left.layer;
        double sum = capacity / step + path.spread;
        for (std::size_t k = 0; k < path.branches.size(); ++k) {
            const double taken = path.branches[k].conductance / (1.0 + step / path.branches[k].time);
            inflow += taken * left.string_side[k];
            sum += taken;
        }
        left.layer = inflow / sum;
        for (std::size_t k = 0; k < path.branches.size(); ++k)
            left.string_side[k] =
                left.layer + (left.string_side[k] - left.layer) / (1.0 + step / path.branches[k].time);
    }
    return left;
}

}  // namespace sim::kernel

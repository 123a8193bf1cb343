// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/confusion.hpp"

#include <cstdio>
#include <numeric>

namespace tests {
namespace {

std::string percent(double share) {
    char text[16];
    std::snprintf(text, sizeof text, "%.0f %%", 100.0 * share);
    return text;
}

}  // namespace

double Confusion::share(std::size_t is, std::size_t said) const {
    const int all = std::accumulate(counts_[is].begin(), counts_[is].end(), 0);
    return all > 0 ? static_cast<double>(counts_[is][said]) / all : 0.0;
}

int Confusion::count(analysis::HeardMotion is) const {
    const auto& row = counts_[static_cast<std::size_t>(is)];
    return std::accumulate(row.begin(), row.end(), 0);
}

double Confusion::recall(analysis::HeardMotion motion) const {
    return share(static_cast<std::size_t>(motion), static_cast<std::size_t>(motion));
}

double Confusion::precision(analysis::HeardMotion motion) const {
    double all = 0.0;
    for (std::size_t is = 0; is < counts_.size(); ++is) all += share(is, static_cast<std::size_t>(motion));
    return all > 0.0 ? recall(motion) / all : 0.0;
}

std::string Confusion::table() const {
    std::string text = "| is, heard as | ";
    for (std::size_t m = 0; m <= analysis::motion_count; ++m)
        text += std::string(heard_motion_name(static_cast<analysis::HeardMotion>(m))) + " | ";
    text += "recall | precision |\n|---|---|---|---|---|---|---|---|---|---|\n";
    for (std::size_t m = 0; m < analysis::motion_count; ++m) {
        const auto motion = static_cast<analysis::HeardMotion>(m);
        text += "| " + std::string(heard_motion_name(motion)) + " | ";
        for (const int count : counts_[m]) text += std::to_string(count) + " | ";
        text += percent(recall(motion)) + " | " + percent(precision(motion)) + " |\n";
    }
    return text;
}

}  // namespace tests

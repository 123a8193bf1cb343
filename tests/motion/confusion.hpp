// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion.hpp"

#include <array>
#include <cstddef>
#include <string>

namespace tests {

/// What motions were taken for.
class Confusion {
public:
    void add(analysis::HeardMotion is, analysis::HeardMotion said) {
        ++counts_[static_cast<std::size_t>(is)][static_cast<std::size_t>(said)];
    }
    /// Strokes of a motion.
    int count(analysis::HeardMotion is) const;
    /// Share of a motion's strokes that were named so; unclear is a miss.
    double recall(analysis::HeardMotion motion) const;
    /// Share of what was named so that was, if every motion were as frequent as the others.
    double precision(analysis::HeardMotion motion) const;
    /// A table for people, recall and precision at its right.
    std::string table() const;

private:
    double share(std::size_t is, std::size_t said) const;
    std::array<std::array<int, analysis::motion_count + 1>, analysis::motion_count> counts_{};
};

}  // namespace tests

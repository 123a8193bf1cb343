// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>

#include <string>
#include <vector>

namespace gui::charts {

/// Steps into which values are sorted, each with a shade: the more, the darker, in grey as well.
class Shades {
public:
    /// The least value of every step but the first, rising; at most five.  `darkest_first` turns the shades round.
    Shades(std::vector<double> edges, bool darkest_first);

    std::size_t count() const { return edges_.size() + 1; }
    std::size_t step_of(double value) const;
    QColor colour(std::size_t step) const;
    /// "under 10", "10 to 20", "20 and more"
    std::string label(std::size_t step) const;

private:
    std::vector<double> edges_;
    bool darkest_first_;
};

/// Round edges for up to six steps over the values but for the outermost twentieth either side.
std::vector<double> round_edges(std::vector<double> values);

}  // namespace gui::charts

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace gui::charts {

/// From values to an axis: `low` … `high` along it, evenly or by logarithm.
struct Scale {
    double low = 0.0;
    double high = 1.0;
    bool logarithmic = false;

    bool operator==(const Scale&) const = default;

    /// Can stand on such an axis at all, inside its ends or not.
    bool shows(double value) const;
    /// Place along the axis' own measure: the value, or its decimal logarithm.
    double along(double value) const;
    /// Share of the way from low (0) to high (1).
    double share(double value) const;
};

/// Collects values, then gives the scale that holds them.
class Extent {
public:
    explicit Extent(bool logarithmic) : logarithmic_(logarithmic) {}

    /// Values that the scale can't show are passed over.
    void add(double value);
    /// With `margin` of its length added at either end; some plain scale where there are no values.
    Scale scale(double margin) const;

private:
    bool logarithmic_;
    bool empty_ = true;
    double low_ = 0.0;
    double high_ = 0.0;
};

struct Tick {
    double value = 0.0;
    std::string label;

    bool operator==(const Tick&) const = default;
};

/// How close ticks may stand.
struct TickRoom {
    double pixels = 0.0;       ///< length of the axis
    double least_apart = 0.0;  ///< pixels between neighbours
    double least_step = 0.0;   ///< of a linear axis, e.g. 1 for whole semitones
};

/// As many round ticks as there is room for, rising.
std::vector<Tick> ticks(const Scale& scale, const TickRoom& room);

/// A number for people, with up to `digits` significant digits: "0.05", "42.1", "120".
std::string number_text(double value, int digits = 3);

}  // namespace gui::charts

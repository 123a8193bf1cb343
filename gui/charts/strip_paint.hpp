// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/strip.hpp"

#include <QString>

class QPainter;

/// Only for strip.cpp.  All lengths in units of a tenth of a mm, which is what a painter here counts in.
namespace gui::charts::strip {

inline constexpr double unit = 10.0;           ///< a mm
inline constexpr double head = 21.0 * unit;    ///< title and lines
inline constexpr double joint = 5.0 * unit;    ///< names of the lines to cut along, over the strip itself
inline constexpr double foot = 16.0 * unit;    ///< the line to measure
inline constexpr double before = 5.0 * unit;   ///< left of the zero edge
inline constexpr double check = 100.0 * unit;  ///< length of the line to measure

/// Height of the strip itself, between head and foot.
double body_height(const Strip& strip);

/// Title and lines from (0, 0) down, up to `head`; `sheet` such as "sheet 1 of 3", or empty.
void paint_head(QPainter& painter, const Strip& strip, const QString& sheet);
/// The strip with its zero edge at x = 0, from y = 0 down.
void paint_body(QPainter& painter, const Strip& strip);
/// The line of 100 mm, from (0, 0).
void paint_check(QPainter& painter);

/// A line to cut along or to lay a cut edge against, at x, over a body of that height; its name above.
struct Joint {
    double x;
    double height;
    bool cut;
    QString name;
};
void paint_joint(QPainter& painter, const Joint& joint);

}  // namespace gui::charts::strip

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/panel.hpp"

/// Pens, hatches and marks that the panels of a climb and its legend share.
namespace gui::charts::climb_look {

inline constexpr double least_security = 0.5;  ///< under it the bow left behind is said to fail

inline const QPen follows = style::pen(style::blue, 2.2);
inline const QPen behind = style::pen(style::red, 1.8, {6, 3});
inline const QPen edge = style::pen(style::mid_blue, 1.4);
inline const QPen half = style::pen(style::soft_ink, 1.2, {2, 3});
inline const QPen share = style::pen(style::soft_ink, 1.4, {8, 3, 2, 3});
inline const QPen band_stroke = style::pen(style::mid_blue, 1.2);
inline const QPen stretch_edge = style::pen(style::grey, 1.2, {4, 3});
inline const QPen stretch_stroke = style::pen(style::mid_grey, 1.0);
inline const Hatch none_hatch{.pen = style::pen(style::mid_grey, 1.0), .apart = 5.0, .rising = false};
inline constexpr double strokes_apart = 6.0;
inline constexpr double stretch_strokes_apart = 12.0;

inline const MarkStyle best{
    .shape = MarkShape::disc, .colour = style::blue, .size = 9.0, .layer = style::top_mark_layer};
inline const MarkStyle bandless{
    .shape = MarkShape::ring, .colour = style::blue, .size = 11.0, .layer = style::top_mark_layer};
inline const MarkStyle held{
    .shape = MarkShape::square, .colour = style::red, .size = 8.0, .layer = style::top_mark_layer};
inline const MarkStyle failing{
    .shape = MarkShape::crossed_square, .colour = style::red, .size = 13.0, .layer = style::top_mark_layer};
inline const MarkStyle none{
    .shape = MarkShape::cross, .colour = style::ink, .size = 13.0, .layer = style::top_mark_layer};

}  // namespace gui::charts::climb_look

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPen>

/// One look for all charts.  Colours stay apart for colour-blind eyes; nothing is told by colour alone.
namespace gui::charts::style {

inline constexpr double sheet_width = 1200.0;
inline constexpr double sheet_height = 800.0;
inline constexpr double margin = 20.0;
inline constexpr double plot_left = 86.0;
inline constexpr double plot_right = 856.0;
inline constexpr double side_left = 888.0;  ///< legend and notes

inline constexpr int title_px = 22;
inline constexpr int small_title_px = 17;
inline constexpr int text_px = 14;
inline constexpr int small_px = 12;

inline const QColor ink{0x22, 0x22, 0x22};
inline const QColor soft_ink{0x55, 0x55, 0x55};
inline const QColor grid{0xe2, 0xe2, 0xe2};
inline const QColor blue{0x00, 0x5a, 0x9c};
inline const QColor pale_blue{0xdd, 0xeb, 0xf7};
inline const QColor mid_blue{0x8f, 0xb8, 0xdc};
inline const QColor orange{0xd9, 0x8a, 0x00};
inline const QColor red{0xc4, 0x4e, 0x00};
inline const QColor purple{0x9a, 0x4a, 0x80};
inline const QColor green{0x00, 0x7f, 0x5f};
inline const QColor grey{0x8a, 0x8a, 0x8a};
inline const QColor pale_grey{0xec, 0xec, 0xec};
inline const QColor faint_grey{0xf4, 0xf4, 0xf4};
inline const QColor mid_grey{0xb4, 0xb4, 0xb4};
inline const QColor warning_paper{0xff, 0xf4, 0xd6};

/// A pen; dashes in widths of the line, empty = unbroken.
inline QPen pen(const QColor& colour, double width, const QList<qreal>& dashes = {}) {
    QPen result(colour, width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    if (!dashes.isEmpty()) result.setDashPattern(dashes);
    return result;
}

/// Layers, from the paper up.
inline constexpr double tint_layer = -30.0;
inline constexpr double hatch_layer = -20.0;
inline constexpr double grid_layer = -10.0;
inline constexpr double mark_layer = 10.0;
inline constexpr double line_layer = 20.0;
inline constexpr double top_mark_layer = 30.0;
inline constexpr double frame_layer = 40.0;

}  // namespace gui::charts::style

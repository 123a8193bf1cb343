// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/marks.hpp"
#include "gui/charts/text.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

class QGraphicsScene;

namespace gui::charts {

struct SheetHeading {
    std::string title;
    std::string subtitle;
    std::string warning;  ///< in a frame, plainly visible; empty: none
};

/// The white paper with its heading on top.
struct Sheet {
    std::unique_ptr<QGraphicsScene> scene;
    double content_top = 0.0;  ///< first free line under the heading, px
};
Sheet make_sheet(const SheetHeading& heading);

/// Legend and notes, from the top down, beside the plots.  Notes that find no room are left out, which is said.
class SideColumn {
public:
    SideColumn(QGraphicsScene& scene, double top);

    void add_heading(const QString& text);
    /// Marks of that style on a line of that pen; either may be left out.
    void add_line(const QString& text, const QPen& pen, const std::vector<MarkStyle>& marks = {});
    void add_mark(const QString& text, const MarkStyle& mark) { add_line(text, Qt::NoPen, {mark}); }
    /// A sample 30 px wide and 16 high, drawn into the rectangle it is given.
    void add_sample(const QString& text, const std::function<void(QGraphicsScene&, const QRectF&)>& sample);
    void add_note(const std::string& text, const TextStyle& style = {.pixels = style::small_px});
    void add_space(double pixels) { y_ += pixels; }

private:
    /// Lines from `left` on; how many found room.
    int put_lines(const QString& text, double left, const TextStyle& style, int most_lines);

    QGraphicsScene* scene_;
    double y_;
    bool full_ = false;
};

}  // namespace gui::charts

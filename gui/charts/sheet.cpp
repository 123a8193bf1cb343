// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/sheet.hpp"

#include <QGraphicsRectItem>
#include <QGraphicsScene>

#include <algorithm>

namespace gui::charts {
namespace {

constexpr double width = style::sheet_width - 2 * style::margin;
constexpr double sample_width = 30.0;
constexpr double text_left = style::side_left + sample_width + 8.0;
constexpr double side_right = style::sheet_width - style::margin / 2.0;
constexpr int most_note_lines = 5;
constexpr double note_gap = 5.0;
constexpr double bottom = style::sheet_height - style::margin / 2.0;

/// Returns the first free line below.
double put_paragraph(QGraphicsScene& scene, const QStringList& lines, QPointF place, const TextStyle& text) {
    for (const QString& line : lines) {
        add_text(scene, line, place, Hold::left_top, text);
        place.ry() += line_height(text);
    }
    return place.y();
}

/// A long title is set smaller before it is cut.
double put_title(QGraphicsScene& scene, const QString& title, double y) {
    TextStyle text{.pixels = style::title_px, .bold = true};
    if (wrapped(title, width, text, 4).size() > 2) text.pixels = style::small_title_px;
    return put_paragraph(scene, wrapped(title, width, text, 3), {style::margin, y}, text);
}

double put_warning(QGraphicsScene& scene, const QString& warning, double y) {
    const TextStyle text{.pixels = 16, .bold = true};
    const double inset = 8.0;
    const QStringList lines = wrapped(warning, width - 2 * inset, text, 3);
    const double height = static_cast<double>(lines.size()) * line_height(text) + 2 * inset;
    scene.addRect(QRectF(style::margin, y, width, height), style::pen(style::red, 2.0), style::warning_paper)
        ->setZValue(style::tint_layer);
    put_paragraph(scene, lines, {style::margin + inset, y + inset}, text);
    return y + height;
}

}  // namespace

Sheet make_sheet(const SheetHeading& heading) {
    Sheet sheet{.scene = std::make_unique<QGraphicsScene>(0, 0, style::sheet_width, style::sheet_height)};
    sheet.scene->addRect(sheet.scene->sceneRect(), Qt::NoPen, Qt::white)->setZValue(2 * style::tint_layer);
    double y = 14.0;
    if (!heading.title.empty()) y = put_title(*sheet.scene, QString::fromStdString(heading.title), y);
    if (!heading.subtitle.empty()) {
        const TextStyle text{.colour = style::soft_ink};
        const QStringList lines = wrapped(QString::fromStdString(heading.subtitle), width, text, 3);
        y = put_paragraph(*sheet.scene, lines, {style::margin, y + 2.0}, text);
    }
    if (!heading.warning.empty()) y = put_warning(*sheet.scene, QString::fromStdString(heading.warning), y + 6.0);
    sheet.content_top = y;
    return sheet;
}

SideColumn::SideColumn(QGraphicsScene& scene, double top) : scene_(&scene), y_(top) {}

int SideColumn::put_lines(const QString& text, double left, const TextStyle& style, int most_lines) {
    const int room = static_cast<int>((bottom - y_) / line_height(style));
    if (room < 1) return 0;
    const QStringList lines = wrapped(text, side_right - left, style, std::min(room, most_lines));
    y_ = put_paragraph(*scene_, lines, {left, y_}, style);
    return static_cast<int>(lines.size());
}

void SideColumn::add_heading(const QString& text) {
    put_lines(text, style::side_left, {.bold = true}, 1);
    y_ += 4.0;
}

void SideColumn::add_line(const QString& text, const QPen& pen, const std::vector<MarkStyle>& marks) {
    add_sample(text, [&](QGraphicsScene& scene, const QRectF& place) {
        const double y = place.center().y();
        if (pen.style() != Qt::NoPen) scene.addLine(place.left(), y, place.right(), y, pen);
        for (std::size_t i = 0; i < marks.size(); ++i) {
            const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(marks.size());
            add_marks(scene, {QPointF(place.left() + share * place.width(), y)}, marks[i]);
        }
    });
}

void SideColumn::add_sample(const QString& text, const std::function<void(QGraphicsScene&, const QRectF&)>& sample) {
    const TextStyle words{.pixels = 13};
    const double top = y_;
    if (put_lines(text, text_left, words, 3) == 0) return;
    const double height = 16.0;
    sample(*scene_, QRectF(style::side_left, top + (line_height(words) - height) / 2.0, sample_width, height));
    y_ += 5.0;
}

void SideColumn::add_note(const std::string& text, const TextStyle& style) {
    if (full_) return;
    const QString words = QString::fromStdString(text);
    const auto lines =
        static_cast<double>(wrapped(words, side_right - style::side_left, style, most_note_lines).size());
    // one line is kept for saying that there was more
    full_ = y_ + (lines + 1.0) * line_height(style) + note_gap > bottom;
    put_lines(full_ ? QStringLiteral("… and more") : words, style::side_left, style, most_note_lines);
    y_ += note_gap;
}

}  // namespace gui::charts

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/strip.hpp"

#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"
#include "analysis/output_file.hpp"
#include "gui/charts/strip_paint.hpp"

#include <QBuffer>
#include <QImage>
#include <QLocale>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include <algorithm>
#include <cassert>
#include <cctype>
#include <cmath>

namespace gui::charts {
namespace {

constexpr double unit = strip::unit;
constexpr int units_an_inch = 254;
constexpr double page_margin = 12.0 * unit;
constexpr double overlap = 16.0 * unit;       // of two sheets that are joined
constexpr double least_width = 190.0 * unit;  // for the title, lines and what is said beside the line to measure

bool is_pdf(const std::filesystem::path& place) {
    std::string ending = place.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(), [](unsigned char c) { return std::tolower(c); });
    if (ending == ".pdf") return true;
    if (ending == ".svg") return false;
    throw analysis::InputError(place.string(), "a strip's name must end in .svg or .pdf");
}

/// Of the whole strip as one drawing.
QSizeF whole_size(const Strip& strip) {
    const double width = std::max(least_width, strip::before + strip.length_mm * unit);
    return {std::ceil(width + 2.0 * page_margin),
            std::ceil(strip::head + strip::body_height(strip) + strip::foot + 2.0 * page_margin)};
}

void paint_whole(QPainter& painter, const Strip& strip) {
    painter.translate(page_margin + strip::before, page_margin);
    strip::paint_head(painter, strip, QString());
    painter.translate(0, strip::head);
    strip::paint_body(painter, strip);
    painter.translate(0, strip::body_height(strip));
    strip::paint_check(painter);
}

QByteArray svg_bytes(const Strip& strip) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(units_an_inch);
    generator.setSize(whole_size(strip).toSize());
    generator.setViewBox(QRectF(QPointF(0, 0), whole_size(strip)));
    generator.setTitle(QString::fromStdString(strip.title));
    generator.setDescription(QString());
    QPainter painter(&generator);
    paint_whole(painter, strip);
    painter.end();
    // readers without the font have one of the same widths, or at least one without serifs
    return bytes.replace("font-family=\"DejaVu Sans\"", "font-family=\"DejaVu Sans, Verdana, sans-serif\"");
}

/// From … to of the strip on each sheet, with room left of the zero edge on the first; joined sheets overlap.
struct Piece {
    double from;
    double to;
};
std::vector<Piece> pieces(const Strip& strip, double room) {
    const double end = strip.length_mm * unit;
    std::vector<Piece> found{{-strip::before, std::min(end, room - strip::before)}};
    while (found.back().to < end) {
        const double from = found.back().to - overlap;
        found.push_back({from, std::min(end, from + room)});
    }
    return found;
}

QString joint_name(std::size_t index) { return QString(QChar(static_cast<char16_t>(u'A' + index % 26))); }

/// The lines at which this sheet meets its neighbours, in its own coordinates.
void paint_joints(QPainter& painter, const std::vector<Piece>& all, std::size_t index, double height) {
    const Piece& piece = all[index];
    if (index > 0) strip::paint_joint(painter, {overlap / 2.0, height, true, joint_name(index - 1)});
    if (index + 1 < all.size())
        strip::paint_joint(painter, {piece.to - piece.from - overlap / 2.0, height, false, joint_name(index)});
}

void paint_sheet(QPainter& painter, const Strip& strip, const std::vector<Piece>& all, std::size_t index) {
    const Piece& piece = all[index];
    const double height = strip::body_height(strip);
    const QString sheet = all.size() > 1 ? QString("sheet %1 of %2").arg(index + 1).arg(all.size()) : QString();
    painter.save();
    painter.translate(page_margin, page_margin);
    strip::paint_head(painter, strip, sheet);
    painter.translate(0, strip::head + strip::joint);
    painter.save();
    painter.setClipRect(QRectF(0, -unit, piece.to - piece.from + 0.3 * unit, height + 2.0 * unit));
    painter.translate(-piece.from, 0);
    strip::paint_body(painter, strip);
    painter.restore();
    paint_joints(painter, all, index, height);
    painter.translate(0, height + strip::joint);
    strip::paint_check(painter);
    painter.restore();
}

QByteArray pdf_bytes(const Strip& strip, Paper paper) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setTitle(QString::fromStdString(strip.title));
    writer.setCreator("bowband");
    writer.setPageSize(QPageSize(paper == Paper::a4 ? QPageSize::A4 : QPageSize::Letter));
    writer.setPageOrientation(QPageLayout::Landscape);
    writer.setPageMargins({});
    writer.setResolution(units_an_inch);
    QPainter painter(&writer);
    // page sizes are whole points, so that the page's own pixels are not quite as many as its tenths of a mm
    const double width = paper == Paper::a4 ? 297.0 * unit : 279.4 * unit;
    const std::vector<Piece> all = pieces(strip, width - 2.0 * page_margin);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i > 0) writer.newPage();
        paint_sheet(painter, strip, all, i);
    }
    painter.end();
    return bytes;
}

}  // namespace

std::optional<Paper> paper_from_name(const std::string& name) {
    if (name == "a4") return Paper::a4;
    if (name == "letter") return Paper::letter;
    return std::nullopt;
}

Paper usual_paper() { return QLocale().measurementSystem() == QLocale::ImperialUSSystem ? Paper::letter : Paper::a4; }

void require_strip_ending(const std::filesystem::path& place) { is_pdf(place); }

void save_strip(const Strip& strip, const std::filesystem::path& place) {
    require_strip_ending(place);
    analysis::OutputFile file(place);
    fill_strip(file, strip, usual_paper());
    file.commit();
}

void fill_strip(const analysis::OutputFile& file, const Strip& strip, Paper paper) {
    assert(strip.length_mm > 0.0);
    const QByteArray bytes = is_pdf(file.place()) ? pdf_bytes(strip, paper) : svg_bytes(strip);
    analysis::write_bytes(file, {bytes.data(), static_cast<std::size_t>(bytes.size())});
}

std::string strip_svg(const Strip& strip) {
    const std::string file = svg_bytes(strip).toStdString();
    return file.substr(file.find("<svg"));
}

QImage strip_image(const Strip& strip, double pixels_a_mm) {
    const double pixels = pixels_a_mm / unit;
    QImage image((whole_size(strip) * pixels).toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(pixels, pixels);
    paint_whole(painter, strip);
    return image;
}

}  // namespace gui::charts

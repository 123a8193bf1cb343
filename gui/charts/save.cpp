// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/save.hpp"

#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"
#include "gui/charts/draw.hpp"
#include "gui/charts/style.hpp"

#include <QApplication>
#include <QBuffer>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include <algorithm>
#include <cassert>
#include <cctype>

namespace gui::charts {
namespace {

enum class Format { png, svg, pdf };

const QSize sheet_size(static_cast<int>(style::sheet_width), static_cast<int>(style::sheet_height));

Format format_of(const std::filesystem::path& place) {
    std::string ending = place.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(), [](unsigned char c) { return std::tolower(c); });
    if (ending == ".png") return Format::png;
    if (ending == ".svg") return Format::svg;
    if (ending == ".pdf") return Format::pdf;
    throw analysis::InputError(place.string(), "a chart's name must end in .png, .svg or .pdf");
}

QString title_of(const Chart& chart) {
    return std::visit([](const auto& any) { return QString::fromStdString(any.title); }, chart);
}

void paint(QGraphicsScene& scene, QPaintDevice& device, const QRectF& target) {
    QPainter painter(&device);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    scene.render(&painter, target, scene.sceneRect());
}

QByteArray png_bytes(QGraphicsScene& scene) {
    QImage image(sheet_size, QImage::Format_RGB32);
    image.fill(Qt::white);
    paint(scene, image, scene.sceneRect());
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes;
}

QByteArray svg_bytes(QGraphicsScene& scene, const QString& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(96);  // as in CSS: 1200 px stay 1200 px on a page
    generator.setSize(sheet_size);
    generator.setViewBox(scene.sceneRect());
    generator.setTitle(title);
    generator.setDescription(QString());
    paint(scene, generator, scene.sceneRect());
    // readers without the font have one of the same widths, or at least one without serifs
    return bytes.replace("font-family=\"DejaVu Sans\"", "font-family=\"DejaVu Sans, Verdana, sans-serif\"");
}

QByteArray pdf_bytes(QGraphicsScene& scene, const QString& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setTitle(title);
    writer.setCreator("bowband");
    const double millimetres_per_pixel = 0.25;
    writer.setPageSize(QPageSize(scene.sceneRect().size() * millimetres_per_pixel, QPageSize::Millimeter, QString(),
                                 QPageSize::ExactMatch));
    writer.setPageMargins({});
    writer.setResolution(1200);
    paint(scene, writer, QRectF(0, 0, writer.width(), writer.height()));
    return bytes;
}

QByteArray chart_bytes(const Chart& chart, Format format) {
    const auto scene = chart_scene(chart);
    switch (format) {
        case Format::png:
            return png_bytes(*scene);
        case Format::svg:
            return svg_bytes(*scene, title_of(chart));
        case Format::pdf:
            return pdf_bytes(*scene, title_of(chart));
    }
    return {};
}

}  // namespace

void require_chart_ending(const std::filesystem::path& place) { format_of(place); }

std::unique_ptr<QGraphicsScene> chart_scene(const Chart& chart) {
    assert(qobject_cast<QApplication*>(QCoreApplication::instance()) && "a chart needs a ChartSession");
    return std::visit([](const auto& any) { return draw(any); }, chart);
}

void fill_chart(const analysis::OutputFile& file, const Chart& chart) {
    const QByteArray bytes = chart_bytes(chart, format_of(file.place()));
    analysis::write_bytes(file, {bytes.data(), static_cast<std::size_t>(bytes.size())});
}

void save_chart(const Chart& chart, const std::filesystem::path& place) {
    require_chart_ending(place);
    analysis::OutputFile file(place);
    fill_chart(file, chart);
    file.commit();
}

std::string chart_svg(const Chart& chart) {
    const std::string file = chart_bytes(chart, Format::svg).toStdString();
    return file.substr(file.find("<svg"));
}

}  // namespace gui::charts

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/dress.hpp"

#include <QApplication>
#include <QStyle>
#include <QStyleFactory>

#include <algorithm>

namespace gui {
namespace {

const Dress light{.paper = {0xff, 0xff, 0xff},
                  .ink = {0x22, 0x22, 0x22},
                  .soft_ink = {0x55, 0x55, 0x55},
                  .board = {0xd8, 0xcf, 0xc4},
                  .fret = {0x6b, 0x5b, 0x4a},
                  .string = {0x33, 0x33, 0x33},
                  .finger = {0xb4, 0x52, 0x0a},
                  .bow = {0x7a, 0x2e, 0x66},
                  .band = {0x00, 0x6a, 0xb3},
                  .stretch = {0x6f, 0x8f, 0xa8},
                  .good = {0xb9, 0xd8, 0xf0},
                  .weak = {0xf3, 0xdf, 0xb0},
                  .dark = false};

const Dress night{.paper = {0x1c, 0x1e, 0x21},
                  .ink = {0xec, 0xec, 0xec},
                  .soft_ink = {0xb4, 0xb4, 0xb4},
                  .board = {0x45, 0x3d, 0x36},
                  .fret = {0xc9, 0xb9, 0xa4},
                  .string = {0xe4, 0xe4, 0xe4},
                  .finger = {0xf0, 0x96, 0x4a},
                  .bow = {0xd9, 0x8b, 0xc4},
                  .band = {0x55, 0xb4, 0xf0},
                  .stretch = {0x8c, 0xa8, 0xbd},
                  .good = {0x1f, 0x4a, 0x6b},
                  .weak = {0x5c, 0x4a, 0x1c},
                  .dark = true};

QPalette palette_of(const Dress& dress) {
    const QColor raised = dress.dark ? dress.paper.lighter(135) : QColor(0xf2, 0xf2, 0xf0);
    QPalette palette;
    palette.setColor(QPalette::Window, raised);
    palette.setColor(QPalette::Base, dress.paper);
    palette.setColor(QPalette::AlternateBase, dress.dark ? dress.paper.lighter(120) : QColor(0xf7, 0xf7, 0xf5));
    palette.setColor(QPalette::Button, dress.dark ? dress.paper.lighter(170) : QColor(0xe8, 0xe8, 0xe5));
    for (const QPalette::ColorRole role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText})
        palette.setColor(role, dress.ink);
    palette.setColor(QPalette::ToolTipBase, raised);
    palette.setColor(QPalette::PlaceholderText, dress.soft_ink);
    palette.setColor(QPalette::Highlight, dress.band);
    palette.setColor(QPalette::HighlightedText, dress.dark ? Qt::black : Qt::white);
    palette.setColor(QPalette::Link, dress.band);
    for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, dress.dark ? QColor(0x80, 0x80, 0x80) : QColor(0x8c, 0x8c, 0x8c));
    return palette;
}

}  // namespace

Dress dress_of(const QPalette& palette) {
    return palette.color(QPalette::Base).lightness() < palette.color(QPalette::Text).lightness() ? night : light;
}

void apply_theme(QApplication& application, Theme theme) {
    application.setStyle(QStyleFactory::create("fusion"));
    const bool dark =
        theme == Theme::dark || (theme == Theme::system && dress_of(QApplication::style()->standardPalette()).dark);
    application.setPalette(palette_of(dark ? night : light));
}

void darken(QImage& picture, const QColor& paper) {
    constexpr int brightest = 240;
    const int paper_parts[3] = {paper.red(), paper.green(), paper.blue()};
    picture.convertTo(QImage::Format_RGB32);
    for (int y = 0; y < picture.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(picture.scanLine(y));
        for (int x = 0; x < picture.width(); ++x) {
            const int parts[3] = {qRed(line[x]), qGreen(line[x]), qBlue(line[x])};
            const auto [least, greatest] = std::minmax({parts[0], parts[1], parts[2]});
            // the same hue and colourfulness at one less the lightness
            const int shift = 255 - least - greatest;
            int turned[3];
            for (int i = 0; i < 3; ++i)
                turned[i] = paper_parts[i] + (parts[i] + shift) * (brightest - paper_parts[i]) / 255;
            line[x] = qRgb(turned[0], turned[1], turned[2]);
        }
    }
}

}  // namespace gui

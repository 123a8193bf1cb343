// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QImage>
#include <QPalette>

class QApplication;

namespace gui {

enum class Theme { system, light, dark };

/// Colours of the drawn string.  They stay apart for colour-blind eyes, and every part has a shape of its own besides.
struct Dress {
    QColor paper;
    QColor ink;
    QColor soft_ink;
    QColor board;
    QColor fret;
    QColor string;
    QColor finger;
    QColor bow;
    QColor band;
    QColor stretch;
    QColor good;  ///< strokes that speak and keep their tone
    QColor weak;  ///< strokes that speak only
    bool dark = false;
};

Dress dress_of(const QPalette& palette);

/// Gives the whole program that look.
void apply_theme(QApplication& application, Theme theme);

/// A picture on white paper as it looks on dark paper: light and dark change places, hues stay.
void darken(QImage& picture, const QColor& paper);

}  // namespace gui

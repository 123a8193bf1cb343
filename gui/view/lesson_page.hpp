// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/lesson_maker.hpp"
#include "gui/view/page.hpp"

class QCheckBox;
class QDoubleSpinBox;
class QLabel;
class QListWidget;
class QProgressBar;
class QPushButton;
class QSpinBox;

namespace gui {

/// A page to hand out: what goes into it is chosen here, the browser shows it.
class LessonPage : public Page {
    Q_OBJECT

public:
    explicit LessonPage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("&Lesson"); }
    QString purpose() const override;
    /// Starts making the page; a message in the window where it can't be.
    void make(const QString& file);
    bool busy() const { return maker_.busy(); }
    /// The page made last; empty before.
    const QString& file() const { return file_; }

private:
    QWidget* choices();
    QWidget* making();
    void wire();
    void take_string();
    void fill_stops();
    void tell_choice();
    LessonWish wish() const;
    void ask_file();
    void tell_made(const QString& file);
    void open_in_browser() const;

    Desk* desk_;
    LessonMaker maker_;
    QSpinBox* lowest_;
    QSpinBox* highest_;
    QListWidget* heard_;
    QDoubleSpinBox* seconds_;
    QCheckBox* opens_;
    QPushButton* make_;
    QPushButton* open_;
    QPushButton* stop_;
    QProgressBar* progress_;
    QLabel* state_;
    QString file_;
};

}  // namespace gui

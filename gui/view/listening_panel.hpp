// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/played_tone.hpp"
#include "gui/model/screen_text.hpp"
#include "gui/sound/listening.hpp"

#include <QWidget>

class QLabel;
class QLayout;
class QPushButton;

namespace gui {

class Desk;

/// What the microphone hears as it is played, held against the selected note; kept for a file only when asked to.
class ListeningPanel : public QWidget {
    Q_OBJECT

public:
    explicit ListeningPanel(Desk& desk, QWidget* parent = nullptr);

    /// Listens no more; what was kept and not saved is dropped.
    void end();
    void show_heard(const gui::HeardSound& sound);

signals:
    /// A file was written of what was played.
    void recorded(const QString& file);

private:
    QLayout* buttons();
    void wire();
    void show_wanted();
    void show_nothing(const QString& why);
    void show_verdict(const ToneVerdict& verdict);
    void tell_kept();
    void save_kept();

    Desk* desk_;
    ScreenText text_;
    QPushButton* listen_;
    QPushButton* record_;
    QLabel* pitch_;
    QLabel* off_;
    QLabel* brightness_;
    QLabel* motion_;
    QLabel* verdict_;
    QLabel* state_;
};

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/answers.hpp"
#include "gui/model/job.hpp"
#include "gui/model/screen_text.hpp"
#include "gui/sound/live_bow.hpp"
#include "gui/view/page.hpp"

class QDoubleSpinBox;
class QLabel;
class QLayout;
class QProgressBar;
class QPushButton;
class QSlider;

namespace gui {

class BowPad;

/// Bowing by hand, and takes to compare.
class HearPage : public Page {
    Q_OBJECT

public:
    explicit HearPage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("Hear &it"); }
    QString purpose() const override;
    std::vector<Export> exports() const override;
    BowPad& pad() { return *pad_; }

private:
    enum class Take { note_left_behind, note_follows, climb_left_behind, climb_follows };

    QLayout* bowing();
    QLayout* stroke_controls();
    QLayout* takes();
    void wire();
    void show_stroke();
    void show_hearing(const gui::LiveHearing& hearing);
    void show_silence();
    void play(Take take);
    void make_note_pair(Take then);
    void make_climb_pair(Take then);
    void sound(const analysis::Signal& take);
    void keep_volume(int percent);

    Desk* desk_;
    ScreenText text_;
    JobRunner runner_;
    std::shared_ptr<const TakePair> note_pair_;
    std::shared_ptr<const TakePair> climb_pair_;
    BowPad* pad_;
    QPushButton* bow_on_;
    QPushButton* follows_;
    QLabel* motion_;
    QLabel* heard_;
    QDoubleSpinBox* place_;
    QDoubleSpinBox* force_;
    QDoubleSpinBox* speed_;
    QSlider* volume_;
    QPushButton* stop_;
    QProgressBar* progress_;
    bool showing_ = false;
};

}  // namespace gui

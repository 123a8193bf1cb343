// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/instrument.hpp"
#include "gui/model/job.hpp"
#include "gui/model/set_up.hpp"

#include <QWizard>

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QLineEdit;
class QVBoxLayout;

namespace gui {

class TakePlayer;

/// From a shipped preset to one's own instrument: what to measure, one thing a page, then the strokes to like.
class SetUpWizard : public QWizard {
    Q_OBJECT

public:
    SetUpWizard(Instrument& instrument, int string_index, TakePlayer& player, QWidget* parent = nullptr);

    void accept() override;

private:
    QWizardPage* start_page();
    QWizardPage* string_page();
    QWizardPage* hand_page();
    QWizardPage* strokes_page();
    void take_preset();
    void fill_strings();
    void fill_values();
    void make_strokes();
    void show_strokes(const std::vector<StrokeToLike>& strokes);
    SetUp wanted() const;

    Instrument* instrument_;
    TakePlayer* player_;
    JobRunner runner_;
    std::shared_ptr<const sim::Preset> base_;
    QComboBox* preset_;
    QLineEdit* name_;
    QComboBox* string_;
    QDoubleSpinBox* length_;
    QDoubleSpinBox* pitch_;
    QDoubleSpinBox* finger_;
    QDoubleSpinBox* hair_;
    QVBoxLayout* strokes_ = nullptr;
    QLabel* waiting_ = nullptr;
    struct Liked {
        QCheckBox* box;
        double force;
    };
    std::vector<Liked> liked_;
};

}  // namespace gui

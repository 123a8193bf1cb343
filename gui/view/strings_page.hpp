// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/gauges_table.hpp"
#include "gui/view/study_page.hpp"

class QComboBox;
class QDoubleSpinBox;
class QLabel;

namespace gui {

class Desk;

/// Gauges for the string, or the whole set: bands first, pull and what may break; strips to print.
class StringsPage : public StudyPage {
    Q_OBJECT

public:
    explicit StringsPage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("&Strings"); }
    QString purpose() const override;
    std::vector<Export> exports() const override;

protected:
    Shown shown() const override;
    bool has_answer() const override;

private:
    StringsPage(Desk& desk, StringsStudy* study, QWidget* parent);
    void add_wishes();
    void add_cautions();
    void show_answer();
    void ask();

    Desk* desk_;
    StringsStudy* strings_;
    GaugesTable* gauges_;
    QComboBox* what_;
    QComboBox* aim_;
    QDoubleSpinBox* raise_;
    QLabel* cautions_;
};

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/notes_table.hpp"
#include "gui/view/study_page.hpp"

class QComboBox;
class QLineEdit;

namespace gui {

/// A tune on the instrument: where the fingers fall and how the bow moves, to see and to hear.
class PassagePage : public StudyPage {
    Q_OBJECT

public:
    explicit PassagePage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("The &passage"); }
    QString purpose() const override;
    std::vector<Export> exports() const override;

protected:
    Shown shown() const override;
    bool has_answer() const override;

private:
    QWidget* tune_row();
    QPushButton* hear_button(const QString& name, const QString& tip, bool follows);
    void ask_open();
    void take_line();
    void take_answer();
    void hear(bool follows);

    Desk* desk_;
    NotesTable* notes_;
    QComboBox* shipped_;
    QLineEdit* line_;
    std::vector<QPushButton*> hear_buttons_;
};

}  // namespace gui

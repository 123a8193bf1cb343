// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/view/study_page.hpp"

namespace gui {

/// One note: which places and forces make it speak and keep its tone.
class WindowPage : public StudyPage {
    Q_OBJECT

public:
    explicit WindowPage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("The &window of the note"); }
    QString purpose() const override;
    std::vector<Export> exports() const override;

protected:
    Shown shown() const override;
    bool has_answer() const override;

private:
    Desk* desk_;
};

}  // namespace gui

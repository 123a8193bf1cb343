// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/stops_table.hpp"
#include "gui/view/study_page.hpp"

namespace gui {

/// All stops of the string: how the bow must move as the finger climbs.
class ClimbPage : public StudyPage {
    Q_OBJECT

public:
    explicit ClimbPage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("The &climb"); }
    QString purpose() const override;
    std::vector<Export> exports() const override;

protected:
    Shown shown() const override;
    bool has_answer() const override;

private:
    Desk* desk_;
    StopsTable* stops_;
};

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/climb_page.hpp"

#include "gui/charts/answers.hpp"
#include "gui/view/desk.hpp"
#include "gui/view/strip_exports.hpp"

#include <QTableView>

namespace gui {

ClimbPage::ClimbPage(Desk& desk, QWidget* parent)
    : StudyPage(desk.climb, parent), desk_(&desk), stops_(new StopsTable(ScreenText(), this)) {
    QTableView* table = add_table(*stops_, tr("The climb, stop by stop"),
                                  tr("The same numbers, a line for each stop; choose a line to put the finger there."));
    connect(&desk.climb, &Study::found, this, [this] { stops_->set_answer(desk_->climb.answer()); });
    connect(table, &QTableView::activated, this, [this](const QModelIndex& index) {
        const auto& answer = desk_->climb.answer();
        desk_->selection.set_stop(answer->climb.stops[static_cast<std::size_t>(index.row())].note.stop);
    });
}

QString ClimbPage::purpose() const {
    return tr("Every stop of the string: where the bow does best, and what happens to a bow left behind.");
}

bool ClimbPage::has_answer() const { return desk_->climb.answer() != nullptr; }

StudyPage::Shown ClimbPage::shown() const {
    const ClimbAnswer& answer = *desk_->climb.answer();
    return {charts::climb_chart(answer.asked, answer.climb), QString::fromStdString(climb_in_words(answer.climb))};
}

std::vector<Export> ClimbPage::exports() const {
    if (!has_answer() || !chart().has_chart()) return {};
    std::vector<Export> all = climb_tables(desk_->climb.answer());
    all.insert(all.begin(), chart_export(tr("Chart of the climb"), "climb.png"));
    all.push_back(contact_ruler_file(*desk_->selection.preset(), desk_->climb.answer()));
    return all;
}

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/window_page.hpp"

#include "gui/charts/answers.hpp"
#include "gui/view/desk.hpp"

namespace gui {

WindowPage::WindowPage(Desk& desk, QWidget* parent) : StudyPage(desk.window, parent), desk_(&desk) {}

QString WindowPage::purpose() const {
    return tr("The note under the finger: at which contact points and forces it speaks, and where it keeps its tone.");
}

bool WindowPage::has_answer() const { return desk_->window.answer() != nullptr; }

StudyPage::Shown WindowPage::shown() const {
    const WindowAnswer& answer = *desk_->window.answer();
    return {charts::window_chart(answer.asked, answer.window),
            QString::fromStdString(window_in_words(answer.asked, answer.window.band))};
}

std::vector<Export> WindowPage::exports() const {
    if (!has_answer() || !chart().has_chart()) return {};
    std::vector<Export> all = window_tables(desk_->window.answer());
    all.insert(all.begin(), chart_export(tr("Chart of the window"), "window.png"));
    return all;
}

}  // namespace gui

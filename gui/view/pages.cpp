// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/climb_page.hpp"
#include "gui/view/hear_page.hpp"
#include "gui/view/instrument_page.hpp"
#include "gui/view/lesson_page.hpp"
#include "gui/view/passage_page.hpp"
#include "gui/view/window_page.hpp"

namespace gui {

std::vector<std::unique_ptr<Page>> make_pages(Desk& desk) {
    std::vector<std::unique_ptr<Page>> pages;
    pages.push_back(std::make_unique<HearPage>(desk));
    pages.push_back(std::make_unique<ClimbPage>(desk));
    pages.push_back(std::make_unique<WindowPage>(desk));
    pages.push_back(std::make_unique<LessonPage>(desk));
    pages.push_back(std::make_unique<InstrumentPage>(desk));
    pages.push_back(std::make_unique<PassagePage>(desk));
    return pages;
}

}  // namespace gui

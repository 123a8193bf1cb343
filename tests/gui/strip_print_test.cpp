// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/output_file.hpp"
#include "gui/charts/board_strips.hpp"
#include "gui/charts/session.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <QImage>
#include <QString>

#include <algorithm>
#include <cstdlib>

namespace {

using namespace gui::charts;

constexpr int dots_a_mm = 10;  // at 254 dpi

/// The pages of the strip as pictures at 254 dpi, made by pdftoppm.
std::vector<QImage> printed(const Strip& strip, Paper paper) {
    const tests::TemporaryFolder folder;
    analysis::OutputFile file(folder / "strip.pdf");
    fill_strip(file, strip, paper);
    file.commit();
    const std::string command =
        "pdftoppm -r 254 -gray '" + (folder / "strip.pdf").string() + "' '" + (folder / "page").string() + "'";
    if (std::system(command.c_str()) != 0) return {};
    std::vector<QImage> pages;
    for (const char* number : {"-1", "-2", "-3", "-4"}) {
        const QImage page(QString::fromStdString((folder / "page").string() + number + ".pgm"));
        if (!page.isNull()) pages.push_back(page);
    }
    return pages;
}

/// Length of the longest dark run of a row of dots.
int longest_run(const QImage& page, int y) {
    int longest = 0;
    int run = 0;
    for (int x = 0; x < page.width(); ++x) {
        run = qGray(page.pixel(x, y)) < 128 ? run + 1 : 0;
        longest = std::max(longest, run);
    }
    return longest;
}

/// The line to measure: the last level line of more than 50 mm on the page.
int measured_line(const QImage& page) {
    for (int y = page.height() - 1; y > 0; --y)
        if (longest_run(page, y) > 50 * dots_a_mm) return longest_run(page, y);
    return 0;
}

Strip strip_of(const char* name) {
    const sim::Preset preset = sim::find_preset(name);
    return fret_strip(preset, sim::fret_table(preset));
}

void expect_hundred(const std::vector<QImage>& pages, std::size_t count) {
    ASSERT_EQ(pages.size(), count) << "pdftoppm of poppler-utils must be installed";
    // its ends are drawn 0.3 mm wide about 0 and 100 mm
    for (const QImage& page : pages) EXPECT_NEAR(measured_line(page), 100 * dots_a_mm + 3, 2);
}

}  // namespace

/// expects  every sheet to have its line of 100 mm, within 0.2 mm; 653 mm of a violone's board on three sheets
TEST(StripPrintTest, EverySheetHasItsHundredMillimetres) {
    const ChartSession session;
    expect_hundred(printed(strip_of("violone_in_g"), Paper::a4), 3);
    expect_hundred(printed(strip_of("violone_in_g"), Paper::letter), 3);
    expect_hundred(printed(strip_of("descant_viol"), Paper::a4), 1);
}

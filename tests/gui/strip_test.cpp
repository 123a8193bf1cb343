// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/strip.hpp"

#include "analysis/errors.hpp"
#include "gui/charts/board_strips.hpp"
#include "gui/charts/session.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QPointF>
#include <QRegularExpression>
#include <QString>

#include <algorithm>
#include <cmath>

namespace {

using namespace gui::charts;

/// Numbers of an attribute's text.
std::vector<double> numbers_in(const QString& text) {
    std::vector<double> numbers;
    auto found = QRegularExpression(R"(-?\d+(\.\d+)?)").globalMatch(text);
    while (found.hasNext()) numbers.push_back(found.next().captured().toDouble());
    return numbers;
}

/// User units of a drawing in one mm, from its size and its box.
double units_a_mm(const QString& svg) {
    const QRegularExpression head(R"re(<svg width="([\d.]+)mm" height="([\d.]+)mm"\s+viewBox="([^"]+)")re");
    const auto found = head.match(svg);
    EXPECT_TRUE(found.hasMatch()) << svg.left(300).toStdString();
    const std::vector<double> box = numbers_in(found.captured(3));
    EXPECT_EQ(box.size(), 4U);
    const double across = box[2] / found.captured(1).toDouble();
    EXPECT_NEAR(across, box[3] / found.captured(2).toDouble(), 1e-3 * across);
    return across;
}

struct Line {
    double x1, y1, x2, y2;
};

/// Every straight line, through the transformation of the group that it stands in.
std::vector<Line> lines_of(const QString& svg) {
    std::vector<Line> lines;
    double scale = 1.0;
    QPointF shift;
    const QRegularExpression part(R"re(transform="matrix\(([^)]+)\)"|<polyline[^>]*points="([^"]+)")re");
    auto found = part.globalMatch(svg);
    while (found.hasNext()) {
        const auto one = found.next();
        if (!one.captured(1).isEmpty()) {
            const std::vector<double> m = numbers_in(one.captured(1));
            scale = m[0];
            shift = {m[4], m[5]};
            continue;
        }
        const std::vector<double> p = numbers_in(one.captured(2));
        if (p.size() == 4)
            lines.push_back({scale * p[0] + shift.x(), scale * p[1] + shift.y(), scale * p[2] + shift.x(),
                             scale * p[3] + shift.y()});
    }
    return lines;
}

Strip bass_strip() {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    return fret_strip(preset, sim::fret_table(preset));
}

}  // namespace

/// expects  a level line of 100 mm, and an upright one for every fret at its place from the zero edge
/// margin   0.05 mm
TEST(StripTest, SvgIsTrueToScale) {
    const ChartSession session;
    const Strip strip = bass_strip();
    const QString svg = QString::fromStdString(strip_svg(strip));
    const double unit = units_a_mm(svg);
    EXPECT_NEAR(unit, 10.0, 0.005);
    const std::vector<Line> lines = lines_of(svg);
    const bool hundred = std::ranges::any_of(lines, [&](const Line& line) {
        return line.y1 == line.y2 && std::abs(std::abs(line.x2 - line.x1) / unit - 100.0) < 0.05;
    });
    EXPECT_TRUE(hundred);
    const auto upright_at = [&](double x) {
        return std::ranges::any_of(lines, [&](const Line& line) {
            return line.x1 == line.x2 && std::abs(line.x1 - x) < 0.05 * unit &&
                   std::abs(line.y2 - line.y1) > 20.0 * unit;
        });
    };
    const double zero = (12.0 + 5.0) * unit;  // margin and room before the zero edge
    EXPECT_TRUE(upright_at(zero));
    ASSERT_EQ(strip.marks.size(), 7U + 14U + 1U);
    for (const StripMark& mark : strip.marks) EXPECT_TRUE(upright_at(zero + mark.at_mm * unit)) << mark.at_mm;
    EXPECT_FALSE(upright_at(zero + 30.0 * unit));
}

TEST(StripTest, HoldsEveryFretTheGuideAndTheBareBoard) {
    const Strip strip = bass_strip();
    EXPECT_NEAR(strip.marks[3].at_mm, 690.0 * (1.0 - std::exp2(-4.0 / 12.0)), 1e-9);
    EXPECT_EQ(strip.marks[3].label, "142.3 mm");
    EXPECT_EQ(strip.marks.back().kind, StripMark::Kind::landmark);
    EXPECT_NEAR(strip.marks.back().at_mm, 345.0, 1e-9);
    EXPECT_NEAR(strip.length_mm, 0.72 * 690.0 + 5.0, 1e-9);
}

TEST(StripTest, ContactRulerMarksTheBandOfEachStop) {
    const sim::Preset preset = sim::find_preset("treble_viol");
    const sim::ClimbPlan plan{
        .stops = {0.0, 12.0}, .grid = {.contact_points = 8, .player_forces = 3, .more_forces = 0}, .end = {}};
    const sim::Climb climb = find_climb(preset, preset.strings[0], preset.player, plan, {.threads = 1});
    const Strip ruler = contact_ruler(preset, climb);
    ASSERT_EQ(ruler.rows.size(), 2U);
    for (std::size_t i = 0; i < 2; ++i) {
        const sim::BandResult& band = climb.stops[i].band;
        const sim::Band& place = band.band ? *band.band : *band.stretch;
        EXPECT_NEAR(ruler.rows[i].from_mm, 1e3 * place.near, 1e-9);
        EXPECT_NEAR(ruler.rows[i].to_mm, 1e3 * place.far, 1e-9);
        EXPECT_NEAR(*ruler.rows[i].best_mm, 1e3 * *band.best, 1e-9);
        EXPECT_EQ(ruler.rows[i].weak, !band.band);
        EXPECT_GE(ruler.length_mm, ruler.rows[i].to_mm);
    }
    EXPECT_EQ(ruler.rows[1].name, "12 D6");
}

TEST(StripTest, IsSavedAsSvgOrPdfOnly) {
    const ChartSession session;
    const tests::TemporaryFolder folder;
    save_strip(bass_strip(), folder / "strip.svg");
    save_strip(bass_strip(), folder / "strip.PDF");
    EXPECT_THROW(save_strip(bass_strip(), folder / "strip.png"), analysis::InputError);
    EXPECT_EQ(folder.file_count(), 2U);
    EXPECT_EQ(paper_from_name("a5"), std::nullopt);
}

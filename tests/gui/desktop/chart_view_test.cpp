// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/chart_view.hpp"

#include "gui/view/dress.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QApplication>
#include <QElapsedTimer>

namespace {

/// source   derived: at one less the lightness the hue stays; on pure black paper white goes to black and black to the
///          brightest grey, 240
TEST(DarkenTest, LightAndDarkChangePlacesAndHuesStay) {
    QImage picture(3, 1, QImage::Format_RGB32);
    picture.setPixel(0, 0, qRgb(255, 255, 255));
    picture.setPixel(1, 0, qRgb(0, 0, 0));
    picture.setPixel(2, 0, qRgb(0, 90, 156));
    gui::darken(picture, QColor(0, 0, 0));
    EXPECT_EQ(picture.pixel(0, 0), qRgb(0, 0, 0));
    EXPECT_EQ(picture.pixel(1, 0), qRgb(240, 240, 240));
    EXPECT_NEAR(QColor(picture.pixel(2, 0)).hue(), QColor(0, 90, 156).hue(), 1);
    EXPECT_GT(QColor(picture.pixel(2, 0)).lightness(), QColor(0, 90, 156).lightness());
}

/// expects  a chart that nobody sees is not drawn; one that is seen is, in the dress of the window
TEST(ChartViewTest, DrawsOnlyWhatIsSeen) {
    gui::charts::WindowChart chart;
    chart.title = "a note";
    chart.cells = {{.contact_mm = 30.0, .force_newtons = 0.2}, {.contact_mm = 60.0, .force_newtons = 0.4}};
    gui::ChartView view;
    view.resize(600, 400);
    view.set_chart(chart, "words");
    EXPECT_EQ(view.accessibleDescription(), "words");
    QElapsedTimer waited;  // longer than the view waits for more to come
    waited.start();
    tests::wait_until([&] { return waited.elapsed() > 400; });
    EXPECT_FALSE(view.drawn());
    view.show();
    ASSERT_TRUE(tests::wait_until([&] { return view.drawn(); }));
    EXPECT_GT(QColor(view.grab().toImage().pixel(300, 395)).lightness(), 200);
    gui::apply_theme(*qobject_cast<QApplication*>(QCoreApplication::instance()), gui::Theme::dark);
    EXPECT_TRUE(tests::wait_until([&] { return QColor(view.grab().toImage().pixel(300, 395)).lightness() < 60; }));
    gui::apply_theme(*qobject_cast<QApplication*>(QCoreApplication::instance()), gui::Theme::light);
}

}  // namespace

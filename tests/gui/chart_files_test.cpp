// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"
#include "tests/analysis/temporary_folder.hpp"
#include "tests/gui/chart_samples.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QRegularExpression>
#include <QSvgRenderer>

#include <clocale>
#include <cstdlib>

namespace {

using namespace gui::charts;
using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;
using testing::ThrowsMessage;
using tests::TemporaryFolder;

class ChartFilesTest : public testing::Test {
    ChartSession session_;
};

/// Share of the pixels that are not paper.
double inked(const QImage& image) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (qGray(image.pixel(x, y)) < 200) ++count;
    return static_cast<double>(count) / (image.width() * image.height());
}

QImage image_of_svg(const QByteArray& text) {
    QSvgRenderer renderer(text);
    QImage image(1200, 800, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    renderer.render(&painter);
    return image;
}

TEST_F(ChartFilesTest, PngIs1200By800AndFilled) {
    const TemporaryFolder folder;
    for (const auto& sample : tests::all_samples()) {
        save_chart(sample.chart, folder / "chart.png");
        const QImage image(QString::fromStdString(folder / "chart.png"));
        EXPECT_EQ(image.size(), QSize(1200, 800));
        EXPECT_GT(inked(image), 0.004) << sample.name;
        // shaded maps may fill their plots, which are two fifths of the sheet
        EXPECT_LT(inked(image), std::holds_alternative<ToneMapChart>(sample.chart) ? 0.45 : 0.3) << sample.name;
    }
    EXPECT_EQ(folder.file_count(), 1U);
}

/// expects  the same picture from the SVG file as from the PNG
/// margin   a fiftieth of the ink: edges are smoothed by another painter
TEST_F(ChartFilesTest, SvgShowsTheSameAsPng) {
    const TemporaryFolder folder;
    for (const auto& sample : tests::all_samples()) {
        save_chart(sample.chart, folder / "chart.png");
        save_chart(sample.chart, folder / "chart.svg");
        const double expected = inked(QImage(QString::fromStdString(folder / "chart.png")));
        const QByteArray svg = QByteArray::fromStdString(tests::contents(folder / "chart.svg"));
        EXPECT_NEAR(inked(image_of_svg(svg)), expected, 0.02 * expected) << sample.name;
    }
}

/// Seen three times as wide and high as it is: all the ink is on the sheet, though the painter of SVG clips nothing.
TEST_F(ChartFilesTest, SvgDrawsNothingOutsideTheSheet) {
    for (const auto& sample : tests::all_samples()) {
        QByteArray svg = QByteArray::fromStdString(chart_svg(sample.chart));
        ASSERT_TRUE(svg.contains("viewBox=\"0 0 1200 800\""));
        svg.replace("viewBox=\"0 0 1200 800\"", "viewBox=\"-1200 -800 3600 2400\"");
        QImage image = image_of_svg(svg);
        EXPECT_GT(inked(image), 0.0005) << sample.name;
        QPainter(&image).fillRect(QRect(399, 266, 402, 269), Qt::white);
        EXPECT_EQ(inked(image), 0.0) << sample.name;
    }
}

/// One page three to two, text as text, and nothing painted as pixels.
TEST_F(ChartFilesTest, PdfIsOneVectorPageOfTheSameShape) {
    const TemporaryFolder folder;
    save_chart(tests::bass_window(), folder / "chart.pdf");
    const std::string bytes = tests::contents(folder / "chart.pdf");
    EXPECT_THAT(bytes, AllOf(StartsWith("%PDF-"), EndsWith("%%EOF\n"), HasSubstr("/FontFile2"),
                             Not(HasSubstr("/Subtype /Image"))));
    EXPECT_GT(bytes.size(), 20000U);
    const QRegularExpression box("/MediaBox \\[0 0 ([0-9.]+) ([0-9.]+)\\]");
    auto pages = box.globalMatch(QString::fromLatin1(QByteArray::fromStdString(bytes)));
    ASSERT_TRUE(pages.hasNext());
    const auto page = pages.next();
    EXPECT_NEAR(page.captured(1).toDouble() / page.captured(2).toDouble(), 1.5, 0.003);
    EXPECT_FALSE(pages.hasNext());
}

TEST_F(ChartFilesTest, EndingMayBeInCapitals) {
    const TemporaryFolder folder;
    save_chart(tests::sweep_sample(), folder / "CHART.PNG");
    EXPECT_FALSE(QImage(QString::fromStdString(folder / "CHART.PNG"), "PNG").isNull());
}

TEST_F(ChartFilesTest, OtherEndingsAreRefusedAndNothingIsWritten) {
    const TemporaryFolder folder;
    for (const char* name : {"chart.jpg", "chart", ".png", "chart.png.txt"}) {
        EXPECT_THAT([&] { save_chart(tests::bass_window(), folder / name); },
                    ThrowsMessage<analysis::InputError>(
                        AllOf(HasSubstr(name), HasSubstr(".png, .svg or .pdf"), Not(HasSubstr("\n")))));
        EXPECT_THROW(require_chart_ending(folder / name), analysis::InputError);
    }
    EXPECT_NO_THROW(require_chart_ending("out/chart.svg"));
    EXPECT_EQ(folder.file_count(), 0U);
}

TEST_F(ChartFilesTest, MissingFolderIsTold) {
    const TemporaryFolder folder;
    EXPECT_THROW(save_chart(tests::bass_window(), folder / "none/chart.png"), analysis::OutputError);
    EXPECT_EQ(folder.file_count(), 0U);
}

TEST_F(ChartFilesTest, SvgForAPageIsOneElementAndTheSameEachTime) {
    const std::string svg = chart_svg(tests::bass_window());
    EXPECT_THAT(svg, AllOf(StartsWith("<svg"), EndsWith("</svg>\n"), HasSubstr("speaks and keeps its tone"),
                           HasSubstr("DejaVu Sans, Verdana, sans-serif")));
    EXPECT_EQ(chart_svg(tests::bass_window()), svg);
    EXPECT_GT(inked(image_of_svg(QByteArray::fromStdString(svg))), 0.02);
}

TEST(ChartSessionTest, LeavesLocaleAndEnvironmentAsTheyWere) {
    ::setenv("LC_ALL", "C.UTF-8", 1);
    ::unsetenv("XDG_RUNTIME_DIR");
    ASSERT_NE(std::setlocale(LC_NUMERIC, "C"), nullptr);
    {
        const ChartSession session;
        EXPECT_STREQ(std::setlocale(LC_NUMERIC, nullptr), "C");
        EXPECT_NE(std::getenv("XDG_RUNTIME_DIR"), nullptr);
        EXPECT_EQ(QApplication::platformName(), "offscreen");
    }
    EXPECT_EQ(std::getenv("XDG_RUNTIME_DIR"), nullptr);
    EXPECT_EQ(QCoreApplication::instance(), nullptr);
}

/// A machine that Qt has much to say about: no runtime folder, or one open to all, and a style that isn't there.
TEST(ChartSessionTest, SaysNothingOnStandardError) {
    const TemporaryFolder folder;
    ::setenv("LC_ALL", "C", 1);
    ::setenv("QT_STYLE_OVERRIDE", "none of the kind", 1);
    testing::internal::CaptureStderr();
    for (const bool with_runtime_folder : {false, true}) {
        ::chmod(folder.path().c_str(), 0777);
        ::unsetenv("XDG_RUNTIME_DIR");
        if (with_runtime_folder) ::setenv("XDG_RUNTIME_DIR", folder.path().c_str(), 1);
        const ChartSession session;
        save_chart(tests::bass_window(), folder / "chart.png");
        save_chart(tests::bass_window(), folder / "chart.pdf");
        qWarning("a warning of Qt's");
    }
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
    ::unsetenv("QT_STYLE_OVERRIDE");
    ::unsetenv("XDG_RUNTIME_DIR");
}

TEST(ChartSessionTest, UsesAnApplicationThatIsThere) {
    const ChartSession outer;
    const auto* application = QCoreApplication::instance();
    { const ChartSession inner; }
    EXPECT_EQ(QCoreApplication::instance(), application);
    EXPECT_NE(application, nullptr);
}

}  // namespace

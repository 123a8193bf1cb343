// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"
#include "tests/external/browser.hpp"
#include "tests/external/judges.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <pugixml.hpp>

#include <memory>

/// The lesson's page in a real browser: read, heard and printed.
namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Browser;
using tests::Paper;
using tests::Screen;

constexpr Screen desktop{};
constexpr Screen phone{.width = 390, .height = 844, .phone = true};
constexpr double points_an_inch = 72.0;
constexpr double margin_points = 42.5;  // 15 mm, as the page asks

class LessonBrowserTest : public testing::Test {
protected:
    static void SetUpTestSuite() {
        bowband_ = std::make_unique<tests::Bowband>();
        const tests::Outcome made = bowband_->run_line(
            "lesson division_bass_viol --stop 0:19 --contact-points 12 --forces 4 --hear-stops 0,12,19 --seconds 0.4 "
            "--page lesson.html --quiet");
        ASSERT_EQ(made.exit_code, 0) << made.err;
        browser_ = std::make_unique<Browser>();
    }
    static void TearDownTestSuite() {
        browser_.reset();
        bowband_.reset();
    }
    static std::filesystem::path page() { return bowband_->file("lesson.html"); }
    static Browser& browser() { return *browser_; }

private:
    static std::unique_ptr<tests::Bowband> bowband_;
    static std::unique_ptr<Browser> browser_;
};
std::unique_ptr<tests::Bowband> LessonBrowserTest::bowband_;
std::unique_ptr<Browser> LessonBrowserTest::browser_;

/// expects  the file itself and what it carries to be all the browser ever asks for, and no complaint
TEST_F(LessonBrowserTest, AsksForNothingOutsideThePage) {
    browser().open(page(), desktop);
    browser().value_of("Promise.all([...document.querySelectorAll('audio')].map(a => a.play().then(() => a.pause())))");
    const std::vector<std::string> requests = browser().requests();
    ASSERT_FALSE(requests.empty());
    for (const std::string& request : requests)
        EXPECT_TRUE(request.starts_with("data:") || request.starts_with("file://" + page().string().substr(0, 20)))
            << request;
    EXPECT_EQ(std::ranges::count_if(requests, [](const auto& request) { return request.starts_with("file:"); }), 1);
    EXPECT_THAT(browser().complaints(), testing::IsEmpty());
}

/// expects  each sound to be decoded to the length it says, with something to hear, and to run on when played
TEST_F(LessonBrowserTest, EverySoundPlays) {
    browser().open(page(), desktop);
    const json sounds = browser().value_of(R"JS((async () => {
        const found = [];
        for (const audio of document.querySelectorAll('audio')) {
            const bytes = Uint8Array.from(atob(audio.src.split(',')[1]), c => c.charCodeAt(0)).buffer;
            const sound = await new OfflineAudioContext(1, 48000, 48000).decodeAudioData(bytes);
            const peak = sound.getChannelData(0).reduce((most, x) => Math.max(most, Math.abs(x)), 0);
            await audio.play();
            await new Promise(done => {
                const look = () => audio.currentTime > 0.05 || audio.ended ? done() : setTimeout(look, 20);
                look();
            });
            audio.pause();
            found.push({rate: sound.sampleRate, decoded: sound.duration, says: audio.duration, peak,
                        reached: audio.currentTime, error: audio.error ? audio.error.message : ''});
        }
        return found;
    })())JS");
    ASSERT_GE(sounds.size(), 6U);
    double loudest = 0.0;
    for (const json& sound : sounds) {
        EXPECT_EQ(sound["error"], "");
        EXPECT_EQ(sound["rate"], 48000);
        EXPECT_NEAR(sound["decoded"].get<double>(), sound["says"].get<double>(), 0.02);
        EXPECT_GT(sound["peak"].get<double>(), 1e-4);
        EXPECT_GT(sound["reached"].get<double>(), 0.0);
        loudest = std::max(loudest, sound["peak"].get<double>());
    }
    EXPECT_NEAR(loudest, 0.501, 0.01);  // the joint peak lies at -6 dB
}

/// What sticks out of the page or lies on something else, as text for people; empty where all is well.
constexpr const char* layout_faults = R"JS((() => {
    const faults = [];
    const page = document.documentElement;
    if (page.scrollWidth > innerWidth) faults.push('the page is ' + page.scrollWidth + ' px wide');
    const boxes = list => [...list].map(e => ({ text: e.textContent, box: e.getBoundingClientRect() }))
        .filter(one => one.box.width > 0);
    for (const drawing of document.querySelectorAll('svg.string-drawing')) {
        const frame = drawing.getBoundingClientRect();
        if (frame.width === 0) continue;
        const words = boxes(drawing.querySelectorAll('text'));
        for (const [i, one] of words.entries()) {
            const b = one.box;
            if (b.left < frame.left - 0.5 || b.right > frame.right + 0.5) faults.push('cut off: ' + one.text);
            for (const other of words.slice(i + 1)) {
                const o = other.box;
                if (b.left < o.right && o.left < b.right && b.top + 2 < o.bottom && o.top + 2 < b.bottom)
                    faults.push(one.text + ' on ' + other.text);
            }
        }
        const size = parseFloat(getComputedStyle(drawing.querySelector('text')).fontSize) *
            frame.width / drawing.viewBox.baseVal.width;
        if (size < 11) faults.push('letters of ' + size + ' px');
    }
    for (const one of boxes(document.querySelectorAll('h1, h2, h3, p, li, dd, audio, figcaption')))
        if (one.box.right > innerWidth + 0.5 || one.box.left < 0) faults.push('sticks out: ' + one.text.slice(0, 40));
    if (document.querySelectorAll('svg.string-drawing').length < 4) faults.push('a drawing is missing');
    return faults;
})())JS";

class LessonLayoutTest : public LessonBrowserTest, public testing::WithParamInterface<Screen> {};

TEST_P(LessonLayoutTest, NothingSticksOutAndNoWordsOverlap) {
    browser().open(page(), GetParam());
    EXPECT_EQ(browser().value_of("innerWidth"), GetParam().width);
    EXPECT_EQ(browser().value_of(layout_faults), json::array());
}

INSTANTIATE_TEST_SUITE_P(Screens, LessonLayoutTest,
                         testing::Values(desktop, phone, Screen{.width = 320, .height = 568, .phone = true},
                                         Screen{.width = 768, .height = 1024}),
                         [](const auto& screen) { return std::to_string(screen.param.width); });

/// expects  body text to stand out from its paper by 7 to 1 (WCAG 2.1, AAA), light and dark
TEST_F(LessonBrowserTest, TextIsLegibleLightAndDark) {
    for (const bool dark : {false, true}) {
        browser().open(page(), {.dark = dark});
        const json contrast = browser().value_of(R"JS((() => {
            const light = colour => {
                const [r, g, b] = colour.match(/\d+/g).map(x => x / 255)
                    .map(x => x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4);
                return 0.2126 * r + 0.7152 * g + 0.0722 * b;
            };
            const style = getComputedStyle(document.documentElement);
            const a = light(style.color) + 0.05, b = light(style.backgroundColor) + 0.05;
            return { ratio: Math.max(a, b) / Math.min(a, b), dark: b < a };
        })())JS");
        EXPECT_GE(contrast["ratio"].get<double>(), 7.0);
        EXPECT_EQ(contrast["dark"], dark);
    }
}

struct NamedPaper {
    const char* name;
    Paper paper;
};
class LessonPrintTest : public LessonBrowserTest, public testing::WithParamInterface<NamedPaper> {};

/// expects  paper of the size asked for, every word inside the margins, every heading there, no sound controls; also
///          when the screen is dark
TEST_P(LessonPrintTest, FitsThePaper) {
    browser().open(page(), {.dark = true});
    const tests::TemporaryFolder folder;
    tests::put(folder / "lesson.pdf", browser().pdf(GetParam().paper));
    const std::string boxes =
        tests::output_of("pdftotext -bbox '" + (folder / "lesson.pdf").string() + "' - 2>/dev/null");
    pugi::xml_document document;
    ASSERT_TRUE(document.load_string(boxes.c_str(), pugi::parse_default | pugi::parse_doctype));
    std::string words;
    const auto pages = document.select_nodes("//page");
    ASSERT_GE(pages.size(), 3U);
    EXPECT_LE(pages.size(), 14U);
    for (const auto& one : pages) {
        const double width = one.node().attribute("width").as_double();
        const double height = one.node().attribute("height").as_double();
        EXPECT_NEAR(width, GetParam().paper.width * points_an_inch, 1.0);
        EXPECT_NEAR(height, GetParam().paper.height * points_an_inch, 1.0);
        for (const pugi::xml_node word : one.node().children("word")) {
            words += std::string(word.text().get()) + " ";
            EXPECT_GE(word.attribute("xMin").as_double(), margin_points - 1.0) << word.text().get();
            EXPECT_LE(word.attribute("xMax").as_double(), width - margin_points + 1.0) << word.text().get();
            EXPECT_GE(word.attribute("yMin").as_double(), margin_points - 4.0) << word.text().get();
            EXPECT_LE(word.attribute("yMax").as_double(), height - margin_points + 4.0) << word.text().get();
        }
    }
    for (const char* heading : {"The rule", "The string and the bow", "Hear it", "Your numbers", "How to practise",
                                "Take care", "Charts", "How this was made"})
        EXPECT_THAT(words, HasSubstr(heading));
    EXPECT_THAT(words, HasSubstr("on paper only the measures remain"));
}

INSTANTIATE_TEST_SUITE_P(Papers, LessonPrintTest,
                         testing::Values(NamedPaper{"A4", {8.27, 11.69}}, NamedPaper{"Letter", {8.5, 11.0}}),
                         [](const auto& paper) { return std::string(paper.param.name); });

}  // namespace

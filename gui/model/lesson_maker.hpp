// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/answers.hpp"
#include "gui/model/job.hpp"
#include "sim/report/lesson_page.hpp"

#include <filesystem>
#include <functional>

namespace gui {

/// What goes into a lesson's page.
struct LessonWish {
    NoteQuestion question;                      ///< instrument and string; its stop is not looked at
    int lowest = 0;                             ///< semitones
    int highest = 0;                            ///< semitones, >= lowest, on the board
    std::vector<double> heard;                  ///< semitones, rising; none: the usual ones
    double seconds = 0.8;                       ///< of each sound
    sim::MapGrid grid = sim::ClimbPlan{}.grid;  ///< how finely
};

/// A lesson with what its texts speak of; the same that the command gives, and its page can be asked again by it.
struct LessonAnswer {
    sim::report::AskedLesson asked;
    sim::Lesson lesson;
};
LessonAnswer lesson_answer(const LessonWish& wish, const sim::Workers& workers);

/// A stop that a lesson may hold, as a list shows it.
struct LessonStop {
    int stop = 0;        ///< semitones
    QString label;       ///< "12 · D5"
    bool usual = false;  ///< among those heard unless chosen otherwise

    bool operator==(const LessonStop&) const = default;
};
std::vector<LessonStop> lesson_stops(const Selection& selection, int lowest, int highest);
/// So many sounds keep a page small enough to send.
inline constexpr int most_heard_stops = 12;

/// Makes the page away from the UI thread: the simulation, then the charts (in the maker's own thread, by who can
/// draw), then the file.
class LessonMaker : public QObject {
    Q_OBJECT

public:
    using Draw = std::function<std::vector<sim::report::PageChart>(const LessonAnswer&)>;

    LessonMaker(Draw draw, int threads, QObject* parent = nullptr);

    /// The file appears whole or not at all.
    void make(const LessonWish& wish, const std::filesystem::path& place);
    void stop() { runner_.stop(); }
    bool busy() const { return runner_.busy(); }

signals:
    void made(const QString& file);
    void progress(double share);
    void busy_changed(bool busy);
    void failed(const QString& message);

private:
    void write(const std::shared_ptr<const LessonAnswer>& answer, const std::filesystem::path& place);

    Draw draw_;
    JobRunner runner_;
};

}  // namespace gui

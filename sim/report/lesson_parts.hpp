// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/cautions.hpp"
#include "sim/report/lesson_page.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Only for the sources of this folder: the parts that a lesson's page is put together from.
namespace sim::report {

/// The page's style sheet: light and dark on screen, always light on paper; no < and no & in it.
std::string_view lesson_style();

/// The string to scale, whole and close to the bridge, each for wide and for narrow screens.
std::string drawing_part(const AskedLesson& asked, const Lesson& lesson);

/// A sound, its heading and what it is called for who can't see the heading.
struct NamedSound {
    std::string name;
    std::string label;
    const analysis::Signal* sound;  ///< no samples: no bow can stand there
};
/// Two sounds side by side, below one another where the screen is narrow.
std::string sound_pair(const NamedSound& left_behind, const NamedSound& follows);

/// The sounds with what to listen for.
std::string hearing_part(const AskedLesson& asked, const Lesson& lesson);

/// A tune: its sounds, the way of the bow, hand places, note by note.
std::string tune_part(const AskedLesson& asked, const LessonTune& tune);

/// The player's own numbers.
std::string numbers_part(const AskedLesson& asked, const Lesson& lesson);

/// How it was made and how to make it again.
std::string making_part(const AskedLesson& asked, const Lesson& lesson);

/// Everything to mind, of this instrument and of any.
std::vector<Caution> lesson_cautions(const AskedLesson& asked);

/// <section id="…"><h2>…</h2>…</section>
std::string section(std::string_view id, std::string_view heading, const std::string& inside);

/// "D5", the note of a stop.
std::string note_name(const ClimbStop& stop, const AskedLesson& asked);

}  // namespace sim::report

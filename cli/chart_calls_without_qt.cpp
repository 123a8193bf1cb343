// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"

namespace cli {

void require_chart_place(const std::string& option, const std::filesystem::path&) {
    throw analysis::InputError(option,
                               "charts need a build with Qt (-DBOWBAND_WITH_QT=ON); leave " + option + " out here");
}

void require_strip_place(const std::filesystem::path& place) {
    throw analysis::InputError(place.string(), "strips need a build with Qt (-DBOWBAND_WITH_QT=ON); leave it out here");
}

void require_paper(const std::string&) {}

// Never reached: require_chart_place is asked first.
void draw_window_chart(const analysis::OutputFile&, const sim::report::Asked&, const sim::Window&) {}
void draw_tone_map_chart(const analysis::OutputFile&, const sim::report::Asked&, const sim::Window&) {}
void draw_climb_chart(const analysis::OutputFile&, const sim::report::AskedClimb&, const sim::Climb&) {}
void draw_laws_chart(const analysis::OutputFile&, const sim::report::AskedLaws&, const std::vector<sim::LawWindow>&) {}
void draw_skew_chart(const analysis::OutputFile&, const sim::report::AskedSkew&, const std::vector<sim::SkewResult>&) {}
void draw_sensitivity_chart(const analysis::OutputFile&, const sim::report::AskedSensitivity&,
                            const sim::Sensitivity&) {}
void draw_ends_chart(const analysis::OutputFile&, const sim::report::Asked&, const sim::Ends&) {}
void draw_start_chart(const analysis::OutputFile&, const sim::report::Asked&, const sim::StartAnswer&) {}
void draw_bridge_chart(const analysis::OutputFile&, const sim::report::AskedBridge&, const sim::MeasuredBridge&,
                       const sim::BridgeFit&) {}
void draw_climb_tone_chart(const analysis::OutputFile&, const sim::report::AskedClimb&, const sim::Climb&) {}
void draw_recording_chart(const analysis::OutputFile&, const sim::report::AskedRecording&, const analysis::Recording&) {
}
void draw_passage_chart(const analysis::OutputFile&, const sim::report::AskedPassage&, const sim::passage::Fingering&,
                        const sim::report::BowedPassage&) {}
void draw_match_chart(const analysis::OutputFile&, const sim::report::AskedMatch&, const sim::match::Match&,
                      std::size_t) {}
void draw_speeds_chart(const analysis::OutputFile&, const sim::report::AskedSpeeds&, const sim::SpeedStudy&) {}
void draw_gauges_chart(const analysis::OutputFile&, const sim::report::AskedGauges&, const sim::GaugeStudy&) {}
void draw_fret_strip(const analysis::OutputFile&, const sim::report::AskedFrets&, const sim::FretTable&,
                     const std::string&) {}
void draw_contact_ruler(const analysis::OutputFile&, const sim::report::AskedFrets&, const sim::Climb&,
                        const std::string&) {}

std::vector<sim::report::PageChart> lesson_charts(const sim::report::AskedLesson&, const sim::Lesson&,
                                                  const sim::LessonTune*) {
    return {};
}

}  // namespace cli

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/output_file.hpp"
#include "sim/report/analyse_report.hpp"
#include "sim/report/bridge_report.hpp"
#include "sim/report/climb_report.hpp"
#include "sim/report/ends_report.hpp"
#include "sim/report/frets_report.hpp"
#include "sim/report/gauges_report.hpp"
#include "sim/report/law_report.hpp"
#include "sim/report/lesson_page.hpp"
#include "sim/report/match_report.hpp"
#include "sim/report/passage_report.hpp"
#include "sim/report/sensitivity_report.hpp"
#include "sim/report/skew_report.hpp"
#include "sim/report/speeds_report.hpp"
#include "sim/report/start_report.hpp"
#include "sim/report/window_report.hpp"

#include <filesystem>

/// The only calls that need Qt.
namespace cli {

/// InputError for a name that is no chart's (.png, .svg, .pdf), and in a build without Qt.
void require_chart_place(const std::string& option, const std::filesystem::path& place);

void draw_window_chart(const analysis::OutputFile& file, const sim::report::Asked& asked, const sim::Window& window);
void draw_tone_map_chart(const analysis::OutputFile& file, const sim::report::Asked& asked, const sim::Window& window);
void draw_climb_chart(const analysis::OutputFile& file, const sim::report::AskedClimb& asked, const sim::Climb& climb);
void draw_laws_chart(const analysis::OutputFile& file, const sim::report::AskedLaws& asked,
                     const std::vector<sim::LawWindow>& windows);
void draw_skew_chart(const analysis::OutputFile& file, const sim::report::AskedSkew& asked,
                     const std::vector<sim::SkewResult>& results);
void draw_sensitivity_chart(const analysis::OutputFile& file, const sim::report::AskedSensitivity& asked,
                            const sim::Sensitivity& sensitivity);
void draw_ends_chart(const analysis::OutputFile& file, const sim::report::Asked& asked, const sim::Ends& ends);
void draw_start_chart(const analysis::OutputFile& file, const sim::report::Asked& asked,
                      const sim::StartAnswer& answer);
void draw_bridge_chart(const analysis::OutputFile& file, const sim::report::AskedBridge& asked,
                       const sim::MeasuredBridge& measured, const sim::BridgeFit& fit);
void draw_climb_tone_chart(const analysis::OutputFile& file, const sim::report::AskedClimb& asked,
                           const sim::Climb& climb);
void draw_recording_chart(const analysis::OutputFile& file, const sim::report::AskedRecording& asked,
                          const analysis::Recording& recording);
void draw_passage_chart(const analysis::OutputFile& file, const sim::report::AskedPassage& asked,
                        const sim::passage::Fingering& fingering, const sim::report::BowedPassage& bowed);
/// One note of it.
void draw_match_chart(const analysis::OutputFile& file, const sim::report::AskedMatch& asked,
                      const sim::match::Match& match, std::size_t note);
void draw_speeds_chart(const analysis::OutputFile& file, const sim::report::AskedSpeeds& asked,
                       const sim::SpeedStudy& study);
void draw_gauges_chart(const analysis::OutputFile& file, const sim::report::AskedGauges& asked,
                       const sim::GaugeStudy& study);

/// InputError for a name that is no paper's, for one that is no strip's (.svg, .pdf), and in a build without Qt.
void require_paper(const std::string& name);
void require_strip_place(const std::filesystem::path& place);
void draw_fret_strip(const analysis::OutputFile& file, const sim::report::AskedFrets& asked,
                     const sim::FretTable& table, const std::string& paper);
void draw_contact_ruler(const analysis::OutputFile& file, const sim::report::AskedFrets& asked, const sim::Climb& climb,
                        const std::string& paper);
/// The charts of a lesson's page; none in a build without Qt, and the page says so.
std::vector<sim::report::PageChart> lesson_charts(const sim::report::AskedLesson& asked, const sim::Lesson& lesson,
                                                  const sim::LessonTune* tune);

}  // namespace cli

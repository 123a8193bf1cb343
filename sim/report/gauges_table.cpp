// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/cautions_part.hpp"
#include "sim/report/gauges_report.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <cmath>

namespace sim::report {
namespace {

std::string row_name(const GaugeStudy& study, const GaugeRow& row) {
    const std::string gauge = (row.present ? "* " : "  ") + gauge_words(row.string.gauge);
    return study.whole_set ? row.string.name + " " + row.string.pitch + " " + gauge : gauge;
}

std::string stop_words(const ClimbStop& stop, double reference_pitch) {
    return short_number(stop.note.stop) + " " + pitch_name(fundamental(stop.note.string), reference_pitch);
}

/// The name of the stop over the first of its columns; a set's strings sound different notes.
std::string stop_title(const GaugeStudy& study, std::size_t index, double reference_pitch) {
    const ClimbStop& stop = study.rows.front().stops[index];
    return study.whole_set ? "stop " + short_number(stop.note.stop) : stop_words(stop, reference_pitch);
}

std::string bands_table(const AskedGauges& asked, const GaugeStudy& study) {
    std::vector<Table::Column> columns{{"string", "", true}};
    for (std::size_t i = 0; i < study.stops.size(); ++i) {
        columns.push_back({stop_title(study, i, asked.preset.reference_pitch), "band mm"});
        for (const char* unit : {"best mm", "secure %", "forgives dB"}) columns.push_back({"", unit});
    }
    Table table(columns);
    for (const GaugeRow& row : study.rows) {
        std::vector<std::string> cells{row_name(study, row)};
        for (const ClimbStop& stop : row.stops) {
            cells.push_back(band_or_stretch(stop.band));
            cells.push_back(mm_cell(stop.band.best, 0));
            cells.push_back(percent_cell(stop.band.at_best.security));
            cells.push_back(fixed_cell(stop.speaking ? forgiveness(*stop.speaking) : std::nullopt, 1));
        }
        table.add_row(cells);
    }
    return table.text();
}

std::string least_force_cell(const ClimbStop& stop) {
    const bool speaks = stop.speaking && stop.speaking->main;
    return newtons_cell(speaks ? std::optional(stop.speaking->intervals[*stop.speaking->main].low) : std::nullopt);
}

std::string tone_table(const AskedGauges& asked, const GaugeStudy& study) {
    std::vector<Table::Column> columns{{"string", "", true}};
    for (std::size_t i = 0; i < study.stops.size(); ++i) {
        columns.push_back({stop_title(study, i, asked.preset.reference_pitch), "bright f0"});
        columns.push_back({"", "least force N"});
    }
    Table table(columns);
    for (const GaugeRow& row : study.rows) {
        std::vector<std::string> cells{row_name(study, row)};
        for (const ClimbStop& stop : row.stops) {
            const bool played = stop.follows && stop.follows->stroke;
            cells.push_back(fixed_cell(played ? brightness_f0(*stop.follows->stroke) : std::nullopt, 1));
            cells.push_back(least_force_cell(stop));
        }
        table.add_row(cells);
    }
    return table.text();
}

std::string signed_percent(double percent) {
    const std::string text = fixed_number(percent, 1);
    return text.front() == '-' || text == "0.0" ? text : "+" + text;
}

std::string strings_table(const AskedGauges& asked, const GaugeStudy& study) {
    Table table({{"string", "", true},
                 {"pull", "N"},
                 {"set pulls", "N"},
                 {"to set-up", "%"},
                 {"impedance", "kg/s"},
                 {"B", "1e-5"},
                 {"Q", ""},
                 {"f L", "Hz m"},
                 {"to 240", "semitones"},
                 {"mind", "", true}});
    for (const GaugeRow& row : study.rows) {
        const double loss = loss_factor(row.open, 1.0);
        const double pitch = asked.preset.reference_pitch;
        table.add_row({row_name(study, row), fixed_number(row.open.tension, 1), fixed_number(row.set_pull, 0),
                       signed_percent(100.0 * (row.set_pull / study.set_up_pull - 1.0)),
                       fixed_number(wave_impedance(row.open), 3), fixed_number(1e5 * inharmonicity(row.open), 1),
                       fixed_cell(loss > 0.0 ? std::optional(1.0 / loss) : std::nullopt, 0),
                       row.to_likely_break ? fixed_number(breaking_product(row.string, pitch), 0) : "-",
                       fixed_cell(row.to_likely_break, 1), row_cautions(study, row, pitch)});
    }
    return table.text();
}

std::string legend(const GaugeStudy& study) {
    std::string text = "* as the instrument is strung";
    if (!study.whole_set)
        text += "; ranked by " + std::string(gauge_aim_words(study.aim)) + " at stop " + short_number(study.aim_stop);
    return text +
           "\nband: contact points, mm from the bridge; in brackets the most secure stretch where no band is secure "
           "enough\nQ: how long the first partial rings; B: how far stiffness spreads the partials; f L: pitch times "
           "length, known for plain gut only\n";
}

std::string best_words(const GaugeStudy& study) {
    const GaugeRow& best = study.rows.front();
    const ClimbStop& stop = aim_stop_of(study, best);
    if (!stop.band.best)
        return "At stop " + short_number(study.aim_stop) + " no stroke of this range speaks on any of these strings.";
    std::string words = "Best by this measure: " + gauge_words(best.string.gauge) +
                        (best.present ? ", as the instrument is strung" : "") + "; at stop " +
                        short_number(study.aim_stop) + " the bow does best " + mm_cell(stop.band.best, 0) +
                        " mm from the bridge, where " + percent_cell(stop.band.at_best.security) +
                        " % of its strokes speak and keep their tone.";
    if (!stop.band.band) words += " That is not secure enough to be called a band.";
    return words + " Neighbours in this list may differ by chance only.";
}

}  // namespace

std::string band_or_stretch(const BandResult& band) {
    const auto words = [](const Band& of) { return mm_cell(of.near, 0) + " to " + mm_cell(of.far, 0); };
    if (band.band) return words(*band.band);
    return band.stretch ? "(" + words(*band.stretch) + ")" : "none";
}

std::string row_cautions(const GaugeStudy& study, const GaugeRow& row, double reference_pitch) {
    std::string words(breaking_risk_words(breaking_risk(row.string, reference_pitch)));
    if (study.whole_set) return words;
    const double percent = 100.0 * (row.set_pull / study.set_up_pull - 1.0);
    for (const Caution& caution : row.cautions)
        if (caution.key == "pull_above_set_up")
            words += (words.empty() ? "" : "; ") + std::string("pull ") + signed_percent(percent) + " %";
    return words;
}

std::string gauges_heading(const AskedGauges& asked, const GaugeStudy& study) {
    const PresetString& string = study.rows.front().string;
    return asked.preset.name +
           (study.whole_set ? std::string(", all strings") : ", string " + string.name + " (" + string.pitch + ")");
}

std::string gauges_table(const AskedGauges& asked, const GaugeStudy& study) {
    std::string text = gauges_heading(asked, study) + ", A " + short_number(asked.preset.reference_pitch) + " Hz; " +
                       player_line(study.player) + "\n\n" + bands_table(asked, study) + "\n" +
                       tone_table(asked, study) + "\n" + strings_table(asked, study) + "\n" + legend(study);
    return text;
}

std::string gauges_answer_words(const GaugeStudy& study) {
    if (!study.whole_set) return best_words(study);
    return "All strings together pull " + fixed_number(study.pull, 0) + " N; the instrument is set up for " +
           fixed_number(study.set_up_pull, 0) + " N.";
}

std::string gauges_in_words(const GaugeStudy& study) {
    const std::string cautions = cautions_words(study.cautions);
    return gauges_answer_words(study) + (cautions.empty() ? "" : "\n" + cautions);
}

}  // namespace sim::report

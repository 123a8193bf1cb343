// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/frets_report.hpp"

#include "analysis/units.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sim::report {
namespace {

bool is_meantone(Temperament temperament) {
    return temperament != Temperament::equal && temperament != Temperament::rule_of_18;
}

Json kind_of(const Fret& fret, const Preset& preset) {
    constexpr std::array<int, 5> with_choice{1, 3, 6, 8, 10};
    const bool choice = std::ranges::find(with_choice, fret.number % 12) != with_choice.end();
    if (!is_meantone(preset.temperament) || !choice) return nullptr;
    return fret.chromatic ? "chromatic" : "diatonic";
}

Json place_part(double stop, double from_nut, double length) {
    Json part;
    part["stop_semitones"] = rounded(stop);
    part["stop_from_nut_mm"] = rounded_mm(from_nut);
    part["sounding_length_mm"] = rounded_mm(length - from_nut);
    return part;
}

Json string_part(const PresetString& string, const FretOnString& on, double reference_pitch) {
    Json part;
    part["string"] = string.name;
    part["pitch_name"] = pitch_name(on.pitch, reference_pitch);
    part["pitch_hz"] = rounded(on.pitch);
    part["sharpened_cents"] = rounded(on.sharpened);
    part["pitch_cents"] = rounded(on.residual);
    part["own_place_mm"] = rounded_mm(on.own_place);
    return part;
}

Json fret_part(const AskedFrets& asked, const FretTable& table, const Fret& fret) {
    Json part;
    part["fret"] = fret.number;
    part["kind"] = kind_of(fret, asked.preset);
    part.update(place_part(fret.stop, fret.from_nut, table.length));
    part["strings"] = Json::array();
    for (std::size_t i = 0; i < fret.strings.size(); ++i)
        part["strings"].push_back(string_part(asked.preset.strings[i], fret.strings[i], asked.preset.reference_pitch));
    return part;
}

Json guide_part(const FretTable& table) {
    if (!table.guide) return nullptr;
    return place_part(12.0, *table.guide, table.length);
}

Json ruler_part(const AskedFrets& asked, const std::optional<Climb>& ruler) {
    if (!ruler) return nullptr;
    Json part = Json::array();
    for (const ClimbStop& stop : ruler->stops) {
        part.push_back(note_part(stop.note, asked.preset.reference_pitch));
        add_band(part.back(), stop.band, stop.note, ruler->player);
    }
    return part;
}

Json csv_rows(const AskedFrets& asked, const FretTable& table) {
    Json rows = Json::array();
    for (const Fret& fret : table.frets) {
        const Json part = fret_part(asked, table, fret);
        for (const Json& string : part.at("strings")) {
            Json row = part;
            row["place"] = "fret";
            row.update(string);
            rows.push_back(row);
        }
    }
    const auto add = [&](const char* place, Json row) {
        row["place"] = place;
        rows.push_back(row);
    };
    if (table.guide) add("guide fret", guide_part(table));
    for (const FretPlace& place : table.bare) add("bare board", place_part(place.stop, place.from_nut, table.length));
    return rows;
}

std::string places_table(const AskedFrets& asked, const FretTable& table) {
    Table text({{"fret", ""}, {"", "", true}, {"cents", "above open"}, {"from", "nut mm"}, {"step", "mm"}});
    double below = 0.0;
    for (const Fret& fret : table.frets) {
        const Json kind = kind_of(fret, asked.preset);
        text.add_row({std::to_string(fret.number), kind.is_null() ? "" : kind.get<std::string>(),
                      fixed_number(100.0 * fret.stop, 1), mm_cell(fret.from_nut, 1),
                      mm_cell(fret.from_nut - below, 1)});
        below = fret.from_nut;
    }
    if (table.guide) text.add_row({"12", "guide", fixed_number(1200.0, 1), mm_cell(table.guide, 1), "-"});
    return text.text();
}

/// Cents by which each string errs on the straight frets.
std::string errors_table(const AskedFrets& asked, const FretTable& table) {
    std::vector<Table::Column> columns{{"fret", ""}};
    for (const PresetString& string : asked.preset.strings) columns.push_back({string.name, string.pitch});
    Table text(columns);
    for (const Fret& fret : table.frets) {
        std::vector<std::string> row{std::to_string(fret.number)};
        for (const FretOnString& on : fret.strings) row.push_back(fixed_number(on.residual, 1));
        text.add_row(row);
    }
    return text.text();
}

double greatest_error(const FretTable& table) {
    double greatest = 0.0;
    for (const Fret& fret : table.frets)
        for (const FretOnString& on : fret.strings) greatest = std::max(greatest, std::abs(on.residual));
    return greatest;
}

std::string bare_line(const FretTable& table) {
    std::string line;
    for (const FretPlace& place : table.bare)
        line += (line.empty() ? "" : ", ") + fixed_number(place.stop, 0) + " at " + mm_cell(place.from_nut, 1);
    return line;
}

}  // namespace

std::string temperament_words(const Preset& preset) {
    std::string words;
    switch (preset.temperament) {
        case Temperament::equal:
            return "equal temperament";
        case Temperament::rule_of_18:
            return "rule of 18";
        case Temperament::quarter_comma:
            words = "1/4";
            break;
        case Temperament::fifth_comma:
            words = "1/5";
            break;
        case Temperament::sixth_comma:
            words = "1/6";
            break;
    }
    words += " comma meantone, ";
    if (preset.chromatic_frets.empty()) return words + "frets diatonic";
    words += preset.chromatic_frets.size() == 1 ? "fret " : "frets ";
    for (std::size_t i = 0; i < preset.chromatic_frets.size(); ++i)
        words += (i > 0 ? " and " : "") + std::to_string(preset.chromatic_frets[i]);
    return words + " chromatic, the others diatonic";
}

std::string height_words(const StringHeight& height) {
    if (height == StringHeight{}) return "Not corrected for the sharpening of pressed strings.";
    return "Corrected for strings " + short_number(analysis::mm_from_metres(height.at_nut)) +
           " mm high at the nut and " + short_number(analysis::mm_from_metres(height.at_octave)) + " mm at the octave.";
}

std::string frets_json(const AskedFrets& asked, const FretTable& table, const std::optional<Climb>& ruler) {
    Json document;
    document["run"] = run_part(asked.run);
    document["temperament"] = temperament_name(asked.preset.temperament);
    document["length_mm"] = rounded_mm(table.length);
    document["height_at_nut_mm"] = rounded_mm(table.height.at_nut);
    document["height_at_octave_mm"] = rounded_mm(table.height.at_octave);
    document["board_end_mm"] = rounded_mm(table.board_end);
    document["frets"] = Json::array();
    for (const Fret& fret : table.frets) document["frets"].push_back(fret_part(asked, table, fret));
    document["guide_fret"] = guide_part(table);
    document["bare_board"] = Json::array();
    for (const FretPlace& place : table.bare)
        document["bare_board"].push_back(place_part(place.stop, place.from_nut, table.length));
    document["contact_ruler"] = ruler_part(asked, ruler);
    return json_text(document);
}

std::string frets_csv(const AskedFrets& asked, const FretTable& table) {
    return csv_text(csv_rows(asked, table),
                    {"place", "fret", "kind", "stop_semitones", "stop_from_nut_mm", "sounding_length_mm", "string",
                     "pitch_name", "pitch_hz", "sharpened_cents", "pitch_cents", "own_place_mm"});
}

std::string frets_table(const AskedFrets& asked, const FretTable& table) {
    std::string text = asked.preset.name + ", strings of " + mm_cell(table.length, 0) + " mm, A " +
                       short_number(asked.preset.reference_pitch) + " Hz; " + temperament_words(asked.preset) + "\n" +
                       height_words(table.height) + "\n\n";
    if (table.frets.empty()) text += "This instrument has no frets.\n";
    if (!table.frets.empty() || table.guide) text += places_table(asked, table);
    if (table.height != StringHeight{} && !table.frets.empty())
        text += "\ncents by which each string, pressed, is sharp (+) or flat (-) on these straight frets\n\n" +
                errors_table(asked, table);
    if (!table.bare.empty()) text += "\nbare board, semitones and mm from the nut: " + bare_line(table) + "\n";
    return text;
}

std::string frets_in_words(const FretTable& table, const std::optional<Climb>& ruler) {
    std::string words = "Measure from the edge of the nut, where the strings leave it.";
    if (table.guide) words += " The guide fret is a landmark for the hand at half the string, no fret to press on.";
    if (table.height != StringHeight{} && !table.frets.empty())
        words += " A fret goes straight across, so it suits no string quite: the greatest error is " +
                 fixed_number(greatest_error(table), 1) + " cents.";
    if (ruler)
        words += "\nThe contact ruler is for string " + ruler->stops.front().note.string.name + ". " +
                 climb_in_words(*ruler);
    return words;
}

}  // namespace sim::report

// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/bands_report.hpp"

#include "analysis/units.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

namespace sim::report {
namespace {

/// "52–80", or "-".
std::string edges_cell(const std::optional<Band>& band) {
    return band ? mm_cell(band->near, 0) + "–" + mm_cell(band->far, 0) : "-";
}

/// What ends the band, or the stretch where there is none: bridge's side / finger's side.
std::string bounds_cell(const BandResult& result) {
    const std::optional<Band>& edges = result.band ? result.band : result.stretch;
    if (!edges) return "-";
    return std::string(fault_name(edges->near_bound)) + " / " + std::string(fault_name(edges->far_bound));
}

std::string usual_cell(const Note& note, const std::optional<UsualPlaces>& usual) {
    if (!usual || note.stop != 0.0) return "-";
    return mm_cell(usual->near, 0) + "–" + mm_cell(usual->far, 0);
}

Json note_line(const PresetBands& bands, const PresetBand& entry) {
    Json part;
    part["preset"] = bands.preset.short_name;
    part.update(note_part(entry.note, bands.preset.reference_pitch));
    add_band(part, entry.band, entry.note, bands.preset.player);
    return part;
}

Json lines_of(const std::vector<PresetBands>& presets) {
    Json lines = Json::array();
    for (const PresetBands& bands : presets)
        for (const PresetBand& entry : bands.notes) lines.push_back(note_line(bands, entry));
    return lines;
}

}  // namespace

std::string bands_heading() {
    return "| preset | string | note | stop | band mm, or why there is none | best mm | of string | finger-widths | "
           "secure % | stretch mm | bounds (bridge's side / finger's side) | usual place mm (common practice, no "
           "source) |\n|---|---|---|---|---|---|---|---|---|---|---|---|\n";
}

std::string bands_lines(const PresetBands& bands, const std::optional<UsualPlaces>& usual_open) {
    std::string text;
    for (const PresetBand& entry : bands.notes) {
        const BandResult& band = entry.band;
        const auto over = [&](double what) { return band.best ? std::optional(*band.best / what) : std::nullopt; };
        const double hz = fundamental(entry.note.string);
        const std::vector<std::string> cells{bands.preset.short_name,
                                             entry.note.string.name,
                                             pitch_name(hz, bands.preset.reference_pitch),
                                             entry.note.stop == 0.0 ? "open" : short_number(entry.note.stop),
                                             band.band ? edges_cell(band.band) : "none: " + band.reason,
                                             mm_cell(band.best, 0),
                                             fixed_cell(over(entry.note.string.length), 3),
                                             fixed_cell(over(bands.preset.player.finger_width), 1),
                                             percent_cell(band.at_best.security),
                                             edges_cell(band.stretch),
                                             bounds_cell(band),
                                             usual_cell(entry.note, usual_open)};
        text += "|";
        for (const std::string& cell : cells) text += " " + cell + " |";
        text += "\n";
    }
    return text;
}

std::string bands_json(const std::vector<PresetBands>& presets) { return json_text(lines_of(presets)); }

std::string bands_csv(const std::vector<PresetBands>& presets) {
    return csv_text(lines_of(presets), {"preset",
                                        "string",
                                        "pitch_name",
                                        "pitch_hz",
                                        "stop_semitones",
                                        "stop_end",
                                        "sounding_length_mm",
                                        "band/near_mm",
                                        "band/far_mm",
                                        "band/near_bound",
                                        "band/far_bound",
                                        "reason",
                                        "best_mm",
                                        "best_ratio",
                                        "best_finger_widths",
                                        "security",
                                        "speaks_share",
                                        "fails_by",
                                        "stretch/near_mm",
                                        "stretch/far_mm",
                                        "stretch/near_bound",
                                        "stretch/far_bound"});
}

}  // namespace sim::report

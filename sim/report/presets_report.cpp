// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/presets_report.hpp"

#include "analysis/units.hpp"
#include "sim/cautions.hpp"
#include "sim/material.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

namespace sim::report {
namespace {

/// The source that covers a pointer: its own or the nearest above.
std::string source_of(const Preset& preset, std::string pointer) {
    while (true) {
        if (const auto found = preset.sources.find(pointer); found != preset.sources.end()) return found->second;
        if (pointer.empty()) return "";
        pointer.erase(pointer.rfind('/'));
    }
}

/// A source's key, or the words before the details: "from memory".
std::string source_flag(const std::string& source) {
    return source.starts_with('[') ? source.substr(0, source.find(']') + 1)
                                   : source.substr(0, source.find_first_of(",;:"));
}

/// Q of a partial of the string alone; nothing without loss.
std::optional<double> partial_q(const String& string, double n) {
    const double loss = loss_factor(string, n);
    return loss > 0.0 ? std::optional(1.0 / loss) : std::nullopt;
}

std::optional<double> torsion_ratio(const String& string) {
    return string.torsion_impedance > 0.0 ? std::optional(string.torsion_speed / wave_speed(string)) : std::nullopt;
}

/// What the simulation makes of the gauge.
void add_physics(Json& part, const PresetString& string, const String& open) {
    const Material& stuff = material(string.gauge.material, "");
    part["wave_speed_m_s"] = rounded(wave_speed(open));
    part["wave_impedance_kg_s"] = rounded(wave_impedance(open));
    part["bending_stiffness_n_m2"] = rounded(open.bending_stiffness);
    part["inharmonicity"] = rounded(inharmonicity(open));
    part["torsion_ratio"] = rounded(torsion_ratio(open));
    part["torsion_impedance_kg_s"] = open.torsion_impedance > 0.0 ? rounded(open.torsion_impedance) : Json(nullptr);
    part["q_1"] = rounded(partial_q(open, 1.0));
    part["q_10"] = rounded(partial_q(open, 10.0));
    part["torsion_q"] = open.damping.torsion_q > 0.0 ? rounded(open.damping.torsion_q) : Json(nullptr);
    part["density_source"] = stuff.density_source;
    part["moduli_source"] = stuff.moduli_source;
    part["losses_source"] = stuff.losses_source;
    part["torsion_q_source"] = stuff.torsion_q_source;
}

Json string_part(const Preset& preset, std::size_t index) {
    const PresetString& string = preset.strings[index];
    const String open = open_string(preset, string);
    const BreakingRisk risk = breaking_risk(string, preset.reference_pitch);
    Json part;
    part["name"] = string.name;
    part["pitch"] = string.pitch;
    part["pitch_hz"] = rounded(pitch_frequency(string.pitch, preset.reference_pitch));
    part["length_mm"] = rounded_mm(string.length);
    part["material"] = string.gauge.material;
    part["mass_g_m"] = rounded(analysis::g_m_from_kg_m(open.mass_per_length));
    part["tension_newtons"] = rounded(open.tension);
    add_physics(part, string, open);
    part["breaking_product_hz_m"] =
        string.gauge.material == "gut" ? rounded(breaking_product(string, preset.reference_pitch)) : Json(nullptr);
    part["breaking_risk"] = risk == BreakingRisk::none ? Json(nullptr) : Json(breaking_risk_words(risk));
    part["source"] = source_of(preset, "/strings/" + std::to_string(index) + "/gauge");
    return part;
}

Json preset_part(const Preset& preset) {
    Json part;
    part["name"] = preset.name;
    part["short_name"] = preset.short_name;
    part["file"] = preset.file.string();
    part["kind"] = preset.kind;
    part["remark"] = preset.remark;
    part["reference_pitch_hz"] = rounded(preset.reference_pitch);
    part["temperament"] = temperament_name(preset.temperament);
    part["frets"] = preset.frets;
    part["last_stop_semitones"] = rounded(last_stop(preset));
    part["total_tension_newtons"] = rounded(total_pull(preset));
    part["bridge_source"] = source_of(preset, "/bridge");
    part["strings"] = Json::array();
    for (std::size_t i = 0; i < preset.strings.size(); ++i) part["strings"].push_back(string_part(preset, i));
    return part;
}

std::string preset_block(const Preset& preset) {
    Table table({{"string", "", true},
                 {"pitch", "", true},
                 {"length", "mm"},
                 {"material", "", true},
                 {"tension", "N"},
                 {"impedance", "kg/s"},
                 {"B", "1e-5"},
                 {"twist", "x speed"},
                 {"Q of", "1st"},
                 {"partial", "10th"},
                 {"f x L", "Hz m"},
                 {"", "", true},
                 {"source", "", true}});
    for (std::size_t i = 0; i < preset.strings.size(); ++i) {
        const PresetString& string = preset.strings[i];
        const bool gut = string.gauge.material == "gut";
        const String open = open_string(preset, string);
        table.add_row({string.name, string.pitch, mm_cell(string.length, 0), string.gauge.material,
                       fixed_number(open.tension, 1), fixed_number(wave_impedance(open), 3),
                       fixed_number(1e5 * inharmonicity(open), 1), fixed_cell(torsion_ratio(open), 1),
                       fixed_cell(partial_q(open, 1.0), 0), fixed_cell(partial_q(open, 10.0), 0),
                       gut ? fixed_number(breaking_product(string, preset.reference_pitch), 0) : "-",
                       std::string(breaking_risk_words(breaking_risk(string, preset.reference_pitch))),
                       source_flag(source_of(preset, "/strings/" + std::to_string(i) + "/gauge"))});
    }
    const std::string frets = preset.frets == 0 ? "no frets" : std::to_string(preset.frets) + " frets";
    return preset.short_name + " = " + preset.name + " (" + preset.kind +
           "), A4 = " + short_number(preset.reference_pitch) + " Hz, " + frets + ", board to stop " +
           short_number(last_stop(preset)) + ", total pull " + fixed_number(total_pull(preset), 0) +
           " N; bridge: " + source_flag(source_of(preset, "/bridge")) + "\n" + table.text();
}

}  // namespace

std::string presets_json(const std::vector<Preset>& presets) {
    Json document;
    document["presets"] = Json::array();
    for (const Preset& preset : presets) document["presets"].push_back(preset_part(preset));
    return json_text(document);
}

std::string presets_csv(const std::vector<Preset>& presets) {
    Json rows = Json::array();
    for (const Preset& preset : presets) {
        for (std::size_t i = 0; i < preset.strings.size(); ++i) {
            Json row = preset_part(preset);
            row["string"] = string_part(preset, i);
            rows.push_back(row);
        }
    }
    return csv_text(rows, {"short_name",
                           "name",
                           "kind",
                           "reference_pitch_hz",
                           "frets",
                           "string/name",
                           "string/pitch",
                           "string/pitch_hz",
                           "string/length_mm",
                           "string/material",
                           "string/mass_g_m",
                           "string/tension_newtons",
                           "string/wave_speed_m_s",
                           "string/wave_impedance_kg_s",
                           "string/bending_stiffness_n_m2",
                           "string/inharmonicity",
                           "string/torsion_ratio",
                           "string/torsion_impedance_kg_s",
                           "string/q_1",
                           "string/q_10",
                           "string/torsion_q",
                           "string/breaking_product_hz_m",
                           "string/breaking_risk",
                           "string/source"});
}

std::string presets_table(const std::vector<Preset>& presets) {
    std::string text;
    for (const Preset& preset : presets) text += (text.empty() ? "" : "\n") + preset_block(preset);
    return text;
}

std::string presets_cautions(const std::vector<Preset>& presets) {
    bool near = false;
    for (const Preset& preset : presets)
        for (const PresetString& string : preset.strings)
            near = near || breaking_risk(string, preset.reference_pitch) != BreakingRisk::none;
    std::string text;
    if (near)
        text +=
            "Strings near their limit can break and hit the eyes: turn the face away, wear glasses, raise the pitch "
            "slowly, and never go past 240 Hz m on plain gut.\n";
    text += "Temperature and humidity are left out: gut moves with both.\n";
    return text + "Old instruments: do not raise the total pull they were set up for; ask a maker first.\n";
}

}  // namespace sim::report

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/preset_fields.hpp"

#include <QCoreApplication>

namespace gui {
namespace {

/// Words of this file, for the translator.
struct Words {
    Q_DECLARE_TR_FUNCTIONS(gui::PresetFields)
};

FieldRange whole(double low, double high) { return {low, high, true}; }

void add_instrument(std::vector<Field>& fields) {
    const QString part = Words::tr("Instrument");
    const auto add = [&](const char* pointer, const QString& what, const QString& unit, std::optional<FieldRange> range,
                         const QString& meaning) {
        fields.push_back({pointer, part, what, unit, meaning, range});
    };
    add("/name", Words::tr("Name"), {}, {}, Words::tr("What the instrument is called in lists and on charts."));
    add("/kind", Words::tr("Kind"), {}, {}, Words::tr("The family it belongs to, such as bass viol."));
    add("/remark", Words::tr("Remark"), {}, {}, Words::tr("Anything worth knowing about this preset."));
    add("/reference_pitch_hz", Words::tr("Pitch of A4"), Words::tr("Hz"), FieldRange{300, 550},
        Words::tr("The pitch that the instrument is tuned to, as the frequency of the A above middle C."));
    add("/frets", Words::tr("Tied frets"), {}, whole(0, 24), Words::tr("How many frets are tied on, one a semitone."));
    add("/board_end_ratio", Words::tr("End of the board"), {}, FieldRange{0.3, 0.95},
        Words::tr("From nut to end of the fingerboard, as a part of the string's length."));
    add("/hair_width_mm", Words::tr("Width of the hair"), Words::tr("mm"), FieldRange{1, 30},
        Words::tr("How wide the flat ribbon of bow hair is where it touches the string."));
}

void add_player(std::vector<Field>& fields) {
    const QString part = Words::tr("Player");
    const auto add = [&](const char* key, const QString& what, const QString& unit, FieldRange range,
                         const QString& meaning) {
        fields.push_back({std::string("/player/") + key, part, what, unit, meaning, range});
    };
    add("force_newtons/0", Words::tr("Lightest stroke"), Words::tr("N"), {0.001, 50},
        Words::tr("The least force with which you press bow on string; 1 N is the weight of about 100 g."));
    add("force_newtons/1", Words::tr("Firmest stroke"), Words::tr("N"), {0.001, 50},
        Words::tr("The greatest force with which you press bow on string."));
    add("speed_m_s", Words::tr("Bow speed"), Words::tr("m/s"), {0.005, 5},
        Words::tr("How fast the hair is drawn over the string once the stroke is under way."));
    add("rise_ms", Words::tr("Rise of the speed"), Words::tr("ms"), {0, 2000},
        Words::tr("How long the bow takes from rest to its speed."));
    add("wander_mm", Words::tr("Wander"), Words::tr("mm"), {0, 50},
        Words::tr("How far the bow strays to either side of the place you aim at."));
    add("pitch_tolerance_cents", Words::tr("Pitch tolerance"), Words::tr("cents"), {0.1, 1200},
        Words::tr("How far a note may lie from its pitch; 100 cents are a semitone."));
    add("speak_ms", Words::tr("Time to speak"), Words::tr("ms"), {1, 5000},
        Words::tr("How long a note may take to begin to sing."));
    add("speak_periods", Words::tr("Time to speak, in periods"), Words::tr("periods"), {1, 1000},
        Words::tr("The same counted in vibrations of the note; the longer of the two counts."));
    add("tone_level_db", Words::tr("Level that may be lost"), Words::tr("dB"), {0.1, 60},
        Words::tr("How much weaker than the best of the same note a stroke may be."));
    add("tone_brightness_ratio", Words::tr("Least brightness"), {}, {0, 1},
        Words::tr("How bright the tone must be, as a part of the best of the same note."));
    add("band_share", Words::tr("Share asked of a band"), {}, {0.01, 1},
        Words::tr("The share of strokes that must be good for a place to count as in the contact band."));
    add("finger_width_mm", Words::tr("Width of a finger"), Words::tr("mm"), {2, 40},
        Words::tr("Places on the string are also told in this many millimetres at a time."));
    add("hand_span_mm", Words::tr("Span of the hand"), Words::tr("mm"), {20, 300},
        Words::tr("From first to fourth finger, as the hand lies on the string."));
}

void add_gauge(std::vector<Field>& fields, const sim::Gauge& gauge, const std::string& base, const QString& part) {
    const auto add = [&](bool there, const char* key, const QString& what, const QString& unit, FieldRange range,
                         const QString& meaning) {
        if (there) fields.push_back({base + key, part, what, unit, meaning, range});
    };
    fields.push_back({base + "material",
                      part,
                      Words::tr("Material"),
                      {},
                      Words::tr("What the string is made of: gut, overspun gut, steel and others."),
                      {}});
    add(gauge.diameter.has_value(), "diameter_mm", Words::tr("Diameter"), Words::tr("mm"), {0.05, 6},
        Words::tr("The thickness of the string."));
    add(gauge.mass_per_length.has_value(), "mass_g_m", Words::tr("Mass"), Words::tr("g/m"), {0.01, 200},
        Words::tr("The weight of one metre of the string."));
    add(gauge.bending_diameter.has_value(), "bending_diameter_mm", Words::tr("Bends like plain"), Words::tr("mm"),
        {0.05, 6}, Words::tr("The diameter of the plain string that bends as easily."));
    add(gauge.bending_stiffness.has_value(), "bending_stiffness_n_m2", Words::tr("Bending stiffness"),
        Words::tr("N m²"), {1e-9, 1}, Words::tr("How much the string resists bending."));
    add(gauge.torsion_ratio.has_value(), "torsion_ratio", Words::tr("Twist speed"), {}, {1, 50},
        Words::tr("How much faster twists run along the string than its ordinary waves."));
    add(gauge.torsion_impedance.has_value(), "torsion_impedance_kg_s", Words::tr("Twist impedance"), Words::tr("kg/s"),
        {1e-3, 100}, Words::tr("How much the string resists being rolled under the bow."));
}

void add_strings(std::vector<Field>& fields, const sim::Preset& preset) {
    for (std::size_t i = 0; i < preset.strings.size(); ++i) {
        const sim::PresetString& string = preset.strings[i];
        const std::string base = "/strings/" + std::to_string(i) + "/";
        const QString part = Words::tr("String %1").arg(QString::fromStdString(string.name));
        fields.push_back({base + "name", part, Words::tr("Name"), {}, Words::tr("What the string is called."), {}});
        fields.push_back({base + "pitch",
                          part,
                          Words::tr("Open pitch"),
                          {},
                          Words::tr("The note of the open string, such as D4, Bb3 or F#4."),
                          {}});
        fields.push_back({base + "length_mm", part, Words::tr("Length, nut to bridge"), Words::tr("mm"),
                          Words::tr("The part of the string that sounds when it is open."), FieldRange{50, 2000}});
        add_gauge(fields, string.gauge, base + "gauge/", part);
    }
}

void add_bridge(std::vector<Field>& fields, const sim::Preset& preset) {
    if (preset.bridge.kind == sim::BridgeKind::resistance) {
        fields.push_back({"/bridge/resistance_kg_s", Words::tr("Bridge"), Words::tr("Resistance"), Words::tr("kg/s"),
                          Words::tr("How much the bridge resists being moved, alike at every pitch."),
                          FieldRange{0.01, 1e6}});
    }
    for (std::size_t i = 0; i < preset.bridge.modes.size(); ++i) {
        const std::string base = "/bridge/modes/" + std::to_string(i) + "/";
        const QString part = Words::tr("Body mode %1").arg(i + 1);
        const auto add = [&](const char* key, const QString& what, const QString& unit, FieldRange range,
                             const QString& meaning) {
            fields.push_back({base + key, part, what, unit, meaning, range});
        };
        add("hz", Words::tr("Frequency"), Words::tr("Hz"), {5, 20000},
            Words::tr("The pitch at which this part of the body rings."));
        add("q", Words::tr("Q"), {}, {0.5, 5000},
            Words::tr("How long it rings: a high Q rings long and answers a narrow range."));
        add("mass_kg", Words::tr("Mass"), Words::tr("kg"), {1e-4, 1000},
            Words::tr("How heavy it seems to the string at the bridge."));
        add("radiation", Words::tr("Radiation"), {}, {-10, 10},
            Words::tr("How strongly it is heard; the sign tells its side of the swing."));
    }
}

}  // namespace

std::vector<Field> preset_fields(const sim::Preset& preset) {
    std::vector<Field> fields;
    add_instrument(fields);
    add_player(fields);
    add_strings(fields, preset);
    add_bridge(fields, preset);
    return fields;
}

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bow.hpp"
#include "sim/bridge.hpp"
#include "sim/friction.hpp"
#include "sim/player.hpp"
#include "sim/string.hpp"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sim {

enum class Temperament { equal, quarter_comma, fifth_comma, sixth_comma, rule_of_18 };

/// The temperament's name as written in presets and options: "sixth_comma".
std::string_view temperament_name(Temperament temperament);
std::optional<Temperament> temperament_from_name(std::string_view name);

/// What is known of a string as it is bought.  Absent values follow from the material and the diameter.
struct Gauge {
    std::string material;                     ///< key of the material table
    std::optional<double> diameter;           ///< m
    std::optional<double> mass_per_length;    ///< kg/m, needed for overspun strings
    std::optional<double> bending_diameter;   ///< m, of the plain string that bends as easily
    std::optional<double> bending_stiffness;  ///< N m^2
    std::optional<double> torsion_ratio;      ///< speed of torsional over transverse waves, at the open pitch
    std::optional<double> torsion_impedance;  ///< kg/s at the surface

    bool operator==(const Gauge&) const = default;
};

/// One string of an instrument, and which parts of its physics are in force.
struct PresetString {
    std::string name;
    std::string pitch;    ///< "D4", "Bb3", "F#4": scientific names, tuned from the reference pitch
    double length = 0.0;  ///< m, nut to bridge
    Gauge gauge;
    bool damping = true;
    bool torsion = true;
    bool stiffness = true;

    bool operator==(const PresetString&) const = default;
};

/// An instrument and its player, as read from a preset file.
struct Preset {
    std::string name;
    std::string kind;
    std::string remark;
    std::string short_name;        ///< the file's stem
    std::filesystem::path file;    ///< empty when not read from a file
    double reference_pitch = 0.0;  ///< Hz of A4
    Temperament temperament = Temperament::equal;
    std::vector<int> chromatic_frets;
    int frets = 0;  ///< tied frets, one a semitone
    bool guide_fret = false;
    double board_end_ratio = 0.0;  ///< nut to board end, as a fraction of the string's length
    double hair_width = 0.0;       ///< m
    double finger_q = 0.0;         ///< Q that a bare finger's end alone would give the first partials
    Player player;
    std::vector<PresetString> strings;
    Bridge bridge;
    std::string measured_bridge;  ///< "bridge": {"measured": …} of a text; read_preset puts the modes in its place
    Friction friction;
    Bow bow;
    std::map<std::string, std::string>
        sources;  ///< JSON pointer -> source key, "from memory", "common practice", "invented"

    bool operator==(const Preset&) const = default;
};

/// Reads a preset.  Unknown keys, wrong types, units or values, and physical values without a source throw
/// InputError naming the file, the JSON pointer, the key, and what would be accepted.  A measured bridge is fitted.
Preset read_preset(const std::filesystem::path& file);
/// As above from text; `where` names it in errors.
Preset parse_preset(const std::string& text, const std::string& where);

/// PRESET of the commands: a path, a short name or a full name of a shipped preset.
Preset find_preset(const std::string& name_or_path);
/// Every shipped preset's file, sorted by name.
std::vector<std::filesystem::path> shipped_presets();

/// The whole preset as JSON text (canonical: sorted keys, units in keys), from which parse_preset gives it back.
std::string preset_text(const Preset& preset);

/// The string named `name` (or, where no name fits, of pitch `name`); InputError listing the names otherwise.
const PresetString& preset_string(const Preset& preset, const std::string& name);

/// Frequency of a pitch name at this preset's reference, equal temperament, Hz.  InputError for what is no pitch.
double pitch_frequency(const std::string& pitch, double reference_pitch);
/// Nearest equal-tempered pitch name of a frequency: "D5".
std::string pitch_name(double hz, double reference_pitch);

/// The open string as physics: tension from pitch and length, stiffness, torsion, damping from gauge and material.
String open_string(const Preset& preset, const PresetString& string);

/// Greatest stop that still lies on the board, semitones.
double last_stop(const Preset& preset);

/// No contact point lies nearer the bridge, m: half the hair's width + 2 mm.
double contact_floor(const Preset& preset);

}  // namespace sim

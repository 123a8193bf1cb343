// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/musicxml_signs.hpp"

#include "sim/score/numbers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <utility>

namespace sim::score {
namespace {

constexpr int octave_keys = 12;
constexpr int steps_an_octave = 7;

/// Quarter notes of a metronome's unit, or 0.
double unit_length(pugi::xml_node metronome) {
    constexpr std::array<std::pair<const char*, double>, 7> units{{{"breve", 8.0},
                                                                   {"whole", 4.0},
                                                                   {"half", 2.0},
                                                                   {"quarter", 1.0},
                                                                   {"eighth", 0.5},
                                                                   {"16th", 0.25},
                                                                   {"32nd", 0.125}}};
    const char* name = metronome.child("beat-unit").text().get();
    for (const auto& [unit, length] : units) {
        if (std::strcmp(unit, name) != 0) continue;
        double total = length;
        double dot = length;
        for ([[maybe_unused]] const pugi::xml_node node : metronome.children("beat-unit-dot")) total += dot /= 2.0;
        return total;
    }
    return 0.0;
}

/// Beats of "3" and of "3+2".
std::optional<int> beats_in(std::string_view text) {
    int sum = 0;
    while (true) {
        const std::size_t plus = text.find('+');
        const auto part = whole_number_in(text.substr(0, plus));
        if (!part || *part < 1 || *part > 64) return std::nullopt;
        sum += *part;
        if (plus == std::string_view::npos) return sum;
        text.remove_prefix(plus + 1);
    }
}

pugi::xml_node technical_child(pugi::xml_node note, const char* name) {
    for (const pugi::xml_node notations : note.children("notations"))
        for (const pugi::xml_node technical : notations.children("technical"))
            if (const pugi::xml_node child = technical.child(name)) return child;
    return {};
}

}  // namespace

std::optional<double> number_of(pugi::xml_node parent, const char* child) {
    return number_in(parent.child(child).text().get());
}

std::optional<Spelling> pitch_of(pugi::xml_node note) {
    const pugi::xml_node pitch = note.child("pitch");
    const std::string_view step = pitch.child("step").text().get();
    const auto octave = whole_number_in(pitch.child("octave").text().get());
    const double alter = pitch.child("alter") ? number_of(pitch, "alter").value_or(99.0) : 0.0;
    if (step.size() != 1 || step.front() < 'A' || step.front() > 'G') return std::nullopt;
    if (!octave || *octave < 0 || *octave > 9 || alter != std::round(alter) || std::abs(alter) > 2.0)
        return std::nullopt;
    return Spelling{.step = step.front(), .alter = static_cast<int>(alter), .octave = *octave};
}

std::optional<Metre> metre_of(pugi::xml_node attributes) {
    const pugi::xml_node time = attributes.child("time");
    const auto unit = whole_number_in(time.child("beat-type").text().get());
    const auto beats = beats_in(time.child("beats").text().get());
    if (!unit || !beats || *unit < 1 || *unit > 64) return std::nullopt;
    return Metre{.start = 0.0, .beats = *beats, .unit = *unit};
}

Transposition transposition_of(pugi::xml_node attributes) {
    const pugi::xml_node transpose = attributes.child("transpose");
    const int chromatic = static_cast<int>(number_of(transpose, "chromatic").value_or(0.0));
    // where the step isn't told, the usual interval of so many semitones
    constexpr std::array<int, 12> usual_steps{0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6};
    const int octaves = static_cast<int>(number_of(transpose, "octave-change").value_or(0.0));
    const int size = std::clamp(std::abs(chromatic), 0, 60);
    const int steps =
        usual_steps[static_cast<std::size_t>(size % octave_keys)] + steps_an_octave * (size / octave_keys);
    const double diatonic = number_of(transpose, "diatonic").value_or(chromatic < 0 ? -steps : steps);
    return {.diatonic = static_cast<int>(diatonic) + steps_an_octave * octaves,
            .chromatic = chromatic + octave_keys * octaves};
}

Spelling transposed(const Spelling& written, const Transposition& by) {
    if (by.chromatic == 0 && by.diatonic == 0) return written;
    constexpr std::string_view letters = "CDEFGAB";
    const int step = static_cast<int>(letters.find(written.step)) + steps_an_octave * written.octave + by.diatonic;
    const int octave = static_cast<int>(std::floor(static_cast<double>(step) / steps_an_octave));
    Spelling sounding{
        .step = letters[static_cast<std::size_t>(step - steps_an_octave * octave)], .alter = 0, .octave = octave};
    sounding.alter = key_number(written) + by.chromatic - key_number(sounding);
    return sounding;
}

std::optional<double> tempo_of(pugi::xml_node element) {
    const pugi::xml_node sound = std::strcmp(element.name(), "sound") == 0 ? element : element.child("sound");
    if (const auto tempo = number_in(sound.attribute("tempo").value())) return tempo;
    for (const pugi::xml_node type : element.children("direction-type"))
        if (const pugi::xml_node metronome = type.child("metronome")) {
            const auto rate = number_of(metronome, "per-minute");
            if (const double unit = unit_length(metronome); rate && unit > 0.0) return *rate * unit;
        }
    return std::nullopt;
}

std::string dynamic_of(pugi::xml_node dynamics) {
    for (const pugi::xml_node sign : dynamics.children()) {
        const std::string name = sign.name();
        if (is_dynamic(name)) return name;
        const bool is_outer = name.size() > 3 && name.find_first_not_of(name.front()) == std::string::npos;
        if (is_outer && (name.front() == 'p' || name.front() == 'f')) return name.substr(0, 3);
    }
    return "";
}

std::optional<int> finger_of(pugi::xml_node note) {
    if (technical_child(note, "open-string")) return 0;
    const auto finger = whole_number_in(technical_child(note, "fingering").text().get());
    return finger && *finger >= 0 && *finger <= 4 ? finger : std::nullopt;
}

std::optional<std::string> string_of(pugi::xml_node note) {
    const auto number = whole_number_in(technical_child(note, "string").text().get());
    return number ? std::optional(std::to_string(*number)) : std::nullopt;
}

bool has_tie(pugi::xml_node note, const char* type) {
    if (note.find_child_by_attribute("tie", "type", type)) return true;
    for (const pugi::xml_node notations : note.children("notations"))
        if (notations.find_child_by_attribute("tied", "type", type)) return true;
    return false;
}

bool asks_for_repeats(pugi::xml_node bar) {
    for (const pugi::xml_node barline : bar.children("barline"))
        if (barline.child("repeat") || barline.child("ending")) return true;
    const auto jumps = [](pugi::xml_node sound) {
        return sound.attribute("dacapo") || sound.attribute("dalsegno") || sound.attribute("tocoda");
    };
    for (const pugi::xml_node element : bar.children())
        if (jumps(element) || jumps(element.child("sound"))) return true;
    return false;
}

}  // namespace sim::score

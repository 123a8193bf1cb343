// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/frets.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/material.hpp"
#include "sim/tempered_pitch.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <functional>
#include <numbers>

namespace sim {
namespace {

constexpr int octave = 12;

/// Fifths up the chain for the diatonic fret of each semitone; twelve more make it chromatic.
constexpr std::array<int, octave> diatonic_fifths{0, -5, 2, -3, 4, -1, -6, 1, -4, 3, -2, 5};

bool is_chromatic(const Preset& preset, int number) {
    return std::ranges::find(preset.chromatic_frets, number) != preset.chromatic_frets.end();
}

/// Frets that stand for two notes of the chain, as F sharp and G flat.
bool has_choice(int number) {
    constexpr std::array<int, 5> choices{1, 3, 6, 8, 10};
    return std::ranges::find(choices, number % octave) != choices.end();
}

double meantone_cents(const Preset& preset, int number) {
    const bool chromatic = is_chromatic(preset, number);
    if (chromatic && !has_choice(number))
        throw analysis::InputError(
            "chromatic_frets", "fret " + std::to_string(number) +
                                   " is the same note either way; only frets 1, 3, 6, 8 and 10 (and their octaves) can "
                                   "be chromatic");
    const int fifths = diatonic_fifths[static_cast<std::size_t>(number % octave)] + (chromatic ? octave : 0);
    return 100.0 * number + fifths * (tempered_fifth(preset.temperament) - 700.0);
}

double place_of(double length, double cents) { return length * (1.0 - analysis::ratio_from_semitones(-cents / 100.0)); }

/// Area of the plain round string that bends as easily, m^2.
double bearing_area(const Gauge& gauge, const Material& stuff) {
    constexpr double pi = std::numbers::pi;
    if (gauge.bending_diameter) return pi / 4.0 * *gauge.bending_diameter * *gauge.bending_diameter;
    // E I = E A^2 / (4 pi) of a round rod
    if (gauge.bending_stiffness) return std::sqrt(4.0 * pi * *gauge.bending_stiffness / stuff.youngs_modulus);
    if (gauge.diameter) return pi / 4.0 * *gauge.diameter * *gauge.diameter;
    return *gauge.mass_per_length / stuff.density;
}

/// One string with what is asked again and again.
struct Pressed {
    const PresetString* string;
    String open;
};

double sounding_cents(const Pressed& of, double from_nut, const StringHeight& height) {
    return analysis::cents_between(of.open.length, of.open.length - from_nut) +
           pressed_cents(*of.string, of.open, from_nut, height);
}

/// Where a rising function of the place (m from the nut) crosses zero between the ends.
double crossing(double low, double high, const std::function<double(double)>& error) {
    constexpr int halvings = 60;
    for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (low + high);
        (error(middle) < 0.0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// Close to nut and bridge the pressed string runs sharp without bound, so a fret is sought near its closed form.
struct Near {
    double low;
    double high;
};
Near search_near(double place) { return {0.5 * place, place * 1.01}; }

double own_place(const Pressed& of, double cents, const StringHeight& height) {
    const Near near = search_near(place_of(of.open.length, cents));
    return crossing(near.low, near.high, [&](double x) { return sounding_cents(of, x, height) - cents; });
}

/// Sharpest and flattest string err alike.
double straight_place(const std::vector<Pressed>& strings, double cents, const StringHeight& height) {
    double nearest = own_place(strings.front(), cents, height);
    double farthest = nearest;
    for (const Pressed& of : strings) {
        const double place = own_place(of, cents, height);
        nearest = std::min(nearest, place);
        farthest = std::max(farthest, place);
    }
    return crossing(nearest, farthest, [&](double x) {
        double flattest = sounding_cents(strings.front(), x, height);
        double sharpest = flattest;
        for (const Pressed& of : strings) {
            const double sounds = sounding_cents(of, x, height);
            flattest = std::min(flattest, sounds);
            sharpest = std::max(sharpest, sounds);
        }
        return 0.5 * (flattest + sharpest) - cents;
    });
}

bool of_one_length(const Preset& preset) {
    return std::ranges::all_of(preset.strings,
                               [&](const PresetString& s) { return s.length == preset.strings.front().length; });
}

Fret fret_across(const Preset& preset, const std::vector<Pressed>& strings, int number, const StringHeight& height) {
    const double cents = fret_cents(preset, number);
    Fret fret{.number = number,
              .chromatic = preset.temperament != Temperament::equal && preset.temperament != Temperament::rule_of_18 &&
                           is_chromatic(preset, number),
              .stop = cents / 100.0,
              .from_nut = 0.0,
              .strings = {}};
    const bool closed_form = height == StringHeight{} && of_one_length(preset);
    fret.from_nut = closed_form ? place_of(strings.front().open.length, cents) : straight_place(strings, cents, height);
    for (const Pressed& of : strings) {
        const double sounds = sounding_cents(of, fret.from_nut, height);
        fret.strings.push_back({.pitch = fundamental(of.open) * analysis::ratio_from_semitones(sounds / 100.0),
                                .sharpened = pressed_cents(*of.string, of.open, fret.from_nut, height),
                                .residual = closed_form ? 0.0 : sounds - cents,
                                .own_place = closed_form ? fret.from_nut : own_place(of, cents, height)});
    }
    return fret;
}

}  // namespace

double fret_cents(const Preset& preset, int number) {
    assert(number >= 1);
    switch (preset.temperament) {
        case Temperament::equal:
            return 100.0 * number;
        case Temperament::rule_of_18:
            return number * analysis::cents_between(18.0, 17.0);
        case Temperament::quarter_comma:
        case Temperament::fifth_comma:
        case Temperament::sixth_comma:
            break;
    }
    return meantone_cents(preset, number);
}

FretPlace fret_place(const Preset& preset, const PresetString& string, int number) {
    const double cents = fret_cents(preset, number);
    return {.stop = cents / 100.0, .from_nut = place_of(string.length, cents)};
}

double pressed_cents(const PresetString& string, const String& open, double from_nut, const StringHeight& height) {
    assert(from_nut > 0.0 && from_nut < open.length);
    const double octave_share = from_nut / (0.5 * open.length);
    const double h = std::max(0.0, height.at_nut + octave_share * (height.at_octave - height.at_nut));
    const double longer = 0.5 * h * h * (1.0 / from_nut + 1.0 / (open.length - from_nut));
    const Material& stuff = material(string.gauge.material, "string \"" + string.name + "\"");
    const double stress = open.tension / bearing_area(string.gauge, stuff);
    return 600.0 / std::numbers::ln2 * (stuff.youngs_modulus / stress) * (longer / open.length);
}

FretTable fret_table(const Preset& preset, const StringHeight& height) {
    assert(height.at_nut >= 0.0 && height.at_octave >= 0.0);
    const double length = preset.strings.front().length;
    FretTable table{.length = length,
                    .height = height,
                    .frets = {},
                    .guide = {},
                    .bare = {},
                    .board_end = preset.board_end_ratio * length};
    std::vector<Pressed> strings;
    for (const PresetString& string : preset.strings) strings.push_back({&string, open_string(preset, string)});
    for (int n = 1; n <= preset.frets; ++n) table.frets.push_back(fret_across(preset, strings, n, height));
    if (preset.guide_fret) table.guide = 0.5 * length;
    Preset bare = preset;
    if (bare.temperament == Temperament::rule_of_18) bare.temperament = Temperament::equal;
    for (int n = preset.frets + 1; n <= static_cast<int>(last_stop(preset)); ++n)
        table.bare.push_back(fret_place(bare, preset.strings.front(), n));
    return table;
}

}  // namespace sim

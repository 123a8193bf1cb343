// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"
#include "sim/score/midi_file.hpp"
#include "sim/score/numbers.hpp"
#include "sim/score/read_tune.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace sim::score {
namespace {

constexpr double usual_tempo = 120.0;     // the standard's own, where a file gives none
constexpr double slight_overlap = 0.125;  // quarter notes: fingers that let go late
constexpr double rounding = 1e-6;

/// The nearest dynamic to a velocity: common practice, no source.
std::string dynamic_of(int velocity) {
    constexpr std::array<std::pair<int, const char*>, 8> usual{
        {{16, "ppp"}, {33, "pp"}, {49, "p"}, {64, "mp"}, {80, "mf"}, {96, "f"}, {112, "ff"}, {126, "fff"}}};
    return std::ranges::min_element(usual, {}, [&](const auto& u) { return std::abs(u.first - velocity); })->second;
}

/// The key's spelling in a signature of so many sharps: E flat to G sharp in C major.
Spelling spelling_of(int key, int sharps) {
    constexpr int below = 3;
    constexpr std::array<char, 7> letters{'F', 'C', 'G', 'D', 'A', 'E', 'B'};
    const int lowest = std::clamp(sharps, -7, 7) - below;  // steps of fifths above C
    const int above = ((7 * key - lowest) % 12 + 12) % 12;
    const int fifths = lowest + above + 1;  // above F
    const int alter = static_cast<int>(std::floor(fifths / 7.0));
    Spelling spelling{.step = letters[static_cast<std::size_t>(fifths - 7 * alter)], .alter = alter, .octave = 4};
    spelling.octave += (key - key_number(spelling)) / 12;
    return spelling;
}

std::string track_name(const MidiFile& file, std::size_t index) {
    const std::string name = one_line(file.tracks[index].name);
    return std::to_string(index + 1) + (name.empty() ? "" : " (" + name + ")");
}

std::size_t chosen_track(const MidiFile& file, const std::string& where, const Part& part,
                         std::vector<std::string>& remarks) {
    std::vector<std::string> with_notes;
    std::optional<std::size_t> chosen;
    for (std::size_t i = 0; i < file.tracks.size(); ++i) {
        if (file.tracks[i].notes.empty()) continue;
        with_notes.push_back(track_name(file, i));
        const bool named = part.name == std::to_string(i + 1) || part.name == file.tracks[i].name;
        if (!chosen && (part.name.empty() || named)) chosen = i;
    }
    if (with_notes.empty()) throw analysis::InputError(where, "holds no notes with a pitch");
    if (!chosen)
        throw analysis::InputError(
            where, "has no track \"" + one_line(part.name) + "\" with notes; it has " + listed(with_notes));
    if (part.name.empty() && with_notes.size() > 1)
        remarks.push_back("Track " + track_name(file, *chosen) + " was taken; there are " + listed(with_notes) + ".");
    return *chosen;
}

class MidiTune {
public:
    MidiTune(const MidiFile& file, std::string where) : file_(file), where_(std::move(where)) {
        add_tempos();
        add_metres();
    }

    void add(const MidiNote& played) {
        TuneNote note{.spelling = spelling_of(played.key, file_.sharps),
                      .start = quarters(played.start),
                      .duration = quarters(played.end - played.start),
                      .dynamic = dynamic_of(played.velocity)};
        place_in_bar(note);
        const std::string place = where_ + ", bar " + std::to_string(note.bar) + ", " + spelling_name(note.spelling);
        if (note.spelling.octave < 0 || note.spelling.octave > 9) throw analysis::InputError(place, "lies below C0");
        if (note.duration > longest_note) throw analysis::InputError(place, "lasts longer than 1000 quarter notes");
        if (note.start > longest_quarters) throw analysis::InputError(place, "starts after 100000 quarter notes");
        make_room(note, place);
        tune_.notes.push_back(note);
        if (tune_.notes.size() > most_notes) throw analysis::InputError(place, "there are more than 20000 notes");
    }

    Tune tune(std::vector<std::string>& remarks) && {
        if (cut_ > 0)
            remarks.push_back(std::to_string(cut_) + (cut_ == 1 ? " note was" : " notes were") +
                              " held a little into the next and cut off there.");
        return std::move(tune_);
    }

private:
    double quarters(std::int64_t ticks) const { return static_cast<double>(ticks) / file_.ticks_a_quarter; }

    void add_tempos() {
        tune_.tempos.push_back({0.0, usual_tempo});
        for (const MidiTempo& tempo : file_.tempos) {
            const double rate = 60e6 / std::max(1, tempo.microseconds_a_quarter);
            if (!(rate >= 3.5) || !(rate <= 1000.0))
                throw analysis::InputError(
                    where_, "the tempo must be from 4 to 1000 quarter notes a minute, is " + number_text(rate));
            if (quarters(tempo.start) <= tune_.tempos.back().start) tune_.tempos.pop_back();
            tune_.tempos.push_back({quarters(tempo.start), rate});
        }
    }

    void add_metres() {
        tune_.metres.push_back({});
        first_bars_.push_back(1);
        for (const MidiMetre& metre : file_.metres) {
            if (metre.beats < 1 || metre.beats > 64 || metre.unit_power > 6)
                throw analysis::InputError(where_, "a metre makes no sense: " + std::to_string(metre.beats) + "/2^" +
                                                       std::to_string(metre.unit_power));
            const double start = quarters(metre.start);
            const int bar = bar_at(start - 10.0 * rounding) + 1;
            if (start <= tune_.metres.back().start) {
                tune_.metres.pop_back();
                first_bars_.pop_back();
            }
            tune_.metres.push_back({start, metre.beats, 1 << metre.unit_power});
            first_bars_.push_back(start <= 0.0 ? 1 : bar);
        }
    }

    std::size_t metre_at(double start) const {
        std::size_t in_force = 0;
        for (std::size_t i = 1; i < tune_.metres.size() && tune_.metres[i].start <= start + rounding; ++i) in_force = i;
        return in_force;
    }
    int bar_at(double start) const {
        const std::size_t i = metre_at(start);
        const Metre& metre = tune_.metres[i];
        return first_bars_[i] + static_cast<int>(std::floor((start - metre.start) / bar_length(metre) + rounding));
    }
    void place_in_bar(TuneNote& note) const {
        const Metre& metre = tune_.metres[metre_at(note.start)];
        note.bar = bar_at(note.start);
        note.stress = stress_at(metre, std::fmod(note.start - metre.start, bar_length(metre)));
    }

    /// The note before ends where this one begins, if it overlaps it by little.
    void make_room(const TuneNote& note, const std::string& place) {
        if (tune_.notes.empty()) return;
        TuneNote& before = tune_.notes.back();
        const double over = before.start + before.duration - note.start;
        if (over <= rounding) return;
        if (over > slight_overlap || over >= before.duration - rounding)
            throw analysis::InputError(place, "sounds together with " + spelling_name(before.spelling) +
                                                  "; a passage is one line of single notes");
        before.duration -= over;
        ++cut_;
    }

    const MidiFile& file_;
    std::string where_;
    Tune tune_;
    std::vector<int> first_bars_;
    int cut_ = 0;
};

}  // namespace

ReadTune read_midi(const std::string& bytes, const std::string& where, const Part& part) {
    const MidiFile file = midi_file(bytes, where);
    ReadTune read;
    const MidiTrack& track = file.tracks[chosen_track(file, where, part, read.remarks)];
    MidiTune tune(file, where);
    for (const MidiNote& note : track.notes) tune.add(note);
    read.tune = std::move(tune).tune(read.remarks);
    read.tune.title = one_line(track.name);
    return read;
}

}  // namespace sim::score

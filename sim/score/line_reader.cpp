// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"
#include "sim/score/numbers.hpp"
#include "sim/score/read_tune.hpp"

#include <cmath>
#include <sstream>

namespace sim::score {
namespace {

constexpr double usual_tempo = 60.0;
constexpr double shortest = 1e-3;  // quarter notes
constexpr double rounding = 1e-6;  // quarter notes
constexpr const char* note_example = "a note is written as F#4:1/2 or D5:1,string=2,finger=4, a rest as r:1";

/// Reads one word after another.
class LineReader {
public:
    explicit LineReader(std::string where) : where_(std::move(where)) {}

    void take(const std::string& word, std::size_t line, std::size_t position) {
        place_ = (line > 1 ? "line " + std::to_string(line) + ", " : "") + "word " + std::to_string(position) + " \"" +
                 one_line(word) + "\"";
        if (word == "|") return;
        if (const std::size_t equals = word.find('='); equals < word.find(',') && equals < word.find(':'))
            return take_setting(word.substr(0, equals), word.substr(equals + 1));
        take_note(word);
    }

    Tune tune() && {
        if (tune_.notes.empty()) throw analysis::InputError(where_, std::string("holds no note; ") + note_example);
        if (tune_.tempos.empty() || tune_.tempos.front().start > 0.0)
            tune_.tempos.insert(tune_.tempos.begin(), {0.0, usual_tempo});
        if (tune_.metres.empty()) tune_.metres.push_back({});
        return std::move(tune_);
    }

private:
    [[noreturn]] void fail(const std::string& what) const { throw analysis::InputError(where_ + ", " + place_, what); }

    double number(const std::string& text, double low, double high, const std::string& what) const {
        const auto value = number_in(text);
        if (!value || !(*value >= low) || !(*value <= high))
            fail(what + " must be a number from " + number_text(low) + " to " + number_text(high));
        return *value;
    }

    void take_setting(const std::string& key, const std::string& value) {
        if (key == "tempo") return tune_.tempos.push_back({now_, number(value, 5.0, 1000.0, "tempo")});
        if (key == "beats") return take_metre(value);
        if (key == "upbeat") return take_upbeat(value);
        if (key != "dynamic") fail("is no setting; there are tempo, beats, upbeat, dynamic");
        if (!is_dynamic(value)) fail("dynamic must be one of ppp, pp, p, mp, mf, f, ff, fff");
        dynamic_ = value;
    }

    void take_metre(const std::string& value) {
        const std::size_t slash = value.find('/');
        const int beats = whole_number_in(value.substr(0, slash)).value_or(0);
        const int unit = slash == std::string::npos ? 0 : whole_number_in(value.substr(slash + 1)).value_or(0);
        const bool known_unit = unit == 1 || unit == 2 || unit == 4 || unit == 8 || unit == 16;
        if (beats < 1 || beats > 32 || !known_unit) fail("beats must be as 3/4 or 6/8");
        if (in_bar() > rounding && !tune_.notes.empty()) fail("a new metre must stand at the beginning of a bar");
        if (tune_.metres.size() == 1 && tune_.metres.front().start < 0.0 && now_ == 0.0)
            fail("beats must stand before upbeat");
        if (now_ > 0.0) first_bar_ = bar();
        const double start = now_ > 0.0 ? now_ : 0.0;
        if (!tune_.metres.empty() && now_ == 0.0) tune_.metres.pop_back();
        tune_.metres.push_back({start, beats, unit});
    }

    void take_upbeat(const std::string& value) {
        if (now_ > 0.0) fail("an upbeat must stand before the first note");
        if (tune_.metres.empty()) tune_.metres.push_back({});
        const double whole = bar_length(tune_.metres.front());
        const double upbeat = number(value, 0.0, whole, "upbeat");
        tune_.metres.front().start = upbeat > 0.0 ? upbeat - whole : 0.0;
        first_bar_ = upbeat > 0.0 ? 0 : 1;
    }

    const Metre& metre() {
        if (tune_.metres.empty()) tune_.metres.push_back({});
        return tune_.metres.back();
    }
    double in_bar() {
        const double bars = (now_ - metre().start) / bar_length(metre());
        const double part = bars - std::floor(bars + rounding);
        return std::max(0.0, part * bar_length(metre()));
    }
    int bar() {
        return first_bar_ + static_cast<int>(std::floor((now_ - metre().start) / bar_length(metre()) + rounding));
    }

    void take_length(const std::string& text) {
        const std::size_t slash = text.find('/');
        const auto over = number_in(text.substr(0, slash));
        const auto under = slash == std::string::npos ? std::optional(1.0) : number_in(text.substr(slash + 1));
        const double length = over && under && *under > 0.0 ? *over / *under : 0.0;
        if (!(length >= shortest) || !(length <= longest_note))
            fail("the length after \":\" must be 0.001 to 1000 quarter notes, such as 1, 1/2 or 0.75");
        length_ = length;
    }

    void take_mark(const std::string& text, TuneNote& note) const {
        const std::size_t equals = text.find('=');
        const std::string key = text.substr(0, equals);
        const std::string value = equals == std::string::npos ? "" : text.substr(equals + 1);
        if (key == "string" && !value.empty()) {
            note.string = value;
        } else if (const auto finger = whole_number_in(value);
                   key == "finger" && finger && *finger >= 0 && *finger <= 4) {
            note.finger = finger;
        } else {
            fail("after a comma stands string=NAME or finger=0 to 4");
        }
    }

    void take_note(const std::string& word) {
        const std::size_t comma = word.find(',');
        const std::string sound = word.substr(0, comma);
        const std::size_t colon = sound.find(':');
        if (colon != std::string::npos) take_length(sound.substr(colon + 1));
        const std::string name = sound.substr(0, colon);
        if (name == "r" && comma == std::string::npos) return advance();
        const auto spelling = spelling_in(name);
        if (!spelling) fail(std::string("is no note; ") + note_example);
        TuneNote note{.spelling = *spelling, .start = now_, .duration = length_, .bar = bar()};
        note.stress = stress_at(metre(), in_bar());
        note.dynamic = dynamic_;
        for (std::size_t at = comma; at != std::string::npos;) {
            const std::size_t next = word.find(',', at + 1);
            take_mark(word.substr(at + 1, next == std::string::npos ? next : next - at - 1), note);
            at = next;
        }
        tune_.notes.push_back(note);
        if (tune_.notes.size() > most_notes) fail("there are more than 20000 notes");
        advance();
    }

    void advance() {
        now_ += length_;
        if (now_ > longest_quarters) fail("the tune is longer than 100000 quarter notes");
    }

    std::string where_;
    std::string place_;
    Tune tune_;
    double now_ = 0.0;
    double length_ = 1.0;
    int first_bar_ = 1;  ///< number of the bar in which the metre begins
    std::string dynamic_;
};

}  // namespace

Tune parse_tune(const std::string& text, const std::string& where) {
    LineReader reader(where);
    std::istringstream lines(text);
    std::string line;
    for (std::size_t number = 1; std::getline(lines, line); ++number) {
        if (line.starts_with('#')) continue;
        std::istringstream words(line);
        std::string word;
        for (std::size_t position = 1; words >> word; ++position) reader.take(word, number, position);
    }
    return std::move(reader).tune();
}

}  // namespace sim::score

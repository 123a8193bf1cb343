// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/musicxml_walk.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"
#include "sim/score/musicxml_signs.hpp"
#include "sim/score/numbers.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <map>

namespace sim::score {
namespace {

constexpr double same_place = 1e-6;  // quarter notes
constexpr double slowest = 5.0;      // quarter notes a minute
constexpr double fastest = 1000.0;

/// What was met and left out, to be told once.
struct LeftOut {
    int graces = 0;
    int cues = 0;
    int chord_notes = 0;
    int unpitched = 0;
    bool repeats = false;
    std::map<std::string, int> voices;  ///< notes of other voices
};

class Walk {
public:
    Walk(std::string where, std::string voice) : where_(std::move(where)), voice_(std::move(voice)) {}

    void take(const BarElement& bar) {
        begin_bar(bar);
        for (const pugi::xml_node element : bar.content.children()) take(element);
        end_bar(bar);
    }

    WalkedScore score(std::vector<std::string> remarks) && {
        if (score_.tune.notes.empty())
            throw analysis::InputError(where_, "voice \"" + one_line(voice_) + "\" holds no notes with a pitch");
        finish_tempos(remarks);
        tell(remarks);
        score_.remarks = std::move(remarks);
        return std::move(score_);
    }

private:
    [[noreturn]] void fail(const std::string& what) const {
        throw analysis::InputError(
            where_ + ", bar " + bar_name_ + (note_in_bar_ > 0 ? ", note " + std::to_string(note_in_bar_) : ""), what);
    }

    void begin_bar(const BarElement& bar) {
        ++bars_;
        bar_name_ = one_line(bar.measure.attribute("number").value());
        if (bar_name_.empty()) bar_name_ = std::to_string(bars_);
        bar_start_ = now_;
        bar_end_ = now_;
        first_in_bar_ = score_.tune.notes.size();
        note_in_bar_ = 0;
        left_out_.repeats = left_out_.repeats || asks_for_repeats(bar.content);
    }

    void end_bar(const BarElement& bar) {
        const double whole = metre_ ? bar_length(*metre_) : 4.0;
        double length = bar_end_ - bar_start_;
        if (length < same_place) length = whole;
        const bool is_upbeat = bars_ == 1 && length < whole - same_place;
        const double before = is_upbeat ? whole - length : 0.0;
        const Metre metre = metre_.value_or(Metre{});
        if (is_upbeat && !score_.tune.metres.empty()) score_.tune.metres.front().start -= before;
        const auto number = whole_number_in(bar.measure.attribute("number").value());
        for (std::size_t i = first_in_bar_; i < score_.tune.notes.size(); ++i) {
            TuneNote& note = score_.tune.notes[i];
            note.bar = number.value_or(bars_);
            note.stress = stress_at(metre, note.start - bar_start_ + before);
        }
        now_ = bar_start_ + length;
        if (now_ > longest_quarters) fail("the score is longer than 100000 quarter notes");
    }

    void take(pugi::xml_node element) {
        const std::string_view name = element.name();
        if (name == "attributes") take_attributes(element);
        if (name == "note") take_note(element);
        if (name == "backup") move(-duration_of(element));
        if (name == "forward") move(duration_of(element));
        if (name == "direction" || name == "sound") take_direction(element);
    }

    void take_attributes(pugi::xml_node attributes) {
        if (attributes.child("divisions")) {
            divisions_ = number_of(attributes, "divisions").value_or(0.0);
            if (!(divisions_ > 0.0) || divisions_ > 1e6) fail("<divisions> must be a number above 0, up to 1000000");
        }
        if (attributes.child("transpose")) transposition_ = transposition_of(attributes);
        if (const auto metre = metre_of(attributes)) {
            metre_ = metre;
            metre_->start = now_;
            std::vector<Metre>& metres = score_.tune.metres;
            if (!metres.empty() && metres.back().start >= now_ - same_place) metres.pop_back();
            metres.push_back(*metre_);
        }
    }

    void take_direction(pugi::xml_node element) {
        for (const pugi::xml_node type : element.children("direction-type"))
            if (const std::string dynamic = dynamic_of(type.child("dynamics")); !dynamic.empty()) dynamic_ = dynamic;
        const auto tempo = tempo_of(element);
        if (!tempo || *tempo == 0.0) return;
        if (!(*tempo >= slowest) || !(*tempo <= fastest))
            fail("the tempo must be from 5 to 1000 quarter notes a minute, is " + number_text(*tempo));
        score_.tune.tempos.push_back({now_, *tempo});
    }

    double duration_of(pugi::xml_node element) const {
        const auto duration = number_of(element, "duration");
        if (!duration || !(*duration >= 0.0)) fail("<duration> must be a number, 0 or more");
        const double quarters = *duration / divisions_;
        if (!(quarters <= longest_note)) fail("lasts longer than 1000 quarter notes");
        return quarters;
    }

    void move(double quarters) {
        now_ += quarters;
        if (now_ < bar_start_ - same_place) fail("<backup> goes back before the beginning of the bar");
        bar_end_ = std::max(bar_end_, now_);
    }

    void take_note(pugi::xml_node note) {
        ++note_in_bar_;
        if (note.child("grace")) {
            ++left_out_.graces;
            return;
        }
        const bool in_chord = !note.child("chord").empty();
        const double length = in_chord ? 0.0 : duration_of(note);
        const double start = now_;
        if (!in_chord) move(length);
        if (note.child("rest")) return;
        const std::string voice = note.child("voice") ? note.child("voice").text().get() : "1";
        if (voice_.empty() && note.child("pitch")) voice_ = voice;
        if (voice != voice_) {
            ++left_out_.voices[voice];
            return;
        }
        if (note.child("cue")) {
            ++left_out_.cues;
            return;
        }
        if (note.child("unpitched")) {
            ++left_out_.unpitched;
            return;
        }
        const auto spelling = pitch_of(note);
        if (!spelling)
            fail("<pitch> must have a step A to G, an octave 0 to 9, and an alter of whole semitones, -2 to 2");
        in_chord ? take_chord_note(note, *spelling) : take_sounding(note, *spelling, {start, length});
    }

    /// Of a chord the highest note is taken.
    void take_chord_note(pugi::xml_node note, const Spelling& written) {
        ++left_out_.chord_notes;
        const Spelling spelling = sounding(written);
        if (score_.tune.notes.empty() || has_tie(note, "stop")) return;
        TuneNote& highest = score_.tune.notes.back();
        if (key_number(spelling) <= key_number(highest.spelling)) return;
        highest.spelling = spelling;
        score_.elements.back().note = note;
        add_fingers(note, highest);
        tied_on_ = has_tie(note, "start");
    }

    Spelling sounding(const Spelling& written) const {
        const Spelling spelling = transposed(written, transposition_);
        if (std::abs(spelling.alter) > 2 || spelling.octave < 0 || spelling.octave > 9)
            fail("<transpose> leads to no usual note");
        return spelling;
    }

    struct Time {
        double start;
        double length;
    };
    void take_sounding(pugi::xml_node element, const Spelling& written, const Time& time) {
        if (!(time.length > 0.0)) fail("a note must last longer than 0");
        std::vector<TuneNote>& notes = score_.tune.notes;
        const Spelling spelling = sounding(written);
        if (!notes.empty() && time.start < notes.back().start + notes.back().duration - same_place)
            fail("two notes sound at once in voice \"" + one_line(voice_) +
                 "\"; a passage is one line of single notes");
        const bool goes_on = tied_on_ && has_tie(element, "stop") && notes.back().spelling == spelling &&
                             std::abs(notes.back().start + notes.back().duration - time.start) < same_place;
        tied_on_ = has_tie(element, "start");
        if (goes_on) {
            notes.back().duration += time.length;
            return;
        }
        for (const pugi::xml_node notations : element.children("notations"))
            if (const std::string own = dynamic_of(notations.child("dynamics")); !own.empty()) dynamic_ = own;
        TuneNote note{.spelling = spelling, .start = time.start, .duration = time.length, .dynamic = dynamic_};
        add_fingers(element, note);
        notes.push_back(note);
        score_.elements.push_back({element, element});
        if (notes.size() > most_notes) fail("there are more than 20000 notes");
    }

    static void add_fingers(pugi::xml_node element, TuneNote& note) {
        note.finger = finger_of(element);
        note.string = string_of(element);
    }

    void finish_tempos(std::vector<std::string>& remarks) {
        constexpr double usual = 60.0;
        std::vector<Tempo>& tempos = score_.tune.tempos;
        std::ranges::stable_sort(tempos, {}, &Tempo::start);
        std::vector<Tempo> last_of_each;
        for (const Tempo& tempo : tempos) {
            if (!last_of_each.empty() && tempo.start < last_of_each.back().start + same_place) last_of_each.pop_back();
            last_of_each.push_back(tempo);
        }
        tempos = std::move(last_of_each);
        if (!tempos.empty() && tempos.front().start < same_place) return;
        if (tempos.empty()) remarks.push_back("No tempo is written; 60 quarter notes a minute were taken.");
        tempos.insert(tempos.begin(), {0.0, usual});
    }

    static std::string notes_words(int count, const char* what) {
        return std::to_string(count) + " " + what + (count == 1 ? " was" : " were") + " left out.";
    }

    void tell(std::vector<std::string>& remarks) const {
        for (const auto& [voice, count] : left_out_.voices)
            remarks.push_back(notes_words(
                count, ("note" + std::string(count == 1 ? "" : "s") + " of voice " + one_line(voice)).c_str()));
        if (left_out_.chord_notes > 0)
            remarks.push_back("Chords: the highest note was taken, " + notes_words(left_out_.chord_notes, "below it"));
        if (left_out_.graces > 0) remarks.push_back("Grace notes: " + notes_words(left_out_.graces, "of them"));
        if (left_out_.cues > 0) remarks.push_back("Cue notes: " + notes_words(left_out_.cues, "of them"));
        if (left_out_.unpitched > 0)
            remarks.push_back("Notes without pitch: " + notes_words(left_out_.unpitched, "of them"));
        if (left_out_.repeats)
            remarks.push_back("Repeats and jumps are not followed: each bar is taken once, as it stands.");
    }

    std::string where_;
    std::string voice_;
    WalkedScore score_;
    LeftOut left_out_;
    double divisions_ = 1.0;
    Transposition transposition_;
    std::optional<Metre> metre_;
    std::string dynamic_;
    double now_ = 0.0;
    double bar_start_ = 0.0;
    double bar_end_ = 0.0;
    int bars_ = 0;
    std::string bar_name_;
    int note_in_bar_ = 0;
    std::size_t first_in_bar_ = 0;
    bool tied_on_ = false;
};

}  // namespace

WalkedScore walk_musicxml(const pugi::xml_document& document, const std::string& where, const Part& part) {
    std::vector<std::string> remarks;
    const std::vector<BarElement> bars = bars_of(document, where, part, remarks);
    Walk walk(where, part.voice);
    for (const BarElement& bar : bars) walk.take(bar);
    WalkedScore score = std::move(walk).score(std::move(remarks));
    const pugi::xml_node root = document.document_element();
    score.tune.title = one_line(root.child("work").child("work-title").text().get());
    if (score.tune.title.empty()) score.tune.title = one_line(root.child("movement-title").text().get());
    return score;
}

ReadTune read_musicxml(const std::string& text, const std::string& where, const Part& part) {
    pugi::xml_document document;
    load_musicxml(document, text, where);
    WalkedScore score = walk_musicxml(document, where, part);
    return {.tune = std::move(score.tune), .remarks = std::move(score.remarks), .document = text, .part = part};
}

}  // namespace sim::score

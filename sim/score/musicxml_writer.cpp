// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/musicxml_marks.hpp"
#include "sim/score/note_values.hpp"
#include "sim/score/write_musicxml.hpp"

#include "sim/text.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace sim::score {
namespace {

std::int64_t exact_ticks(double quarters) { return std::llround(quarters * static_cast<double>(ticks_a_quarter)); }

/// One stretch of a bar: a note, a part of one, or a rest.
struct Stretch {
    std::int64_t start = 0;
    std::int64_t end = 0;
    const TuneNote* note = nullptr;  ///< none: a rest
    std::size_t index = 0;
    bool begins = false;
    bool ends = false;
};

/// A bar with all that lies in it, cut at its lines.
struct Bar {
    int number = 1;
    std::int64_t start = 0;
    std::vector<Stretch> stretches;
};

/// Cuts a tune into bars, times drawn to multiples of `grid` ticks.
class BarCutter {
public:
    BarCutter(const Tune& tune, std::int64_t grid) : tune_(&tune), grid_(grid) {}

    std::int64_t ticks(double quarters) const {
        return std::llround(static_cast<double>(exact_ticks(quarters)) / static_cast<double>(grid_)) * grid_;
    }

    std::size_t metre_at(std::int64_t now) const {
        std::size_t in_force = 0;
        for (std::size_t i = 1; i < tune_->metres.size() && ticks(tune_->metres[i].start) <= now; ++i) in_force = i;
        return in_force;
    }

    std::vector<Bar> bars() const {
        const std::vector<Stretch> all = stretches();
        std::vector<Bar> bars;
        int number = !tune_->metres.empty() && tune_->metres.front().start < 0.0 ? 0 : 1;
        std::size_t next = 0;
        for (std::int64_t now = 0; next < all.size(); now = bar_end(now)) {
            const std::int64_t end = bar_end(now);
            assert(end > now);
            Bar& bar = bars.emplace_back(Bar{number++, now, {}});
            for (; next < all.size() && all[next].start < end; ++next) {
                bar.stretches.push_back(part_of(all[next], now, end));
                if (all[next].end > end) break;
            }
            if (next == all.size() && all.back().end < end)
                bar.stretches.push_back({all.back().end, end, nullptr, 0, true, true});
        }
        return bars;
    }

private:
    static Stretch part_of(Stretch piece, std::int64_t from, std::int64_t to) {
        piece.begins = piece.start >= from;
        piece.ends = piece.end <= to;
        piece.start = std::max(piece.start, from);
        piece.end = std::min(piece.end, to);
        return piece;
    }

    std::vector<Stretch> stretches() const {
        std::vector<Stretch> all;
        std::int64_t now = 0;
        for (std::size_t i = 0; i < tune_->notes.size(); ++i) {
            const TuneNote& note = tune_->notes[i];
            const std::int64_t start = std::max(now, ticks(note.start));
            const std::int64_t end = std::max(start + grid_, ticks(note.start + note.duration));
            if (start > now) all.push_back({now, start, nullptr, 0, true, true});
            all.push_back({start, end, &note, i, true, true});
            now = end;
        }
        return all;
    }

    /// The end of the bar that begins at `now`.
    std::int64_t bar_end(std::int64_t now) const {
        if (tune_->metres.empty()) return now + 4 * ticks_a_quarter;
        const std::size_t i = metre_at(now);
        const std::int64_t length = exact_ticks(bar_length(tune_->metres[i]));
        const std::int64_t end = now == 0 ? ticks(tune_->metres[i].start) + length : now + length;
        return i + 1 < tune_->metres.size() ? std::min(end, ticks(tune_->metres[i + 1].start)) : end;
    }

    const Tune* tune_;
    std::int64_t grid_;
};

/// Whether every note begins and ends on a tick.
bool lies_on_ticks(const Tune& tune) {
    constexpr double rounding = 1e-3;  // ticks
    const auto on_tick = [](double quarters) {
        const double exact = quarters * static_cast<double>(ticks_a_quarter);
        return std::abs(exact - std::round(exact)) < rounding;
    };
    return std::ranges::all_of(tune.notes, [&](const TuneNote& n) { return on_tick(n.start) && on_tick(n.duration); });
}

class Writer {
public:
    Writer(const Tune& tune, std::span<const NoteMarks> marks)
        : tune_(tune), marks_(marks), cutter_(tune, lies_on_ticks(tune) ? 1 : coarse_tick) {}

    std::string text() {
        head();
        for (const Bar& bar : cutter_.bars()) {
            begin_bar(bar.number, bar.start);
            for (const Stretch& stretch : bar.stretches) add(stretch);
        }
        return document_text(document_, true);
    }

private:
    void head() {
        pugi::xml_node declaration = document_.append_child(pugi::node_declaration);
        declaration.append_attribute("version").set_value("1.0");
        declaration.append_attribute("encoding").set_value("UTF-8");
        document_.append_child(pugi::node_doctype)
            .set_value(
                "score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\" "
                "\"http://www.musicxml.org/dtds/partwise.dtd\"");
        pugi::xml_node score = document_.append_child("score-partwise");
        score.append_attribute("version").set_value("4.0");
        if (!tune_.title.empty()) score.append_child("work").append_child("work-title").text().set(tune_.title.c_str());
        pugi::xml_node listed = score.append_child("part-list").append_child("score-part");
        listed.append_attribute("id").set_value("P1");
        listed.append_child("part-name").text().set("Passage");
        part_ = score.append_child("part");
        part_.append_attribute("id").set_value("P1");
    }

    void begin_bar(int number, std::int64_t now) {
        bar_ = part_.append_child("measure");
        bar_.append_attribute("number").set_value(number);
        if (number == 0) bar_.append_attribute("implicit").set_value("yes");
        const bool new_metre =
            !tune_.metres.empty() && (now == 0 || cutter_.ticks(tune_.metres[cutter_.metre_at(now)].start) == now);
        if (now > 0 && !new_metre) return;
        pugi::xml_node attributes = bar_.append_child("attributes");
        if (now == 0) attributes.append_child("divisions").text().set(static_cast<long long>(ticks_a_quarter));
        if (new_metre) {
            const Metre& metre = tune_.metres[cutter_.metre_at(now)];
            pugi::xml_node time = attributes.append_child("time");
            time.append_child("beats").text().set(metre.beats);
            time.append_child("beat-type").text().set(metre.unit);
        }
        if (now == 0) add_clef(attributes);
    }

    /// Bass, alto or treble, by the middle of the notes.
    void add_clef(pugi::xml_node attributes) const {
        std::vector<int> keys;
        for (const TuneNote& note : tune_.notes) keys.push_back(key_number(note.spelling));
        std::ranges::nth_element(keys, keys.begin() + static_cast<std::ptrdiff_t>(keys.size() / 2));
        const int middle = keys[keys.size() / 2];
        constexpr int c3 = 48;
        pugi::xml_node clef = attributes.append_child("clef");
        clef.append_child("sign").text().set(middle < c3 + 7 ? "F" : middle < c3 + 17 ? "C" : "G");
        clef.append_child("line").text().set(middle < c3 + 7 ? 4 : middle < c3 + 17 ? 3 : 2);
    }

    void add_signs_before(const Stretch& piece) {
        while (next_tempo_ < tune_.tempos.size() && cutter_.ticks(tune_.tempos[next_tempo_].start) <= piece.start) {
            const std::string rate = short_number(tune_.tempos[next_tempo_++].quarters_a_minute);
            pugi::xml_node direction = bar_.append_child("direction");
            direction.append_attribute("placement").set_value("above");
            pugi::xml_node mark = direction.append_child("direction-type").append_child("metronome");
            mark.append_child("beat-unit").text().set("quarter");
            mark.append_child("per-minute").text().set(rate.c_str());
            direction.append_child("sound").append_attribute("tempo").set_value(rate.c_str());
        }
        if (piece.note == nullptr || !piece.begins || piece.note->dynamic == dynamic_ || piece.note->dynamic.empty())
            return;
        dynamic_ = piece.note->dynamic;
        pugi::xml_node direction = bar_.append_child("direction");
        direction.append_attribute("placement").set_value("below");
        direction.append_child("direction-type").append_child("dynamics").append_child(dynamic_.c_str());
    }

    void add(const Stretch& piece) {
        add_signs_before(piece);
        const std::vector<NoteValue> values = note_values(piece.end - piece.start);
        assert(!values.empty());
        for (std::size_t k = 0; k < values.size(); ++k) {
            const bool first = k == 0 && piece.begins;
            const bool last = k + 1 == values.size() && piece.ends;
            add_value(piece, values[k], {!first, !last});
        }
    }

    struct Ties {
        bool from_before;
        bool onwards;
    };
    void add_value(const Stretch& piece, const NoteValue& value, const Ties& ties) {
        pugi::xml_node note = bar_.append_child("note");
        if (piece.note == nullptr) {
            note.append_child("rest");
        } else {
            add_pitch(note, piece.note->spelling);
        }
        note.append_child("duration").text().set(static_cast<long long>(value.ticks));
        if (piece.note != nullptr) add_ties(note, "tie", ties);
        note.append_child("voice").text().set("1");
        note.append_child("type").text().set(value.type);
        for (int dot = 0; dot < value.dots; ++dot) note.append_child("dot");
        if (value.actual != 1) {
            pugi::xml_node tuplet = note.append_child("time-modification");
            tuplet.append_child("actual-notes").text().set(value.actual);
            tuplet.append_child("normal-notes").text().set(value.normal);
        }
        if (piece.note == nullptr) return;
        if (ties.from_before || ties.onwards) add_ties(note.append_child("notations"), "tied", ties);
        if (ties.from_before) return;
        add_technical(note, marks_[piece.index]);
        add_words(note, marks_[piece.index].words);
    }

    static void add_pitch(pugi::xml_node note, const Spelling& spelling) {
        pugi::xml_node pitch = note.append_child("pitch");
        pitch.append_child("step").text().set(std::string(1, spelling.step).c_str());
        if (spelling.alter != 0) pitch.append_child("alter").text().set(spelling.alter);
        pitch.append_child("octave").text().set(spelling.octave);
    }

    static void add_ties(pugi::xml_node parent, const char* name, const Ties& ties) {
        if (ties.from_before) parent.append_child(name).append_attribute("type").set_value("stop");
        if (ties.onwards) parent.append_child(name).append_attribute("type").set_value("start");
    }

    const Tune& tune_;
    std::span<const NoteMarks> marks_;
    BarCutter cutter_;
    pugi::xml_document document_;
    pugi::xml_node part_;
    pugi::xml_node bar_;
    std::size_t next_tempo_ = 0;
    std::string dynamic_;
};

}  // namespace

std::string new_musicxml(const Tune& tune, std::span<const NoteMarks> marks) {
    assert(marks.size() == tune.notes.size());
    return Writer(tune, marks).text();
}

}  // namespace sim::score

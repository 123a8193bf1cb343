// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/midi_file.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace sim::score {
namespace {

constexpr int drum_channel = 9;
constexpr std::int64_t longest_ticks = std::int64_t{1} << 40;

/// Bytes one after another; complains where there are no more.
class Bytes {
public:
    Bytes(std::string_view bytes, const std::string& where, std::size_t offset = 0)
        : bytes_(bytes), where_(where), offset_(offset) {}

    [[noreturn]] void fail(const std::string& what) const {
        throw analysis::InputError(where_ + ", byte " + std::to_string(offset_ + at_), what);
    }
    bool done() const { return at_ >= bytes_.size(); }
    int byte() {
        if (done()) fail("the file breaks off; save it anew");
        return static_cast<unsigned char>(bytes_[at_++]);
    }
    int peek() {
        const int next = byte();
        --at_;
        return next;
    }
    std::uint32_t number(int bytes) {
        std::uint32_t value = 0;
        for (int i = 0; i < bytes; ++i) value = value << 8U | static_cast<std::uint32_t>(byte());
        return value;
    }
    /// Seven bits a byte, four bytes at the most.
    std::uint32_t variable() {
        std::uint32_t value = 0;
        for (int i = 0; i < 4; ++i) {
            const int next = byte();
            value = value << 7U | static_cast<std::uint32_t>(next & 0x7f);
            if (next < 0x80) return value;
        }
        fail("a length has more than four bytes; save the file anew");
    }
    std::string_view take(std::size_t count) {
        if (count > bytes_.size() - at_) fail("the file breaks off; save it anew");
        at_ += count;
        return bytes_.substr(at_ - count, count);
    }
    Bytes part(std::size_t count) {
        const std::size_t offset = offset_ + at_;
        return {take(count), where_, offset};
    }

private:
    std::string_view bytes_;
    const std::string& where_;
    std::size_t offset_;
    std::size_t at_ = 0;
};

/// Reads the events of one track.
class TrackReader {
public:
    TrackReader(Bytes bytes, MidiFile& file) : bytes_(bytes), file_(file) {}

    void read() {
        while (!bytes_.done() && !ended_) {
            now_ += bytes_.variable();
            if (now_ > longest_ticks) bytes_.fail("lies too far from the beginning");
            take_event();
        }
        for (std::size_t sound = 0; sound < sounding_.size(); ++sound) end_note(sound);
        std::ranges::stable_sort(track_.notes, {},
                                 [](const MidiNote& note) { return std::pair(note.start, note.key); });
        file_.tracks.push_back(std::move(track_));
    }

private:
    void take_event() {
        int status = bytes_.peek();
        if (status >= 0x80) {
            bytes_.byte();
        } else {
            status = running_;
        }
        if (status == 0) bytes_.fail("an event has no status; save the file anew");
        if (status == 0xff) return take_meta();
        if (status == 0xf0 || status == 0xf7) {
            bytes_.take(bytes_.variable());
            running_ = 0;
            return;
        }
        if (status > 0xf0) bytes_.fail("an event of this kind has no place in a file; save it anew");
        running_ = status;
        take_channel(status);
    }

    void take_channel(int status) {
        const int kind = status & 0xf0;
        const int first = data();
        if (kind == 0xc0 || kind == 0xd0) return;
        const int second = data();
        const int channel = status & 0x0f;
        if (channel == drum_channel || (kind != 0x80 && kind != 0x90)) return;
        const std::size_t sound = static_cast<std::size_t>(channel * 128 + first);
        end_note(sound);
        if (kind == 0x90 && second > 0) sounding_[sound] = MidiNote{now_, now_, first, second};
    }

    int data() {
        const int value = bytes_.byte();
        if (value >= 0x80) bytes_.fail("an event breaks off; save the file anew");
        return value;
    }

    void end_note(std::size_t sound) {
        std::optional<MidiNote>& note = sounding_[sound];
        if (!note) return;
        note->end = now_;
        if (note->end > note->start) track_.notes.push_back(*note);
        note.reset();
    }

    void take_meta() {
        const int kind = bytes_.byte();
        Bytes content = bytes_.part(bytes_.variable());
        running_ = 0;
        if (kind == 0x2f) ended_ = true;
        if (kind == 0x03 && track_.name.empty())
            while (!content.done()) track_.name += static_cast<char>(content.byte());
        if (kind == 0x51) file_.tempos.push_back({now_, static_cast<int>(content.number(3))});
        if (kind == 0x58) {
            const int beats = content.byte();
            file_.metres.push_back({now_, beats, content.byte()});
        }
        if (kind == 0x59 && !has_key_) {
            has_key_ = true;
            file_.sharps = static_cast<std::int8_t>(content.byte());
        }
    }

    Bytes bytes_;
    MidiFile& file_;
    MidiTrack track_;
    std::array<std::optional<MidiNote>, std::size_t{16} * 128> sounding_{};
    std::int64_t now_ = 0;
    int running_ = 0;
    bool ended_ = false;
    bool has_key_ = false;
};

void read_header(Bytes& bytes, MidiFile& file) {
    if (bytes.take(4) != "MThd") bytes.fail("is no standard MIDI file");
    Bytes header = bytes.part(bytes.number(4));
    const std::uint32_t format = header.number(2);
    if (format > 1) header.fail("MIDI files of format 2 hold several tunes; save one as format 0 or 1");
    header.number(2);
    const std::uint32_t division = header.number(2);
    if (division == 0 || division >= 0x8000) header.fail("counts time in film frames; save it in ticks a quarter note");
    file.ticks_a_quarter = static_cast<int>(division);
}

}  // namespace

MidiFile midi_file(std::string_view content, const std::string& where) {
    constexpr std::size_t chunk_head = 8;
    Bytes bytes(content, where);
    MidiFile file;
    read_header(bytes, file);
    while (!bytes.done()) {
        const std::string_view kind = bytes.take(chunk_head / 2);
        Bytes chunk = bytes.part(bytes.number(4));
        if (kind == "MTrk") TrackReader(chunk, file).read();
    }
    std::ranges::stable_sort(file.tempos, {}, &MidiTempo::start);
    std::ranges::stable_sort(file.metres, {}, &MidiMetre::start);
    return file;
}

}  // namespace sim::score

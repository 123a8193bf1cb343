// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/external/sound_bank.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <fstream>
#include <map>
#include <optional>
#include <stdexcept>

namespace tests {
namespace {

using Bytes = std::vector<char>;

/// Numbers with the low byte first, at a place that must lie within.
template <class Number>
Number number_at(const Bytes& bytes, std::size_t at) {
    if (at + sizeof(Number) > bytes.size()) throw std::runtime_error("the sound bank ends too early");
    Number number{};
    std::memcpy(&number, bytes.data() + at, sizeof(Number));  // the machines this runs on have the low byte first too
    return number;
}

std::string text_at(const Bytes& bytes, std::size_t at, std::size_t length) {
    return std::string(bytes.data() + at, ::strnlen(bytes.data() + at, length));
}

/// Where the sample data lie, and the small tables.
struct Chunks {
    std::streamoff samples = 0;
    std::map<std::string, Bytes> tables;
};

Chunks read_chunks(std::ifstream& file) {
    Chunks chunks;
    const auto end = [&] {
        file.seekg(0, std::ios::end);
        return static_cast<std::streamoff>(file.tellg());
    }();
    for (std::streamoff at = 12; at + 8 <= end;) {
        Bytes head(12);
        file.seekg(at);
        file.read(head.data(), 12);
        file.clear();
        const std::string id = text_at(head, 0, 4);
        const auto size = static_cast<std::streamoff>(number_at<std::uint32_t>(head, 4));
        if (id == "LIST") {
            at += 12;  // its parts follow as chunks of their own
            continue;
        }
        if (id == "smpl") chunks.samples = at + 8;
        if (size < (1 << 24) && id != "smpl") {
            Bytes& table = chunks.tables[id];
            table.resize(static_cast<std::size_t>(size));
            file.seekg(at + 8);
            file.read(table.data(), size);
            file.clear();
        }
        at += 8 + size + size % 2;
    }
    return chunks;
}

using Generators = std::map<int, std::int16_t>;
constexpr int instrument_generator = 41, sample_generator = 53, root_key = 58, coarse_tune = 51, fine_tune = 52;

/// The zones first … last - 1 of a bag table; a first zone without `leaf` holds what the others inherit.
struct Zones {
    const Bytes& bags;
    const Bytes& generators;
    int leaf;
};
std::vector<Generators> zones(const Zones& from, std::size_t first, std::size_t last) {
    std::vector<Generators> result;
    Generators inherited;
    for (std::size_t bag = first; bag < last; ++bag) {
        Generators zone = inherited;
        const std::size_t end = number_at<std::uint16_t>(from.bags, 4 * (bag + 1));
        for (std::size_t g = number_at<std::uint16_t>(from.bags, 4 * bag); g < end; ++g)
            zone[number_at<std::uint16_t>(from.generators, 4 * g)] =
                number_at<std::int16_t>(from.generators, 4 * g + 2);
        if (zone.contains(from.leaf))
            result.push_back(zone);
        else if (bag == first)
            inherited = zone;
    }
    return result;
}

std::optional<std::size_t> preset_index(const Bytes& headers, int program) {
    for (std::size_t p = 0; 38 * (p + 1) < headers.size(); ++p)
        if (number_at<std::uint16_t>(headers, 38 * p + 20) == program &&
            number_at<std::uint16_t>(headers, 38 * p + 22) == 0)
            return p;
    return std::nullopt;
}

int value_or(const Generators& zone, int generator, int otherwise) {
    const auto found = zone.find(generator);
    return found == zone.end() ? otherwise : found->second;
}

/// A note of a zone's sample; its samples are added to what is there.
void add_sample(const Chunks& chunks, std::ifstream& file, const Generators& zone,
                std::map<std::string, BankNote>& notes) {
    const Bytes& headers = chunks.tables.at("shdr");
    const std::size_t at = 46 * static_cast<std::size_t>(static_cast<std::uint16_t>(zone.at(sample_generator)));
    std::string name = text_at(headers, at, 20);
    const std::size_t side = name.find_last_of("LR");  // "Cello E3(R)"
    const bool paired = side != std::string::npos && side + 2 == name.size() && name.ends_with(')');
    if (paired) name.resize(side - 1);
    const auto start = number_at<std::uint32_t>(headers, at + 20);
    const auto end = number_at<std::uint32_t>(headers, at + 24);
    const int header_key = static_cast<unsigned char>(headers[at + 40]);
    const int correction = static_cast<signed char>(headers[at + 41]);
    BankNote& note = notes[name];
    std::vector<std::int16_t> samples(end - start);
    file.seekg(chunks.samples + static_cast<std::streamoff>(start) * 2);
    file.read(reinterpret_cast<char*>(samples.data()), static_cast<std::streamsize>(samples.size() * 2));
    note.name = name;
    note.key = value_or(zone, root_key, header_key);
    const double tune = 100.0 * value_or(zone, coarse_tune, 0) + value_or(zone, fine_tune, 0) + correction;
    note.stated_hz = 440.0 * std::exp2((note.key - 69) / 12.0 - tune / 1200.0);
    note.sound.sample_rate = number_at<std::uint32_t>(headers, at + 36);
    const bool mate = paired && !note.sound.samples.empty();
    note.sound.samples.resize(std::max(note.sound.samples.size(), samples.size()));
    for (std::size_t j = 0; j < samples.size(); ++j) {
        const double value = samples[j] / 32768.0;
        note.sound.samples[j] = mate ? 0.5 * (note.sound.samples[j] + value) : value;
    }
}

}  // namespace

std::vector<BankNote> bank_notes(const std::filesystem::path& path, int program) {
    std::ifstream file(path, std::ios::binary);
    if (!file) return {};
    const Chunks chunks = read_chunks(file);
    const auto preset = preset_index(chunks.tables.at("phdr"), program);
    if (!preset) return {};
    const Bytes& presets = chunks.tables.at("phdr");
    const Bytes& instruments = chunks.tables.at("inst");
    std::map<std::string, BankNote> notes;
    std::vector<std::size_t> seen;
    for (const Generators& outer : zones({chunks.tables.at("pbag"), chunks.tables.at("pgen"), instrument_generator},
                                         number_at<std::uint16_t>(presets, 38 * *preset + 24),
                                         number_at<std::uint16_t>(presets, 38 * (*preset + 1) + 24))) {
        const auto i = static_cast<std::size_t>(outer.at(instrument_generator));
        for (const Generators& zone : zones({chunks.tables.at("ibag"), chunks.tables.at("igen"), sample_generator},
                                            number_at<std::uint16_t>(instruments, 22 * i + 20),
                                            number_at<std::uint16_t>(instruments, 22 * (i + 1) + 20))) {
            const auto sample = static_cast<std::size_t>(static_cast<std::uint16_t>(zone.at(sample_generator)));
            if (std::ranges::find(seen, sample) != seen.end()) continue;
            seen.push_back(sample);
            add_sample(chunks, file, zone, notes);
        }
    }
    std::vector<BankNote> result;
    for (auto& [name, note] : notes) {
        note.instrument = text_at(presets, 38 * *preset, 20);
        result.push_back(std::move(note));
    }
    std::ranges::sort(result, {}, &BankNote::stated_hz);
    return result;
}

}  // namespace tests

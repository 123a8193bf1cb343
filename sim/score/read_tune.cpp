// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/read_tune.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"

#include <zip.h>
#include <pugixml.hpp>

#include <array>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string_view>

namespace sim::score {
namespace {

constexpr const char* kinds =
    "give MusicXML (.musicxml, .xml, .mxl), MIDI (.mid), words (.txt), or a line such as \"D4:1 E4:1/2\"";

std::string file_bytes(const std::filesystem::path& file, const std::string& where) {
    std::error_code ignored;
    if (std::filesystem::is_directory(file, ignored))
        throw analysis::InputError(where, std::string("is a folder; ") + kinds);
    std::ifstream in(file, std::ios::binary);
    std::string bytes(most_bytes + 1, '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (!in.is_open() || in.bad()) throw analysis::InputError(where, std::string("can't be read; ") + kinds);
    bytes.resize(static_cast<std::size_t>(in.gcount()));
    if (bytes.size() > most_bytes)
        throw analysis::InputError(where, "is larger than 20 MB; no single line of music is");
    return bytes;
}

/// An archive held in memory.
class Archive {
public:
    Archive(const std::string& bytes, std::string where) : where_(std::move(where)) {
        zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, nullptr);
        zip_.reset(source != nullptr ? zip_open_from_source(source, ZIP_RDONLY, nullptr) : nullptr);
        if (zip_ == nullptr) {
            if (source != nullptr) zip_source_free(source);
            throw analysis::InputError(where_, "is no compressed MusicXML: its archive can't be opened");
        }
    }

    /// A file of it, not larger than `most` once unpacked, whatever its heading claims.
    std::string content(const std::string& name, std::size_t most) const {
        const std::unique_ptr<zip_file_t, decltype(&zip_fclose)> file(zip_fopen(zip_.get(), name.c_str(), 0),
                                                                      &zip_fclose);
        if (file == nullptr)
            throw analysis::InputError(where_, "the archive holds no readable \"" + one_line(name) + "\"");
        std::string text;
        std::array<char, 65536> block{};
        for (zip_int64_t got = 0; (got = zip_fread(file.get(), block.data(), block.size())) != 0;) {
            if (got < 0) throw analysis::InputError(where_, "\"" + one_line(name) + "\" in the archive is damaged");
            text.append(block.data(), static_cast<std::size_t>(got));
            if (text.size() > most)
                throw analysis::InputError(where_, "\"" + one_line(name) + "\" in the archive is larger than " +
                                                       std::to_string(most / 1'000'000) + " MB unpacked");
        }
        return text;
    }

private:
    std::string where_;
    std::unique_ptr<zip_t, decltype(&zip_discard)> zip_{nullptr, &zip_discard};
};

/// The score's name in the archive, as its container says.
std::string score_name(const std::string& container, const std::string& where) {
    pugi::xml_document document;
    const bool parsed = document.load_buffer(container.data(), container.size());
    for (const pugi::xml_node root : document.child("container").child("rootfiles").children("rootfile")) {
        const std::string_view type = root.attribute("media-type").value();
        if (type.empty() || type.starts_with("application/vnd.recordare.musicxml"))
            return root.attribute("full-path").value();
    }
    throw analysis::InputError(where + ", META-INF/container.xml",
                               parsed ? "names no MusicXML score" : "is no well-formed XML");
}

bool names_a_file(const std::string& text) {
    std::error_code ignored;
    if (std::filesystem::exists(text, ignored)) return true;
    const std::string ending = std::filesystem::path(text).extension().string();
    return text.find(' ') == std::string::npos && (ending == ".musicxml" || ending == ".xml" || ending == ".mxl" ||
                                                   ending == ".mid" || ending == ".midi" || ending == ".txt");
}

}  // namespace

std::string unpacked_musicxml(const std::string& bytes, const std::string& where) {
    constexpr std::size_t most_container = 1'000'000;
    const Archive archive(bytes, where);
    return archive.content(score_name(archive.content("META-INF/container.xml", most_container), where), most_bytes);
}

ReadTune read_tune(const std::string& file_or_line, const Part& part) {
    if (!names_a_file(file_or_line))
        return {.tune = parse_tune(file_or_line, "TUNE"), .remarks = {}, .document = {}, .part = {}};
    const std::string where = one_line(file_or_line);
    std::error_code ignored;
    if (!std::filesystem::exists(file_or_line, ignored))
        throw analysis::InputError(where, std::string("no such file; ") + kinds);
    const std::string bytes = file_bytes(file_or_line, where);
    const std::string_view head = bytes;
    const std::string ending = std::filesystem::path(file_or_line).extension().string();
    if (head.starts_with("PK")) return read_musicxml(unpacked_musicxml(bytes, where), where, part);
    if (head.starts_with("MThd") || ending.starts_with(".mid")) return read_midi(bytes, where, part);
    if (ending == ".mxl") return read_musicxml(unpacked_musicxml(bytes, where), where, part);
    if (ending == ".txt") return {.tune = parse_tune(bytes, where), .remarks = {}, .document = {}, .part = {}};
    return read_musicxml(bytes, where, part);
}

}  // namespace sim::score

// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/sound_header.hpp"

#include <array>
#include <cstring>
#include <fstream>
#include <string_view>

namespace fs = std::filesystem;

namespace analysis {
namespace {

constexpr std::uint32_t unknown_from = 0x7FFF0000U;  // bytes; what pipes write lies above

std::uint32_t number(const unsigned char* bytes, bool low_first) {
    std::uint32_t result = 0;
    for (std::size_t k = 0; k < 4; ++k) result = result * 256 + bytes[low_first ? 3 - k : k];
    return result;
}

}  // namespace

SoundHeader sound_header(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::array<char, 12> head{};
    SoundHeader header;
    if (!file.read(head.data(), head.size())) return header;
    const bool wav = std::memcmp(head.data(), "RIFF", 4) == 0 && std::memcmp(head.data() + 8, "WAVE", 4) == 0;
    const bool aiff = std::memcmp(head.data(), "FORM", 4) == 0 && std::memcmp(head.data() + 8, "AIF", 3) == 0;
    if (!wav && !aiff) return header;
    const std::uint64_t end = fs::file_size(path);
    // A chunk's name and size, and as much of it as the sample rate needs.
    std::array<unsigned char, 16> chunk{};
    for (std::uint64_t at = 12; file.seekg(static_cast<std::streamoff>(at));) {
        file.read(reinterpret_cast<char*>(chunk.data()), chunk.size());
        if (file.gcount() < 8) break;
        file.clear();
        const std::uint64_t size = number(chunk.data() + 4, wav);
        at += 8;
        if (wav && std::memcmp(chunk.data(), "fmt ", 4) == 0) header.sample_rate = number(chunk.data() + 12, true);
        if (std::memcmp(chunk.data(), wav ? "data" : "SSND", 4) == 0) {
            const bool beyond = at + size > end;
            header.length_unknown = size >= unknown_from && beyond;
            if (size > 0 && size < unknown_from && beyond) header.bytes_missing = at + size - end;
            break;
        }
        at += size + size % 2;
    }
    return header;
}

std::string compressed_kind(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::array<char, 12> head{};
    file.read(head.data(), head.size());
    const std::string_view bytes(head.data(), static_cast<std::size_t>(file.gcount()));
    if (bytes.size() >= 12 && bytes.substr(4, 4) == "ftyp") return "MPEG-4 (m4a, as phones record)";
    if (bytes.starts_with("#!AMR")) return "AMR (as phones record speech)";
    if (bytes.starts_with("\x1A\x45\xDF\xA3")) return "WebM or Matroska";
    if (bytes.starts_with("\x30\x26\xB2\x75")) return "Windows Media";
    if (bytes.starts_with("\xFF\xF1") || bytes.starts_with("\xFF\xF9")) return "AAC";
    return "";
}

}  // namespace analysis

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace analysis {

/// A file that appears whole or not at all: written beside its place under another name, then moved there.
///
/// The folder must exist.  The constructor throws OutputError if a file can't be made there, so a command can
/// find out before it computes.  Without `commit` nothing is left behind.
class OutputFile {
public:
    explicit OutputFile(std::filesystem::path place);
    ~OutputFile();
    OutputFile(const OutputFile&) = delete;
    OutputFile& operator=(const OutputFile&) = delete;
    OutputFile(OutputFile&& other) noexcept;
    OutputFile& operator=(OutputFile&&) = delete;

    /// Where to write meanwhile: same folder, same ending.
    const std::filesystem::path& temporary() const { return temporary_; }
    const std::filesystem::path& place() const { return place_; }

    /// Moves the written file to its place; throws OutputError if that fails.
    void commit();

private:
    std::filesystem::path place_;
    std::filesystem::path temporary_;
    bool open_ = true;
};

/// Writes `text` to `place`, whole or not at all; throws OutputError.
void write_text_file(const std::filesystem::path& place, std::string_view text);

}  // namespace analysis

// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/output_file.hpp"

#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"

#include <fcntl.h>
#include <unistd.h>
#include <cerrno>
#include <random>
#include <system_error>
#include <utility>

namespace fs = std::filesystem;

namespace analysis {
namespace {

[[noreturn]] void fail(const fs::path& place, const std::string& why) { throw OutputError(place.string(), why); }

std::string reason(int error) { return std::generic_category().message(error); }

/// Only plain files are replaced: renaming over a device or a folder would do harm or fail late.
void require_replaceable(const fs::path& place) {
    if (place.empty()) fail("output file", "has no name");
    std::error_code error;
    const fs::file_status status = fs::status(place, error);
    if (status.type() == fs::file_type::directory || !place.has_filename()) fail(place, "is a folder, not a file");
    if (status.type() == fs::file_type::not_found) return;
    if (error) fail(place, "can't be written: " + error.message());
    if (status.type() != fs::file_type::regular) fail(place, "is not a plain file, so it can't be replaced");
    if (::access(place.c_str(), W_OK) != 0) fail(place, "can't be written: " + reason(errno));
}

/// Behind a symbolic link the file itself is replaced, so that the link stays one.
fs::path behind_links(const fs::path& place) {
    std::error_code error;
    if (!fs::is_symlink(place, error)) return place;
    const fs::path target = fs::canonical(place, error);
    return error ? place : target;
}

/// Makes an empty file beside `place` whose name nobody else has; the ending is kept, since libraries pick by it.
/// Hidden, and short whatever the length of the name.
fs::path make_temporary(const fs::path& place) {
    std::random_device random;
    for (int attempt = 0; attempt < 100; ++attempt) {
        const std::string name = ".part-" + std::to_string(random()) + place.extension().string();
        const fs::path temporary = place.parent_path() / name;
        const int file = ::open(temporary.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0666);
        if (file >= 0) {
            ::close(file);
            return temporary;
        }
        if (errno != EEXIST) break;
    }
    fail(place, "can't be written in this folder: " + reason(errno));
}

bool write_all(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

}  // namespace

OutputFile::OutputFile(fs::path place) {
    require_replaceable(place);
    place_ = behind_links(place);
    temporary_ = make_temporary(place_);
    std::error_code error;
    const fs::file_status before = fs::status(place_, error);
    if (fs::exists(before)) fs::permissions(temporary_, before.permissions(), error);
}

OutputFile::~OutputFile() {
    std::error_code error;
    if (open_) fs::remove(temporary_, error);
}

OutputFile::OutputFile(OutputFile&& other) noexcept
    : place_(std::move(other.place_)),
      temporary_(std::move(other.temporary_)),
      open_(std::exchange(other.open_, false)) {}

void OutputFile::commit() {
    std::error_code error;
    fs::rename(temporary_, place_, error);
    if (error) fail(place_, "can't be written: " + error.message());
    open_ = false;
}

void write_bytes(const OutputFile& file, std::string_view bytes) {
    const int descriptor = ::open(file.temporary().c_str(), O_WRONLY | O_TRUNC | O_CLOEXEC);
    if (descriptor < 0) fail(file.place(), "can't be written: " + reason(errno));
    const bool written = write_all(descriptor, bytes);
    const int error = errno;
    // Some file systems report a full disk only now.
    const bool closed = ::close(descriptor) == 0;
    if (!written) fail(file.place(), "can't be written: " + reason(error));
    if (!closed) fail(file.place(), "can't be written: " + reason(errno));
}

void write_text_file(const fs::path& place, std::string_view text) {
    OutputFile file(place);
    write_bytes(file, text);
    file.commit();
}

}  // namespace analysis

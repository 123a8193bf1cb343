// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>
#include <string>

namespace analysis {

/// Something that came from outside (a file, an option, a combination of them) can't be used.
///
/// The text is one line, "where: what", and says what would be accepted.  Only the command line's
/// main (exit 2) and the desktop's jobs catch it.
class InputError : public std::runtime_error {
public:
    InputError(const std::string& where, const std::string& what);

    const std::string& where() const { return where_; }

private:
    std::string where_;
};

/// Asked rightly, but it could not be done: a full disk, a folder that can't be written (exit 1).
class OutputError : public std::runtime_error {
public:
    OutputError(const std::string& where, const std::string& what);
};

}  // namespace analysis

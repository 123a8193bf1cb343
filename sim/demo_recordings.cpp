// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/demo_recordings.hpp"

namespace sim {

namespace fs = std::filesystem;

fs::path find_recording(const std::string& name_or_path) {
    std::error_code ignored;
    if (fs::exists(name_or_path, ignored) || fs::path(name_or_path).has_parent_path()) return name_or_path;
    const fs::path programs = fs::read_symlink("/proc/self/exe", ignored).parent_path();
    fs::path folder = programs.parent_path() / "share" / "bowband" / "recordings";
#ifdef BOWBAND_RECORDINGS_DIR
    if (!fs::is_directory(folder, ignored)) folder = BOWBAND_RECORDINGS_DIR;
#endif
    const fs::path shipped = folder / name_or_path;
    return !name_or_path.empty() && fs::exists(shipped, ignored) ? shipped : fs::path(name_or_path);
}

}  // namespace sim

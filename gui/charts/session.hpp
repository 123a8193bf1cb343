// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

namespace gui::charts {

/// What drawing needs, for a program without a window; where a QApplication stands already, nothing.
///
/// One at a time, in the main thread, alive while charts are drawn.  No display is used.  Qt's warnings are held back,
/// numbers keep the C locale, and what was set meanwhile in the environment is taken back at the end.
/// OutputError if no font is installed, since letters would be empty boxes.
class ChartSession {
public:
    ChartSession();
    ~ChartSession();
    ChartSession(const ChartSession&) = delete;
    ChartSession& operator=(const ChartSession&) = delete;

private:
    struct Offscreen;
    std::unique_ptr<Offscreen> offscreen_;
};

}  // namespace gui::charts

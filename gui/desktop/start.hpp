// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace gui {

/// The program with its window; what it leaves with: 0, or 1 where no window or no preset can be had.
int run_desktop(int count, char** words);

}  // namespace gui

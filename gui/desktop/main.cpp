// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/desktop/start.hpp"

int main(int count, char** words) { return gui::run_desktop(count, words); }

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/view/stage_view.hpp"

namespace gui {

/// Where things stand on the stage, px; everything follows the height of a line of text.
struct StageView::Rows {
    Rows(QSize room, double text_height)
        : line(text_height),
          left(3.0 * line),
          right(room.width() - 3.0 * line),
          marks(0.3 * line),
          note(1.4 * line),
          board_top(2.8 * line),
          board_height(3.2 * line),
          string(board_top + board_height / 2.0),
          bow_height(4.2 * line),
          ruler(board_top + board_height + 0.7 * line),
          words(ruler + 2.2 * line) {}

    static int height(double text_height) { return static_cast<int>(12.0 * text_height); }

    double line;  ///< of text
    double left;
    double right;
    double marks;  ///< names of the marks
    double note;   ///< name of the note over the finger
    double board_top;
    double board_height;
    double string;
    double bow_height;
    double ruler;
    double words;  ///< two lines
};

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

namespace gui {

/// Three steps for who opens the window for the first time, over the page; goes away at a button or Escape.
class FirstSteps : public QFrame {
    Q_OBJECT

public:
    explicit FirstSteps(QWidget* parent = nullptr);

signals:
    void done();

protected:
    void keyPressEvent(QKeyEvent* event) override;
};

}  // namespace gui

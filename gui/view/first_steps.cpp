// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/first_steps.hpp"

#include "gui/view/words.hpp"

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace gui {

FirstSteps::FirstSteps(QWidget* parent) : QFrame(parent) {
    setFrameShape(QFrame::StyledPanel);
    setAccessibleName(tr("First steps"));
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(24, 18, 24, 18);
    const auto add = [&](const QString& text) {
        auto* label = new QLabel(text);
        label->setWordWrap(true);
        rows->addWidget(label);
        return label;
    };
    QLabel* title = add(tr("Hear the tone fail and come back, in three steps"));
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * 1.4);
    large.setBold(true);
    title->setFont(large);
    add(tr("1.  Press B: the bow is drawn over the open string, at its best place."));
    add(
        tr("2.  Drag the finger on the drawn string up to the middle or beyond. The bow is left behind: the tone grows "
           "weak, goes flat, or breaks."));
    add(tr("3.  Press F: the bow follows to where this note wants it, nearer the bridge. The tone comes back."));
    add(Words::listening_caution());
    auto* ready = new QPushButton(tr("Be&gin"));
    ready->setDefault(true);
    rows->addWidget(ready, 0, Qt::AlignLeft);
    rows->addStretch(1);
    connect(ready, &QPushButton::clicked, this, &FirstSteps::done);
    setFocusProxy(ready);
}

void FirstSteps::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        emit done();
    else
        QFrame::keyPressEvent(event);
}

}  // namespace gui

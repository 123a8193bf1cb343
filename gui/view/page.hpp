// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/export.hpp"

#include <QString>
#include <QWidget>

#include <memory>
#include <vector>

class QPrinter;

namespace gui {

class Desk;

/// One task around the stage.  To add a page: derive from this, and name it in pages.cpp.
class Page : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    /// In the row of pages; & before the letter for the keyboard.
    virtual QString title() const = 0;
    /// One sentence on what the page is for.
    virtual QString purpose() const = 0;
    /// Whether the page is the one looked at; work for a page nobody looks at is not done.
    virtual void set_looked_at(bool /*looked_at*/) {}
    /// What can be exported now.
    virtual std::vector<Export> exports() const { return {}; }
    virtual bool can_print() const { return false; }
    virtual void print(QPrinter& /*printer*/) const {}
};

/// The pages of the window, in their order.
std::vector<std::unique_ptr<Page>> make_pages(Desk& desk);

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/view/desk.hpp"
#include "gui/view/page.hpp"

#include <QMainWindow>

class QComboBox;
class QDoubleSpinBox;
class QMenu;
class QPrinter;
class QTabWidget;

namespace gui {

class FirstSteps;
class StageView;

/// The window: the stage on top, the pages around it, and the instrument's files.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    MainWindow(Desk& desk, QWidget* parent = nullptr);

    StageView& stage() { return *stage_; }
    std::vector<Page*> pages() const;
    void show_page(int index);
    void show_first_steps();
    /// Opens a preset unless the guard of unsaved changes says no.
    bool open(const QString& file);
    /// Writes one of the page's exports; a message where it can't.
    bool write(const Export& wanted, const QString& file);
    void print_page(QPrinter& printer);

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    QWidget* note_row();
    void add_pages();
    void add_menus();
    void add_file_menu();
    void add_instruments(QMenu& menu);
    void add_sound_menu();
    void add_view_menu();
    void add_help_menu();
    void wire();
    void fill_strings();
    void show_note();
    void fill_recent(QMenu& menu);
    void fill_exports(QMenu& menu);
    void tell_title();
    void tell_wrong(const QString& title, const QString& message);
    /// False: the user wants to keep what is there.
    bool may_leave_changes();
    bool save();
    bool save_as();
    void ask_open();
    void ask_print();
    void about();
    Page* page() const;

    Desk* desk_;
    StageView* stage_;
    QTabWidget* tabs_;
    QComboBox* string_;
    QDoubleSpinBox* stop_;
    FirstSteps* steps_ = nullptr;
    bool showing_ = false;
};

}  // namespace gui

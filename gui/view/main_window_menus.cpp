// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/dress.hpp"
#include "gui/view/main_window.hpp"
#include "gui/view/words.hpp"

#include <QActionGroup>
#include <QApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenuBar>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>

#include <exception>

namespace gui {

void MainWindow::add_menus() {
    add_file_menu();
    QMenu* edit = menuBar()->addMenu(tr("&Edit"));
    QAction* undo = desk_->instrument.undo().createUndoAction(this, tr("&Undo"));
    undo->setShortcut(QKeySequence::Undo);
    QAction* redo = desk_->instrument.undo().createRedoAction(this, tr("&Redo"));
    redo->setShortcut(QKeySequence::Redo);
    edit->addAction(undo);
    edit->addAction(redo);
    add_sound_menu();
    add_view_menu();
    add_help_menu();
}

void MainWindow::add_file_menu() {
    QMenu* file = menuBar()->addMenu(tr("&File"));
    add_instruments(*file->addMenu(tr("&New from a preset")));
    file->addAction(tr("&Open …"), QKeySequence::Open, this, &MainWindow::ask_open);
    QMenu* recent = file->addMenu(tr("Open &recent"));
    connect(recent, &QMenu::aboutToShow, this, [this, recent] { fill_recent(*recent); });
    file->addSeparator();
    file->addAction(tr("&Save"), QKeySequence::Save, this, &MainWindow::save);
    file->addAction(tr("Save &as …"), QKeySequence::SaveAs, this, &MainWindow::save_as);
    file->addSeparator();
    QMenu* exports = file->addMenu(tr("&Export from this page"));
    connect(exports, &QMenu::aboutToShow, this, [this, exports] { fill_exports(*exports); });
    file->addAction(tr("&Print this page …"), QKeySequence::Print, this, &MainWindow::ask_print);
    file->addSeparator();
    file->addAction(tr("&Quit"), QKeySequence::Quit, this, &QWidget::close);
}

void MainWindow::add_instruments(QMenu& menu) {
    for (const ShippedPreset& preset : shipped())
        menu.addAction(preset.name, this, [this, name = preset.short_name] {
            if (may_leave_changes()) desk_->instrument.start_from(name);
        });
}

void MainWindow::add_sound_menu() {
    QMenu* sound = menuBar()->addMenu(tr("&Bow"));
    QAction* bow = sound->addAction(tr("&Bow on the string"));
    bow->setCheckable(true);
    bow->setShortcut(QKeySequence(Qt::Key_B));
    connect(bow, &QAction::triggered, desk_, &Desk::play_live);
    connect(&desk_->live, &LiveBow::sounding_changed, bow, &QAction::setChecked);
    connect(&desk_->live, &LiveBow::failed, bow, [bow] { bow->setChecked(false); });
    QAction* follows = sound->addAction(tr("Bow &follows the finger"));
    follows->setCheckable(true);
    follows->setShortcut(QKeySequence(Qt::Key_F));
    connect(follows, &QAction::triggered, &desk_->guide, &BowGuide::change_way);
    connect(&desk_->selection, &Selection::bow_way_changed, follows,
            [follows](BowWay way) { follows->setChecked(way == BowWay::follows); });
}

void MainWindow::add_view_menu() {
    QMenu* view = menuBar()->addMenu(tr("&View"));
    auto* themes = new QActionGroup(this);
    const QString chosen = desk_->settings.value("theme", "system").toString();
    const auto add = [&](const QString& words, const QString& key, Theme theme) {
        QAction* action = view->addAction(words);
        action->setCheckable(true);
        action->setChecked(key == chosen);
        themes->addAction(action);
        connect(action, &QAction::triggered, this, [this, key, theme] {
            desk_->settings.setValue("theme", key);
            apply_theme(*qobject_cast<QApplication*>(QCoreApplication::instance()), theme);
        });
    };
    add(tr("As the &system has it"), "system", Theme::system);
    add(tr("&Light"), "light", Theme::light);
    add(tr("&Dark"), "dark", Theme::dark);
}

void MainWindow::add_help_menu() {
    QMenu* help = menuBar()->addMenu(tr("&Help"));
    help->addAction(tr("&First steps"), QKeySequence::HelpContents, this, &MainWindow::show_first_steps);
    help->addAction(tr("&About Bowband"), this, &MainWindow::about);
}

void MainWindow::about() {
    QMessageBox::about(
        this, tr("About Bowband"),
        tr("Bowband %1\n\nWhere the bow must go for a note to speak, by simulation. The shipped instruments are "
           "working "
           "proposals, not measurements; expect single notes to come out differently on a real one.\n\n%2\n\nHigh "
           "positions strain hand and shoulder: rest, stop on pain. Nothing here is medical advice.\n\nFree software "
           "under GPL-3.0-or-later.")
            .arg(QStringLiteral(BOWBAND_VERSION), Words::listening_caution()));
}

void MainWindow::fill_recent(QMenu& menu) {
    menu.clear();
    const QStringList files = desk_->recent.files();
    for (const QString& file : files)
        menu.addAction(QFileInfo(file).fileName(), this, [this, file] { open(file); })->setToolTip(file);
    if (files.isEmpty()) menu.addAction(tr("none yet"))->setEnabled(false);
}

void MainWindow::fill_exports(QMenu& menu) {
    menu.clear();
    const std::vector<Export> all = page()->exports();
    for (const Export& one : all) {
        menu.addAction(one.name + " …", this, [this, one] {
            const QString file =
                QFileDialog::getSaveFileName(this, one.name, QDir::homePath() + "/" + one.file_name, one.endings);
            if (!file.isEmpty()) write(one, file);
        });
    }
    if (all.empty()) menu.addAction(tr("nothing to export on this page yet"))->setEnabled(false);
}

bool MainWindow::write(const Export& wanted, const QString& file) {
    try {
        wanted.write(file.toStdString());
    } catch (const std::exception& wrong) {
        tell_wrong(wanted.name, tr("Nothing was written.\n%1").arg(QString::fromUtf8(wrong.what())));
        return false;
    }
    emit desk_->done(tr("%1 is in %2").arg(wanted.name, file));
    return true;
}

bool MainWindow::may_leave_changes() {
    if (!desk_->instrument.unsaved()) return true;
    const auto answer = QMessageBox::warning(
        this, tr("Unsaved changes"), tr("%1 has changes that are not saved.").arg(desk_->instrument.title()),
        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
    if (answer == QMessageBox::Save) return save();
    return answer == QMessageBox::Discard;
}

bool MainWindow::open(const QString& file) { return may_leave_changes() && desk_->instrument.open(file); }

void MainWindow::ask_open() {
    const QString file =
        QFileDialog::getOpenFileName(this, tr("Open a preset"), QDir::homePath(), tr("Presets (*.json)"));
    if (!file.isEmpty()) open(file);
}

bool MainWindow::save() {
    return desk_->instrument.file().isEmpty() ? save_as() : desk_->instrument.save(desk_->instrument.file());
}

bool MainWindow::save_as() {
    const QString file = QFileDialog::getSaveFileName(this, tr("Save the instrument"),
                                                      QDir::homePath() + "/my_instrument.json", tr("Presets (*.json)"));
    return !file.isEmpty() && desk_->instrument.save(file);
}

void MainWindow::ask_print() {
    if (!page()->can_print()) {
        emit desk_->done(tr("This page has no chart to print yet; the climb and the window have."));
        return;
    }
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageOrientation(QPageLayout::Landscape);
    QPrintDialog dialogue(&printer, this);
    if (dialogue.exec() == QDialog::Accepted) print_page(printer);
}

void MainWindow::print_page(QPrinter& printer) {
    page()->print(printer);
    emit desk_->done(tr("Printed."));
}

}  // namespace gui

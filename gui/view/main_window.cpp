// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/main_window.hpp"

#include "gui/model/screen_text.hpp"
#include "gui/view/first_steps.hpp"
#include "gui/view/stage_view.hpp"

#include <QCloseEvent>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QDragEnterEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QStatusBar>
#include <QTabWidget>
#include <QVBoxLayout>

namespace gui {
namespace {

constexpr int message_ms = 8000;

/// The one local .json file of a drag, or nothing.
QString dragged_file(const QMimeData& data) {
    if (data.urls().size() != 1) return {};
    const QString file = data.urls().front().toLocalFile();
    return file.endsWith(".json", Qt::CaseInsensitive) ? file : QString();
}

}  // namespace

MainWindow::MainWindow(Desk& desk, QWidget* parent)
    : QMainWindow(parent),
      desk_(&desk),
      stage_(new StageView(desk.selection, desk.bands, desk.guide)),
      tabs_(new QTabWidget),
      string_(new QComboBox),
      stop_(new QDoubleSpinBox) {
    auto* middle = new QWidget;
    auto* rows = new QVBoxLayout(middle);
    rows->setContentsMargins(8, 4, 8, 4);
    rows->addWidget(note_row());
    rows->addWidget(stage_);
    rows->addWidget(tabs_, 1);
    setCentralWidget(middle);
    add_pages();
    add_menus();
    setAcceptDrops(true);
    wire();
    fill_strings();
    show_note();
    tell_title();
    statusBar()->setAccessibleName(tr("What was done last"));
}

QWidget* MainWindow::note_row() {
    auto* row = new QWidget;
    row->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    auto* columns = new QHBoxLayout(row);
    columns->setContentsMargins(0, 0, 0, 0);
    const auto add = [&](const QString& words, QWidget* widget, const QString& meaning) {
        auto* name = new QLabel(words);
        name->setBuddy(widget);
        widget->setToolTip(meaning);
        columns->addWidget(name);
        columns->addWidget(widget);
        columns->addSpacing(16);
    };
    string_->setAccessibleName(tr("String"));
    string_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    add(tr("St&ring"), string_, tr("The string that is bowed, with the pitch it is tuned to."));
    stop_->setAccessibleName(tr("Stop in semitones"));
    stop_->setDecimals(2);
    stop_->setKeyboardTracking(false);
    add(tr("S&top, semitones"), stop_, tr("Stop: how many semitones the finger stands above the open string."));
    columns->addStretch(1);
    return row;
}

void MainWindow::add_pages() {
    for (auto& page : make_pages(*desk_)) {
        const QString title = page->title();
        const int index = tabs_->addTab(page.get(), title);
        tabs_->setTabToolTip(index, page->purpose());
        page.release();  // the tabs own it now
    }
    tabs_->setAccessibleName(tr("Pages"));
    connect(tabs_, &QTabWidget::currentChanged, this, &MainWindow::show_page);
    show_page(0);
}

std::vector<Page*> MainWindow::pages() const {
    std::vector<Page*> all;
    for (int i = 0; i < tabs_->count(); ++i) all.push_back(qobject_cast<Page*>(tabs_->widget(i)));
    return all;
}

Page* MainWindow::page() const { return qobject_cast<Page*>(tabs_->currentWidget()); }

void MainWindow::show_page(int index) {
    tabs_->setCurrentIndex(index);
    const std::vector<Page*> all = pages();
    for (std::size_t i = 0; i < all.size(); ++i) all[i]->set_looked_at(static_cast<int>(i) == index);
}

void MainWindow::wire() {
    Selection& selection = desk_->selection;
    connect(&selection, &Selection::instrument_changed, this, &MainWindow::fill_strings);
    connect(&selection, &Selection::stop_changed, this, &MainWindow::show_note);
    connect(string_, &QComboBox::currentIndexChanged, this, [this](int index) {
        if (!showing_) desk_->selection.set_string_index(index);
    });
    connect(stop_, &QDoubleSpinBox::valueChanged, this, [this](double stop) {
        if (!showing_) desk_->selection.set_stop(stop);
    });
    connect(&desk_->instrument, &Instrument::title_changed, this, &MainWindow::tell_title);
    connect(desk_, &Desk::wrong, this, &MainWindow::tell_wrong);
    connect(desk_, &Desk::done, this, [this](const QString& what) { statusBar()->showMessage(what, message_ms); });
}

void MainWindow::fill_strings() {
    showing_ = true;
    string_->clear();
    for (const sim::PresetString& one : desk_->selection.preset()->strings)
        string_->addItem(tr("%1 (%2)").arg(QString::fromStdString(one.name), QString::fromStdString(one.pitch)));
    string_->setCurrentIndex(desk_->selection.string_index());
    showing_ = false;
}

void MainWindow::show_note() {
    showing_ = true;
    stop_->setRange(0.0, desk_->selection.last_stop());
    stop_->setValue(desk_->selection.stop());
    showing_ = false;
}

void MainWindow::tell_title() {
    setWindowTitle(tr("%1[*] – Bowband").arg(desk_->instrument.title()));
    setWindowModified(desk_->instrument.unsaved());
}

void MainWindow::tell_wrong(const QString& title, const QString& message) {
    auto* box = new QMessageBox(QMessageBox::Warning, title, message, QMessageBox::Ok, this);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->open();  // nothing waits for it
}

void MainWindow::show_first_steps() {
    if (steps_ != nullptr) return;
    steps_ = new FirstSteps;
    qobject_cast<QVBoxLayout*>(centralWidget()->layout())->addWidget(steps_, 1);
    tabs_->hide();
    steps_->setFocus();
    connect(steps_, &FirstSteps::done, this, [this] {
        steps_->deleteLater();
        steps_ = nullptr;
        tabs_->show();
        show_page(0);
        stage_->setFocus();
    });
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!may_leave_changes()) return event->ignore();
    desk_->play_live(false);
    desk_->takes.stop();
    desk_->settings.setValue("window_geometry", saveGeometry());
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!dragged_file(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) { open(dragged_file(*event->mimeData())); }

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/strings_page.hpp"

#include "gui/charts/gauge_answers.hpp"
#include "gui/view/desk.hpp"
#include "gui/view/strip_exports.hpp"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace gui {
namespace {

constexpr double most_raised = 3.0;  // semitones

enum What { thinner_to_thicker, other_materials, whole_set };

}  // namespace

StringsPage::StringsPage(Desk& desk, QWidget* parent)
    : StringsPage(desk, new StringsStudy(desk.selection, usual_threads()), parent) {}

StringsPage::StringsPage(Desk& desk, StringsStudy* study, QWidget* parent)
    : StudyPage(*study, parent),
      desk_(&desk),
      strings_(study),
      gauges_(new GaugesTable(ScreenText(), this)),
      what_(new QComboBox),
      aim_(new QComboBox),
      raise_(new QDoubleSpinBox),
      cautions_(new QLabel) {
    study->setParent(this);
    connect(study, &Study::found, this, &StringsPage::show_answer);
    connect(study, &Study::failed, &desk, [&desk](const QString& message) { emit desk.wrong(tr("Strings"), message); });
    add_wishes();
    add_cautions();
    add_table(*gauges_, tr("The strings side by side"), tr("The same numbers, a line for each string."));
}

void StringsPage::add_wishes() {
    what_->addItems({tr("this string, thinner to thicker"), tr("this string, other materials at the same pull"),
                     tr("all strings of the instrument")});
    what_->setAccessibleName(tr("What is shown"));
    aim_->addItems({tr("widest band first"), tr("most forgiving first"), tr("least force first"),
                    tr("nearest to the present pull first")});
    aim_->setAccessibleName(tr("Order of the strings shown"));
    aim_->setToolTip(tr("Ranked at the octave."));
    raise_->setRange(-most_raised, most_raised);
    raise_->setSingleStep(0.5);
    raise_->setDecimals(1);
    raise_->setPrefix(tr("tuned higher by "));
    raise_->setSuffix(tr(" semitones"));
    raise_->setAccessibleName(tr("All strings tuned higher by, semitones"));
    auto* row = new QHBoxLayout;
    for (QWidget* widget : std::initializer_list<QWidget*>{what_, aim_, raise_}) row->addWidget(widget);
    row->addStretch(1);
    qobject_cast<QVBoxLayout*>(layout())->insertLayout(0, row);
    connect(what_, &QComboBox::currentIndexChanged, this, &StringsPage::ask);
    connect(aim_, &QComboBox::currentIndexChanged, this, &StringsPage::ask);
    connect(raise_, &QDoubleSpinBox::valueChanged, this, &StringsPage::ask);
}

/// Under the words, as wide as the page.
void StringsPage::add_cautions() {
    constexpr int under_words = 2;
    cautions_->setWordWrap(true);
    cautions_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    cautions_->setAccessibleName(tr("Cautions"));
    cautions_->hide();
    qobject_cast<QVBoxLayout*>(layout())->insertWidget(under_words, cautions_);
}

void StringsPage::show_answer() {
    gauges_->set_answer(strings_->answer());
    QStringList texts;
    for (const sim::Caution& caution : strings_->answer()->study.cautions)
        texts.append(QString::fromStdString(caution.text));
    cautions_->setText(tr("Caution: %1").arg(texts.join(' ')));
    cautions_->setVisible(!texts.isEmpty());
}

void StringsPage::ask() {
    aim_->setEnabled(what_->currentIndex() != whole_set);
    strings_->set_wish({.whole_set = what_->currentIndex() == whole_set,
                        .other_materials = what_->currentIndex() == other_materials,
                        .aim = static_cast<sim::GaugeAim>(aim_->currentIndex()),
                        .raise = raise_->value()});
}

QString StringsPage::purpose() const {
    return tr("Which gauge suits the string: its band at the open string and high up, its pull, and what may break.");
}

bool StringsPage::has_answer() const { return strings_->answer() != nullptr; }

StudyPage::Shown StringsPage::shown() const {
    const StringsAnswer& answer = *strings_->answer();
    return {charts::gauges_chart(answer.asked, answer.study),
            QString::fromStdString(sim::report::gauges_answer_words(answer.study))};
}

std::vector<Export> StringsPage::exports() const {
    const sim::Preset& preset = *desk_->selection.preset();
    std::vector<Export> all{fret_strip_file(preset)};
    if (const ClimbAnswerPointer& climb = desk_->climb.answer(); climb && desk_->climb.up_to_date())
        all.push_back(contact_ruler_file(preset, climb));
    if (!has_answer() || !chart().has_chart()) return all;
    const std::vector<Export> tables = strings_tables(strings_->answer());
    all.insert(all.begin(), tables.begin(), tables.end());
    all.insert(all.begin(), chart_export(tr("Chart of the strings"), "strings.png"));
    return all;
}

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/study.hpp"
#include "sim/report/gauges_report.hpp"

#include <memory>

namespace gui {

/// What the page of strings asks beside the selection.
struct StringsWish {
    bool whole_set = false;
    bool other_materials = false;  ///< plain materials at the present pull, instead of the own one thinner and thicker
    sim::GaugeAim aim = sim::GaugeAim::widest_band;
    double raise = 0.0;  ///< semitones

    bool operator==(const StringsWish&) const = default;
};

/// The candidates that the wish is for.
sim::GaugeAsk gauges_wished(const sim::PresetString& string, const StringsWish& wish);

/// Candidates or a set, with everything that chart, table and files want.
struct StringsAnswer {
    sim::report::AskedGauges asked;
    sim::GaugeStudy study;
    bool fine = false;
};
using StringsAnswerPointer = std::shared_ptr<const StringsAnswer>;

/// As the command `gauges` gives it for the open string, the octave, and the octave and fifth.
StringsAnswer strings_answer(const NoteQuestion& question, const StringsWish& wish, Fineness fineness,
                             const sim::Workers& workers);

/// Gauges for the selected string, or the strings of the instrument.
class StringsStudy : public Study {
    Q_OBJECT

public:
    StringsStudy(const Selection& selection, int threads, QObject* parent = nullptr);
    /// Empty before the first.
    const StringsAnswerPointer& answer() const { return answer_; }
    const StringsWish& wish() const { return wish_; }

public slots:
    void set_wish(const gui::StringsWish& wish);

protected:
    JobRunner::Work work(NoteQuestion question, Fineness fineness) override;

private:
    StringsWish wish_;
    StringsAnswerPointer answer_;
};

}  // namespace gui

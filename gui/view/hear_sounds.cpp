// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/desk.hpp"
#include "gui/view/hear_page.hpp"

#include <QLabel>

#include <algorithm>

namespace gui {

void HearPage::show_hearing(const LiveHearing& hearing) {
    motion_->setText(tr("The string %1").arg(text_.motion(hearing.motion)));
    const QString pitch = hearing.pitch_hz > 0.0 ? text_.hertz(hearing.pitch_hz) : tr("no pitch");
    heard_->setText(tr("%1, %2 dB").arg(pitch, text_.number(hearing.level_db, 0)));
}

void HearPage::show_silence() {
    motion_->setText(tr("The bow is off the string"));
    heard_->setText(tr("Press B, then drag in the field or on the string."));
}

void HearPage::play(Take take) {
    desk_->play_live(false);
    switch (take) {
        case Take::note_left_behind:
        case Take::note_follows:
            if (!note_pair_) return make_note_pair(take);
            return sound(take == Take::note_follows ? note_pair_->follows : note_pair_->left_behind);
        case Take::climb_left_behind:
        case Take::climb_follows:
            if (!climb_pair_) return make_climb_pair(take);
            return sound(take == Take::climb_follows ? climb_pair_->follows : climb_pair_->left_behind);
    }
}

void HearPage::sound(const analysis::Signal& take) { desk_->takes.play(take); }

void HearPage::make_note_pair(Take then) {
    const Selection& now = desk_->selection;
    PairQuestion question{.note = note_question(now),
                          .left_behind = std::min(desk_->guide.left_behind(), now.farthest()),
                          .follows = now.contact(),
                          .force = now.force()};
    if (const NoteBandPointer& band = desk_->bands.band(); band && band->band.best) question.follows = *band->band.best;
    runner_.ask([this, question, then](const sim::Workers& workers) -> JobRunner::Delivery {
        auto pair = std::make_shared<const TakePair>(note_pair(question, workers));
        return [this, pair, then] {
            note_pair_ = pair;
            play(then);
        };
    });
}

void HearPage::make_climb_pair(Take then) {
    runner_.ask([this, question = note_question(desk_->selection), done = desk_->climb.answer(),
                 fresh = desk_->climb.up_to_date(), then](const sim::Workers& workers) -> JobRunner::Delivery {
        constexpr double climb_share = 0.7;  // of the work, where the climb isn't known yet
        const ClimbAnswerPointer answer =
            fresh ? done
                  : std::make_shared<const ClimbAnswer>(
                        climb_answer(question, Fineness::fine, sim::part_of(workers, {0.0, climb_share})));
        auto pair = std::make_shared<const TakePair>(
            sim::sound::climb_takes(answer->climb, {}, sim::part_of(workers, {fresh ? 0.0 : climb_share, 1.0})));
        return [this, pair, then] {
            climb_pair_ = pair;
            play(then);
        };
    });
}

std::vector<Export> HearPage::exports() const { return take_sounds(note_pair_, climb_pair_); }

}  // namespace gui

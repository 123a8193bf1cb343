// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/match_answer.hpp"
#include "gui/model/screen_text.hpp"

namespace gui {

class Selection;

/// "any string", "string 1", "string 1, stop 12 (D5)": where to look, as the selection is.
QString looked_for_words(const Selection& selection, LookedFor where);

/// What the window says of where the bow was: in the user's locale, for the player's eyes.
class MatchWords {
    Q_DECLARE_TR_FUNCTIONS(gui::MatchWords)

public:
    explicit MatchWords(const MatchAnswer& answer, const ScreenText& text = ScreenText())
        : answer_(&answer), text_(text) {}

    /// "3: A4 on string 2, stop 7": a note in a list.
    QString title(std::size_t note) const;
    /// How many notes lie inside the band, partly, outside; or why nothing is said of any.
    QString summary() const;
    /// Where the bow was on one note and how that lies to its band, or why nothing is said.
    QString of_note(std::size_t note) const;
    /// How far all that can be trusted.
    QString cautions() const;

private:
    QString counts() const;
    QString nothing_said() const;
    QString band(const sim::match::NoteMatch& note) const;
    QString beside(sim::match::BandPlace place, const sim::match::Region& region, const sim::Band& band,
                   const QString& what) const;

    const MatchAnswer* answer_;
    ScreenText text_;
};

/// For a table: "inside", "partly", "outside" the contact band, or how it lies to the most secure stretch where there
/// is no band; empty where it is not known.
QString band_place_word(const sim::match::NoteMatch& note);

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/strip_exports.hpp"

#include "gui/charts/board_strips.hpp"

#include <QCoreApplication>

namespace gui {
namespace {

/// Words of this file, for the translator.
struct Words {
    Q_DECLARE_TR_FUNCTIONS(gui::StripExports)
};

Export strip_file(const QString& name, const QString& file_name, charts::Strip strip) {
    return {name, Words::tr("To print at true size (*.pdf *.svg)"), file_name,
            [strip = std::move(strip)](const std::filesystem::path& place) { charts::save_strip(strip, place); }};
}

}  // namespace

Export fret_strip_file(const sim::Preset& preset) {
    return strip_file(Words::tr("Fret strip to print at true size"), "frets.pdf",
                      charts::fret_strip(preset, sim::fret_table(preset)));
}

Export contact_ruler_file(const sim::Preset& preset, const ClimbAnswerPointer& answer) {
    return strip_file(Words::tr("Contact ruler to print at true size"), "contact_ruler.pdf",
                      charts::contact_ruler(preset, answer->climb));
}

}  // namespace gui

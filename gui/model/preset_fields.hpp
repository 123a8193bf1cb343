// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <QString>

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gui {

/// What a number of a preset may be, in the unit of its key; both ends are allowed.
struct FieldRange {
    double low = 0.0;
    double high = 0.0;
    bool whole = false;

    bool operator==(const FieldRange&) const = default;
};

/// One value of a preset, as somebody edits it.
struct Field {
    std::string pointer;              ///< in the preset's file: "/strings/0/length_mm"
    QString part;                     ///< "String 1"
    QString what;                     ///< "Length, nut to bridge"
    QString unit;                     ///< "mm"; empty for plain numbers and words
    QString meaning;                  ///< one sentence for who doesn't know the word
    std::optional<FieldRange> range;  ///< none for words
};

/// All values of this preset that can be edited, in the order of its parts.
std::vector<Field> preset_fields(const sim::Preset& preset);

using FieldValue = std::variant<double, QString>;

/// The preset's values and their sources by pointer.
class PresetValues {
public:
    explicit PresetValues(const sim::Preset& preset);
    ~PresetValues();
    PresetValues(const PresetValues&) = delete;
    PresetValues& operator=(const PresetValues&) = delete;

    /// Empty for what the preset doesn't hold.
    std::optional<FieldValue> value(const std::string& pointer) const;
    /// That of the value itself, or of the nearest part that holds it.
    QString source(const std::string& pointer) const;

private:
    struct Document;
    std::unique_ptr<Document> document_;
};

/// The preset with some values changed, each with its source.  InputError where the reader would not take it.
struct FieldChange {
    std::string pointer;
    std::optional<FieldValue> value;  ///< none: only the source changes
    QString source;                   ///< empty: stays
};
sim::Preset with_changes(const sim::Preset& preset, const std::vector<FieldChange>& changes);

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/preset_fields.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace gui {
namespace {

using Json = nlohmann::json;

std::string source_place(const Json& document, std::string pointer) {
    const Json& sources = document.at("sources");
    while (!sources.contains(pointer) && !pointer.empty()) pointer.erase(pointer.rfind('/'));
    return pointer;
}

Json json_of(const FieldValue& value) {
    if (const auto* text = std::get_if<QString>(&value)) return text->toStdString();
    const double number = std::get<double>(value);
    constexpr double exact = 1e15;  // whole numbers below are written as such
    if (number == std::floor(number) && std::abs(number) < exact) return static_cast<std::int64_t>(number);
    return number;
}

}  // namespace

struct PresetValues::Document {
    Json json;
};

PresetValues::PresetValues(const sim::Preset& preset)
    : document_(std::make_unique<Document>(Document{Json::parse(sim::preset_text(preset))})) {}

PresetValues::~PresetValues() = default;

std::optional<FieldValue> PresetValues::value(const std::string& pointer) const {
    const Json::json_pointer place(pointer);
    if (!document_->json.contains(place)) return std::nullopt;
    const Json& found = document_->json.at(place);
    if (found.is_number()) return found.get<double>();
    if (found.is_string()) return QString::fromStdString(found.get<std::string>());
    return std::nullopt;
}

QString PresetValues::source(const std::string& pointer) const {
    const std::string place = source_place(document_->json, pointer);
    const Json& sources = document_->json.at("sources");
    return sources.contains(place) ? QString::fromStdString(sources.at(place).get<std::string>()) : QString();
}

sim::Preset with_changes(const sim::Preset& preset, const std::vector<FieldChange>& changes) {
    Json document = Json::parse(sim::preset_text(preset));
    for (const FieldChange& change : changes) {
        if (change.value) document[Json::json_pointer(change.pointer)] = json_of(*change.value);
        if (!change.source.isEmpty()) document["sources"][change.pointer] = change.source.toStdString();
    }
    sim::Preset changed = sim::parse_preset(document.dump(), preset.name);
    changed.short_name = preset.short_name;
    changed.file = preset.file;
    return changed;
}

}  // namespace gui

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include <optional>
#include <string>

/// Only for the sources of this folder: values as they stand in JSON.
namespace sim::report {

using Json = nlohmann::ordered_json;

/// A number at 6 significant digits, so that machines whose libraries differ in the last bit agree; null for what is
/// not finite.
Json rounded(double value);
Json rounded(const std::optional<double>& value);
/// Metres as millimetres, seconds as milliseconds, rounded.
Json rounded_mm(double metres);
Json rounded_mm(const std::optional<double>& metres);
Json rounded_ms(const std::optional<double>& seconds);

/// The document as text, two spaces a level, with a line end.
std::string json_text(const Json& document);

}  // namespace sim::report

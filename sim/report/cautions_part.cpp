// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/cautions_part.hpp"

namespace sim::report {

Json cautions_part(const std::vector<Caution>& cautions) {
    const auto text_or_null = [](const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); };
    Json part = Json::array();
    for (const Caution& caution : cautions)
        part.push_back({{"caution", caution.key},
                        {"about", text_or_null(caution.about)},
                        {"text", caution.text},
                        {"value", rounded(caution.value)},
                        {"limit", rounded(caution.limit)},
                        {"unit", text_or_null(caution.unit)}});
    return part;
}

std::string cautions_words(const std::vector<Caution>& cautions) {
    std::string words;
    for (const Caution& caution : cautions) words += (words.empty() ? "Caution: " : "\nCaution: ") + caution.text;
    return words;
}

}  // namespace sim::report

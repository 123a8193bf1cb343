// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sensitivity.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim {

namespace {

constexpr std::size_t named = 3;

/// "a, b and c"
std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i)
        text += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
    return text;
}

std::string percent(double log_ratio) { return fixed_number(100.0 * std::expm1(log_ratio), 0) + " %"; }

/// The first of the strengths that pass, which come by their weight on the best place.
template <class Choice>
std::vector<std::string> strongest(const Sensitivity& all, const Choice& choice) {
    std::vector<std::string> names;
    for (const Strength& strength : all.strengths) {
        if (names.size() == named) break;
        if (strength.constant != nullptr && strength.best.value_or(0.0) > 0.0 && choice(*strength.constant))
            names.push_back(std::string(strength.constant->what) + " (" + percent(*strength.best) + ")");
    }
    return names;
}

std::string strongest_words(const Sensitivity& all) {
    const auto any = [](const Constant&) { return true; };
    const auto physical = [](const Constant& constant) { return constant.group != ConstantGroup::player; };
    const std::vector<std::string> first = strongest(all, any);
    if (first.empty()) return "Nothing that was changed moves the best place.";
    std::vector<std::string> stops;
    for (std::size_t i = 0; i < all.shown.size(); ++i)
        if (all.shown[i]) stops.push_back(short_number(all.plan.stops[i]));
    std::string words = "Changed by a factor " + short_number(all.plan.factor) +
                        ", what moves the best place most is: " + joined(first) + " (mean over stop" +
                        (stops.size() > 1 ? "s " : " ") + joined(stops) + ").";
    const std::vector<std::string> rest = strongest(all, physical);
    if (!rest.empty() && rest != first) words += " Of what is not the player's: " + joined(rest) + ".";
    if (all.strengths.back().best)
        words +=
            " Another grid alone moves it by " + percent(*all.strengths.back().best) + ": what moves it less is noise.";
    return words;
}

std::string row_words(const SensitivityRow& row, double factor) {
    return std::string(row.constant->name) + (row.direction == Direction::up ? " x " : " / ") + short_number(factor);
}

std::string rule_words(const Sensitivity& all) {
    std::vector<std::string> under[4];
    std::size_t changes = 0;
    for (const SensitivityRow& row : all.rows) {
        if (row.kind != RowKind::constant) continue;
        under[static_cast<std::size_t>(row.rule.verdict)].push_back(row_words(row, all.plan.factor));
        ++changes;
    }
    const auto& of = [&](RuleVerdict verdict) -> const std::vector<std::string>& {
        return under[static_cast<std::size_t>(verdict)];
    };
    if (changes == of(RuleVerdict::undecided).size())
        return "The rule can't be judged from so few stops with a best place.";
    std::string words = "The rule (unchanged: " + std::string(rule_verdict_name(all.rows.front().rule.verdict)) +
                        ") holds under " + std::to_string(of(RuleVerdict::holds).size()) + " of " +
                        std::to_string(changes) + " changes";
    for (const RuleVerdict verdict : {RuleVerdict::weakens, RuleVerdict::reverses, RuleVerdict::undecided}) {
        if (of(verdict).empty()) continue;
        const bool is_open = verdict == RuleVerdict::undecided;
        words +=
            "; " + std::string(is_open ? "is undecided" : rule_verdict_name(verdict)) + " under " + joined(of(verdict));
    }
    return words + ".";
}

}  // namespace

std::string sensitivity_in_words(const Sensitivity& sensitivity) {
    return strongest_words(sensitivity) + "\n" + rule_words(sensitivity);
}

}  // namespace sim

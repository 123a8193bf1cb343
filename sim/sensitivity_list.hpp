// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sim {

/// What a change is applied to: an instrument with its player, and one open string made of it.
struct Subject {
    Preset preset;
    String open;

    bool operator==(const Subject&) const = default;
};

/// Where a constant belongs.
enum class ConstantGroup { rosin, string, stop, body, player };
std::string_view constant_group_name(ConstantGroup group);

/// A number that rests on memory or habit, and how to make it greater or smaller.
struct Constant {
    std::string_view name;  ///< as in options and tables: "shear_modulus"
    std::string_view what;  ///< in words
    std::string_view unit;  ///< of `nominal`; in brackets what it measures where that is not the constant itself
    ConstantGroup group;
    std::string_view pointer;  ///< place in a preset whose source tells more, if it has one
    std::string_view source;   ///< where it has none
    std::optional<double> (*nominal)(const Subject& subject);  ///< in `unit`; none: not in force there
    void (*scale)(Subject& subject, double factor);            ///< factor > 0; 1 changes nothing
};

/// Every constant whose weight is looked at, one entry for each.
std::span<const Constant> remembered_constants();

/// A member of a changed struct that has no entry of its own, and why.
struct LeftOut {
    ConstantGroup group;
    std::string_view member;
    std::string_view why;
};
std::span<const LeftOut> left_out_constants();

/// Those named so, or of the group named so; all for "all".  InputError listing what there is otherwise.
std::vector<const Constant*> constants_named(const std::string& name, const std::string& where);

/// What the preset says of this constant's origin, or what is said here: "from memory".
std::string constant_source(const Constant& constant, const Preset& preset);

/// The nominal value with its unit: "0.7 uJ/K per N"; "-" where it is not in force.
std::string nominal_text(const Constant& constant, const Subject& subject);

}  // namespace sim

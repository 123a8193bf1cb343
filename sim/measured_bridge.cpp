// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/measured_bridge.hpp"

#include "analysis/errors.hpp"
#include "analysis/number_table.hpp"
#include "analysis/units.hpp"
#include "sim/preset_reader.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace sim {
namespace {

using analysis::NumberTable;
using Names = std::vector<std::string_view>;

constexpr std::string_view wanted =
    "give hz with real, imag (m/s/N), or with magnitude (m/s/N) or magnitude_db (dB re 1 m/s/N) and phase_deg or "
    "phase_rad";
constexpr double surely_degrees = 30.0;
constexpr double surely_radians = 6.3;  // once round

const Names hz_names{"hz", "f", "freq", "frequency", "f_hz", "freq_hz", "frequency_hz"};
const Names real_names{"real", "re", "re_y", "real_part", "real_m_s_n"};
const Names imag_names{"imag", "im", "im_y", "imaginary", "imag_part", "imaginary_part", "imag_m_s_n"};
const Names magnitude_names{"magnitude", "mag", "abs", "amplitude", "magnitude_m_s_n", "mag_m_s_n"};
const Names magnitude_db_names{"magnitude_db", "mag_db", "level_db", "db", "magnitude_db_re_1_m_s_n"};
const Names degrees_names{"phase_deg", "phase_degrees", "phase_degree", "deg"};
const Names radians_names{"phase_rad", "phase_radians", "phase_radian", "rad"};
const Names phase_names{"phase", "arg", "angle"};

/// Which column holds what, if any does.
struct Columns {
    std::optional<std::size_t> hz, real, imag, magnitude, magnitude_db, degrees, radians, phase;
};

std::optional<std::size_t> column_of(const NumberTable& table, const Names& names, const std::string& where) {
    std::optional<std::size_t> found;
    for (std::size_t c = 0; c < table.names.size(); ++c) {
        if (std::ranges::find(names, table.names[c]) == names.end()) continue;
        if (found) {
            throw analysis::InputError(where, "columns \"" + table.names[*found] + "\" and \"" + table.names[c] +
                                                  "\" are both " + std::string(names.front()) + "; keep one of them");
        }
        found = c;
    }
    return found;
}

Columns columns_of(const NumberTable& table, const std::string& where) {
    const auto find = [&](const Names& names) { return column_of(table, names, where); };
    return {find(hz_names),           find(real_names),    find(imag_names),    find(magnitude_names),
            find(magnitude_db_names), find(degrees_names), find(radians_names), find(phase_names)};
}

void require_columns(const Columns& at, const NumberTable& table, const std::string& where) {
    const std::string has = "; it has " + one_line(listed(table.names));
    const auto missing = [&](const char* name) {
        throw analysis::InputError(where, "no column \"" + std::string(name) + "\"; " + std::string(wanted) + has);
    };
    if (!at.hz) missing("hz");
    if (at.real && at.imag) return;
    if (at.real) missing("imag");
    if (at.imag) missing("real");
    const bool phase = at.degrees || at.radians || at.phase;
    if (!at.magnitude && !at.magnitude_db) missing(phase ? "magnitude" : "real");
    if (!phase) missing("phase_deg");
}

/// A line of units under the names is held against what is read.
void check_units(const NumberTable& table, const Columns& at, const std::string& where) {
    const auto check = [&](std::optional<std::size_t> column, const Names& known) {
        if (!column || *column >= table.units.size() || table.units[*column].empty()) return;
        const std::string& unit = table.units[*column];
        if (std::ranges::find(known, unit) != known.end()) return;
        throw analysis::InputError(where, "the unit \"" + one_line(unit) + "\" of \"" + table.names[*column] +
                                              "\" is not one that is read; " + std::string(wanted));
    };
    const Names admittance{"m_s_n", "m_n_s", "m_sn", "m_ns", "m_s_1_n_1", "s_kg", "si"};
    check(at.hz, {"hz", "1_s"});
    for (const auto& column : {at.real, at.imag, at.magnitude}) check(column, admittance);
    check(at.degrees, {"deg", "degrees", "\xC2\xB0"});
    check(at.radians, {"rad", "radians"});
}

std::size_t phase_column(const Columns& at) { return *(at.degrees ? at.degrees : at.radians ? at.radians : at.phase); }

/// Radians for one of the unit in which the phase is written.
double phase_unit(const NumberTable& table, const Columns& at, const std::string& where, MeasuredBridge& bridge) {
    if (at.degrees) return analysis::radians_from_degrees(1.0);
    if (at.radians) return 1.0;
    std::string unit = *at.phase < table.units.size() ? table.units[*at.phase] : "";
    if (unit.empty()) {
        double greatest = 0.0;
        for (const double phase : table.columns[*at.phase])
            if (std::isfinite(phase)) greatest = std::max(greatest, std::abs(phase));
        unit = greatest > surely_degrees ? "degrees" : greatest <= surely_radians ? "radians" : "";
        bridge.remarks.push_back("The phase, whose unit the file does not give, was taken as " + unit + ".");
    }
    if (unit.starts_with("deg") || unit == "\xC2\xB0") return analysis::radians_from_degrees(1.0);
    if (unit.starts_with("rad")) return 1.0;
    throw analysis::InputError(where, "column \"phase\" may be degrees or radians; name it phase_deg or phase_rad");
}

/// Rising, none twice, none negative; falling order is turned round first.
void put_in_order(NumberTable& table, std::size_t hz, const std::string& where, MeasuredBridge& bridge) {
    const auto line = [&](std::size_t row) { return where + " line " + std::to_string(table.lines[row]); };
    const std::size_t rows = table.lines.size();
    for (std::size_t row = 0; row < rows; ++row) {
        if (const double value = analysis::require_number(table, hz, row, where); value < 0.0) {
            throw analysis::InputError(
                line(row), "hz must not be negative, is " + short_number(value) + "; give one side of the spectrum");
        }
    }
    const std::vector<double> given = table.columns[hz];
    const bool falling = rows > 1 && given.front() > given.back();
    for (std::size_t row = 1; row < rows; ++row) {
        if (falling ? given[row] < given[row - 1] : given[row] > given[row - 1]) continue;
        throw analysis::InputError(line(row), "hz must rise from line to line (or fall all the way), but " +
                                                  number_text(given[row - 1]) + " is followed by " +
                                                  number_text(given[row]));
    }
    if (!falling) return;
    for (std::vector<double>& column : table.columns) std::ranges::reverse(column);
    std::ranges::reverse(table.lines);
    bridge.remarks.emplace_back("The lines, which go down in frequency, were turned round.");
}

/// The one row's admittance.
class Reader {
public:
    Reader(const NumberTable& table, const Columns& at, const std::string& where, MeasuredBridge& bridge)
        : table_(table), at_(at), where_(where) {
        polar_ = !(at.real && at.imag);
        if (polar_) radians_ = phase_unit(table, at, where, bridge);
    }

    std::complex<double> admittance(std::size_t row) const {
        if (!polar_) return {number(*at_.real, row), number(*at_.imag, row)};
        const double phase = number(phase_column(at_), row) * radians_;
        // an amplitude of nothing has no level: -inf dB, which is no finite number and is complained about
        if (!at_.magnitude) return std::polar(analysis::ratio_from_db(number(*at_.magnitude_db, row)), phase);
        const double magnitude = number(*at_.magnitude, row);
        if (magnitude >= 0.0) return std::polar(magnitude, phase);
        throw analysis::InputError(where_ + " line " + std::to_string(table_.lines[row]),
                                   "the magnitude must not be negative, is " + short_number(magnitude) +
                                       "; a column in dB must be called magnitude_db");
    }

private:
    double number(std::size_t column, std::size_t row) const {
        return analysis::require_number(table_, column, row, where_);
    }

    const NumberTable& table_;
    const Columns& at_;
    const std::string& where_;
    bool polar_ = false;
    double radians_ = 1.0;
};

MeasuredBridge bridge_from_table(const std::filesystem::path& file) {
    const std::string where = one_line(file.string());
    NumberTable table = analysis::read_number_table(file);
    const Columns at = columns_of(table, where);
    require_columns(at, table, where);
    check_units(table, at, where);
    MeasuredBridge bridge;
    put_in_order(table, *at.hz, where, bridge);
    const Reader reader(table, at, where, bridge);
    for (std::size_t row = 0; row < table.lines.size(); ++row) {
        const double hz = table.columns[*at.hz][row];
        if (hz == 0.0) {
            bridge.remarks.emplace_back("The point at 0 Hz was left out.");
            continue;
        }
        bridge.hz.push_back(hz);
        bridge.admittance.push_back(reader.admittance(row));
    }
    if (bridge.hz.size() < least_points) {
        throw analysis::InputError(where, "has " + std::to_string(bridge.hz.size()) + " points above 0 Hz; " +
                                              std::to_string(least_points) + " or more are needed");
    }
    bridge.usual_low = std::max(lowest_hz, bridge.hz.front());
    bridge.usual_high = std::min(highest_hz, bridge.hz.back());
    return bridge;
}

bool is_sound(const std::filesystem::path& file) {
    std::string ending = file.extension().string();
    std::ranges::transform(ending, ending.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c; });
    constexpr std::array<std::string_view, 4> endings{".wav", ".flac", ".aif", ".aiff"};
    return std::ranges::find(endings, ending) != endings.end();
}

}  // namespace

MeasuredBridge read_measured_bridge(const std::filesystem::path& file, std::optional<double> scale) {
    if (is_sound(file)) return bridge_from_impulse(file, scale.value_or(1.0));
    if (scale) {
        throw analysis::InputError(one_line(file.string()),
                                   "is taken as a table, which is in m/s/N; a scale is for impulse responses (.wav)");
    }
    return bridge_from_table(file);
}

}  // namespace sim

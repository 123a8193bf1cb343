// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/measured_bridge.hpp"

#include "analysis/errors.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <numbers>

namespace {

using sim::MeasuredBridge;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using tests::TemporaryFolder;

constexpr double pi = std::numbers::pi;

MeasuredBridge read_text(const std::string& text) {
    const TemporaryFolder folder;
    tests::put(folder / "y.csv", text);
    return sim::read_measured_bridge(folder / "y.csv");
}

std::string complaint(const std::string& text) {
    try {
        read_text(text);
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "";
}

/// Rows n = 1 … count at 10 n Hz, each made by `row`.
std::string table(const std::string& names, const std::function<std::string(int n)>& row, int count = 12) {
    std::string text = names + "\n";
    for (int n = 1; n <= count; ++n) text += row(n) + "\n";
    return text;
}

std::string plain_row(int n) { return std::to_string(10 * n) + "," + std::to_string(n) + ",-0.5"; }

/// The table above, however it is written: 10 n Hz, n - 0.5 i.
void expect_plain(const MeasuredBridge& bridge) {
    ASSERT_EQ(bridge.hz.size(), 12U);
    for (std::size_t i = 0; i < 12; ++i) {
        const auto n = static_cast<double>(i + 1);
        EXPECT_DOUBLE_EQ(bridge.hz[i], 10.0 * n);
        EXPECT_NEAR(std::abs(bridge.admittance[i] - std::complex<double>(n, -0.5)), 0.0, 1e-5) << n;
    }
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
        text.replace(at, from.size(), to);
    return text;
}

TEST(MeasuredTableTest, IsReadHoweverItIsParted) {
    const std::string plain = table("hz,real,imag", plain_row);
    expect_plain(read_text(plain));
    expect_plain(read_text(replaced(plain, ",", ";")));
    expect_plain(read_text(replaced(plain, ",", "\t")));
    expect_plain(read_text(replaced(plain, ",", " ")));
    expect_plain(read_text(replaced(plain, ",", "  ")));
    expect_plain(read_text(replaced(plain, ",", " , ")));
    expect_plain(read_text(replaced(replaced(plain, ",", ";"), ".", ",")));  // decimal comma
    expect_plain(read_text(replaced(plain, "\n", "\r\n")));
    expect_plain(read_text(replaced(plain, "\n", "\r")));
    expect_plain(read_text(replaced(plain, "\n", ",\n")));  // a separator at the end of each line
    expect_plain(read_text("\xEF\xBB\xBF" + plain));
    expect_plain(read_text("# a comment\n\n" + plain + "\n# the end\n"));
    expect_plain(read_text("# names as a comment:\n# " + plain));
    expect_plain(read_text(plain.substr(0, plain.size() - 1)));  // no last line end
}

TEST(MeasuredTableTest, NamesMayCarryUnitsAndOtherColumnsMayStandBeside) {
    expect_plain(read_text(table("\"Frequency [Hz]\";\"Real (m/s/N)\";\"Imag (m/s/N)\"",
                                 [](int n) { return replaced(plain_row(n), ",", ";"); })));
    expect_plain(
        read_text(table("coherence,hz,real,imag,remark", [](int n) { return "0.99," + plain_row(n) + ",fine"; })));
    expect_plain(read_text(table("hz,real,imag\nHz,m/s/N,m/s/N", plain_row)));
    EXPECT_THAT(complaint(table("hz,real,imag\nkHz,m/s/N,m/s/N", plain_row)), HasSubstr("unit"));
    EXPECT_THAT(complaint(table("hz,real,imag\nHz,mm/s/N,mm/s/N", plain_row)), HasSubstr("unit"));
}

std::string polar_row(int n, double magnitude_unit, double phase_unit, bool db) {
    const std::complex<double> y(n, -0.5);
    const double size = db ? 20.0 * std::log10(std::abs(y)) : std::abs(y) * magnitude_unit;
    return std::to_string(10 * n) + "," + std::to_string(size) + "," + std::to_string(std::arg(y) * phase_unit);
}

TEST(MeasuredTableTest, MagnitudeAndPhaseDoInEveryUnit) {
    const double degree = 180.0 / pi;
    expect_plain(read_text(table("hz,magnitude,phase_deg", [&](int n) { return polar_row(n, 1.0, degree, false); })));
    expect_plain(read_text(table("hz,magnitude,phase_rad", [&](int n) { return polar_row(n, 1.0, 1.0, false); })));
    expect_plain(read_text(table("hz,magnitude_db,phase_deg", [&](int n) { return polar_row(n, 1.0, degree, true); })));
    expect_plain(read_text(table("hz,magnitude,phase", [&](int n) { return polar_row(n, 1.0, 1.0, false); })));
    EXPECT_THAT(complaint(table("hz,magnitude,phase", [&](int n) { return polar_row(n, 1.0, degree, false); })),
                HasSubstr("phase_deg or phase_rad"));  // up to 27 degrees: may be radians, more than once round
    const MeasuredBridge wide =
        read_text(table("hz,magnitude,phase", [](int n) { return std::to_string(10 * n) + ",1,-60"; }));
    EXPECT_NEAR(std::arg(wide.admittance[0]), -pi / 3.0, 1e-12);
    EXPECT_THAT(wide.remarks, testing::Contains(HasSubstr("degrees")));
}

TEST(MeasuredTableTest, FallingOrderIsTurnedRoundAndZeroHertzLeftOut) {
    expect_plain(read_text(table("hz,real,imag", [](int n) { return plain_row(13 - n); })));
    const MeasuredBridge bridge = read_text("hz,real,imag\n0,7,0\n" + table("", plain_row).substr(1));
    expect_plain(bridge);
    EXPECT_THAT(bridge.remarks, testing::Contains(HasSubstr("0 Hz")));
}

TEST(MeasuredTableRefusalTest, FrequenciesOutOfOrderAreNamedByLine) {
    const auto with = [](const char* hz) {
        return table("hz,real,imag", [&](int n) { return n == 7 ? std::string(hz) + ",1,0" : plain_row(n); });
    };
    EXPECT_THAT(complaint(with("35")), AllOf(HasSubstr("y.csv line 8"), HasSubstr("rise")));
    EXPECT_THAT(complaint(with("60")), AllOf(HasSubstr("line 8"), HasSubstr("60 is followed by 60")));
    EXPECT_THAT(complaint(with("-70")), AllOf(HasSubstr("line 8"), HasSubstr("negative"), HasSubstr("-70")));
}

TEST(MeasuredTableRefusalTest, CellsThatAreNoNumbersAreNamedByLineAndColumn) {
    for (const char* cell : {"nan", "NaN", "inf", "-inf", "", "x", "1.2.3", "1e999", "0x10"}) {
        const std::string what = complaint(
            table("hz,real,imag", [&](int n) { return n == 5 ? "50," + std::string(cell) + ",0" : plain_row(n); }));
        EXPECT_THAT(what, AllOf(HasSubstr("line 6"), HasSubstr("\"real\""), HasSubstr("finite"), Not(HasSubstr("\n"))))
            << cell;
    }
    EXPECT_THAT(complaint(table("hz,real,imag", [](int n) { return n == 5 ? "50,1" : plain_row(n); })),
                AllOf(HasSubstr("line 6"), HasSubstr("2 cells")));
}

TEST(MeasuredTableRefusalTest, MissingColumnsAreNamed) {
    EXPECT_THAT(complaint(table("f0,real,imag", plain_row)), AllOf(HasSubstr("\"hz\""), HasSubstr("f0, real, imag")));
    EXPECT_THAT(complaint(table("hz,real,quality", plain_row)), HasSubstr("no column \"imag\""));
    EXPECT_THAT(complaint(table("hz,a,b", plain_row)), HasSubstr("no column \"real\""));
    EXPECT_THAT(complaint(table("hz,magnitude,b", plain_row)), HasSubstr("no column \"phase_deg\""));
    EXPECT_THAT(complaint(table("hz,phase_deg,b", plain_row)), HasSubstr("no column \"magnitude\""));
    EXPECT_THAT(complaint(table("10,1,0", plain_row)), AllOf(HasSubstr("line 1"), HasSubstr("hz,real,imag")));
    EXPECT_THAT(complaint(table("hz,real,re,imag", [](int n) { return plain_row(n) + ",1"; })), HasSubstr("both"));
    EXPECT_THAT(complaint(table("hz,magnitude,phase_deg", [](int n) { return std::to_string(n) + ",-20,0"; })),
                AllOf(HasSubstr("line 2"), HasSubstr("magnitude_db")));
}

TEST(MeasuredTableRefusalTest, TooLittleIsRefused) {
    EXPECT_THAT(complaint(table("hz,real,imag", plain_row, 9)), AllOf(HasSubstr("9 points"), HasSubstr("10 or more")));
    EXPECT_THAT(complaint("hz,real,imag\n"), HasSubstr("no rows"));
    EXPECT_THAT(complaint(""), HasSubstr("no rows"));
    EXPECT_THAT(complaint(std::string("\x00\x01", 2)), HasSubstr("no text"));
    EXPECT_THROW(sim::read_measured_bridge("/no/such.csv"), analysis::InputError);
    EXPECT_THROW(sim::read_measured_bridge("/tmp"), analysis::InputError);
}

TEST(MeasuredTableRefusalTest, ScaleBesideATableIsRefused) {
    const TemporaryFolder folder;
    tests::put(folder / "y.csv", table("hz,real,imag", plain_row));
    EXPECT_THROW(sim::read_measured_bridge(folder / "y.csv", 2.0), analysis::InputError);
}

}  // namespace

// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/output_file.hpp"

#include "analysis/errors.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>
#include <csignal>

namespace {

using analysis::OutputError;
using analysis::OutputFile;
using analysis::write_text_file;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;
using testing::ThrowsMessage;
using tests::TemporaryFolder;

/// No file may grow beyond `bytes` while this lives: stands in for a full disk.
class FullDisk {
public:
    explicit FullDisk(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
        ::getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit limit{bytes, before_.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &limit);
    }
    ~FullDisk() {
        ::setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    rlimit before_{};
    void (*handler_)(int);
};

/// One line that names the place.
auto one_line_about(const std::filesystem::path& place, const std::string& part) {
    return ThrowsMessage<OutputError>(AllOf(StartsWith(place.string() + ": "), HasSubstr(part), Not(HasSubstr("\n"))));
}

TEST(OutputFileTest, TextAppearsWhole) {
    const TemporaryFolder folder;
    write_text_file(folder / "a.csv", "one\ntwo\n");
    EXPECT_EQ(tests::contents(folder / "a.csv"), "one\ntwo\n");
    EXPECT_EQ(folder.file_count(), 1U);
}

TEST(OutputFileTest, ReplacesWhatWasThereAndKeepsItsPermissions) {
    const TemporaryFolder folder;
    tests::put(folder / "a.csv", "old and longer");
    ::chmod((folder / "a.csv").c_str(), 0640);
    write_text_file(folder / "a.csv", "new");
    EXPECT_EQ(tests::contents(folder / "a.csv"), "new");
    struct stat status {};
    ::stat((folder / "a.csv").c_str(), &status);
    EXPECT_EQ(status.st_mode & 0777U, 0640U);
    EXPECT_EQ(folder.file_count(), 1U);
}

TEST(OutputFileTest, TemporaryLiesBesideThePlaceAndKeepsItsEnding) {
    const TemporaryFolder folder;
    const OutputFile file(folder / "chart.svg");
    EXPECT_EQ(file.temporary().parent_path(), folder.path());
    EXPECT_EQ(file.temporary().extension(), ".svg");
    EXPECT_NE(file.temporary(), file.place());
}

TEST(OutputFileTest, LeavesNothingWithoutCommit) {
    const TemporaryFolder folder;
    tests::put(folder / "a.csv", "old");
    {
        const OutputFile file(folder / "a.csv");
        tests::put(file.temporary(), "half of the n");
    }
    EXPECT_EQ(tests::contents(folder / "a.csv"), "old");
    EXPECT_EQ(folder.file_count(), 1U);
}

TEST(OutputFileTest, MovedFromFileRemovesNothing) {
    const TemporaryFolder folder;
    OutputFile first(folder / "a.csv");
    {
        OutputFile second(std::move(first));
        tests::put(second.temporary(), "text");
        second.commit();
    }
    EXPECT_EQ(tests::contents(folder / "a.csv"), "text");
    EXPECT_EQ(folder.file_count(), 1U);
}

TEST(OutputFileTest, FullDiskIsToldAndLeavesTheOldFile) {
    const TemporaryFolder folder;
    tests::put(folder / "a.csv", "old");
    const std::string text(100000, 'x');
    {
        const FullDisk disk(50000);
        EXPECT_THAT([&] { write_text_file(folder / "a.csv", text); }, one_line_about(folder / "a.csv", "too large"));
    }
    EXPECT_EQ(tests::contents(folder / "a.csv"), "old");
    EXPECT_EQ(folder.file_count(), 1U);
}

TEST(OutputFileTest, MissingFolderIsTold) {
    const TemporaryFolder folder;
    EXPECT_THAT([&] { OutputFile(folder / "none/a.csv"); }, one_line_about(folder / "none/a.csv", "No such file"));
    EXPECT_EQ(folder.file_count(), 0U);
}

TEST(OutputFileTest, FolderWhereNothingCanBeMadeIsTold) {
    EXPECT_THAT([] { OutputFile("/proc/a.csv"); }, one_line_about("/proc/a.csv", "can't be written in this folder"));
}

TEST(OutputFileTest, FolderWithoutPermissionIsTold) {
    if (::geteuid() == 0) GTEST_SKIP() << "root may write anywhere";
    const TemporaryFolder folder;
    ::chmod(folder.path().c_str(), 0500);
    EXPECT_THAT([&] { OutputFile(folder / "a.csv"); }, one_line_about(folder / "a.csv", "Permission denied"));
    ::chmod(folder.path().c_str(), 0700);
}

TEST(OutputFileTest, FileWithoutPermissionIsNotReplaced) {
    if (::geteuid() == 0) GTEST_SKIP() << "root may write anything";
    const TemporaryFolder folder;
    tests::put(folder / "a.csv", "old");
    ::chmod((folder / "a.csv").c_str(), 0400);
    EXPECT_THAT([&] { OutputFile(folder / "a.csv"); }, one_line_about(folder / "a.csv", "Permission denied"));
}

TEST(OutputFileTest, FileAsFolderIsTold) {
    const TemporaryFolder folder;
    tests::put(folder / "file", "x");
    EXPECT_THAT([&] { OutputFile(folder / "file/a.csv"); }, one_line_about(folder / "file/a.csv", "Not a directory"));
}

TEST(OutputFileTest, FolderAsFileIsTold) {
    const TemporaryFolder folder;
    EXPECT_THAT([&] { OutputFile file(folder.path()); }, one_line_about(folder.path(), "is a folder"));
    EXPECT_THAT([&] { OutputFile(folder / ""); }, one_line_about(folder / "", "is a folder"));
    EXPECT_THAT([] { OutputFile(""); }, ThrowsMessage<OutputError>(HasSubstr("no name")));
}

TEST(OutputFileTest, DeviceIsNotReplaced) {
    EXPECT_THAT([] { OutputFile("/dev/null"); }, one_line_about("/dev/null", "is not a plain file"));
}

TEST(OutputFileTest, LinkStaysALink) {
    const TemporaryFolder folder;
    tests::put(folder / "real.csv", "old");
    std::filesystem::create_symlink("real.csv", folder / "link.csv");
    write_text_file(folder / "link.csv", "new");
    EXPECT_TRUE(std::filesystem::is_symlink(folder / "link.csv"));
    EXPECT_EQ(tests::contents(folder / "real.csv"), "new");
}

TEST(OutputFileTest, NameOfTheGreatestLengthIsWritten) {
    const TemporaryFolder folder;
    write_text_file(folder / (std::string(251, 'n') + ".csv"), "x");
    EXPECT_EQ(folder.file_count(), 1U);
}

}  // namespace

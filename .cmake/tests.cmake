# SPDX-License-Identifier: GPL-3.0-or-later
include(GoogleTest)

# bowband_test(NAME SOURCES file... [LIBS target...] [LABELS slow|heavy...])
#
# A GoogleTest program with its tests known to ctest.  Labels: `quick` (./check), unless `slow` is given
# (./check all only); `heavy` beside quick keeps a test out of the run under sanitizers.
function(bowband_test name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "SOURCES;LIBS;LABELS")
    if(arg_UNPARSED_ARGUMENTS OR NOT arg_SOURCES)
        message(FATAL_ERROR "bowband_test(${name}): wants SOURCES, and then LIBS and LABELS only")
    endif()
    set(labels ${arg_LABELS})
    set(limit 1800)
    if(NOT "slow" IN_LIST labels)
        list(PREPEND labels quick)
        set(limit 600)
    endif()
    add_executable(${name} ${arg_SOURCES})
    target_link_libraries(${name} PRIVATE ${arg_LIBS} GTest::gmock GTest::gtest_main)
    # One label, as in quick-heavy: gtest_discover_tests loses lists, and ctest -L and -LE look for a part of it.
    list(JOIN labels - label)
    # Charts are drawn offscreen; a discovery under sanitizers on a busy machine may take longer than the usual 5 s.
    gtest_discover_tests(${name}
        DISCOVERY_TIMEOUT 120
        PROPERTIES LABELS ${label} TIMEOUT ${limit} ENVIRONMENT QT_QPA_PLATFORM=offscreen
    )
endfunction()

// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_parts.hpp"

namespace sim::report {
namespace {

// Blue and orange stay apart for colour-blind eyes; every mark differs in shape as well.
constexpr std::string_view style = R"(
:root { color-scheme: light dark;
  --paper: #fffdf8; --ink: #222222; --soft: #595959; --rule: #d9d4c8; --card: #f6f2e8; --board: #efe6d2;
  --band: #005a9c; --pale: #cfe3f4; --behind: #c44e00; --floor: #dedede; --link: #005a9c; }
@media screen and (prefers-color-scheme: dark) { :root {
  --paper: #17191c; --ink: #ececec; --soft: #b3b3b3; --rule: #3d4248; --card: #22262b; --board: #2f2a20;
  --band: #7db7e8; --pale: #1f4564; --behind: #ff9c57; --floor: #3a3d42; --link: #9ccbf2; } }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 1.06rem/1.55 system-ui, "DejaVu Sans", Verdana, sans-serif;
  overflow-wrap: break-word; }
body { max-width: 60rem; margin: 0 auto; padding: 1.2rem 1.2rem 3rem; }
h1, h2, h3 { font-family: Charter, "Bitstream Charter", Georgia, "DejaVu Serif", serif; line-height: 1.2; }
h1 { font-size: 1.9rem; margin: 0.4rem 0 0.3rem; }
h2 { font-size: 1.45rem; margin: 2.2rem 0 0.6rem; padding-top: 0.9rem; border-top: 2px solid var(--rule); }
h3 { font-size: 1.15rem; margin: 0 0 0.3rem; }
h4 { font-size: 0.95rem; margin: 0 0 0.3rem; }
p { margin: 0.5rem 0; max-width: 46rem; }
a { color: var(--link); }
header p, .quiet, figcaption { color: var(--soft); }
nav ul { list-style: none; display: flex; flex-wrap: wrap; gap: 0.2rem 1.2rem; padding: 0; margin: 0.8rem 0 0; }
.rule { font-size: 1.2rem; border-left: 5px solid var(--band); padding: 0.1rem 0 0.1rem 0.9rem; }
figure { margin: 1rem 0 1.4rem; }
figcaption { font-size: 0.94rem; margin-top: 0.3rem; }
svg { display: block; max-width: 100%; }
.string-drawing { width: 100%; height: auto; }
.for-narrow { display: none; }
.string-drawing text { font: 13px system-ui, "DejaVu Sans", Verdana, sans-serif; fill: var(--ink); }
.string-drawing text.small { font-size: 12px; fill: var(--soft); }
.for-narrow .string-drawing text { font-size: 15px; }
.for-narrow .string-drawing text.small { font-size: 14px; }
.board { fill: var(--board); }
.fret { stroke: var(--soft); stroke-width: 1; }
.guide { stroke: var(--soft); stroke-width: 1.5; stroke-dasharray: 5 3; }
.bridge { stroke: var(--ink); stroke-width: 3; }
.floor { fill: var(--floor); }
.tick { stroke: var(--soft); stroke-width: 1; }
.idle { stroke: var(--soft); stroke-width: 1; stroke-dasharray: 1 4; }
.string { stroke: var(--ink); stroke-width: 1.2; }
.finger { fill: var(--ink); }
.band { fill: var(--pale); fill-opacity: 0.85; stroke: var(--band); stroke-width: 1.4; }
.stretch { fill: none; stroke: var(--band); stroke-width: 1.4; stroke-dasharray: 4 2.5; }
.hair { fill: var(--band); }
.best { stroke: var(--band); stroke-width: 2; }
.left-behind { stroke: var(--behind); stroke-width: 1.4; stroke-dasharray: 6 3; }
.path { fill: none; stroke: var(--ink); stroke-width: 2.2; stroke-linejoin: round; }
.grid { stroke: var(--rule); stroke-width: 1; }
.behind { stroke: var(--behind); stroke-width: 2.2; }
.legend { list-style: none; padding: 0; margin: 0.5rem 0 0; display: flex; flex-wrap: wrap; gap: 0.15rem 1.3rem;
  font-size: 0.9rem; }
.legend li { display: flex; align-items: center; gap: 0.4rem; }
.sample { width: 34px; height: 20px; flex: none; }
.card { background: var(--card); border: 1px solid var(--rule); border-radius: 6px; padding: 0.9rem 1rem; margin: 1rem 0; }
.pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0.6rem 1.2rem; margin: 0.6rem 0; }
.take { min-width: 0; }
audio { width: 100%; display: block; }
.caution { border-left: 5px solid var(--behind); padding: 0.1rem 0 0.1rem 0.9rem; }
.on-paper { display: none; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr)); gap: 0.3rem 1.4rem; margin: 0.7rem 0; }
dt { color: var(--soft); font-size: 0.9rem; }
dd { margin: 0; font-weight: 600; }
.wide { overflow-x: auto; max-width: 100%; }
.wide:focus-visible, a:focus-visible, summary:focus-visible { outline: 3px solid var(--band); outline-offset: 2px; }
table { border-collapse: collapse; font-size: 0.92rem; margin: 0.6rem 0; font-variant-numeric: tabular-nums; }
caption { text-align: left; color: var(--soft); padding-bottom: 0.3rem; }
th, td { border-bottom: 1px solid var(--rule); padding: 0.25rem 0.55rem; text-align: right; vertical-align: bottom; }
th:first-child { text-align: left; }
thead th { font-weight: 600; font-size: 0.84rem; line-height: 1.25; }
tbody th { font-weight: 400; }
.stops td { white-space: nowrap; }
.stops tbody tr:nth-child(even) { background: var(--card); }
.stops thead th { min-width: 4.6rem; }
.chart { overflow-x: auto; background: #ffffff; border: 1px solid var(--rule); border-radius: 4px; }
.chart svg { width: 100%; height: auto; min-width: 54rem; }
li { margin: 0.3rem 0; max-width: 46rem; }
pre { overflow-x: auto; background: var(--card); padding: 0.6rem; border-radius: 4px; font-size: 0.85rem; }
footer { margin-top: 2.5rem; border-top: 2px solid var(--rule); color: var(--soft); font-size: 0.92rem; }
@media screen and (max-width: 44rem) {
  body { padding: 0.8rem 0.8rem 2rem; }
  h1 { font-size: 1.5rem; }
  .pair { grid-template-columns: 1fr; }
  .for-wide { display: none; }
  .for-narrow { display: block; }
}
@page { margin: 15mm; }
@media print {
  html { font-size: 10.5pt; line-height: 1.4; background: none; }
  body { max-width: none; padding: 0; }
  h1 { font-size: 19pt; }
  h2 { font-size: 14pt; margin-top: 1.2rem; break-after: avoid; }
  h3, h4, caption { break-after: avoid; }
  nav, audio, .take, .on-screen { display: none; }
  .on-paper { display: block; }
  figure, .card, .chart, li, dl, tr { break-inside: avoid; }
  figcaption { break-before: avoid; }
  thead { display: table-header-group; }
  .wide, .chart { overflow: visible; border: 0; }
  .chart svg { min-width: 0; }
  .cards { display: grid; grid-template-columns: 1fr 1fr; gap: 0 0.8rem; align-items: start; }
  .card { background: none; padding: 0.4rem 0.6rem; margin: 0.6rem 0; }
  table { font-size: 8.6pt; }
  thead th { font-size: 7.6pt; }
  .stops thead th { min-width: 0; }
  th, td { padding: 0.14rem 0.3rem; }
  a { color: inherit; text-decoration: none; }
}
)";

}  // namespace

std::string_view lesson_style() { return style; }

}  // namespace sim::report

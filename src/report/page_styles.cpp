// The style sheet of all pages. Lengths are in rem or em so that a larger letter size enlarges all; nothing is told by colour alone.
#include "report/html_page.h"

namespace retort {

std::string_view page_styles() {
  return R"css(:root {
  color-scheme: light dark;
  --page: #fff; --ink: #16191d; --soft: #4b535c; --line: #8b949e; --faint: #d7dce1; --box: #f3f5f7; --link: #0b4f9c;
  --there: #e3f1e4; --unclear: #fdf0cf; --missing: #fff; --wrong: #fbe3de;
}
@media (prefers-color-scheme: dark) {
  :root {
    --page: #14181c; --ink: #eef1f3; --soft: #b6bfc8; --line: #7b8691; --faint: #38424c; --box: #1e242a; --link: #8fc1ff;
    --there: #1d3a23; --unclear: #463a12; --missing: #14181c; --wrong: #4a2419;
  }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: var(--page); color: var(--ink); font: 1rem/1.5 system-ui, "Segoe UI", "Liberation Sans", "DejaVu Sans", sans-serif; overflow-wrap: anywhere; }
main { max-width: 68rem; margin: 0 auto; padding: 1rem; outline: none; }
h1, h2, h3, h4 { line-height: 1.25; margin: 1.6em 0 .5em; text-wrap: balance; }
h1 { font-size: 1.6rem; margin-top: .3em; }
h2 { font-size: 1.25rem; border-top: 1px solid var(--faint); padding-top: 1em; }
h3 { font-size: 1.05rem; }
p, li, dd, blockquote, figcaption { max-width: 44rem; }
p { margin: .5em 0; }
a { color: var(--link); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.skip { position: absolute; left: -100rem; }
.skip:focus { left: .5rem; top: .5rem; background: var(--page); padding: .5rem 1rem; z-index: 9; }
.hidden { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.soft { color: var(--soft); }
.aside { border: 1px solid var(--line); border-left-width: .4rem; background: var(--box); padding: .6rem 1rem; margin: 1rem 0; max-width: 46rem; }
.aside > :first-child { margin-top: 0; }
.aside > :last-child { margin-bottom: 0; }
.quote { border-left: .2rem solid var(--line); padding-left: .7rem; margin: .4rem 0; white-space: pre-line; }
.plain { list-style: none; padding-left: 0; }
.plain > li { margin: .35em 0; }
.cards { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr)); gap: .8rem; padding: 0; list-style: none; }
.cards > * { border: 1px solid var(--faint); background: var(--box); padding: .6rem .9rem; max-width: none; }
.cards > * > :first-child { margin-top: 0; }
.scroll { overflow-x: auto; position: relative; margin: .8rem 0; overflow-wrap: normal; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
caption { text-align: left; padding: .3rem 0; color: var(--soft); }
th, td { border: 1px solid var(--faint); padding: .3rem .6rem; text-align: left; vertical-align: top; }
thead th { background: var(--box); vertical-align: bottom; }
td.num, th.num { text-align: right; white-space: nowrap; }
.there { background: var(--there); }
.unclear { background: var(--unclear); }
.missing { background: var(--missing); }
.wrong { background: var(--wrong); }
svg { max-width: 100%; height: auto; }
@page { size: A4; margin: 15mm; }
@media print {
  :root {
    color-scheme: light;
    --page: #fff; --ink: #000; --soft: #333; --line: #555; --faint: #999; --box: #fff; --link: #000;
    --there: #fff; --unclear: #fff; --missing: #fff; --wrong: #fff;
  }
  body { font-size: 10.5pt; }
  main { max-width: none; padding: 0; }
  .skip, .screen { display: none; }
  .scroll { overflow: visible; }
  h1, h2, h3, h4 { break-after: avoid; }
  tr, li, .aside, .quote { break-inside: avoid; }
  thead { display: table-header-group; }
  .sheet { break-before: page; }
}
)css";
}

}  // namespace retort

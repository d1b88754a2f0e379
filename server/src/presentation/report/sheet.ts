/** The looks of a report, on screen and on paper. No page size is set: the printer's paper decides. */
export const reportSheet = `
:root { color-scheme: light; }
body { font: 15px/1.45 Helvetica, Arial, "Liberation Sans", sans-serif; color: #1a1a1a; background: #fff; margin: 2rem auto; max-width: 60rem; padding: 0 1rem; }
h1 { font-size: 1.5rem; margin: 0 0 .5rem; }
h2 { font-size: 1.2rem; border-bottom: 2px solid #1a1a1a; padding-bottom: .2rem; overflow-wrap: anywhere; }
h3 { font-size: 1rem; margin: 1.6rem 0 .4rem; }
p { margin: .4rem 0; }
dl { display: grid; grid-template-columns: 1fr 1fr; column-gap: 2rem; margin: .4rem 0; }
dl div { display: grid; grid-template-columns: 9.5rem 1fr; border-bottom: 1px solid #ccc; padding: .15rem 0; }
dt { color: #555; } dd { margin: 0; overflow-wrap: anywhere; }
.missing { font-style: italic; color: #555; }
ul { margin: .4rem 0; padding-left: 1.2rem; } li { overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; margin: .6rem 0; font-size: .87em; }
caption { text-align: left; font-weight: 600; padding-bottom: .2rem; }
th, td { padding: .2rem .5rem .2rem 0; text-align: left; vertical-align: top; border-bottom: 1px solid #ccc; overflow-wrap: break-word; }
td { overflow-wrap: anywhere; min-width: 3.6rem; }
th { border-bottom-color: #1a1a1a; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
figure { margin: 1rem 0; break-inside: avoid; } figure svg { width: 100%; height: auto; display: block; }
figcaption { font-size: .87em; color: #555; }
.end { margin-top: 2rem; text-align: center; border-top: 2px solid #1a1a1a; padding-top: .4rem; }
@media (max-width: 40rem) { dl { grid-template-columns: 1fr; } }
@page { margin: 15mm; }
@media print {
  body { margin: 0; max-width: none; padding: 0; font-size: 9.5pt; }
  dl div { grid-template-columns: 8rem 1fr; break-inside: avoid; }
  h2, h3, caption { break-after: avoid; }
  tr, li { break-inside: avoid; }
  thead { display: table-header-group; }
  article + article { break-before: page; }
  .wide { overflow: visible; }
}
`;

/** The looks of a report, on screen and on paper. No page size is set: the printer's paper decides. */
export const reportSheet = `
:root { color-scheme: light; }
body { font: 15px/1.45 Helvetica, Arial, "Liberation Sans", sans-serif; color: #1a1a1a; background: #fff; margin: 2rem auto; max-width: 60rem; padding: 0 1rem; }
h1 { font-size: 1.5rem; margin: 0 0 .5rem; }
h2 { font-size: 1.2rem; border-bottom: 2px solid #1a1a1a; padding-bottom: .2rem; overflow-wrap: anywhere; }
h3 { font-size: 1rem; margin: 1.6rem 0 .4rem; }
p { margin: .4rem 0; }
dl { display: grid; grid-template-columns: 1fr 1fr; column-gap: 2rem; margin: .4rem 0; }
dl div { display: grid; grid-template-columns: 10rem 1fr; border-bottom: 1px solid #ccc; padding: .15rem 0; }
dt { color: #555; padding-right: .6rem; } dd { margin: 0; overflow-wrap: anywhere; }
.missing { font-style: italic; color: #555; }
ul { margin: .4rem 0; padding-left: 1.2rem; } li { overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; margin: .6rem 0; font-size: .87em; }
caption { text-align: left; font-weight: 600; padding-bottom: .2rem; }
th, td { padding: .2rem .5rem .2rem 0; text-align: left; vertical-align: top; border-bottom: 1px solid #ccc; overflow-wrap: break-word; }
td { overflow-wrap: anywhere; min-width: 3.6rem; }
th { border-bottom-color: #1a1a1a; }
.name { white-space: nowrap; }
.number + td:not(.number), .number + th:not(.number) { padding-left: .7rem; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
figure { margin: 1rem 0; break-inside: avoid; } figure svg { width: 100%; height: auto; display: block; }
figcaption { font-size: .87em; color: #555; }
.end { margin-top: 2rem; text-align: center; border-top: 2px solid #1a1a1a; padding-top: .4rem; }
@media (max-width: 40rem) { dl { grid-template-columns: 1fr; } }
@media print {
  body { margin: 0; max-width: none; padding: 0; font-size: 9.5pt; }
  dl { column-gap: 1.2rem; }
  dl div { grid-template-columns: 9rem 1fr; }
  h2, h3, caption, thead { break-after: avoid; }
  dl, dl div, tr, li, figure, .whole { break-inside: avoid; }
  tbody tr:first-child { break-before: avoid; }
  p, li { orphans: 3; widows: 3; }
  thead { display: table-header-group; }
  article + article { break-before: page; }
  .wide { overflow: visible; }
}
`;

/** Pages are counted, for each must be known as a part of the whole (ISO/IEC 17025:2017, 7.8.2.1, from memory). */
export function pageFoot(text: string): string {
  return `@page {
  margin: 15mm 15mm 18mm;
  @bottom-left { content: "${cssText(text)}"; font: 7.5pt Helvetica, Arial, "Liberation Sans", sans-serif; color: #555; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 7.5pt Helvetica, Arial, "Liberation Sans", sans-serif; color: #555; }
}
`;
}

/** Within a string of CSS and of the element it stands in: all but letters, figures and blanks as code points. */
function cssText(text: string): string {
  return text.replace(/[^A-Za-z0-9 .,:-]/gu, (c) => `\\${(wellFormed(c) ? c.codePointAt(0)! : 0xfffd).toString(16)} `);
}

function wellFormed(character: string): boolean {
  return !/[\p{Cc}\p{Cs}]/u.test(character);
}

import { escapeHtml } from '../html';
import type { DiffModel } from './model';
import { moved, shownGloss, summaryLine, type ShowOptions, type ShownGloss } from './shownRows';

const sheet = `
:root { color-scheme: light dark; }
body { font: 15px/1.5 system-ui, sans-serif; margin: 2rem auto; max-width: 72rem; padding: 0 1rem; }
h1 { font-size: 1.3rem; } h2 { font-size: 1.05rem; margin-top: 2rem; }
table { border-collapse: collapse; width: 100%; }
th, td { padding: .3rem .6rem; text-align: left; vertical-align: top; border-bottom: 1px solid #8884; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
.quiet { opacity: .75; }
td:last-child { min-width: 14rem; overflow-wrap: anywhere; }
@page { margin: 15mm; }
@media print {
  body { margin: 0; max-width: none; padding: 0; font-size: 9pt; }
  td:last-child { min-width: 9rem; }
  th, td { padding: .15rem .4rem; }
  h2, thead { break-after: avoid; }
  tr, li { break-inside: avoid; }
  thead { display: table-header-group; }
  tbody tr:first-child { break-before: avoid; }
}
`;

/** A comparison as one page of its own: no script, nothing loaded from elsewhere, the same bytes for the same model. */
export function diffHtml(model: DiffModel, options: ShowOptions): string {
  const body = model.glosses
    .filter((g) => moved(g) || options.within)
    .map((g) => section(shownGloss(g, options)))
    .join('');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Results from ${escapeHtml(model.from)} to ${escapeHtml(model.to)}</title>
<style>${sheet}</style>
</head>
<body>
<main>
<h1>Results from ${escapeHtml(model.from)} to ${escapeHtml(model.to)}</h1>
<p>${escapeHtml(summaryLine(model))}</p>
${body}</main>
</body>
</html>
`;
}

function section(shown: ShownGloss): string {
  const parts = [`<section>\n<h2>${escapeHtml(shown.title)}</h2>\n`];
  for (const remark of shown.remarks) parts.push(`<p>${escapeHtml(remark)}</p>\n`);
  if (shown.rows.length > 0) {
    const heads = ['result', 'before', 'now', 'difference', 'of it', 'what moved it'];
    const cells = heads.map((h, c) => `<th scope="col"${numeric(c)}>${h}</th>`).join('');
    parts.push(`<table>\n<thead><tr>${cells}</tr></thead>\n<tbody>\n`);
    for (const r of shown.rows) {
      const texts = [r.old, r.new, r.difference, r.relative, r.cause || r.status];
      const rest = texts.map((t, c) => `<td${numeric(c + 1)}>${escapeHtml(t)}</td>`).join('');
      parts.push(`<tr><th scope="row">${escapeHtml(r.result)}</th>${rest}</tr>\n`);
    }
    parts.push('</tbody>\n</table>\n');
  }
  if (shown.verdicts.length > 0) {
    parts.push('<ul>\n');
    for (const v of shown.verdicts) {
      const change = v.old === '' || v.new === '' ? v.old || v.new : `${v.old} → ${v.new}`;
      parts.push(`<li>${escapeHtml(`${v.label}: ${change}${v.cause === '' ? '' : ` (${v.cause})`}`)}</li>\n`);
    }
    parts.push('</ul>\n');
  }
  if (shown.hidden !== null) parts.push(`<p class="quiet">${escapeHtml(shown.hidden)}.</p>\n`);
  return `${parts.join('')}</section>\n`;
}

function numeric(column: number): string {
  return column > 0 && column < 5 ? ' class="number"' : '';
}

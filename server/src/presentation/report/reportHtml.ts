import { escapeHtml } from '../html';
import type { Fact, ReportBlock, ReportInput, ReportOptions } from './model';
import { reportSections, reportTitle } from './report';
import { pageFoot, reportSheet } from './sheet';

/**
 * The report as one page of its own: no script, nothing loaded from elsewhere, pictures drawn inside. It fits A4 and US
 * Letter. The same input gives the same bytes.
 */
export function reportHtml(inputs: readonly ReportInput[], options: ReportOptions): string {
  const title = inputs.length === 1 ? `Evaluation report: ${reportTitle(inputs[0])}` : 'Evaluation reports';
  let figures = 0;
  const figure = (): string => `figure-${++figures}`;
  const articles = inputs.map((input) => {
    const sections = reportSections(input, options).map(
      (s) => `<section>\n<h3>${html(s.title)}</h3>\n${s.blocks.map((b) => blockHtml(b, figure)).join('')}</section>\n`,
    );
    return `<article>\n<h2>${html(reportTitle(input))}</h2>\n${sections.join('')}</article>\n`;
  });
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${html(title)}</title>
<style>${reportSheet}${pageFoot(footOf(inputs, title))}</style>
</head>
<body>
<main>
<h1>${html(inputs.length === 1 ? 'Evaluation report' : title)}</h1>
${articles.join('')}<p class="end">End of report.</p>
</main>
</body>
</html>
`;
}

/** On every page: which report it is a part of. */
function footOf(inputs: readonly ReportInput[], title: string): string {
  const [{ identity }] = inputs;
  return inputs.length > 1 || identity === null ? title : `${title}, SHA-256 of the gloss ${identity.slice(0, 12)}…`;
}

function blockHtml(block: ReportBlock, figure: () => string): string {
  switch (block.block) {
    case 'text':
      return `<p>${html(block.text)}</p>\n`;
    case 'list':
      return `<ul>\n${block.items.map((i) => `<li>${html(i)}</li>\n`).join('')}</ul>\n`;
    case 'facts':
      return `<dl>\n${block.facts.map(factHtml).join('')}</dl>\n`;
    case 'table':
      return tableHtml(block);
    case 'figure': {
      const { svg, caption } = block.figure;
      return `<figure>\n${inside(svg, figure())}\n<figcaption>${html(caption)}</figcaption>\n</figure>\n`;
    }
  }
}

function factHtml({ label, value }: Fact): string {
  const said = value === null ? `<dd class="missing">not stated: ${html(label)}</dd>` : `<dd>${breakable(value)}</dd>`;
  return `<div><dt>${html(label)}</dt>${said}</div>\n`;
}

/** Of so many rows a table is kept on one page; a longer one is broken between rows. */
const mostWhole = 12;
/** Letters of a name that is not broken. */
const longestName = 28;

function tableHtml({ name, headers, rows, numbers }: Extract<ReportBlock, { block: 'table' }>): string {
  const number = (c: number): string => (numbers.includes(c) ? ' class="number"' : '');
  const kind = (text: string, c: number): string =>
    c === 0 && text.length <= longestName && !text.includes(' ') ? ' class="name"' : number(c);
  const heads = headers.map((h, c) => `<th scope="col"${number(c)}>${html(h)}</th>`).join('');
  const body = rows.map((row) => `<tr>${row.map((t, c) => `<td${kind(t, c)}>${breakable(t)}</td>`).join('')}</tr>\n`);
  const whole = rows.length <= mostWhole ? ' whole' : '';
  return `<div class="wide${whole}">\n<table>\n<caption>${html(name)}</caption>\n<thead><tr>${heads}</tr></thead>\n<tbody>\n${body.join('')}</tbody>\n</table>\n</div>\n`;
}

/** A long path or name may be broken after what parts it, before it is broken anywhere. */
function breakable(text: string): string {
  return text
    .split(/(\s+)/)
    .map((word) =>
      word.length < 16
        ? html(word)
        : word
            .split(/(?<=[/_])/)
            .map(html)
            .join('<wbr>'),
    )
    .join('');
}

/** A picture within the page: without its XML declaration, ids told apart from those of other pictures. */
function inside(svg: string, figure: string): string {
  return svg
    .replace(/^<\?xml[^>]*\?>\s*/, '')
    .trimEnd()
    .replace(/ id="([^"]*)"/g, ` id="${figure}-$1"`)
    .replace(/="url\(#/g, `="url(#${figure}-`);
}

/** Escaped; control characters, which HTML forbids, and halves of pairs, which UTF-8 cannot hold, are shown as such. */
function html(text: string): string {
  return escapeHtml(text.replace(/[^\P{Cc}\t\n]|\p{Cs}|[\uFDD0-\uFDEF\uFFFE\uFFFF]/gu, '\uFFFD'));
}

import type { Paint, Style } from '../paint';
import { unpainted } from '../paint';
import { textTable } from '../textTable';
import type { DiffModel } from './model';
import {
  moved,
  nothingMoved,
  shownGloss,
  summaryLine,
  type ShowOptions,
  type ShownGloss,
  type ShownRow,
} from './shownRows';

const style: Readonly<Record<ShownRow['status'], Style>> = {
  changed: 'warning',
  added: 'note',
  removed: 'note',
  'within tolerance': 'faint',
  equal: 'faint',
  'cannot compute': 'error',
};

/** A comparison for a terminal: a table a gloss that moved, one line for what it comes to. */
export function diffText(model: DiffModel, options: ShowOptions, paint: Paint = unpainted): string {
  const lines = [paint('faint', `From ${model.from} to ${model.to}`)];
  for (const gloss of model.glosses) {
    if (!moved(gloss) && !options.within) continue;
    lines.push('', ...glossLines(shownGloss(gloss, options), paint));
  }
  const quiet = model.glosses.filter((g) => !moved(g)).length;
  lines.push('');
  if (quiet > 0 && quiet < model.glosses.length)
    lines.push(`${quiet} of ${model.glosses.length} glosses did not move.`);
  lines.push(summaryLine(model));
  return `${lines.join('\n')}\n`;
}

function glossLines(shown: ShownGloss, paint: Paint): string[] {
  const lines = [paint('strong', shown.title), ...shown.remarks.map((r) => `  ${r}`)];
  if (shown.rows.length > 0) {
    const heads = ['  result', 'before', 'now', 'difference', 'of it', 'what moved it'];
    lines.push(
      ...textTable(
        heads.map((h, c) => ({
          header: [h],
          align: c === 1 || c === 2 ? 'plus-minus' : c === 3 || c === 4 ? 'right' : 'left',
        })),
        shown.rows.map((r) => ({
          cells: [`  ${r.result}`, r.old, r.new, r.difference, r.relative, r.cause || statusWords(r)],
          styles: { 0: style[r.status] },
        })),
        paint,
      ),
    );
  } else if (shown.verdicts.length === 0 && shown.remarks.length === 0) lines.push(`  ${nothingMoved}`);
  for (const v of shown.verdicts) {
    const change = v.old === '' ? v.new : v.new === '' ? v.old : v.old === v.new ? v.new : `${v.old} → ${v.new}`;
    lines.push(`  ${v.label}: ${change}${v.cause === '' ? '' : ` (${v.cause})`}`);
  }
  if (shown.hidden !== null) lines.push(paint('faint', `  ${shown.hidden}`));
  return lines;
}

function statusWords(r: ShownRow): string {
  return r.status === 'changed' || r.status === 'equal' ? '' : r.status;
}

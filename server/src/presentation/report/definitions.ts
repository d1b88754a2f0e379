import type { Snapshot } from '../../engine/snapshot';
import type { Construction, Result, ShapePoint } from '../../evaluation/result';
import { quantities, quantityRecord, type EvaluationKind } from '../../language/vocabulary/quantities';
import { blankWords, shortInput } from '../explain';
import { chosenResults } from '../oneGloss';
import { fixedNumber, plainNumber } from '../plainNumber';
import { shownBasis, shownWindow, unitText } from '../shown';
import { SnapshotTexts } from '../statements';
import { fact, type ReportBlock, type ReportInput, type ReportSection } from './model';

/** How each number was made: formula or window, basis, blank, levels and smoothing, definition, construction, shares of u. */
export function definitionSections({ snapshot }: ReportInput): ReportSection[] {
  const texts = new SnapshotTexts(snapshot);
  const groups = new Map<string, Result[]>();
  for (const r of chosenResults(snapshot, { all: false })) groups.set(r.name, [...(groups.get(r.name) ?? []), r]);
  return [...groups].map(([name, results]) => {
    const [first] = results;
    const bases = [...new Set(results.flatMap((r) => (r.basis === null ? [] : [shownBasis(r.basis)])))];
    const facts = [
      first.kind === 'let' ? fact('formula', texts.words(first.file, first.statement, 'expression')) : null,
      first.window === null
        ? null
        : fact('window', `${shownWindow(first.window)}${first.segment === null ? '' : ` in ${first.segment}`}`),
      bases.length === 0 ? null : fact('basis', bases.join('; ')),
      first.window === null ? null : fact('blank', blankWords(snapshot, name) || 'none subtracted'),
      first.method === '' ? null : fact('baseline, levels, smoothing', first.method),
      fact('written in', `${texts.path(first.file)}, line ${texts.line(first.file, first.statement)}`),
    ].filter((f) => f !== null);
    return {
      title: `How ${name} was made`,
      blocks: [{ block: 'facts', facts }, ...meanings(results), ...construction(snapshot, name)],
    };
  });
}

/** A row a result: what the quantity is, after which standard, and what its uncertainty is made of. */
function meanings(results: readonly Result[]): ReportBlock[] {
  const rows = results.map((r) => {
    const record = isEvaluation(r.kind) ? quantityRecord(r.kind, r.quantity.replace(/_time$/, '')) : null;
    const twin = r.quantity.endsWith('_time') ? ' As a time in its segment.' : '';
    const words = record === null ? 'as the formula says' : `${record.definition}${twin}`;
    return [r.id, words.replaceAll('`', '"'), record?.standard ?? '', shares(r)];
  });
  const headers = ['result', 'definition', 'after', 'u is made of'];
  return [{ block: 'table', name: 'Definitions', headers, rows, numbers: [] }];
}

function isEvaluation(kind: string): kind is EvaluationKind {
  return Object.hasOwn(quantities, kind);
}

/** Down to a hundredth of u: below, a share moves u by less than its second digit. */
function shares(r: Result): string {
  if (r.value === null) return '';
  const least = (r.uncertainty ?? 0) / 100;
  const unit = unitText(r.unit.text === '°C' ? 'K' : r.unit.text);
  const shown = r.contributions.filter((c) => Math.abs(c.u) > least);
  const freedom = r.dof !== null && r.dof < 1000 ? [`${plainNumber(r.dof, 2)} degrees of freedom`] : [];
  return [...shown.map((c) => `${shortInput(c.input)} ${plainNumber(Math.abs(c.u), 2)}${unit}`), ...freedom].join('; ');
}

function construction(snapshot: Snapshot, name: string): ReportBlock[] {
  return snapshot.constructions
    .filter((c) => c.name === name)
    .map((c) => ({
      block: 'table',
      name: `Construction on ${c.signal}${c.unit === undefined ? '' : ` in ${c.unit}`}`,
      headers: ['line or mark', 'time / min', 'temperature / °C', c.signal],
      numbers: [1, 2, 3],
      rows: shapeRows(c),
    }));
}

/** Ends of lines and marks; of a curved baseline its ends, for the picture draws what lies between. */
function shapeRows(c: Construction): string[][] {
  return c.shapes.flatMap((s) => {
    if (s.shape === 'mark') return [[s.quantity, ...cells(s.at)]];
    if (s.shape === 'area') {
      return [['area', `${fixedNumber(s.from / 60, 2)} to ${fixedNumber(s.to / 60, 2)}`, '', '']];
    }
    const ends = s.points.length > 1 ? [s.points[0], s.points[s.points.length - 1]] : s.points;
    return ends.map((p, i) => [`${s.role}, ${i === 0 ? 'first' : 'last'} point`, ...cells(p)]);
  });
}

function cells(p: ShapePoint): string[] {
  return [
    fixedNumber(p.time / 60, 2),
    Number.isFinite(p.temperature) ? fixedNumber(p.temperature, 1) : '',
    plainNumber(p.y, 5),
  ];
}

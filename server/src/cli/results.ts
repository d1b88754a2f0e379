import type { Snapshot } from '../engine/snapshot';
import { evaluates, standingErrors } from '../presentation/evaluates';
import { explainText } from '../presentation/explain';
import { findingLine } from '../presentation/findings';
import { geometryText } from '../presentation/geometry';
import { anyFailed } from '../presentation/mainQuantities';
import { oneGlossCsv, oneGlossMarkdown, oneGlossText } from '../presentation/oneGloss';
import { inTextOrder } from '../presentation/order';
import type { Paint } from '../presentation/paint';
import { unpainted } from '../presentation/paint';
import { resultsJson } from '../presentation/resultsJson';
import { seriesOf } from '../presentation/series';
import { seriesCsv } from '../presentation/seriesCsv';
import { seriesMarkdown, seriesText } from '../presentation/seriesText';
import { SnapshotTexts } from '../presentation/statements';
import { paintFor } from './colour';
import type { Format } from './commands';
import type { Context } from './context';
import { evaluateAll, writeResults } from './evaluateAll';
import { BadUsage, done, found } from './exitCodes';

interface Wish {
  readonly format: Format;
  readonly all: boolean;
  readonly explain: boolean;
  readonly geometry: boolean;
  readonly columns: number | null;
  readonly paint: Paint;
}

/** `thermogloss results`: every number; 1 where a result failed or could not be read, or where errors left none. */
export async function results(context: Context): Promise<number> {
  const wish = wishOf(context);
  const snapshots = await evaluateAll(context, 'results');
  if (wish.format === 'json') {
    const objects = snapshots.map((s) => resultsJson(s, { geometry: wish.geometry }));
    writeResults(context, objects.map((o) => `${JSON.stringify(o)}\n`).join(''));
  } else {
    const evaluating = snapshots.filter(evaluates);
    if (evaluating.length > 0) writeResults(context, shown(evaluating, wish));
    tell(context, snapshots);
  }
  return snapshots.some(hasFailed) ? found : done;
}

function wishOf({ typed, terminal }: Context): Wish {
  const format = (typed.values.get('format') ?? 'text') as Format;
  const explain = typed.switches.has('explain');
  const geometry = typed.switches.has('geometry');
  if (explain && format !== 'text') throw new BadUsage(`--explain is text; it does not go with --format ${format}`);
  if (geometry && format !== 'text' && format !== 'json') {
    throw new BadUsage(`--geometry does not go with --format ${format}; text and json hold it`);
  }
  const toFile = typed.values.has('output');
  return {
    format,
    all: typed.switches.has('all'),
    explain,
    geometry,
    columns: toFile ? null : terminal.columns,
    paint: toFile ? unpainted : paintFor(terminal, terminal.outIsTerminal),
  };
}

function shown(snapshots: readonly Snapshot[], wish: Wish): string {
  const one = snapshots.length === 1 ? snapshots[0] : null;
  if (wish.format === 'csv') return one === null ? seriesCsv(seriesOf(snapshots, wish)) : oneGlossCsv(one, wish);
  if (wish.format === 'markdown') {
    return one === null ? seriesMarkdown(seriesOf(snapshots, wish)) : oneGlossMarkdown(one, wish);
  }
  const { paint } = wish;
  const table =
    one === null ? seriesText(seriesOf(snapshots, wish), wish.columns, paint) : oneGlossText(one, wish, paint);
  const more = snapshots.flatMap((s) => [
    ...(wish.explain ? [explainText(s, paint)] : []),
    ...(wish.geometry ? [geometryText(s)] : []),
  ]);
  return [table, ...more].filter((t) => t !== '').join('\n');
}

export function hasFailed(s: Snapshot): boolean {
  const trees = s.method === null ? [s.gloss.tree] : [s.gloss.tree, s.method.tree];
  // A named statement that could not be read is a failed result, though it has no row.
  const broken = trees.some((tree) => tree.statements.some((node) => node.broken && node.name !== null));
  return broken || anyFailed(s) || (s.results.length === 0 && standingErrors(s));
}

/** On standard error: what was left out of the table, and the errors and warnings that stand. */
function tell({ terminal }: Context, snapshots: readonly Snapshot[]): void {
  const paint = paintFor(terminal, terminal.errorIsTerminal);
  for (const s of snapshots) {
    if (!evaluates(s)) {
      const why = s.gloss.tree.role === 'method' ? 'is a method, without a run of its own' : 'evaluates nothing';
      terminal.error(`${s.gloss.display} ${why}\n`);
    }
    const texts = new SnapshotTexts(s);
    for (const f of inTextOrder(s.findings)) {
      if (f.allowed === null && f.severity !== 'note') terminal.error(`${findingLine(f, texts, paint)}\n`);
    }
  }
}

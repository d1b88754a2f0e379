import type { Snapshot } from '../engine/snapshot';
import type { Severity } from '../findings/finding';
import { findingsCsv, findingsJson, findingsMarkdown, findingsSummary, findingsText } from '../presentation/findings';
import { findingsGithub } from '../presentation/findingsGithub';
import { findingsSarif } from '../presentation/findingsSarif';
import { rank } from '../presentation/order';
import type { Paint } from '../presentation/paint';
import { unpainted } from '../presentation/paint';
import { paintFor } from './colour';
import type { CheckFormat } from './commands';
import type { Context } from './context';
import { evaluateAll, writeResults } from './evaluateAll';
import { done, found } from './exitCodes';

/** `thermogloss check`: findings as results; 1 where one that is not allowed reaches `--fail-on`. */
export async function check(context: Context): Promise<number> {
  const { typed, terminal } = context;
  const snapshots = await evaluateAll(context, 'check');
  const paint = typed.values.has('output') ? unpainted : paintFor(terminal, terminal.outIsTerminal);
  writeResults(context, shown(snapshots, (typed.values.get('format') ?? 'text') as CheckFormat, paint));
  const limit = rank[(typed.values.get('fail-on') ?? 'error') as Severity];
  const standing = snapshots.flatMap((s) => s.findings).filter((f) => f.allowed === null);
  return standing.some((f) => rank[f.severity] <= limit) ? found : done;
}

function shown(snapshots: readonly Snapshot[], format: CheckFormat, paint: Paint): string {
  switch (format) {
    case 'text':
      return `${snapshots.map((s) => findingsText(s, paint)).join('')}${findingsSummary(snapshots)}\n`;
    case 'json':
      return snapshots.map((s) => `${JSON.stringify(findingsJson(s))}\n`).join('');
    case 'csv':
      return findingsCsv(snapshots);
    case 'markdown':
      return findingsMarkdown(snapshots);
    case 'github':
      return findingsGithub(snapshots);
    case 'sarif':
      return `${JSON.stringify(findingsSarif(snapshots), null, 2)}\n`;
  }
}

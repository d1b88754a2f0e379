import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import type { Snapshot } from '../engine/snapshot';
import { reportFigures } from '../features/reportFigures';
import { SourceHost } from '../host/sourceHost';
import { Repository } from '../host/repository';
import type { ReportInput } from '../presentation/report/model';
import { reportHtml } from '../presentation/report/reportHtml';
import { reportMarkdown } from '../presentation/report/reportMarkdown';
import type { Context } from './context';
import { evaluateAll, writeResults } from './evaluateAll';
import { BadUsage, done, found, Trouble } from './exitCodes';
import { evaluates, hasFailed } from './results';

/** `thermogloss report`: everything behind the numbers as one page; 1 where a result failed. */
export async function report(context: Context): Promise<number> {
  const { typed, terminal, workspaces } = context;
  const issued = dayOf(typed.values.get('date'));
  const snapshots = await evaluateAll(context, 'report');
  const shown = snapshots.filter(evaluates);
  for (const s of snapshots) if (!shown.includes(s)) terminal.error(`${s.gloss.display} evaluates nothing\n`);
  if (shown.length === 0) throw new Trouble('there is nothing to report');
  const inputs: ReportInput[] = [];
  for (const snapshot of shown) {
    const revision = await revisionOf(snapshot, resolve(terminal.cwd, snapshot.gloss.path));
    const workspace = await workspaces.of(snapshot.gloss.path);
    const curves = workspace.curvesOf?.(snapshot) ?? null;
    const approvals = (await workspace.approvalsOf?.(snapshot)) ?? [];
    const figures = curves === null ? [] : reportFigures(snapshot, curves, revision ?? 'revision not known');
    inputs.push({ snapshot, figures, identity: identityOf(snapshot.gloss.tree.text), revision, approvals });
  }
  const write = typed.values.get('format') === 'markdown' ? reportMarkdown : reportHtml;
  writeResults(context, write(inputs, { issued }));
  return snapshots.some(hasFailed) ? found : done;
}

/** A day that exists; the clock is never asked. */
function dayOf(text: string | undefined): string | null {
  if (text === undefined) return null;
  const day = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
  if (day === null || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text) {
    throw new BadUsage(`--date ${text}: write a day as YYYY-MM-DD`);
  }
  return text;
}

/** SHA-256 of a text as of a data file: byte order mark dropped, line ends as LF. */
function identityOf(text: string): string {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  return createHash('sha256').update(plain, 'utf8').digest('hex');
}

/** The commit checked out, and whether what was evaluated is what stands in it. */
async function revisionOf(snapshot: Snapshot, path: string): Promise<string | null> {
  const repository = await Repository.open(resolve(path, '..'));
  const commit = repository === null ? null : await repository.commit('HEAD');
  if (repository === null || commit === null) return null;
  const host = new SourceHost(repository.top, await repository.source(commit, 'HEAD'));
  const files = [
    { display: snapshot.gloss.display, identity: identityOf(snapshot.gloss.tree.text) },
    ...(snapshot.run === null ? [] : [snapshot.run]),
    ...snapshot.inputs,
  ];
  const others: string[] = [];
  for (const { display, identity } of files) {
    const file = await host.read(`${repository.top}/${display}`);
    if (!file.ok || file.identity !== identity) others.push(display);
  }
  return others.length === 0 ? commit : `${commit}, differing in ${others.join(', ')}`;
}

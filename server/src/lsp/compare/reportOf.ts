import { reportInput } from '../../features/reportInput';
import { evaluates } from '../../presentation/evaluates';
import { isDay } from '../../presentation/report/day';
import { reportHtml } from '../../presentation/report/reportHtml';
import { reportMarkdown } from '../../presentation/report/reportMarkdown';
import type { ReportAnswer, ReportParams } from '../../protocol/compare';
import type { LiveWorkspace } from '../liveWorkspace';
import { evaluatedNow } from './evaluatedNow';

/** The report of a gloss as its text stands: the bytes that `thermogloss report` writes of the same text. */
export async function reportOf(workspace: LiveWorkspace, params: ReportParams): Promise<ReportAnswer> {
  const { issued, format } = params;
  if (issued !== null && !isDay(issued)) return { ok: false, message: `${issued} is no day as YYYY-MM-DD.` };
  const ground = await evaluatedNow(workspace, params.uri);
  if (ground === null) return { ok: false, message: 'The gloss cannot be read.' };
  const { snapshot, curves, gloss } = ground;
  if (!evaluates(snapshot)) return { ok: false, message: 'It evaluates nothing: there is nothing to report.' };
  const { host, root, approvals } = workspace.outside.project(gloss.path);
  const file = await host.read(gloss.path);
  const identity = file.ok ? file.identity : null;
  const revision = (await workspace.outside.revisions?.wordsOf(root, snapshot, identity)) ?? null;
  const input = reportInput(snapshot, curves, { identity, revision, approvals: await approvals.of(snapshot) });
  return { ok: true, text: (format === 'markdown' ? reportMarkdown : reportHtml)([input], { issued }) };
}

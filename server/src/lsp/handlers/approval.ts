import type { Connection } from 'vscode-languageserver';
import { approve } from '../../approval/approve';
import { method, type ApproveAnswer, type ApproveParams } from '../../protocol/messages';
import type { LiveWorkspace } from '../liveWorkspace';
import { unsavedBeside } from '../unsaved';
import type { Guard } from './guard';

/** Approving: the server says what is to be written, the client writes it. */
export function registerApproval(connection: Connection, workspace: LiveWorkspace, guard: Guard): void {
  const fault = refused('The results could not be approved; the log says why.');
  connection.onRequest(
    method.approve,
    guard<ApproveParams, ApproveAnswer>('approve', fault, (params) => answer(workspace, params)),
  );
  connection.onRequest(
    method.approver,
    guard<{ uri: string }, { name: string } | null>('approver', null, async ({ uri }) => {
      const path = workspace.pathOf(uri);
      const name = path === null ? null : await workspace.outside.userName(path);
      return name === null ? null : { name };
    }),
  );
}

async function answer(workspace: LiveWorkspace, { uri, by, on, because }: ApproveParams): Promise<ApproveAnswer> {
  if (uri.startsWith('untitled:')) return refused('A gloss is approved once it is saved: the record lies beside it.');
  // Of the text as it stands, whatever the setting says about computing while typing.
  const results = (await workspace.currentResults(uri)) ?? (await workspace.evaluate(uri));
  if (results === null) return refused('The text changed meanwhile, or it is no gloss with results.');
  const { gloss, snapshot, version } = results;
  const project = workspace.outside.project(gloss.path);
  const { engine, host, approvals } = project;
  const unsaved = await unsavedBeside(project, snapshot);
  if (unsaved.length > 0) {
    return refused(`Save ${unsaved.join(' and ')} first: the approval is compared with what is saved.`);
  }
  const approved = await approve(engine, host, approvals, snapshot, { by, on, because });
  if (!approved.ok) return approved;
  if (workspace.outside.isLink(approved.recordPath)) {
    return refused(`${host.display(approved.recordPath)} is a link; the record is a file of its own.`);
  }
  return {
    ok: true,
    uri,
    version,
    edits: approved.edits.map(({ span, text }) => ({ range: gloss.positions.range(span), text })),
    record: { uri: workspace.uriOf(approved.recordPath), text: approved.record },
    digest: approved.digest,
  };
}

function refused(message: string): ApproveAnswer {
  return { ok: false, needs: 'other', message };
}

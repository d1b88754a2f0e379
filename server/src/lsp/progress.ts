import type { Connection, WorkDoneProgressServerReporter } from 'vscode-languageserver';
import { nameOf } from '../features/files/paths';
import type { ClientState } from './clientState';
import type { LiveWorkspace } from './liveWorkspace';

/** Work that takes less is over before anybody asks what goes on. */
export const progressPause = 400;

interface Work {
  evaluations: number;
  readonly callOff: () => void;
  shown: Promise<WorkDoneProgressServerReporter | null> | null;
}

/**
 * Tells the client of evaluations that take longer than a pause, by the file they read. Called off by the person, an
 * evaluation stops and what was there before stays until the next change.
 */
export function registerProgress(connection: Connection, workspace: LiveWorkspace, client: ClientState): void {
  const works = new Map<string, Work>();

  const show = async (uri: string): Promise<WorkDoneProgressServerReporter | null> => {
    const [reporter, title] = await Promise.all([connection.window.createWorkDoneProgress(), titleOf(workspace, uri)]);
    if (!works.has(uri)) return null;
    reporter.begin(title, undefined, undefined, true);
    reporter.token.onCancellationRequested(() => workspace.evaluations.cancel(uri));
    return reporter;
  };

  client.onStarted.push((uri) => {
    if (!client.progress) return;
    const known = works.get(uri);
    // An evaluation that is called off may end after the next one has begun.
    if (known !== undefined) known.evaluations += 1;
    else {
      const callOff = workspace.outside.timers.after(progressPause, () => {
        const work = works.get(uri);
        if (work !== undefined) work.shown = show(uri).catch(() => null);
      });
      works.set(uri, { evaluations: 1, callOff, shown: null });
    }
  });
  client.onEnded.push((uri) => {
    const work = works.get(uri);
    if (work === undefined) return;
    work.evaluations -= 1;
    if (work.evaluations > 0) return;
    works.delete(uri);
    work.callOff();
    void work.shown?.then((reporter) => reporter?.done());
  });
}

async function titleOf(workspace: LiveWorkspace, uri: string): Promise<string> {
  const document = await workspace.document(uri);
  const run = document?.program.run ?? null;
  return run === null ? `Evaluating ${nameOf(uri)}` : `Reading ${nameOf(run.statement.file)}`;
}

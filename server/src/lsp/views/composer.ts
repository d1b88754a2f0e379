import { nameWords } from '../../base/revisionName';
import type { RunCurves } from '../../engine/curves/runCurves';
import type { Freshness, Generation, ViewState } from '../../protocol/view';
import { plotState, mostOverlays, type Overlay } from '../../presentation/plot/plotState';
import type { WatchParams } from '../../protocol/messages';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Committed } from '../revisionsBeside';
import { againstOf } from './against';
import { groundOf, methodPathOf, nameOfPath, usersOf } from './grounds';
import type { Ground, Picture } from './picture';

/** The revision compared with; null: it is not known yet; `none`: there is no such revision, or no repository. */
export type Beside = Committed | 'none' | null;

/** Makes the pictures of one view: the run, what is laid over it, and the words around them. */
export async function compose(
  workspace: LiveWorkspace,
  watched: WatchParams,
  ground: Ground | null,
  role: 'run' | 'method',
  generation: Generation,
  freshness: Freshness,
  committed: Beside,
): Promise<Picture> {
  const { choices, editable, uri } = watched;
  const own = ground?.curves ?? null;
  const methodPath =
    role === 'method' ? workspace.pathOf(uri) : ground === null ? null : methodPathOf(workspace, ground.gloss);
  const users = methodPath === null ? [] : await usersOf(workspace, methodPath);
  const named = users.map((g) => ({ uri: g.uri, name: nameOfPath(g.path) }));
  const companions = named.filter((c) => c.uri !== ground?.gloss.uri);
  const names = new Map<string, string>();
  const laid: RunCurves[] = [];
  const overlays: Overlay[] = [];
  for (const [index, over] of choices.overlays.slice(0, mostOverlays).entries()) {
    const name = named.find((n) => n.uri === over)?.name ?? nameOfPath(over);
    const key = `over${index + 1}:`;
    const other = own === null ? null : await groundOf(workspace, over, choices.abscissa, { key, run: own });
    const reason =
      other === null ? 'its gloss cannot be read' : other.curves === null ? 'its run cannot be read' : null;
    overlays.push({ uri: over, name, curves: other?.curves ?? null, reason });
    if (other?.curves) {
      laid.push(other.curves);
      names.set(key, name);
    }
  }
  const beside =
    committed === null || committed === 'none' || ground === null ? null : againstOf(committed, ground, choices);
  if (beside?.curves) {
    laid.push(beside.curves);
    names.set(beside.curves.key, beside.against.name);
  }
  const lacking =
    choices.against === null ? null : lackingOf(choices.against, committed, beside !== null && beside.curves !== null);
  const state: ViewState = plotState({
    generation,
    freshness,
    choices,
    role,
    editable,
    snapshot: ground?.snapshot ?? null,
    curves: own,
    uris: { gloss: ground?.gloss.uri ?? uri, method: ground?.method?.uri ?? null },
    companions,
    overlays: lacking === null ? overlays : [lacking, ...overlays],
    against: beside?.against ?? null,
    runs: role === 'method' ? named : [],
    offers: offersOf(ground, role, named.length),
  });
  const curves = own === null ? laid : [own, ...laid];
  return { state, ground, curves, differences: beside?.differences ?? [], names };
}

/** Why nothing is drawn of the revision that was asked for, in words; null: it is drawn, or not known yet. */
function lackingOf(asked: string, committed: Beside, drawn: boolean): Overlay | null {
  if (committed === null || drawn) return null;
  const words = (name: string, reason: string): Overlay => ({ uri: '', name, curves: null, reason });
  if (committed === 'none') return words(nameWords(asked), 'there is no such revision here');
  const { label, side } = committed;
  return words(label, side === null ? 'this gloss was not there' : 'its run or the run now cannot be read');
}

/** What an empty view offers to do. */
function offersOf(ground: Ground | null, role: 'run' | 'method', runs: number): ViewState['offers'] {
  if (role === 'method' && runs === 0) {
    return [
      {
        text: 'No gloss of the workspace names this method yet: its windows are shown with a run.',
        command: '',
        argument: '',
      },
    ];
  }
  if (ground === null) return [{ text: 'The gloss cannot be read.', command: '', argument: '' }];
  if (ground.curves !== null) return [];
  const run = ground.gloss.tree.statements.find((s) => s.statement?.kind === 'run');
  if (run === undefined)
    return [
      {
        text: 'This gloss names no run yet: write run "FILE", or draft one from a run file.',
        command: 'thermogloss.draft',
        argument: '',
      },
    ];
  const error = ground.snapshot.findings.find((f) => f.severity === 'error' && f.allowed === null);
  return [{ text: error?.message ?? 'The run cannot be read.', command: '', argument: '' }];
}

import { freshView } from '../../../client/src/curves/keptView';
import { CurvesSession, type RevealPlace, type SessionWorld } from '../../../client/src/curves/session';
import type { ToView } from '../../../server/src/protocol/messages';
import type { EdgeEdit, ViewState } from '../../../server/src/protocol/view';

export interface Told {
  readonly name: string;
  readonly params: Record<string, unknown>;
}

export interface Desk {
  readonly session: CurvesSession;
  readonly posted: ToView[];
  /** Requests and notifications to the server, in order. */
  readonly told: Told[];
  readonly did: string[];
  readonly revealed: RevealPlace[];
  editable: boolean;
  answer: unknown;
}

/** A view of `file:///a.gloss` with an editor and a server that note what they are asked. */
export function desk(): Desk {
  const posted: ToView[] = [];
  const told: Told[] = [];
  const did: string[] = [];
  const revealed: RevealPlace[] = [];
  const world: SessionWorld = {
    post: (message) => posted.push(message),
    request: (name, params) => {
      told.push({ name, params: params as Record<string, unknown> });
      return Promise.resolve(made.answer as never);
    },
    notify: (name, params) => told.push({ name, params: params as Record<string, unknown> }),
    editable: () => Promise.resolve(made.editable),
    preferences: () => ({ exportTheme: 'print', abscissa: 'time' }),
    moveEdge: () => Promise.resolve(made.answer as EdgeEdit),
    reveal: (place) => {
      revealed.push(place);
      return Promise.resolve();
    },
    pin: (pinned) => did.push(pinned ? 'keep' : 'follow'),
    undo: (redo) => {
      did.push(redo ? 'redo' : 'undo');
      return Promise.resolve();
    },
    command: (command, argument) => did.push(`${command} ${argument}`),
    save: (name) => Promise.resolve(name === 'full.svg' ? 'The disk is full.' : ''),
    copyText: (text) => {
      did.push(`copy ${text}`);
      return Promise.resolve('');
    },
    fault: (message) => did.push(`fault ${message}`),
    began: () => did.push('began'),
  };
  const session = new CurvesSession('view1', freshView('file:///a.gloss', false, 'time'), world);
  const made: Desk = { session, posted, told, did, revealed, editable: true, answer: null };
  return made;
}

export function state(uri: string, revision: number): ViewState {
  return { generation: { uri, version: 1, revision } } as ViewState;
}

/** Lets promises that are due be settled. */
export function turn(): Promise<void> {
  return new Promise((done) => setImmediate(done));
}

import { CrashBudget } from '../../../client/src/server/crashBudget';
import type { RpcMessage } from '../../../client/src/server/rpc';
import { Supervisor } from '../../../client/src/server/supervisor';
import { fakeServers, type FakeServer } from './fakeServer';

export interface Supervised {
  readonly supervisor: Supervisor;
  /** Servers started so far. */
  readonly servers: FakeServer[];
  /** What the editor was given. */
  readonly delivered: RpcMessage[];
  readonly happened: string[];
  /** Milliseconds of the clock that losses are counted by. */
  clock: number;
  /** The editor sends a message. */
  editor(message: Omit<RpcMessage, 'jsonrpc'>): void;
}

/** A supervisor between an editor and servers made by the test. */
export function supervised(): Supervised {
  const { start, all } = fakeServers();
  const delivered: RpcMessage[] = [];
  const happened: string[] = [];
  const made: Supervised = {
    servers: all,
    delivered,
    happened,
    clock: 0,
    supervisor: new Supervisor(start, new CrashBudget(() => made.clock), {
      deliver: (message) => delivered.push(message),
      lost: () => happened.push('lost'),
      back: () => happened.push('back'),
      gaveUp: () => happened.push('gave up'),
      ended: () => happened.push('ended'),
      wrote: () => undefined,
    }),
    editor: (message) => made.supervisor.take({ jsonrpc: '2.0', ...message }),
  };
  made.supervisor.start();
  return made;
}

/** The same, after both sides have greeted each other. */
export function greeted(): Supervised {
  const made = supervised();
  made.editor({ id: 0, method: 'initialize', params: { processId: 7 } });
  made.servers[0]!.answers('initialize', { capabilities: {} });
  made.editor({ method: 'initialized', params: {} });
  return made;
}

export function open(uri: string, version: number, text: string): Omit<RpcMessage, 'jsonrpc'> {
  const textDocument = { uri, languageId: 'gloss', version, text };
  return { method: 'textDocument/didOpen', params: { textDocument } };
}

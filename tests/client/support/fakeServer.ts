import type { RpcMessage } from '../../../client/src/server/rpc';
import type { ServerProcess, ServerProcessEvents, StartProcess } from '../../../client/src/server/serverProcess';

/** A server that does what a test makes it do. */
export class FakeServer implements ServerProcess {
  readonly received: RpcMessage[] = [];
  killed = false;

  constructor(
    readonly pid: number,
    private readonly events: ServerProcessEvents,
  ) {}

  send(message: RpcMessage): void {
    this.received.push(structuredClone(message));
  }

  kill(): void {
    this.killed = true;
    this.events.ended('killed');
  }

  says(message: Omit<RpcMessage, 'jsonrpc'>): void {
    this.events.message({ jsonrpc: '2.0', ...message });
  }

  /** Answers the newest question of that method. */
  answers(method: string, result: unknown): void {
    const question = this.received.filter((m) => m.method === method).at(-1);
    if (question?.id === undefined) throw new Error(`${method} was not asked`);
    this.says({ id: question.id, result });
  }

  crashes(why = 'signal SIGKILL'): void {
    this.events.ended(why);
  }

  methods(): string[] {
    return this.received.map((m) => m.method ?? `answer ${String(m.id)}`);
  }
}

/** Starts such servers, each after the other. */
export function fakeServers(): { readonly start: StartProcess; readonly all: FakeServer[] } {
  const all: FakeServer[] = [];
  return {
    all,
    start: (events) => {
      const server = new FakeServer(100 + all.length, events);
      all.push(server);
      return server;
    },
  };
}

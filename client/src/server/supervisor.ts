import type { CrashBudget } from './crashBudget';
import { OpenProgress } from './openProgress';
import { Registrations } from './registrations';
import {
  isNotification,
  isRequest,
  isResponse,
  record,
  serverCancelled,
  type RpcId,
  type RpcMessage,
  type RpcRequest,
  type RpcResponse,
} from './rpc';
import type { ServerProcess, StartProcess } from './serverProcess';
import { TextMirror } from './textMirror';

export interface SupervisorEvents {
  /** A message for the editor. */
  deliver(message: RpcMessage): void;
  /** The server ended unasked and another is started. */
  lost(why: string): void;
  /** The other one is initialised and knows the open texts. */
  back(): void;
  /** It ended too often and is not started again. */
  gaveUp(why: string): void;
  /** It ended because it was asked to. */
  ended(): void;
  wrote(line: string): void;
}

/**
 * Stands between the editor's language client and the server. The client sees one connection that never breaks: a server
 * that is lost is replaced by one that is told the same (initialisation, open texts), so nothing that is shown has to be
 * cleared. Requests under way are given up; those that come meanwhile wait.
 */
export class Supervisor {
  private readonly mirror = new TextMirror();
  private readonly registrations = new Registrations();
  private readonly progress = new OpenProgress();
  private readonly pending = new Map<RpcId, RpcRequest>();
  private waiting: RpcMessage[] = [];
  private initialize: RpcRequest | null = null;
  private initialized: RpcMessage | null = null;
  /** The editor has had its answer to `initialize`. */
  private answered = false;
  private stopping = false;
  /** Not started again: every further question is given up. */
  private over = false;
  private generation = 0;
  private process: ServerProcess | null = null;
  /** The running server has answered `initialize`. */
  private ready = false;

  constructor(
    private readonly startProcess: StartProcess,
    private readonly budget: CrashBudget,
    private readonly events: SupervisorEvents,
  ) {}

  get pid(): number | null {
    return this.process?.pid ?? null;
  }

  start(): void {
    const generation = ++this.generation;
    this.ready = false;
    const ended = (why: string): void => {
      if (generation === this.generation) this.lose(why);
    };
    try {
      this.process = this.startProcess({
        message: (message) => {
          if (generation === this.generation) this.fromServer(message);
        },
        ended,
        wrote: (line) => this.events.wrote(line),
      });
    } catch (error) {
      // Not even begun: told as a loss, and not before whoever called `start` has gone on.
      this.process = null;
      queueMicrotask(() => ended(String(error)));
    }
  }

  kill(): void {
    this.stopping = true;
    this.process?.kill();
  }

  /** A message of the editor. */
  take(message: RpcMessage): void {
    if (isResponse(message)) return this.answer(message);
    if (isNotification(message)) {
      if (message.method === 'initialized') this.initialized = message;
      if (message.method === 'exit') this.stopping = true;
      if (this.mirror.take(message) && !this.ready) return;
    } else if (isRequest(message)) {
      if (message.method === 'initialize') this.initialize = message;
      if (message.method === 'shutdown') this.stopping = true;
    }
    if (this.over) return isRequest(message) ? this.refuse(message.id) : undefined;
    if (this.ready || message.method === 'initialize' || this.stopping) return this.send(message);
    if (message.method === '$/cancelRequest') return this.forget(record(message.params)['id'] as RpcId);
    this.waiting.push(message);
  }

  private send(message: RpcMessage): void {
    if (isRequest(message)) this.pending.set(message.id, message);
    this.process?.send(message);
  }

  private fromServer(message: RpcMessage): void {
    if (isResponse(message)) return this.settle(message);
    this.progress.see(message);
    if (!isRequest(message)) return this.events.deliver(message);
    const renamed = { ...message, id: this.outerId(message.id) };
    if (message.method === 'client/unregisterCapability') {
      return this.events.deliver({ ...renamed, params: this.registrations.unregister(message.params) });
    }
    if (message.method !== 'client/registerCapability') return this.events.deliver(renamed);
    const params = this.registrations.register(message.params);
    if (params === null) this.process?.send({ jsonrpc: '2.0', id: message.id, result: null });
    else this.events.deliver({ ...renamed, params });
  }

  private settle(message: RpcResponse): void {
    const request = this.pending.get(message.id);
    if (request === undefined) return;
    this.pending.delete(message.id);
    if (request.method !== 'initialize' || message.error !== undefined) return this.events.deliver(message);
    this.ready = true;
    if (!this.answered) {
      this.answered = true;
      return this.events.deliver(message);
    }
    if (this.initialized !== null) this.send(this.initialized);
    for (const opening of this.mirror.opening()) this.send(opening);
    const waiting = this.waiting;
    this.waiting = [];
    for (const kept of waiting) this.send(kept);
    this.events.back();
  }

  private lose(why: string): void {
    this.process = null;
    this.ready = false;
    if (this.stopping) {
      this.over = true;
      this.giveUpPending();
      return this.events.ended();
    }
    for (const end of this.progress.ends()) this.events.deliver(end);
    const again = this.budget.spend();
    // Before its first answer the editor still waits for `initialize`: the next server gives it.
    if (this.answered || !again) this.giveUpPending();
    else this.pending.clear();
    this.over = !again;
    if (this.over) {
      const kept = this.waiting.filter(isRequest);
      this.waiting = [];
      for (const { id } of kept) this.refuse(id);
      return this.events.gaveUp(why);
    }
    this.events.lost(why);
    this.start();
    if (this.initialize !== null) this.send(this.initialize);
  }

  private giveUpPending(): void {
    const pending = [...this.pending.keys()];
    this.pending.clear();
    for (const id of pending) this.refuse(id);
  }

  private refuse(id: RpcId): void {
    const error = { code: serverCancelled, message: 'lost' };
    this.events.deliver({ jsonrpc: '2.0', id, error });
  }

  private forget(id: RpcId): void {
    const kept = this.waiting.filter((m) => m.id !== id);
    if (kept.length === this.waiting.length) return;
    this.waiting = kept;
    this.refuse(id);
  }

  /** Servers count their requests from the start: the generation keeps an answer from reaching the wrong one. */
  private outerId(id: RpcId): string {
    return `${this.generation}/${typeof id === 'number' ? 'n' : 's'}/${id}`;
  }

  private answer(message: RpcResponse): void {
    const [generation, kind, ...rest] = String(message.id).split('/');
    if (Number(generation) !== this.generation) return;
    const id = rest.join('/');
    this.process?.send({ ...message, id: kind === 'n' ? Number(id) : id });
  }
}

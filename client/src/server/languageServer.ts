import { EventEmitter, workspace, type Disposable, type LogOutputChannel } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { method, type StatusParams } from '../../../server/src/protocol/messages';
import { CrashBudget } from './crashBudget';
import { isGloss } from './documentSelector';
import { Holding } from './holding';
import type { languageClient, NewClient } from './languageClient';
import { middleware, type InlineSwitch } from './middleware';
import type { StartProcess } from './serverProcess';
import type { ServerState } from './serverState';
import { Supervisor, type SupervisorEvents } from './supervisor';
import type { LocalConnection } from './transports';

/** What differs between a desktop editor and a browser. */
export interface ServerEntry {
  readonly startProcess: StartProcess;
  /** Loads the protocol library when it is first needed: it is most of the client's code. */
  load(): Promise<{ readonly languageClient: typeof languageClient; readonly newClient: NewClient }>;
}

interface Running {
  readonly supervisor: Supervisor;
  readonly client: Promise<BaseLanguageClient>;
}

/** How long what is shown is kept for a new server that never says it is done, in milliseconds. */
const longestHold = 15_000;
/** How long a server may take to leave when asked to, in milliseconds. */
const longestStop = 2_000;

/** The language server as the rest of the client sees it: started, asked, told, started again. */
export class LanguageServer implements Disposable {
  private readonly holding = new Holding();
  private readonly states = new EventEmitter<ServerState>();
  private readonly notified = new Map<string, ((params: unknown) => void)[]>();
  private readonly asked = new Map<string, (params: unknown) => unknown>();
  private running: Running | null = null;
  private release: ReturnType<typeof setTimeout> | undefined;
  readonly onState = this.states.event;
  state: ServerState = 'stopped';

  constructor(
    private readonly entry: ServerEntry,
    private readonly log: LogOutputChannel,
    private readonly inline: InlineSwitch,
  ) {
    this.onNotification<StatusParams>(method.status, ({ uri, computing }) => {
      if (!computing) this.holding.release(uri);
    });
  }

  get pid(): number | null {
    return this.running?.supervisor.pid ?? null;
  }

  /** To be called before `start`. */
  onNotification<P>(name: string, handler: (params: P) => void): void {
    this.notified.set(name, [...(this.notified.get(name) ?? []), handler as (params: unknown) => void]);
  }

  /** To be called before `start`. */
  onRequest<P, R>(name: string, handler: (params: P) => Promise<R>): void {
    this.asked.set(name, handler as (params: unknown) => unknown);
  }

  /** Starts without waiting: the process comes up while the protocol library is loaded. */
  start(): void {
    if (this.running !== null) return;
    this.enter('starting');
    const link: { connection: LocalConnection | null } = { connection: null };
    const supervisor = new Supervisor(
      (events) => this.entry.startProcess(events),
      new CrashBudget(() => performance.now()),
      this.supervision(link),
    );
    supervisor.start();
    const client = this.connect(supervisor, link);
    const running = { supervisor, client };
    this.running = running;
    client.then(
      () => this.enter('running'),
      (error: unknown) => {
        this.log.error(`The language server did not start: ${String(error)}`);
        if (this.running === running) this.enter('failed');
      },
    );
  }

  async stop(): Promise<void> {
    if (this.running === null) return;
    const { supervisor, client } = this.running;
    const up = this.state === 'running' || this.state === 'back';
    this.running = null;
    this.holding.releaseAll();
    if (!up) supervisor.kill();
    try {
      await (await client).dispose(longestStop);
    } catch (error) {
      this.log.info(`Stopping: ${String(error)}`);
    }
    supervisor.kill();
    this.enter('stopped');
  }

  /** Asked for by a person: nothing of the old server is kept. */
  async restart(): Promise<void> {
    this.log.info('Restart asked for.');
    await this.stop();
    this.start();
    await this.running?.client.catch(() => undefined);
  }

  /** null: no server, or it gave the question up; why is in the log. */
  async request<R>(name: string, params: object): Promise<R | null> {
    try {
      const client = await this.running?.client;
      return client === undefined ? null : await client.sendRequest<R>(name, params);
    } catch (error) {
      this.log.warn(`${name}: ${String(error)}`);
      return null;
    }
  }

  async notify(name: string, params: object): Promise<void> {
    try {
      await (await this.running?.client)?.sendNotification(name, params);
    } catch (error) {
      this.log.warn(`${name}: ${String(error)}`);
    }
  }

  /** Inline results are asked for again: a switch was thrown. */
  async refreshInline(): Promise<void> {
    const client = await this.running?.client.catch(() => undefined);
    const feature = client?.getFeature('textDocument/inlayHint');
    for (const document of workspace.textDocuments.filter(isGloss)) {
      feature?.getProvider(document)?.onDidChangeInlayHints.fire();
    }
  }

  dispose(): void {
    clearTimeout(this.release);
    void this.stop();
    this.states.dispose();
  }

  private async connect(
    supervisor: Supervisor,
    link: { connection: LocalConnection | null },
  ): Promise<BaseLanguageClient> {
    // The editor waits for the activation, and has more to wake up than this.
    await new Promise((done) => setTimeout(done, 0));
    const library = await this.entry.load();
    const ours = middleware(this.holding, this.inline);
    const { client, connection } = library.languageClient(library.newClient, this.log, ours, (m) => supervisor.take(m));
    link.connection = connection;
    for (const [name, handlers] of this.notified) {
      client.onNotification(name, (params: unknown) => handlers.forEach((handler) => handler(params)));
    }
    for (const [name, handler] of this.asked) client.onRequest(name, handler);
    await client.start();
    return client;
  }

  private supervision(link: { connection: LocalConnection | null }): SupervisorEvents {
    return {
      deliver: (message) => link.connection?.deliver(message),
      lost: (why) => {
        this.log.error(`The language server ended (${why}); another is started.`);
        this.holding.hold(workspace.textDocuments.filter(isGloss).map((d) => d.uri.toString()));
        this.enter('lost');
      },
      back: () => {
        this.log.info('The language server is back.');
        clearTimeout(this.release);
        this.release = setTimeout(() => this.holding.releaseAll(), longestHold);
        this.enter('back');
      },
      gaveUp: (why) => {
        this.log.error(`The language server ended too often (${why}) and is not started again.`);
        this.holding.releaseAll();
        link.connection?.close();
        this.enter('failed');
      },
      ended: () => link.connection?.close(),
      wrote: (line) => this.log.info(line),
    };
  }

  private enter(state: ServerState): void {
    this.state = state;
    this.states.fire(state);
  }
}

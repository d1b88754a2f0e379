import {
  method,
  type ExportTheme,
  type FromView,
  type KeptView,
  type StateParams,
  type ToView,
  type WatchParams,
} from '../../../server/src/protocol/messages';
import type {
  Abscissa,
  CursorAnswer,
  EdgeEdit,
  EdgePreview,
  EdgeRequest,
  SamplesAnswer,
  TextRange,
  ViewState,
} from '../../../server/src/protocol/view';
import { freshView, KeptViews } from './keptView';

/** What a view needs of the editor and the server. */
export interface SessionWorld {
  post(message: ToView): void;
  request<R>(name: string, params: object): Promise<R | null>;
  notify(name: string, params: object): void;
  /** The text of the gloss may be edited. */
  editable(uri: string): Promise<boolean>;
  preferences(): { readonly exportTheme: ExportTheme; readonly abscissa: Abscissa };
  moveEdge(request: EdgeRequest): Promise<EdgeEdit>;
  reveal(place: RevealPlace): Promise<void>;
  pin(pinned: boolean): void;
  undo(redo: boolean): Promise<void>;
  command(command: string, argument: string): void;
  /** Empty: done; else the reason why not. */
  save(name: string, base64: string): Promise<string>;
  copyText(text: string): Promise<string>;
  fault(message: string): void;
  /** The page is up (again) or shows another gloss: it has been told nothing yet. */
  began(): void;
}

export interface RevealPlace {
  /** URI the place is in. */
  readonly uri: string;
  readonly statement: string | null;
  readonly range: TextRange | null;
  /** The picture it was chosen on is not the one drawn now: `range` may have moved. */
  readonly old: boolean;
}

/** One curves view: what it shows, what it has been sent, and what its messages mean. Samples and states pass unread. */
export class CurvesSession {
  private readonly keptViews = new KeptViews();
  private state: ViewState | null = null;
  private watches = 0;
  private watching: string | null = null;
  /** Of every picture this view was sent: a number never names two of them. */
  private highest = 0;
  private kept: KeptView;
  /** The page has its script running. */
  ready = false;

  constructor(
    private readonly id: string,
    kept: KeptView,
    private readonly world: SessionWorld,
  ) {
    this.kept = kept;
  }

  get uri(): string {
    return this.kept.uri;
  }

  /** Statements of that text are in the picture. */
  shows(uri: string): boolean {
    return uri === this.kept.uri || (this.state?.texts.includes(uri) ?? false);
  }

  get pinned(): boolean {
    return this.kept.pinned;
  }

  get keeping(): KeptView {
    return this.kept;
  }

  get revision(): number | null {
    return this.state?.generation.revision ?? null;
  }

  /** Turns to another gloss, as it was left when it was last shown here. */
  show(uri: string): void {
    if (uri === this.kept.uri) return;
    this.keptViews.set(this.kept);
    const { abscissa } = this.world.preferences();
    this.kept = { ...(this.keptViews.get(uri) ?? freshView(uri, false, abscissa)), pinned: this.kept.pinned };
    this.turn();
  }

  /** The gloss has another address now. */
  renamed(uri: string): void {
    this.kept = { ...this.kept, uri };
    this.turn();
  }

  setPinned(pinned: boolean): void {
    this.kept = { ...this.kept, pinned };
    if (this.ready) this.world.post({ type: 'pinned', pinned });
  }

  preferencesChanged(): void {
    const { exportTheme } = this.world.preferences();
    if (this.ready) this.world.post({ type: 'preferences', exportTheme });
  }

  /** The page is gone while hidden: nothing is computed for it. */
  hidden(): void {
    this.ready = false;
    this.unwatch();
  }

  /** `up`: a server that knows nothing of this view yet. */
  connection(up: boolean, text: string): void {
    if (!this.ready) return;
    this.world.post({ type: 'connection', up, text });
    if (up) void this.watch();
    else this.watching = null;
  }

  serverState(params: StateParams): void {
    if (params.id !== this.watching) return;
    this.state = params.state;
    this.highest = Math.max(this.highest, params.state.generation.revision);
    if (this.ready) this.world.post({ type: 'state', state: params.state });
  }

  caret(statement: string | null): void {
    if (this.ready) this.world.post({ type: 'caret', statement });
  }

  /** The text may have become read-only, or writable. */
  async lookAgain(): Promise<void> {
    if (this.watching !== null) await this.watch();
  }

  dispose(): void {
    this.ready = false;
    this.unwatch();
  }

  async take(message: FromView): Promise<void> {
    switch (message.type) {
      case 'ready':
        return this.begin();
      case 'choices':
        this.kept = { ...this.kept, choices: message.choices };
        return this.watch();
      case 'kept':
        // One that was under way when the view turned to another gloss is about the one before.
        if (message.kept.uri !== this.kept.uri) return this.keptViews.set(message.kept);
        this.kept = { ...message.kept, pinned: this.kept.pinned };
        return;
      case 'samples': {
        const answer = await this.world.request<SamplesAnswer>(method.samples, message.request);
        return this.world.post({ type: 'samples', call: message.call, answer });
      }
      case 'cursor': {
        const answer = await this.world.request<CursorAnswer>(method.cursor, message.request);
        return this.world.post({ type: 'cursor', call: message.call, answer });
      }
      case 'edgePreview': {
        const answer = await this.world.request<EdgePreview>(method.edgePreview, message.request);
        return this.world.post({ type: 'edgePreview', call: message.call, answer });
      }
      case 'edgeEdit': {
        const answer = await this.world.moveEdge(message.request);
        return this.world.post({ type: 'edgeEdit', call: message.call, answer });
      }
      case 'reveal': {
        const { uri, statement, range, revision } = message;
        return this.world.reveal({ uri, statement, range, old: revision !== this.revision });
      }
      case 'pin':
        return this.world.pin(message.pinned);
      case 'undo':
      case 'redo':
        return this.world.undo(message.type === 'redo');
      case 'command':
        return this.world.command(message.command, message.argument);
      case 'save':
        return this.saved(message.call, await this.world.save(message.name, message.base64));
      case 'copyText':
        return this.saved(message.call, await this.world.copyText(message.text));
      case 'fault':
        return this.world.fault(message.message);
    }
  }

  private async begin(): Promise<void> {
    this.ready = true;
    this.preferencesChanged();
    this.world.post({ type: 'kept', kept: this.kept });
    this.world.post({ type: 'pinned', pinned: this.kept.pinned });
    // What was drawn last is there at once; what it is now follows.
    if (this.state !== null) this.world.post({ type: 'state', state: this.state });
    this.world.began();
    await this.watch();
  }

  private turn(): void {
    this.unwatch();
    this.state = null;
    if (!this.ready) return;
    this.world.post({ type: 'kept', kept: this.kept });
    this.world.began();
    void this.watch();
  }

  private async watch(): Promise<void> {
    const { uri } = this.kept;
    // A new name for each gloss and each server: a state that was under way for another cannot be taken for this one's.
    this.watching ??= `${this.id}.${++this.watches}`;
    const id = this.watching;
    const editable = await this.world.editable(uri);
    if (this.watching !== id) return;
    const params: WatchParams = { id, uri, choices: this.kept.choices, editable, after: this.highest };
    await this.world.request(method.watch, params);
  }

  private unwatch(): void {
    if (this.watching !== null) this.world.notify(method.unwatch, { id: this.watching });
    this.watching = null;
  }

  private saved(call: number, reason: string): void {
    this.world.post({ type: 'saved', call, ok: reason === '', reason });
  }
}

import { git, keepRunning, startGit, type GitProcess } from './git';

interface Waiting {
  readonly id: string;
  done(content: Buffer | null): void;
}

/** A process that nobody asks ends after so long (ms): its open files would keep the repository from being tidied up. */
const rest = 2000;

/** Contents by id from one git process that stays: to start git for each takes longer than to read it. */
export class GitObjects {
  private child: GitProcess | null = null;
  private readonly waiting: Waiting[] = [];
  private pieces: Buffer[] = [];
  private held = 0;
  /** Bytes to wait for before looking again: a long content is put together once. */
  private needed = 1;

  private rests: () => void = () => undefined;

  constructor(
    private readonly folder: string,
    private readonly after: (milliseconds: number, call: () => void) => () => void = unheldTimer,
  ) {}

  /** null: it is no content of a file, or it is not here. */
  read(id: string): Promise<Buffer | null> {
    return new Promise((done) => {
      this.rests();
      this.waiting.push({ id, done });
      this.child ??= this.start();
      keepRunning(this.child, true);
      this.child.stdin!.write(`${id}\n`);
    });
  }

  /**
   * Lets the process end where nobody waits, as it does by itself a while after the last answer. It is started again when
   * something is asked for.
   */
  end(): void {
    if (this.waiting.length > 0) return;
    this.rests();
    this.child?.stdin!.end();
    this.child = null;
  }

  private start(): GitProcess {
    const child = startGit(this.folder, ['cat-file', '--batch'], true);
    this.pieces = [];
    this.held = 0;
    this.needed = 1;
    child.stdin!.on('error', () => undefined);
    child.stderr!.resume();
    child.stdout!.on('data', (piece: Buffer) => this.take(piece));
    child.on('error', () => void this.lost(child));
    child.on('close', () => void this.lost(child));
    return child;
  }

  private take(piece: Buffer): void {
    this.pieces.push(piece);
    this.held += piece.length;
    if (this.held < this.needed) return;
    let bytes = this.pieces.length === 1 ? piece : Buffer.concat(this.pieces);
    for (;;) {
      const answer = firstAnswer(bytes);
      if ('needed' in answer) {
        this.needed = answer.needed;
        break;
      }
      this.waiting.shift()?.done(answer.content);
      bytes = bytes.subarray(answer.end);
    }
    this.pieces = bytes.length === 0 ? [] : [bytes];
    this.held = bytes.length;
    if (this.waiting.length > 0 || this.child === null) return;
    keepRunning(this.child, false);
    this.rests = this.after(rest, () => this.end());
  }

  /** The process went away: whoever still waits gets the content from one of its own. */
  private async lost(child: GitProcess): Promise<void> {
    if (this.child !== child) return;
    this.child = null;
    for (const { id, done } of this.waiting.splice(0)) {
      const answer = await git(this.folder, ['cat-file', 'blob', id]);
      done(answer.ok ? answer.out : null);
    }
  }
}

type Answer = { readonly content: Buffer | null; readonly end: number } | { readonly needed: number };

/** `ID blob SIZE`, a line end, the content, a line end; or `ID missing` and a line end. */
function firstAnswer(bytes: Buffer): Answer {
  const head = bytes.indexOf(10);
  if (head < 0) return { needed: bytes.length + 1 };
  const [, type, size] = bytes.toString('latin1', 0, head).split(' ');
  if (size === undefined) return { content: null, end: head + 1 };
  const end = head + 1 + Number(size);
  if (bytes.length < end + 1) return { needed: end + 1 };
  // A copy: the content does not keep what came with it.
  return { content: type === 'blob' ? Buffer.from(bytes.subarray(head + 1, end)) : null, end: end + 1 };
}

/** A timer for which this program does not wait at its end. */
function unheldTimer(milliseconds: number, call: () => void): () => void {
  const timer = setTimeout(call, milliseconds).unref();
  return () => clearTimeout(timer);
}

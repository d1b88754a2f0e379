import type { Terminal } from './terminal';

const interval = 400;

/** One changing line on standard error while work takes long; nothing where that is no terminal. */
export class Progress {
  private line = '';
  private shown = false;
  private readonly timer: NodeJS.Timeout | null = null;

  constructor(private readonly terminal: Terminal) {
    if (!terminal.errorIsTerminal || terminal.environment.TERM === 'dumb') return;
    this.timer = setInterval(() => this.show(), interval).unref();
  }

  /** What is being done now; shown at the next tick of the timer. */
  now(line: string): void {
    this.line = line;
  }

  end(): void {
    if (this.timer !== null) clearInterval(this.timer);
    if (this.shown) this.terminal.error('\r\u001b[K');
    this.shown = false;
  }

  private show(): void {
    this.shown = true;
    this.terminal.error(`\r\u001b[K${this.line}`);
  }
}

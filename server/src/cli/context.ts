import type { Clock } from './clock';
import type { Typed } from './commandLine';
import type { Terminal } from './terminal';
import type { Workspaces } from './workspaces';

/** What a command works with. */
export interface Context {
  readonly typed: Typed;
  readonly terminal: Terminal;
  readonly workspaces: Workspaces;
  readonly clock: Clock;
}

/** Returns the exit code; throws `Trouble` for what the user can mend. */
export type Command = (context: Context) => Promise<number>;

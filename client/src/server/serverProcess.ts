import type { RpcMessage } from './rpc';

/** A running language server: a process beside the editor, or a worker in a browser. */
export interface ServerProcess {
  /** Process id, where there is one. */
  readonly pid: number | null;
  /** Never throws: what is sent to a server that is gone is lost, and its end is told by `ended`. */
  send(message: RpcMessage): void;
  kill(): void;
}

export interface ServerProcessEvents {
  message(message: RpcMessage): void;
  /** Called once, with words for the log. */
  ended(why: string): void;
  /** A line the server wrote beside the protocol. */
  wrote(line: string): void;
}

export type StartProcess = (events: ServerProcessEvents) => ServerProcess;

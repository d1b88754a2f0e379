import { fork } from 'node:child_process';
import type { RpcMessage } from './rpc';
import type { ServerProcess, ServerProcessEvents } from './serverProcess';

/** The server as a process of its own beside the extension host, spoken to over Node's channel between processes. */
export function startNodeProcess(module: string, events: ServerProcessEvents): ServerProcess {
  const child = fork(module, ['--node-ipc'], { silent: true, execArgv: [], env: environment() });
  let over = false;
  const end = (why: string): void => {
    if (over) return;
    over = true;
    events.ended(why);
  };
  child.on('message', (message) => events.message(message as RpcMessage));
  child.on('error', (error) => end(error.message));
  child.on('exit', (code, signal) => end(signal === null ? `exit code ${code}` : `signal ${signal}`));
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding('utf8');
    stream?.on('data', (text: string) => {
      for (const line of text.split(/\r?\n/)) if (line !== '') events.wrote(line);
    });
  }
  return {
    pid: child.pid ?? null,
    send: (message) => {
      // A channel that breaks tells so by `exit`; the callback keeps the write from throwing.
      if (child.connected) child.send(message, () => undefined);
    },
    kill: () => void child.kill(),
  };
}

/** In a desktop editor the program that runs extensions is Electron's, which must be told to be a plain Node. */
function environment(): NodeJS.ProcessEnv {
  return { ...process.env, ELECTRON_RUN_AS_NODE: '1', ELECTRON_NO_ASAR: '1' };
}

import type { RpcMessage } from './rpc';
import type { ServerProcess, ServerProcessEvents } from './serverProcess';

/** What is used of a browser's Worker. */
export interface WorkerLike {
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
  postMessage(message: unknown): void;
  terminate(): void;
}

/** The server as a worker of the browser. A fault in it does not end it by itself: it is ended, and counts as lost. */
export function startWorkerProcess(create: () => WorkerLike, events: ServerProcessEvents): ServerProcess {
  const worker = create();
  let over = false;
  const end = (why: string): void => {
    if (over) return;
    over = true;
    worker.terminate();
    events.ended(why);
  };
  worker.onmessage = ({ data }) => {
    if (!over) events.message(data as RpcMessage);
  };
  worker.onerror = ({ message }) => end(message ?? 'the worker failed');
  return {
    pid: null,
    send: (message) => {
      if (over) return;
      worker.postMessage(message);
      // A worker is not told to leave by the protocol: `exit` ends it here.
      if (message.method === 'exit') end('exit');
    },
    kill: () => end('ended'),
  };
}

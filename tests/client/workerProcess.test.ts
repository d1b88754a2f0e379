import assert from 'node:assert/strict';
import type { RpcMessage } from '../../client/src/server/rpc';
import { startWorkerProcess, type WorkerLike } from '../../client/src/server/workerProcess';

class FakeWorker implements WorkerLike {
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  readonly posted: unknown[] = [];
  terminated = 0;

  postMessage(message: unknown): void {
    this.posted.push(message);
  }

  terminate(): void {
    this.terminated++;
  }
}

function started(): { worker: FakeWorker; log: string[]; process: ReturnType<typeof startWorkerProcess> } {
  const worker = new FakeWorker();
  const log: string[] = [];
  const process = startWorkerProcess(() => worker, {
    message: (message: RpcMessage) => log.push(`message ${String(message.method)}`),
    ended: (why) => log.push(`ended ${why}`),
    wrote: () => undefined,
  });
  return { worker, log, process };
}

const hover: RpcMessage = { jsonrpc: '2.0', id: 1, method: 'textDocument/hover' };

describe('the server as a worker of a browser', () => {
  it('is spoken to in messages as they are', () => {
    const { worker, log, process } = started();
    process.send(hover);
    worker.onmessage!({ data: { jsonrpc: '2.0', method: 'thermogloss/status' } });
    assert.deepEqual(worker.posted, [hover]);
    assert.deepEqual(log, ['message thermogloss/status']);
    assert.equal(process.pid, null);
  });

  it('that failed is ended, once, and neither heard nor spoken to any more', () => {
    const { worker, log, process } = started();
    worker.onerror!({ message: 'out of memory' });
    worker.onerror!({ message: 'again' });
    worker.onmessage!({ data: hover });
    process.send(hover);
    process.kill();
    assert.deepEqual(log, ['ended out of memory']);
    assert.deepEqual([worker.posted.length, worker.terminated], [0, 1]);
  });

  it('is ended when it is told to leave', () => {
    const { worker, log, process } = started();
    process.send({ jsonrpc: '2.0', method: 'exit' });
    assert.deepEqual(log, ['ended exit']);
    assert.equal(worker.terminated, 1);
  });
});

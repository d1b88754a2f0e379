import { record, type RpcMessage } from './rpc';

/** Progress that a server began and has not ended: a lost server's must be ended for it. */
export class OpenProgress {
  private readonly tokens = new Set<number | string>();

  /** Looks at a notification of the server on its way to the editor. */
  see(message: RpcMessage): void {
    if (message.method !== '$/progress') return;
    const { token, value } = record(message.params);
    if (typeof token !== 'number' && typeof token !== 'string') return;
    const kind = record(value)['kind'];
    if (kind === 'begin') this.tokens.add(token);
    if (kind === 'end') this.tokens.delete(token);
  }

  /** Ends all of it. */
  ends(): RpcMessage[] {
    const open = [...this.tokens];
    this.tokens.clear();
    return open.map((token) => ({ jsonrpc: '2.0', method: '$/progress', params: { token, value: { kind: 'end' } } }));
  }
}

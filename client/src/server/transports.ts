import {
  AbstractMessageReader,
  AbstractMessageWriter,
  type DataCallback,
  type Disposable,
  type Message,
  type MessageReader,
  type MessageTransports,
  type MessageWriter,
} from 'vscode-languageclient';
import type { RpcMessage } from './rpc';

/** A connection within this process: the language client at one end, the supervisor at the other. */
export interface LocalConnection {
  readonly transports: MessageTransports;
  deliver(message: RpcMessage): void;
  close(): void;
}

export function localConnection(take: (message: RpcMessage) => void): LocalConnection {
  const reader = new Reader();
  return {
    transports: { reader, writer: new Writer(take) },
    deliver: (message) => reader.deliver(message),
    close: () => reader.close(),
  };
}

class Reader extends AbstractMessageReader implements MessageReader {
  private callback: DataCallback | null = null;
  private early: RpcMessage[] = [];

  listen(callback: DataCallback): Disposable {
    this.callback = callback;
    const early = this.early;
    this.early = [];
    for (const message of early) this.deliver(message);
    return { dispose: () => (this.callback = null) };
  }

  deliver(message: RpcMessage): void {
    if (this.callback === null) this.early.push(message);
    else this.callback(message as Message);
  }

  close(): void {
    this.fireClose();
  }
}

class Writer extends AbstractMessageWriter implements MessageWriter {
  constructor(private readonly take: (message: RpcMessage) => void) {
    super();
  }

  write(message: Message): Promise<void> {
    this.take(message as RpcMessage);
    return Promise.resolve();
  }

  end(): void {}
}

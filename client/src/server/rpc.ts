/** A JSON-RPC 2.0 message as it crosses a process border: request, notification or response. */
export interface RpcMessage {
  readonly jsonrpc: '2.0';
  readonly id?: number | string | null;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string; readonly data?: unknown };
}

export type RpcId = number | string;

export type RpcRequest = RpcMessage & { readonly id: RpcId; readonly method: string };
export type RpcNotification = RpcMessage & { readonly method: string };
export type RpcResponse = RpcMessage & { readonly id: RpcId };

export function isRequest(message: RpcMessage): message is RpcRequest {
  return message.method !== undefined && hasId(message);
}

export function isNotification(message: RpcMessage): message is RpcNotification {
  return message.method !== undefined && !hasId(message);
}

export function isResponse(message: RpcMessage): message is RpcResponse {
  return message.method === undefined && hasId(message);
}

/** LSP 3.17, ErrorCodes: the server gave the request up; the client keeps what it shows and may ask again. */
export const serverCancelled = -32802;

function hasId(message: RpcMessage): boolean {
  return message.id !== undefined && message.id !== null;
}

export function record(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

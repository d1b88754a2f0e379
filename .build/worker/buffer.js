// Node's Buffer in a Worker, and the one function of node:buffer that is used.
export { Buffer } from 'buffer';

export function isUtf8(bytes) {
  try {
    new globalThis.TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

export function toBytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** Bytes to base64 (RFC 4648, section 4), with what both a browser and Node have. */
export function toBase64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  // So many arguments are safe in one call.
  const piece = 0x8000;
  for (let i = 0; i < bytes.length; i += piece) pieces.push(String.fromCharCode(...bytes.subarray(i, i + piece)));
  return btoa(pieces.join(''));
}

export function fromBase64(base64: string): Uint8Array {
  return Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
}

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const codes = Uint8Array.from(alphabet, (c) => c.charCodeAt(0));

/** Characters put together at once: more arguments than this are too many for a call. */
const PIECE = 8190;

/** Numbers as little-endian Float64 in base64 (RFC 4648, with padding), whatever the byte order of the machine. */
export function float64Base64(values: Float64Array): string {
  const bytes = littleEndian(values);
  const length = 4 * Math.ceil(bytes.length / 3);
  const text = new Uint8Array(length).fill(61);
  let k = 0;
  let i = 0;
  for (; i + 2 < bytes.length; i += 3) {
    const three = (bytes[i] << 16) | (bytes[i + 1] << 8) | bytes[i + 2];
    text[k++] = codes[three >> 18];
    text[k++] = codes[(three >> 12) & 63];
    text[k++] = codes[(three >> 6) & 63];
    text[k++] = codes[three & 63];
  }
  const left = bytes.length - i;
  if (left > 0) {
    const rest = (bytes[i] << 16) | (left === 2 ? bytes[i + 1] << 8 : 0);
    text[k++] = codes[rest >> 18];
    text[k++] = codes[(rest >> 12) & 63];
    if (left === 2) text[k] = codes[(rest >> 6) & 63];
  }
  let out = '';
  for (let from = 0; from < length; from += PIECE) {
    out += String.fromCharCode.apply(null, text.subarray(from, from + PIECE) as unknown as number[]);
  }
  return out;
}

const machineIsLittle = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;

function littleEndian(values: Float64Array): Uint8Array {
  if (machineIsLittle) return new Uint8Array(values.buffer, values.byteOffset, values.byteLength);
  const bytes = new Uint8Array(values.byteLength);
  const view = new DataView(bytes.buffer);
  values.forEach((value, i) => view.setFloat64(8 * i, value, true));
  return bytes;
}

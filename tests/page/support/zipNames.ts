import { readFileSync } from 'node:fs';

/** Names of the files in a zip archive, by its central directory (APPNOTE 6.3.10, sections 4.3.12 and 4.3.16). */
export function zipNames(path: string): string[] {
  const bytes = readFileSync(path);
  const end = bytes.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]));
  if (end < 0) throw new Error(`${path} is no zip archive.`);
  const count = bytes.readUInt16LE(end + 10);
  const names: string[] = [];
  let at = bytes.readUInt32LE(end + 16);
  for (let i = 0; i < count; i++) {
    if (bytes.readUInt32LE(at) !== 0x02014b50) throw new Error(`${path}: entry ${i} is not where it should be.`);
    const [name, extra, comment] = [28, 30, 32].map((offset) => bytes.readUInt16LE(at + offset));
    names.push(bytes.toString('utf8', at + 46, at + 46 + name!));
    at += 46 + name! + extra! + comment!;
  }
  return names.sort();
}

// What the server uses of node:crypto, in a Worker: SHA-256 and SHA-1 that take their input piece by piece.
import { sha1 } from '@noble/hashes/legacy';
import { sha256 } from '@noble/hashes/sha2';
import { Buffer } from 'buffer';

export function createHash(name) {
  const hash = (name === 'sha1' ? sha1 : sha256).create();
  return {
    update(data) {
      hash.update(typeof data === 'string' ? Buffer.from(data, 'utf8') : data);
      return this;
    },
    digest: (encoding) => Buffer.from(hash.digest()).toString(encoding),
  };
}

/** Content-keyed memory of finished work; bounded by whoever makes it. */
export interface Memo {
  get(key: string): unknown;
  set(key: string, value: unknown): void;
}

/** Remembers `make()` under `key`. The caller's key must hold everything `make` reads. */
export function remembered<T>(memo: Memo, key: string, make: () => T): T {
  const known = memo.get(key);
  if (known !== undefined) return known as T;
  const value = make();
  memo.set(key, value);
  return value;
}

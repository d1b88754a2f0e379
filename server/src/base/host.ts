/**
 * Everything outside the pure floors. The host does files, encodings and digests; the floors see text that is already
 * decoded. Paths are absolute, with `/`, and are opaque to the floors except through `resolve`.
 */
export interface Host {
  /**
   * Opens a file. Never throws for what the user did.
   * `encoding` overrules detection (from a `reading` statement).
   */
  read(path: string, encoding?: string): Promise<HostFile>;
  /** Names (not paths) in a folder, sorted; empty where there is none. For completion and "did you mean". */
  list(folder: string): Promise<readonly string[]>;
  /** The path that `relative` names when written in the file `from`. */
  resolve(from: string, relative: string): string;
  /** The way `path` is shown to people and stored: relative to the root, with `/`. */
  display(path: string): string;
  /** UTF-8 bytes to text. */
  decode(bytes: Uint8Array): string;
  /** A full delimited-text parser (RFC 4180 quoting) for what leaves the regular path. Loaded on demand. */
  parseDelimited(text: string, dialect: DelimitedDialect): Promise<DelimitedRecords>;
  /** A short stable digest of a text, for cache keys only; never stored or shown. */
  key(text: string): string;
  /** SHA-256 (hex) of a text in UTF-8, for what is stored: the same on every machine. Hashing stays with the host. */
  digest(text: string): string;
  /** Awaited after a counted amount of work, never by the clock. */
  pause(): Promise<void>;
}

export interface DelimitedDialect {
  /** One character, or `null` for runs of blanks and tabs. */
  readonly delimiter: string | null;
}

export interface DelimitedRecords {
  /** Fields as written, quotes removed. */
  readonly records: readonly (readonly string[])[];
  /** 1-based line on which each record starts, relative to the text given. */
  readonly lines: readonly number[];
}

export type HostFile =
  | {
      readonly ok: true;
      readonly path: string;
      /** SHA-256 (hex) of the decoded text, BOM dropped, line ends as LF. */
      readonly identity: string;
      /** Name of the encoding read: utf-8, utf-16le, utf-16be, latin-1. */
      readonly encoding: string;
      readonly bom: boolean;
      /** Bytes of the decoded text in UTF-8, BOM dropped, line ends as LF (also for CR and CRLF files). */
      readonly size: number;
      /** 'lf' | 'crlf' | 'cr' | 'mixed' as found in the file. */
      readonly lineEnds: LineEnds;
      /** The same text in pieces, in order; may be asked for again. Pieces are split anywhere, also inside a character. */
      chunks(): AsyncIterable<Uint8Array>;
    }
  | { readonly ok: false; readonly reason: 'missing' | 'outside' | 'unreadable'; readonly message: string };

export type LineEnds = 'lf' | 'crlf' | 'cr' | 'mixed' | 'none';

/** The world around one call of the command line, so that tests can give it another. */
export interface Terminal {
  /** Absolute. */
  readonly cwd: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly outIsTerminal: boolean;
  readonly errorIsTerminal: boolean;
  /** Width of the terminal that standard output goes to; null where it goes elsewhere. */
  readonly columns: number | null;
  /** Results only. */
  out(text: string): void;
  /** Messages. */
  error(text: string): void;
  /** Standard input to its end. */
  input(): Promise<Uint8Array>;
}

/** The terminal of this process. A reader that goes away early (`| head`) ends the output quietly. */
export function processTerminal(): Terminal {
  process.stdout.on('error', (problem: NodeJS.ErrnoException) => {
    if (problem.code !== 'EPIPE') throw problem;
  });
  return {
    cwd: process.cwd(),
    environment: process.env,
    outIsTerminal: process.stdout.isTTY,
    errorIsTerminal: process.stderr.isTTY,
    columns: process.stdout.isTTY ? process.stdout.columns : null,
    out: (text) => void process.stdout.write(text),
    error: (text) => void process.stderr.write(text),
    input: async () => {
      const pieces: Uint8Array[] = [];
      for await (const piece of process.stdin) pieces.push(piece as Uint8Array);
      return Buffer.concat(pieces);
    },
  };
}

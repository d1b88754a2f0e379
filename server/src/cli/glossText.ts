import { resolve } from 'node:path';
import type { Host } from '../base/host';
import { BadUsage, Trouble } from './exitCodes';
import { standardInput } from './inputs';
import type { Terminal } from './terminal';
import type { Workspace, Workspaces } from './workspaces';

export interface OpenedGloss {
  readonly path: string;
  readonly text: string;
  readonly workspace: Workspace;
}

/** Reads the gloss at a path, or from standard input as if it stood at `at`. */
export async function openGloss(
  input: string,
  at: string | undefined,
  terminal: Terminal,
  workspaces: Workspaces,
): Promise<OpenedGloss> {
  if (input === standardInput) {
    const path = resolve(terminal.cwd, at ?? 'standard-input.gloss');
    return { path, text: decoded(await terminal.input(), 'standard input'), workspace: await workspaces.of(path) };
  }
  const workspace = await workspaces.of(input);
  return { path: input, text: await textOf(workspace.host, input), workspace };
}

/** `--at` places standard input and nothing else. */
export function checkPlace(inputs: readonly string[], at: string | undefined): void {
  if (at !== undefined && !inputs.includes(standardInput)) {
    throw new BadUsage(`--at places standard input: name it as ${standardInput}`);
  }
}

async function textOf(host: Host, path: string): Promise<string> {
  const file = await host.read(path);
  if (!file.ok) throw new Trouble(file.message);
  if (file.encoding !== 'utf-8') throw new Trouble(`${host.display(path)} is not UTF-8`);
  const pieces: Uint8Array[] = [];
  for await (const piece of file.chunks()) pieces.push(piece);
  return host.decode(Buffer.concat(pieces));
}

/** UTF-8 or trouble: a text read wrongly would be written back wrongly. A BOM is kept. */
export function decoded(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Trouble(`${name} is not UTF-8`);
  }
}

import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Host } from '../base/host';
import type { RunCurves } from '../engine/curves/runCurves';
import type { Engine } from '../engine/engine';
import type { Snapshot } from '../engine/snapshot';
import { isInside, realPath, rootFor } from '../host/root';

/** What evaluates the glosses of one root. */
export interface Workspace {
  readonly host: Host;
  evaluate(path: string, text: string): Promise<Snapshot>;
  /** Curves of a snapshot that came from here; null where it has no run. */
  curvesOf?(snapshot: Snapshot): RunCurves | null;
}

/** Gives the workspace that a file belongs to. */
export interface Workspaces {
  of(path: string): Promise<Workspace>;
}

/** One workspace a root, kept, so that glosses of one call share what was read. */
export class WorkspacesByRoot implements Workspaces {
  private readonly byRoot = new Map<string, Promise<Workspace>>();

  constructor(private readonly cwd: string) {}

  of(path: string): Promise<Workspace> {
    const folder = rootOf(dirname(path), this.cwd);
    const known = this.byRoot.get(folder) ?? open(folder);
    this.byRoot.set(folder, known);
    return known;
  }
}

/**
 * The folder that nothing may leave: the nearest one above the file with `.git`; else the folder the program was started
 * in, where it holds the file; else the file's own.
 */
function rootOf(folder: string, cwd: string): string {
  const root = rootFor(folder);
  if (existsSync(join(root, '.git'))) return root;
  const start = realPath(cwd);
  return isInside(start, realPath(folder)) ? start : root;
}

async function open(folder: string): Promise<Workspace> {
  const { NodeHost } = await import('../host/nodeHost');
  const host = new NodeHost(folder);
  let engine: Engine | null = null;
  return {
    host,
    evaluate: async (path, text) => {
      // Loaded only where something is evaluated: `format` needs the host alone.
      engine ??= new (await import('../engine/engine')).Engine(host);
      return engine.evaluate(path, text);
    },
    curvesOf: (snapshot) => engine?.curvesOf(snapshot) ?? null,
  };
}

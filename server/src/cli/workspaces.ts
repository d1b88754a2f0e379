import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Approvals } from '../approval/approvals';
import type { Approved, Refused } from '../approval/approve';
import type { Approval } from '../approval/check';
import type { Approver } from '../approval/record';
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
  /** The approvals of a gloss against their record. */
  approvalsOf?(snapshot: Snapshot): Promise<readonly Approval[]>;
  approve?(snapshot: Snapshot, approver: Approver): Promise<Approved | Refused>;
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
  // Loaded only where something is evaluated: `format` needs the host alone; and approvals where there are some.
  let engine: Engine | null = null;
  let approvals: Approvals | null = null;
  const evaluating = async (): Promise<Engine> => (engine ??= new (await import('../engine/engine')).Engine(host));
  const approving = async (): Promise<Approvals> => {
    if (approvals !== null) return approvals;
    const { Approvals } = await import('../approval/approvals');
    const { LastAuthors } = await import('../host/lastAuthor');
    return (approvals ??= new Approvals(await evaluating(), host, new LastAuthors()));
  };
  return {
    host,
    evaluate: async (path, text) => {
      const snapshot = await (await evaluating()).evaluate(path, text);
      const approved = snapshot.gloss.tree.statements.some(({ statement }) => statement?.kind === 'approved');
      return approved ? (await approving()).checked(snapshot) : snapshot;
    },
    curvesOf: (snapshot) => engine?.curvesOf(snapshot) ?? null,
    approvalsOf: async (snapshot) => (await approving()).of(snapshot),
    approve: async (snapshot, approver) => {
      const { approve } = await import('../approval/approve');
      return approve(await evaluating(), host, await approving(), snapshot, approver);
    },
  };
}

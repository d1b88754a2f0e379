import { Approvals } from '../approval/approvals';
import { sameStatements } from '../approval/inputs';
import type { Engine } from '../engine/engine';
import { lastAuthor } from '../host/lastAuthor';
import type { NodeHost } from '../host/nodeHost';

/** Approvals where git, if there is one, tells who wrote a gloss. */
export function approvalsWithGit(engine: Engine, host: NodeHost): Approvals {
  return new Approvals(engine, host, (path, text) => lastAuthor(path, text, sameStatements));
}

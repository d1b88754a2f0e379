import type { Anchor, Finding, GlossRole } from '../../findings/finding';
import type { Tree } from '../tree';

/**
 * The syntax findings of a tree with the part its text plays: a parser does not know whether it reads the gloss or the
 * method beside it, and anchors all of them in the gloss.
 */
export function syntaxFindings(tree: Tree, file: GlossRole): readonly Finding[] {
  if (file === 'gloss') return tree.findings;
  const moved = (at: Anchor): Anchor => ('span' in at ? { file, span: at.span } : at);
  return tree.findings.map((finding) => ({
    ...finding,
    at: moved(finding.at),
    related: finding.related.map((place) => ({ ...place, at: moved(place.at) })),
    fixes: finding.fixes.map((fix) => ({
      ...fix,
      edits: fix.edits.map((edit) => ('at' in edit ? { ...edit, at: moved(edit.at) } : edit)),
    })),
  }));
}

import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Engine } from '../../../server/src/engine/engine';
import { NodeHost } from '../../../server/src/host/nodeHost';
import { edgeEdit, withEdits } from '../../../server/src/presentation/plot/edgeEdit';
import { figureSvg } from '../../../server/src/presentation/plot/figureSvg';
import { blocksOf, stateOf } from './evaluated';
import { xmlProblem } from './xml';

const folder = resolve('examples');
const glosses = ['limestone', 'preform', 'faults'].flatMap((part) =>
  readdirSync(join(folder, part))
    .filter((name) => name.endsWith('.gloss') && name !== 'limestone.gloss')
    .map((name) => `${part}/${name}`),
);

describe('every example, faults included', () => {
  const engine = new Engine(new NodeHost(folder));

  for (const path of glosses) {
    it(`has a state that is plain data, a picture that is sound, and edges that move and come back (${path})`, async () => {
      const snapshot = await engine.evaluate(join(folder, path));
      const curves = engine.curvesOf(snapshot)!;
      const state = stateOf({ snapshot, curves });
      assert.deepEqual(JSON.parse(JSON.stringify(state)), state);
      assert.equal(new Set(state.ledger.rows.map((r) => r.id)).size, state.ledger.rows.length);
      assert.equal(new Set(state.bands.map((b) => b.statement)).size, state.bands.length);
      const svg = figureSvg(state, blocksOf(state, [curves], 300), null, { theme: 'print', width: 800, height: 500 });
      assert.equal(xmlProblem(svg), null);

      const present = { gloss: snapshot.gloss, method: snapshot.method };
      for (const band of state.bands) {
        for (const edge of ['from', 'to'] as const) {
          const { source, time, value, decimals } = band[edge];
          const context = {
            role: 'run',
            editable: true,
            methodEditable: true,
            drawn: snapshot,
            curves,
            present,
          } as const;
          const move = { statement: band.statement, edge, time, perPixel: null, into: 'gloss' as const };
          const kept = edgeEdit({ ...move, typed: null }, context);
          const inward = edge === 'from' ? 1 : -1;
          const way = (Math.sign(band.to.value - band.from.value) || 1) * inward;
          const moved = edgeEdit({ ...move, typed: value + way * 10 ** -decimals }, context);
          if (source === 'own') {
            // Left where it is, an edge writes its own digits again: nothing.
            assert.ok(kept.ok && kept.edits.length === 0, `${band.name} ${edge}: ${JSON.stringify(kept)}`);
            assert.ok(moved.ok && moved.edits.length === 1, `${band.name} ${edge}: ${JSON.stringify(moved)}`);
            const after = withEdits(snapshot.gloss.tree.text, moved.edits);
            assert.notEqual(after, snapshot.gloss.tree.text);
            const { span, text } = moved.edits[0];
            const before = snapshot.gloss.tree.text.slice(span.start, span.end);
            const back = { span: { start: span.start, end: span.start + text.length }, text: before };
            assert.equal(withEdits(after, [back]), snapshot.gloss.tree.text);
          } else if (band.kind === 'residue' && source === 'rule') {
            assert.ok(!moved.ok);
          } else {
            assert.ok(moved.ok && moved.edits.length === 1, `${band.name} ${edge}: ${JSON.stringify(moved)}`);
          }
        }
      }
    });
  }
});

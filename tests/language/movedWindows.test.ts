import assert from 'node:assert/strict';
import { shapeOf, withMovedWindows } from '../../server/src/language/meaning/movedWindows';
import { resolveProgram } from '../../server/src/language/meaning/resolveProgram';
import { parse } from '../../server/src/language/syntax/parse';
import { seeded } from '../support/random';
import { all, limestone, limestoneMethod } from './support/examples';

const base =
  'run "a.csv"\n  mass 20 mg\nstep First 100..200 °C\nstep Second 200..300 °C in heating 1\nlet share = First.loss / Second.loss\n';

describe('A program whose windows moved', () => {
  it('is the one that resolving anew gives, for any numbers in its windows', () => {
    const random = seeded(3);
    let taken = 0;
    for (const text of [...all, base]) {
      const method = text === limestone ? parse(limestoneMethod) : null;
      const first = parse(text);
      const before = resolveProgram(first, method);
      for (let round = 0; round < 30; round++) {
        // Every figure may become another, also such that a window is upside down, empty or in other units.
        const edited = text.replace(/\d+/g, (figure) =>
          random.integer(5) === 0 ? `${random.integer(900) + 1}` : figure,
        );
        const tree = parse(random.integer(6) === 0 ? `# moved down\n${edited}` : edited);
        const shape = shapeOf(tree, method);
        if (shape === null || shape !== shapeOf(first, method)) continue;
        const moved = withMovedWindows(before, tree);
        if (moved === null) continue;
        taken++;
        assert.deepEqual(moved, resolveProgram(tree, method));
      }
    }
    assert.ok(taken > 20, `${taken}`);
  });

  it('has another shape as soon as anything but a figure of a window changes', () => {
    const shape = shapeOf(parse(base), null);
    assert.equal(shapeOf(parse(base.replace('100..200', '110..205')), null), shape);
    for (const [from, to] of [
      ['100..200 °C', '100..200 K'],
      ['100..200 °C', '10..20 min'],
      ['100..200 °C', 'around 150 °C'],
      ['heating 1', 'heating 2'],
      ['step First', 'peak First'],
      ['20 mg', '21 mg'],
      ['First.loss /', 'Second.loss /'],
      ['heating 1\n', 'heating 1\n  span 5 K\n'],
    ] as const) {
      const other = base.replace(from, to);
      assert.notEqual(other, base);
      assert.notEqual(shapeOf(parse(other), null), shape, to);
    }
  });

  it('is resolved anew where a window is wrong', () => {
    const moved = (text: string) =>
      withMovedWindows(resolveProgram(parse(text), null), parse(text.replace('100..', '90..')));
    assert.notEqual(moved(base), null);
    assert.equal(moved(base.replace('100..200 °C', '100..200 mg')), null);
  });
});

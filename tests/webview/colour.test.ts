import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  black,
  colourFrom,
  contrast,
  css,
  distinct,
  luminance,
  white,
  type Colour,
} from '../../webview/src/colour/colour';
import { palette } from '../../webview/src/colour/palette';
import { laidOver, styleOf, styleOfEntry } from '../../webview/src/draw/curveStyle';
import { stateOf } from './state';

const channel = fc.integer({ min: 0, max: 255 });
const colour: fc.Arbitrary<Colour> = fc.record({ r: channel, g: channel, b: channel, a: fc.constant(1) });
const drawn = (c: Colour): Colour => colourFrom(css(c)) ?? black;

describe('contrast', () => {
  it('is that of WCAG 2.2: 21 for black on white, 1 for the same, and about 4.48 for #777 on white', () => {
    // Black on white is 21:1 by the definition; #777777 is known to miss 4.5 by a hair (from memory).
    assert.equal(Math.round(contrast(black, white) * 1000) / 1000, 21);
    assert.equal(contrast(white, white), 1);
    const grey = contrast({ r: 0x77, g: 0x77, b: 0x77, a: 1 }, white);
    assert.ok(grey > 4.47 && grey < 4.49, String(grey));
    // sRGB red, green and blue have the weights of the definition as their luminance.
    assert.ok(Math.abs(luminance({ r: 255, g: 0, b: 0, a: 1 }) - 0.2126) < 1e-9);
  });

  it('is reached for any colour on any ground, as it is drawn, where black or white can reach it', () => {
    fc.assert(
      fc.property(colour, colour, fc.constantFrom(3.1, 4.6), (ink, ground, ratio) => {
        const most = Math.max(contrast(black, ground), contrast(white, ground));
        assert.ok(contrast(drawn(distinct(ink, ground, ratio)), ground) >= Math.min(ratio, most - 0.01) - 0.05);
      }),
    );
  });

  it('leaves a colour alone that has it', () => {
    const navy = { r: 0, g: 0, b: 120, a: 1 };
    assert.deepEqual(distinct(navy, white, 4.5), navy);
  });
});

describe('the palette', () => {
  const kinds = ['vscode-light', 'vscode-dark', 'vscode-high-contrast', 'vscode-high-contrast-light'];

  it('has text at 4.5 and lines at 3 to 1 in any theme, also one that gives no colour or the ground’s own', () => {
    const themes = fc.record({
      kind: fc.constantFrom(...kinds),
      ground: colour,
      ink: colour,
      link: colour,
      has: fc.boolean(),
    });
    fc.assert(
      fc.property(themes, ({ kind, ground, ink, link, has }) => {
        const given: Readonly<Record<string, Colour>> = {
          'editor-background': ground,
          'editor-foreground': ink,
          'textLink-foreground': link,
          focusBorder: link,
        };
        const p = palette((name) => (has ? (given[name] ?? null) : null), kind);
        // In the middle of the scale neither black nor white is 7 to 1 away; 4.5 always is in reach of one of them.
        for (const text of [p.ink, p.muted, p.accent, p.warning, p.error, p.good])
          assert.ok(contrast(drawn(text), drawn(p.ground)) >= 4.4);
        for (const line of [p.edge, p.focus]) assert.ok(contrast(drawn(line), drawn(p.ground)) >= 3);
      }),
    );
  });

  it('reads the forms in which colours are computed', () => {
    assert.deepEqual(colourFrom('#1f1f1f'), { r: 31, g: 31, b: 31, a: 1 });
    assert.deepEqual(colourFrom('#abc'), { r: 170, g: 187, b: 204, a: 1 });
    assert.equal(colourFrom('#00000080')?.a, 128 / 255);
    assert.deepEqual(colourFrom('rgb(1, 2, 3)'), { r: 1, g: 2, b: 3, a: 1 });
    assert.deepEqual(colourFrom('rgba(1, 2, 3, 0.5)'), { r: 1, g: 2, b: 3, a: 0.5 });
    assert.deepEqual(colourFrom('rgb(1 2 3 / 50%)'), { r: 1, g: 2, b: 3, a: 0.5 });
    assert.deepEqual(colourFrom('color(srgb 1 0 0.2)'), { r: 255, g: 0, b: 51, a: 1 });
    assert.equal(colourFrom('#ggg'), null);
    assert.equal(colourFrom('red'), null);
  });
});

describe('curves laid over each other', () => {
  const [mass, rate] = stateOf(1).lanes;
  const laid = (of: 'overlay' | 'against', name: string) =>
    mass.curves.map((c) => ({ ...c, id: `${name}:${c.id}`, of, name }));
  const names = Array.from({ length: 10 }, (_, i) => `run ${i}`);
  const state = stateOf(1, {
    lanes: [
      { ...mass, curves: [...mass.curves, ...laid('against', 'HEAD'), ...names.flatMap((n) => laid('overlay', n))] },
      rate,
    ],
    overlays: [{ uri: 'file:///gone.gloss', name: 'gone', reason: 'file missing' }],
  });

  it('are told apart without colour: no two of ten runs and a revision share dash and mark', () => {
    const entries = laidOver(state).filter((e) => e.reason === null);
    const styles = entries.map(styleOfEntry);
    assert.equal(new Set(styles.map((s) => JSON.stringify(s))).size, 11);
    assert.equal(new Set(styles.map((s) => s.dash.join())).size, 11, 'by their dashes alone');
    assert.ok(styles.every((s) => s.dash.length > 0 && s.marker !== null));
  });

  it('are named in the legend, runs first, then the revision, then what cannot be drawn with its reason', () => {
    assert.deepEqual(
      laidOver(state).map((e) => e.name),
      [...names, 'HEAD', 'gone'],
    );
    assert.equal(laidOver(state).at(-1)?.reason, 'file missing');
    assert.deepEqual(laidOver(stateOf(1)), []);
  });

  it('leave the run itself, and a difference to it, a plain line', () => {
    const entries = laidOver(state);
    const lanes = state.lanes[0];
    const own = lanes.curves.find((c) => c.of === 'run')!;
    const against = lanes.curves.find((c) => c.of === 'against')!;
    assert.deepEqual(styleOf(lanes, own, entries), { dash: [], marker: null });
    assert.deepEqual(styleOf({ ...lanes, id: 'difference:mass' }, against, entries), { dash: [], marker: null });
    assert.notDeepEqual(styleOf(lanes, against, entries).dash, []);
  });
});

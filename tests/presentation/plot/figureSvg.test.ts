import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { figureSvg, type FigureBlocks } from '../../../server/src/presentation/plot/figureSvg';
import { againstDashes, figureColours, overlayDashes } from '../../../server/src/presentation/plot/palette';
import { defaultChoices, type ViewState } from '../../../server/src/protocol/view';
import { skip } from '../../support/skip';
import { blocksOf, evaluated, limestone, preform, stateOf, twoSteps, type Evaluated } from './evaluated';
import { xmlProblem } from './xml';

const size = { width: 900, height: 640 };

/** Relative luminance and contrast after WCAG 2.2 (definitions of "relative luminance" and "contrast ratio"). */
function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r, g, blue] = [1, 3, 5].map((i) => {
      const c = parseInt(hex.slice(i, i + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

const textsOf = (svg: string): string[] => [...svg.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map((m) => m[1]);

/** Points of the paths drawn in one colour. */
function pathPoints(svg: string, stroke: string): [number, number][] {
  return [...svg.matchAll(/<path d="([^"]*)" fill="none" stroke="([^"]*)" stroke-width="1\.[14]"/g)]
    .filter((m) => m[2] === stroke)
    .flatMap((m) =>
      [...m[1].matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((p): [number, number] => [Number(p[1]), Number(p[2])]),
    );
}

describe('the picture as SVG', () => {
  let of: Evaluated;
  let state: ViewState;
  let blocks: FigureBlocks;

  before(async () => {
    of = await evaluated(limestone(), '/lab/limestone/vq217-1.gloss');
    state = stateOf(of);
    blocks = blocksOf(state, [of.curves], 800);
  });

  it('is valid XML in every theme', () => {
    for (const theme of ['print', 'light', 'dark'] as const) {
      assert.equal(xmlProblem(figureSvg(state, blocks, null, { theme, ...size })), null);
    }
  });

  it('is valid XML for another reader too', function () {
    const svg = figureSvg(state, blocks, null, { theme: 'print', ...size });
    const readers = [
      ['xmllint', '--noout', '--nonet', '-'],
      ['python3', '-c', 'import sys, xml.dom.minidom; xml.dom.minidom.parse(sys.stdin.buffer)'],
    ];
    const reads = readers.map(([name, ...rest]) => spawnSync(name, rest, { input: svg, encoding: 'utf8' }));
    const present = reads.filter((read) => read.error === undefined);
    if (present.length === 0) skip(this, 'neither xmllint nor python3 is installed');
    for (const read of present) assert.equal(read.status, 0, read.stderr);
  });

  it('has the same bytes for the same input, and others for another', () => {
    const one = figureSvg(state, blocks, null, { theme: 'print', ...size });
    const again = figureSvg(stateOf(of), blocksOf(state, [of.curves], 800), null, { theme: 'print', ...size });
    assert.equal(one, again);
    assert.notEqual(one, figureSvg(state, blocks, { from: 500, to: 900 }, { theme: 'print', ...size }));
  });

  it('needs nothing from elsewhere: references stay inside, fonts are named with a generic one behind', () => {
    const svg = figureSvg(state, blocks, null, { theme: 'print', ...size });
    assert.deepEqual(
      [...svg.matchAll(/https?:[^"]*/g)].map((m) => m[0]),
      ['http://www.w3.org/2000/svg'],
    );
    const used = [...svg.matchAll(/url\(([^)]*)\)/g)].map((m) => m[1]);
    assert.ok(used.length > 0);
    for (const reference of used) assert.ok(svg.includes(`id="${reference.slice(1)}"`), reference);
    assert.ok(!/<(?:script|style|image|use|foreignObject|a)\b|\bhref\b|@import|\bon\w+=/.test(svg));
    assert.match(svg, /font-family="Helvetica, Arial, [^"]*sans-serif"/);
  });

  it('holds its words as text: lanes, direction, windows, marks, axis, caption with sample, mass, gas, rate, revision', () => {
    const words = textsOf(figureSvg(state, blocks, null, { theme: 'print', ...size }));
    for (const word of [
      'm/%',
      '−dm/dt/(%/min)',
      'Φ/mW   endothermic down',
      'First',
      'FirstHeat',
      'T/°C',
      'start 725.6 ± 1.5 °C',
    ]) {
      assert.ok(words.includes(word), word);
    }
    const caption = words.slice(-4).join(' ');
    for (const word of ['VQ-217, specimen 1', '20.052 mg', 'carbon dioxide 50 mL/min', '9.99 K/min', 'revision 7.']) {
      assert.ok(caption.includes(word), word);
    }
  });

  it('says in its caption that it is not current', () => {
    const freshness = { state: 'stale' as const, text: 'revision 6: line 12 has an error', error: null };
    const words = textsOf(figureSvg(stateOf(of, { freshness }), blocks, null, { theme: 'print', ...size })).join(' ');
    assert.match(words, /not current: revision 6: line 12 has an error/);
  });

  it('is sound with hostile names, controls and lone surrogates in every text', () => {
    const evil = '<script>alert("1")</script>&amp;\u0000\u001b[31m\uD800 ]]> --> \'"';
    const hostile: ViewState = {
      ...state,
      title: evil,
      conditions: [evil],
      lanes: state.lanes.map((l) => ({ ...l, label: evil, name: evil, direction: evil })),
      bands: state.bands.map((b) => ({
        ...b,
        name: evil,
        construction: b.construction.map((s) => (s.shape === 'mark' ? { ...s, text: evil } : s)),
      })),
      gasChanges: [{ time: 3000, temperature: 530, gas: evil }],
      freshness: { state: 'stale', text: evil, error: null },
    };
    const svg = figureSvg(hostile, blocks, null, { theme: 'light', ...size });
    assert.equal(xmlProblem(svg), null);
    assert.ok(!svg.includes('<script'));
  });

  it('draws the samples it is given, each at its place', () => {
    const svg = figureSvg(state, blocks, null, { theme: 'print', ...size });
    const drawn = pathPoints(svg, figureColours.print.ink);
    const given = [...blocks.values()].reduce((n, b) => n + b.length, 0);
    assert.equal(drawn.length, given);
    assert.ok(drawn.every(([x, y]) => x >= 0 && x <= size.width && y >= 0 && y <= size.height));
  });

  it('draws of a range its samples and one neighbour on each side', () => {
    const visible = { from: 700, to: 800 };
    const svg = figureSvg(state, blocks, visible, { theme: 'print', ...size });
    const expected = [...blocks.values()].reduce((n, b) => {
      const inside = b.filter((s) => s.x >= 700 && s.x <= 800).length;
      const beside = Number(b.some((s) => s.x < 700)) + Number(b.some((s) => s.x > 800));
      // A curve wholly beside the range has one point left, and no line.
      return n + (inside + beside > 1 ? inside + beside : 0);
    }, 0);
    assert.equal(pathPoints(svg, figureColours.print.ink).length, expected);
  });

  it('fills the area between the curve and the baseline that was used', () => {
    const svg = figureSvg(state, blocks, null, { theme: 'print', ...size, selected: 'method/peak FirstHeat' });
    const area = /<path d="([^"]*Z)" fill="#123c86" fill-opacity="0.16"/.exec(svg);
    assert.notEqual(area, null);
    const points = [...area![1].matchAll(/[ML]/g)].length;
    const band = state.bands.find((b) => b.name === 'FirstHeat')!;
    const curve = blocks.get('heatflow/heating 1')!;
    const inside = curve.filter((s) => s.x >= band.from.temperature! && s.x <= band.to.temperature!).length;
    assert.ok(Math.abs(points - inside - 65) <= 2, `${points} of ${inside} + 65`);
    assert.equal([...svg.matchAll(/fill-opacity="0.16"/g)].length, 1);
  });

  it('shows the construction of the selected statement alone, or of all', () => {
    const marks = (selected: string | null): string[] =>
      textsOf(figureSvg(state, blocks, null, { theme: 'print', ...size, selected })).filter((t) => / ± .* °C$/.test(t));
    assert.deepEqual(marks('method/step First').sort(), ['end 796.5 ± 1.5 °C', 'start 725.6 ± 1.5 °C']);
    assert.ok(marks(null).length >= 7);
    assert.deepEqual(marks('none of these'), []);
  });

  it('has paper in the colour of its theme, or none', () => {
    const paper = (transparent: boolean): boolean =>
      figureSvg(state, blocks, null, { theme: 'dark', ...size, transparent }).includes(
        '<rect width="900" height="640" fill="#1d2024"/>',
      );
    assert.deepEqual([paper(false), paper(true)], [true, false]);
  });

  it('takes given colours, an order and a choice of lanes, and ranges of ordinates', () => {
    const theme = { ...figureColours.light, ink: '#010203' };
    const words = textsOf(
      figureSvg(state, blocks, null, {
        theme,
        ...size,
        laneOrder: ['heatflow', 'mass'],
        hiddenLanes: ['rate'],
        ordinates: { mass: { from: 80, to: 90 } },
      }),
    );
    const heads = words.filter((w) => /^(?:m\/%|Φ|−dm)/.test(w));
    assert.deepEqual(heads, ['Φ/mW   endothermic down', 'm/%']);
    assert.ok(words.includes('84') && !words.includes('70'));
  });

  it('tells runs laid over by dashes, in the picture and in the legend', async () => {
    const second = await of.engine.evaluate('/lab/limestone/vq217-2.gloss');
    const over = ['1:', '2:'].map((key) => of.engine.curvesOf(second, { key, run: of.curves })!);
    const laid = stateOf(of, {
      overlays: over.map((curves, i) => ({ uri: `u${i}`, name: `run ${i + 1}`, curves, reason: null })),
      against: {
        name: 'HEAD',
        curves: of.engine.curvesOf(of.snapshot, { key: 'H:', run: of.curves }),
        differences: [],
        since: new Map(),
      },
    });
    const drawn = [of.curves, ...over, of.engine.curvesOf(of.snapshot, { key: 'H:', run: of.curves })!];
    const svg = figureSvg(laid, blocksOf(laid, drawn, 300), null, { theme: 'print', ...size });
    assert.equal(xmlProblem(svg), null);
    for (const dashes of [overlayDashes[0], overlayDashes[1], againstDashes]) {
      const found = [...svg.matchAll(new RegExp(`stroke-dasharray="${dashes.join(' ')}"`, 'g'))].length;
      // Nine curves each (three lanes, three parts) and the sample in the legend.
      assert.equal(found, 10, dashes.join(' '));
    }
    const words = textsOf(svg);
    for (const name of ['vq217-1', 'run 1', 'run 2', 'HEAD']) assert.ok(words.includes(name), name);
  });

  it('draws a loop whole, over temperature and over time', async () => {
    const pet = await evaluated(preform(), '/lab/preform/pet-07.gloss');
    for (const abscissa of ['temperature', 'time'] as const) {
      const here = stateOf(pet, { choices: { ...defaultChoices, abscissa } });
      const all = blocksOf(here, [pet.curves], 1e6);
      const svg = figureSvg(here, all, null, { theme: 'print', ...size });
      const samplesOf = (id: string): number => all.get(id)?.length ?? 0;
      const given = here.lanes.flatMap((l) => l.curves).reduce((n, c) => n + samplesOf(c.id), 0);
      assert.equal(pathPoints(svg, figureColours.print.ink).length, given);
      assert.ok(textsOf(svg).includes(abscissa === 'time' ? 't/min' : 'T/°C'));
    }
  });

  it('hatches windows with findings and where they overlap, errors and warnings by their own slant', async () => {
    const gloss = 'run "a.csv"\n  mass 20 mg\nstep First 200..520 °C\nstep Second 480..750 °C\n';
    const at = await evaluated({ 'a.gloss': gloss, 'a.csv': twoSteps });
    const svg = (s: ViewState): string =>
      figureSvg(s, blocksOf(s, [at.curves], 300), null, { theme: 'print', ...size });
    const here = stateOf(at);
    // A strip on each band and the overlap, in two lanes.
    assert.equal([...svg(here).matchAll(/fill="url\(#hatch-warning\)"/g)].length, 6);
    const clean = await evaluated({ 'a.gloss': gloss.replace('520', '420'), 'a.csv': twoSteps });
    assert.ok(!/fill="url\(#hatch/.test(svg(stateOf(clean))));
  });

  it('stands where there is nothing to draw', () => {
    const bare = { ...state, lanes: [], bands: [], parts: [], gasChanges: [] };
    assert.equal(xmlProblem(figureSvg(bare, new Map(), null, { theme: 'print', ...size })), null);
    assert.equal(xmlProblem(figureSvg(state, new Map(), null, { theme: 'print', width: 120, height: 60 })), null);
  });
});

describe('the colours of pictures', () => {
  it('have 4.5 to 1 for text and 3 to 1 for lines against their paper', () => {
    for (const [theme, c] of Object.entries(figureColours)) {
      for (const name of ['ink', 'muted', 'accent', 'warning', 'error'] as const) {
        assert.ok(contrast(c[name], c.paper) >= 4.5, `${theme} ${name}: ${contrast(c[name], c.paper)}`);
      }
      assert.ok(contrast(c.edge, c.paper) >= 3, `${theme} edge`);
    }
  });

  it('are not the only cue: eleven dashes are eleven', () => {
    const all = [...overlayDashes, againstDashes].map((d) => d.join(' '));
    assert.equal(new Set(all).size, 11);
    // Pattern by pattern the share of ink or the length of the period differs by a sixth at least.
    const facts = [...overlayDashes, againstDashes].map((d) => {
      const period = d.reduce((a, b) => a + b, 0);
      const ink = d.filter((_, i) => i % 2 === 0).reduce((a, b) => a + b, 0);
      return { period, share: ink / period, strokes: d.length / 2 };
    });
    facts.forEach((a, i) =>
      facts.slice(i + 1).forEach((b) => {
        const differs =
          a.strokes !== b.strokes ||
          Math.max(a.period / b.period, b.period / a.period) > 1.16 ||
          Math.max(a.share / b.share, b.share / a.share) > 1.16;
        assert.ok(differs, JSON.stringify([a, b]));
      }),
    );
  });
});

describe('the strict reader of these tests', () => {
  it('finds what is wrong, and nothing where nothing is', () => {
    const good = [
      '<a/>',
      '<a b="1" c=\'2\'>x &lt; &#38; <b></b></a>',
      '<?xml version="1.0" encoding="UTF-8"?>\n<a></a>\n',
    ];
    for (const text of good) assert.equal(xmlProblem(text), null, text);
    const bad = [
      '',
      'x',
      '<a>',
      '<a></b>',
      '<a/><b/>',
      '<a b=1/>',
      '<a b="1" b="2"/>',
      '<a>&</a>',
      '<a>&nbsp;</a>',
      '<a b="<"/>',
      '<a>\u0001</a>',
      '<a>\uD800</a>',
      '<a/>x',
    ];
    for (const text of bad) assert.notEqual(xmlProblem(text), null, text);
  });
});

import assert from 'node:assert/strict';
import { colourFrom, contrast, type Colour } from '../../webview/src/colour/colour';
import { palette } from '../../webview/src/colour/palette';
import { figureColours } from '../../server/src/presentation/plot/palette';
import { themeNames, themes } from '../page/webview/fake/themes';

// Full loss of one cone, on linear sRGB: Machado, Oliveira and Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291,
// table of severity 1.0 (from memory; that each row sums to 1, so that greys stay as they are, is checked below).
const losses = {
  'long wavelengths (protan)': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'middle wavelengths (deutan)': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'short wavelengths (tritan)': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const;

/** sRGB transfer, IEC 61966-2-1. */
const linear = (v: number): number => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
const encoded = (c: number): number => 255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);

function seenWith(matrix: readonly (readonly number[])[], { r, g, b }: Colour): Colour {
  const cones = [r, g, b].map(linear);
  const [x, y, z] = matrix.map((row) =>
    encoded(
      Math.min(
        1,
        Math.max(
          0,
          row.reduce((s, m, i) => s + m * cones[i], 0),
        ),
      ),
    ),
  );
  return { r: x, g: y, b: z, a: 1 };
}

/** CIELAB of linear sRGB (IEC 61966-2-1 primaries, white D65; CIE 15), for distances as of CIE 1976. */
function labOf({ r, g, b }: Colour): readonly number[] {
  const [x, y, z] = [
    [0.4124564 / 0.95047, 0.3575761 / 0.95047, 0.1804375 / 0.95047],
    [0.2126729, 0.7151522, 0.072175],
    [0.0193339 / 1.08883, 0.119192 / 1.08883, 0.9503041 / 1.08883],
  ].map((row) => {
    const t = row[0] * linear(r) + row[1] * linear(g) + row[2] * linear(b);
    return t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116;
  });
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const distance = (a: Colour, b: Colour): number => Math.hypot(...labOf(a).map((v, k) => v - labOf(b)[k]));

describe('colours for those who see two kinds of light instead of three', () => {
  it('are simulated so that greys stay as they are and pure hues do not', () => {
    for (const matrix of Object.values(losses)) {
      for (const row of matrix) assert.ok(Math.abs(row.reduce((s, v) => s + v, 0) - 1) < 2e-6);
      const grey = seenWith(matrix, { r: 119, g: 119, b: 119, a: 1 });
      assert.ok([grey.r, grey.g, grey.b].every((v) => Math.abs(v - 119) < 0.1));
    }
    const [red, green] = [
      { r: 200, g: 60, b: 0, a: 1 },
      { r: 90, g: 120, b: 0, a: 1 },
    ].map((c) => seenWith(losses['middle wavelengths (deutan)'], c));
    // Orange red and olive come near each other in hue for them: both are yellows.
    for (const c of [red, green]) assert.ok(Math.abs(c.r - c.g) < 0.35 * Math.max(c.r, c.g) && c.b < 0.5 * c.g);
  });

  for (const [loss, matrix] of Object.entries(losses)) {
    it(`stand out without ${loss}: 3 to 1 in the four themes, whose hues are the editor's, and text at 4.5 to 1 in every export`, () => {
      const low: string[] = [];
      const look = (where: string, ground: Colour, of: Readonly<Record<string, Colour>>, ratio: number): void => {
        for (const [name, colour] of Object.entries(of)) {
          const seen = contrast(seenWith(matrix, colour), seenWith(matrix, ground));
          if (seen < ratio) low.push(`${where} ${name} ${seen.toFixed(2)}`);
        }
      };
      for (const theme of themeNames) {
        const given: Readonly<Record<string, string>> = themes[theme];
        const p = palette((name) => (given[name] === undefined ? null : colourFrom(given[name])), theme);
        const { ink, muted, accent, warning, error, good, edge, focus } = p;
        look(theme, p.ground, { muted, accent, warning, error, good, edge, focus }, 3);
        look(theme, p.ground, { ink }, 4.5);
      }
      for (const [theme, { paper, ink, muted, accent, warning, error }] of Object.entries(figureColours)) {
        const of = Object.entries({ ink, muted, accent, warning, error }).map(([n, c]) => [n, colourFrom(c)!] as const);
        look(`export ${theme}`, colourFrom(paper)!, Object.fromEntries(of), 4.5);
      }
      assert.deepEqual(low, []);
    });
  }

  it('are as far apart as CIELAB says: white from black 100, red from green 170.6', () => {
    const [white, black, red, green] = ['#ffffff', '#000000', '#ff0000', '#00ff00'].map((c) => colourFrom(c)!);
    assert.ok(Math.abs(distance(white, black) - 100) < 0.1);
    // L*a*b* of the primaries, of many published tables, from memory: 53.2, 80.1, 67.2 and 87.7, -86.2, 83.2.
    assert.ok(Math.abs(distance(red, green) - Math.hypot(34.5, 166.3, 16)) < 0.5);
  });

  // Nobody states what is enough: a distance of about 2 is just seen, and 15 is what is asked for here.
  it('are told from one another, 15 apart, but for warning and error, which differ in slant and words', () => {
    const near = new Set<string>();
    const look = (where: string, of: Readonly<Record<string, Colour>>): void => {
      const all = Object.entries(of);
      for (const [loss, matrix] of Object.entries(losses)) {
        all.forEach(([name, colour], k) =>
          all.slice(k + 1).forEach(([other, another]) => {
            const apart = distance(seenWith(matrix, colour), seenWith(matrix, another));
            if (apart < 15) near.add(`${name} and ${other}`);
            assert.ok(apart > 2, `${where}, without ${loss}: ${name} and ${other} are ${apart.toFixed(1)} apart`);
          }),
        );
      }
    };
    for (const theme of themeNames) {
      const given: Readonly<Record<string, string>> = themes[theme];
      const p = palette((name) => (given[name] === undefined ? null : colourFrom(given[name])), theme);
      look(theme, { ink: p.ink, muted: p.muted, accent: p.accent, warning: p.warning, error: p.error });
    }
    for (const [theme, { ink, muted, accent, warning, error }] of Object.entries(figureColours)) {
      const of = Object.entries({ ink, muted, accent, warning, error }).map(([n, c]) => [n, colourFrom(c)!] as const);
      look(`export ${theme}`, Object.fromEntries(of));
    }
    assert.deepEqual([...near], ['warning and error']);
  });
});

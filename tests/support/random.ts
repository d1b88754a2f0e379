/** A seeded source: the same seed gives the same numbers on every system. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
  /** An integer from 0 to `below` - 1. */
  integer(below: number): number;
}

/** A 32-bit generator of the "small fast counting" family (128 bits of state, public domain; from memory). */
export function seeded(seed: number): Random {
  let a = 0x9e3779b9 | 0;
  let b = 0x243f6a88 | 0;
  let c = seed | 0;
  let d = 1;
  function next(): number {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  }
  for (let i = 0; i < 16; i++) next();
  let spare: number | null = null;
  return {
    uniform: next,
    integer: (below) => Math.floor(next() * below),
    normal() {
      if (spare !== null) {
        const value = spare;
        spare = null;
        return value;
      }
      // Box and Muller, Ann. Math. Stat. 29 (1958) 610: two normals from two uniforms.
      const radius = Math.sqrt(-2 * Math.log(1 - next()));
      const angle = 2 * Math.PI * next();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
  };
}

/** `n` independent normal numbers of standard deviation `sigma`. */
export function whiteNoise(n: number, sigma: number, random: Random): Float64Array {
  return Float64Array.from({ length: n }, () => sigma * random.normal());
}

/**
 * `n` numbers of 1/f noise, standard deviation `sigma` each: the sum of rows of which row k keeps a normal number for
 * 2^k samples (Voss's scheme, from memory), all rows of equal variance, each with a random phase, up to rows longer
 * than the series. Drawn in another way than the noise model of the program describes it, so that a test of that model
 * is not a test against itself.
 */
export function pinkNoise(n: number, sigma: number, random: Random): Float64Array {
  const rows = Math.max(1, Math.ceil(Math.log2(n)) + 1);
  const each = sigma / Math.sqrt(rows);
  const noise = new Float64Array(n);
  for (let row = 0; row < rows; row++) {
    const length = 2 ** row;
    let left = random.integer(length) + 1;
    let value = each * random.normal();
    for (let i = 0; i < n; i++) {
      noise[i] += value;
      if (--left === 0) {
        value = each * random.normal();
        left = length;
      }
    }
  }
  return noise;
}

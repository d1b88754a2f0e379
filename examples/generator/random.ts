/** Numbers drawn for one run. The silent one draws zeros, so that the same code gives the curve without any scatter. */
export interface Draws {
  /** Standard normal. */
  normal(): number;
}

export const silent: Draws = { normal: () => 0 };

/** What a simulated record holds besides the plain signals. */
export interface Included {
  /** Noise, ripple of the controller, scatter from run to run, knocks. */
  readonly scatter: boolean;
  /** Without the heats of reaction the record is the exact baseline of all peaks. */
  readonly reactionHeat: boolean;
}

export const everything: Included = { scatter: true, reactionHeat: true };

/**
 * Draws named by a text: the same name gives the same numbers on every system. The committed data depend on this
 * sequence, so it is the generator's own. 32-bit xorshift with a Weyl sequence (Marsaglia, J. Stat. Softw. 8 (2003) 14,
 * from memory); normals by the polar method (Marsaglia and Bray, SIAM Rev. 6 (1964) 260, from memory), which needs no
 * trigonometric function.
 */
export function drawsNamed(name: string): Draws {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  let state = hash | 1;
  let weyl = 0;
  function uniform(): number {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    weyl = (weyl + 0x61c88647) | 0;
    return (((state + weyl) >>> 0) + 0.5) / 4294967296;
  }
  for (let i = 0; i < 16; i++) uniform();
  let spare: number | null = null;
  return {
    normal() {
      if (spare !== null) {
        const value = spare;
        spare = null;
        return value;
      }
      for (;;) {
        const a = 2 * uniform() - 1;
        const b = 2 * uniform() - 1;
        const square = a * a + b * b;
        if (square === 0 || square >= 1) continue;
        const factor = Math.sqrt((-2 * Math.log(square)) / square);
        spare = b * factor;
        return a * factor;
      }
    },
  };
}

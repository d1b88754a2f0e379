import type { Curve } from './curve';
import type { Noise } from './noise';

/** Answers kept at most for one curve and noise; the oldest goes first. */
const MOST = 64;

/**
 * Answers that depend on a curve, its noise, and what the key names, and on nothing else: kept with the curve, because
 * windows that move over it ask again.
 */
export class Kept<V> {
  private readonly curves = new WeakMap<Curve, Map<Noise | null, Map<string, V>>>();

  /** `key` holds every other argument of `make`. */
  of(curve: Curve, noise: Noise | null, key: string, make: () => V): V {
    const answers = this.answersOf(curve, noise);
    let answer = answers.get(key);
    if (answer === undefined) {
      if (answers.size >= MOST) answers.delete(answers.keys().next().value as string);
      answers.set(key, (answer = make()));
    }
    return answer;
  }

  private answersOf(curve: Curve, noise: Noise | null): Map<string, V> {
    let noises = this.curves.get(curve);
    if (noises === undefined) this.curves.set(curve, (noises = new Map<Noise | null, Map<string, V>>()));
    let answers = noises.get(noise);
    if (answers === undefined) {
      if (noises.size >= MOST) noises.delete(noises.keys().next().value as Noise | null);
      noises.set(noise, (answers = new Map<string, V>()));
    }
    return answers;
  }
}

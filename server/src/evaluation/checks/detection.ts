import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { significantText } from '../../findings/numberText';
import type { StatementOutcome } from '../outcome';
import { at } from './wording';

/** Sizes by which an effect is called detected or not, the first that a statement has. */
const sizes = ['loss', 'enthalpy', 'area', 'delta_cp'];

/** Says once for a statement that its effect is below its detection limit. */
export function checkDetection(outcome: StatementOutcome): Finding[] {
  for (const name of sizes) {
    const size = outcome.quantities.find((q) => q.quantity === name);
    if (size === undefined || size.limit === null || size.uncertain === null) continue;
    const text = (value: number) => `${significantText(Math.abs(value), 2)} ${size.unit.text}`;
    return [
      makeFinding(
        'below-noise',
        at(outcome, 'name'),
        `${outcome.name} is not detected: its ${name} of ${text(size.uncertain.value)} is below ${text(size.limit)}, what noise or blank alone may give.`,
        { about: outcome.name },
      ),
    ];
  }
  return [];
}

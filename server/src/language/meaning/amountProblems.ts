import { settableLimit } from '../../findings/table';
import type { FindingCode } from '../../findings/codes';
import { isTemperaturePoint } from '../../quantities/convert';
import { sameDimension } from '../../quantities/dimension';
import { parseUnit } from '../../quantities/parseUnit';
import type { Unit } from '../../quantities/unit';
import type { Amount, RangeOf } from '../model';
import { measures, measureWords, unitServes, type Measure } from '../vocabulary/measures';
import { inserting, problem, replacing, type Problem } from './problem';

/** Whether an amount measures one of what is due there. */
export function checkAmount(amount: Amount, due: readonly Measure[], token: string): readonly Problem[] {
  const serves = due.map((measure) => unitServes(amount.unit, measure));
  if (serves.includes('yes')) return [];
  if (serves.includes('point')) return [pointForDifference(amount, token)];
  if (amount.unit !== null) {
    return [
      problem(
        'wrong-dimension',
        token,
        `${measureWords(due)} is due here, such as in ${unitOf(due)}; ${amount.unit.text} is none`,
      ),
    ];
  }
  const unit = unitOf(due);
  return [
    problem('unit-missing', token, `the number needs a unit: ${measureWords(due)}, such as in ${unit}`, [
      inserting(token, ` ${unit}`),
    ]),
  ];
}

function unitOf(due: readonly Measure[]): string {
  return measures[due[0]!].unit === '' ? '%' : measures[due[0]!].unit;
}

export function pointForDifference(amount: Amount, token: string): Problem {
  const kelvin = amount.text.replace(/ °C$/, ' K');
  return problem(
    'point-for-difference',
    token,
    `${amount.text} is a temperature; a difference is due here, written in K`,
    [replacing(token, kelvin)],
  );
}

/** Both ends of a range, which are of one dimension; notes `.from` and `.to` below the token. */
export function checkRange(range: RangeOf, due: readonly Measure[], token: string): readonly Problem[] {
  const { from, to } = range;
  if (from.unit === null || to.unit === null) return checkAmount(to, due, `${token}.to`);
  const ends = [...checkAmount(from, due, `${token}.from`), ...checkAmount(to, due, `${token}.to`)];
  // One unit serves both ends: what is wrong with it is said once.
  if (ends.length > 1 && from.unit.text === to.unit.text) return ends.slice(1);
  if (ends.length > 0 || sameDimension(from.unit.dimension, to.unit.dimension)) return ends;
  return [
    problem('wrong-dimension', token, `the two ends measure different things, ${from.unit.text} and ${to.unit.text}`),
  ];
}

/** Whether a unit fits a column of a signal. */
export function checkColumnUnit(unit: Unit, due: readonly Measure[], token: string): readonly Problem[] {
  const serves = due.some((measure) =>
    unit.text === '1' ? measure === 'number' || measure === 'fraction' : unitServes(unit, measure) === 'yes',
  );
  return serves ? [] : [problem('wrong-dimension', token, `${measureWords(due)} is due here; ${unit.text} is none`)];
}

/** `rule CODE Q`: Q has the unit that the limit of the finding has. */
export function checkRuleLimit(code: FindingCode, limit: Amount, token: string): readonly Problem[] {
  const settable = settableLimit(code);
  if (settable === null) {
    return [problem('unknown-name', 'code', `\`${code}\` is not decided by a number, so there is no limit to set`)];
  }
  if (settable.unit === '') {
    return limit.unit === null
      ? []
      : [
          problem('wrong-dimension', token, `the limit of \`${code}\` is a plain number: ${settable.meaning}`, [
            replacing(token, limit.text.split(' ')[0]!),
          ]),
        ];
  }
  const due = parseUnit(settable.unit);
  if (!due.ok) throw new Error(`no such unit: ${settable.unit}`);
  if (limit.unit === null) {
    return [
      problem(
        'unit-missing',
        token,
        `the limit of \`${code}\` needs a unit, such as ${settable.unit}: ${settable.meaning}`,
        [inserting(token, ` ${settable.unit}`)],
      ),
    ];
  }
  if (!sameDimension(limit.unit.dimension, due.value.dimension)) {
    return [
      problem('wrong-dimension', token, `the limit of \`${code}\` is given in ${settable.unit}: ${settable.meaning}`),
    ];
  }
  return isTemperaturePoint(limit.unit) && !isTemperaturePoint(due.value) ? [pointForDifference(limit, token)] : [];
}

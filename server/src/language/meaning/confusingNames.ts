import { parseUnit } from '../../quantities/parseUnit';
import type { Namespace } from './namespace';
import { problem } from './problem';
import type { Report } from './report';

/** Names that are also units, and names that differ by case only: allowed, but remarked. */
export function remarkConfusingNames(names: Namespace, report: Report): void {
  const alike = new Map<string, string>();
  for (const name of [...names.entries.keys()].sort()) {
    const entry = names.entries.get(name)!;
    const token = entry.partOf === null ? 'name' : 'sum';
    const item = { nodes: [entry.at] as const };
    if (isUnit(name)) {
      report.add(
        item,
        problem(
          'confusing-name',
          token,
          `\`${name}\` is also a unit: \`2 ${name}\` is a quantity, \`2 * ${name}\` a product`,
        ),
      );
    }
    const folded = name.toLowerCase();
    const other = alike.get(folded);
    if (other === undefined) alike.set(folded, name);
    else report.add(item, problem('confusing-name', token, `\`${name}\` and \`${other}\` differ by capitals only`));
  }
}

/** Names looked up before: the same ones come back with every revision of a gloss. */
const known = new Map<string, boolean>();
const MOST = 2000;

function isUnit(name: string): boolean {
  let is = known.get(name);
  if (is === undefined) {
    if (known.size >= MOST) known.clear();
    known.set(name, (is = parseUnit(name).ok));
  }
  return is;
}

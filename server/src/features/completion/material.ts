import { crucibles } from '../../reference/crucibles';
import { gases } from '../../reference/gases';
import { specimens } from '../../reference/specimens';
import type { LineToken } from '../lineTokens';
import { from, isSign, isWord, lastIndex, type CompletionContext } from './context';
import { word } from './heads';
import type { Offer } from './offer';
import { segmentOffers } from './places';
import { unitsOf } from './units';

/** What is written of the last item of a list. */
export function sinceComma(args: readonly LineToken[]): readonly LineToken[] {
  return args.slice(lastIndex(args, (t) => isSign(t, ',')) + 1);
}

/** Substances by name, found by their other names and formulas too. */
export function specimenOffers({ cursor }: CompletionContext, item: readonly LineToken[]): Offer[] {
  return specimens.map((specimen) => ({
    label: specimen.name,
    kind: 'material',
    replace: from(cursor, item[0]),
    ...(specimen.formulas.length === 0 ? {} : { detail: specimen.formulas[0]! }),
    filter: [specimen.name, ...specimen.aliases, ...specimen.formulas].join(' '),
    doc: { of: 'specimen', name: specimen.name },
  }));
}

/** A crucible: its material, its volume. */
export function crucibleOffers(
  context: CompletionContext,
  args: readonly LineToken[],
  units: (of: readonly string[]) => Offer[],
): Offer[] {
  const item = sinceComma(args);
  if (item.length < args.length) return [];
  if (item.at(-1)?.kind === 'number') return units(unitsOf(['volume']));
  if (item.some((t) => t.kind !== 'word')) return [];
  return crucibles
    .filter((c) => !c.rare || item.length > 0)
    .map((c) => ({
      label: c.name,
      kind: 'material',
      replace: from(context.cursor, item[0]),
      detail: c.goodFor,
      filter: [c.name, ...c.aliases].join(' '),
      doc: { of: 'crucible', name: c.name },
    }));
}

/** A purge gas or mixture, its flow, purity and beginning. */
export function atmosphereOffers(
  context: CompletionContext,
  args: readonly LineToken[],
  units: (of: readonly string[]) => Offer[],
): Offer[] {
  const last = args.at(-1);
  const segment = segmentOffers(context, args);
  if (segment !== null) return segment;
  const purity = args.some((t) => isWord(t, 'purity'));
  if (isWord(args.at(-2), 'from') && last?.kind === 'number') return units(unitsOf(['time']));
  if (last?.kind === 'number') return units(purity ? ['%'] : [...unitsOf(['flow']), '%']);
  const plus = lastIndex(args, (t) => isSign(t, '+'));
  const gas = args.slice(plus + 1);
  if (gas.every((t) => t.kind === 'word') && !purity) return gasOffers(context, gas);
  if (last?.kind !== 'unit') return [];
  const share = gas.some((t) => t.text === '%') && !purity && !args.some((t) => t.text.includes('/'));
  return [
    ...(share ? [word('+', 'a further gas with its share')] : []),
    ...(purity ? [] : [word('purity')]),
    word('from', 'the time or segment from which it flows'),
  ];
}

function gasOffers({ cursor }: CompletionContext, words: readonly LineToken[]): Offer[] {
  return gases.map((gas) => ({
    label: gas.name,
    kind: 'material',
    replace: from(cursor, words[0]),
    detail: gas.traits.join(', '),
    filter: [gas.name, ...gas.aliases, ...gas.formulas].join(' '),
    doc: { of: 'gas', name: gas.name },
  }));
}

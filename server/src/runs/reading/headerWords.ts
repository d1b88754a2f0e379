import type { SignalName } from '../../language/model';

/** What a header name says: a signal, something that is known and left out, or nothing. */
export type HeaderMeaning = SignalName | 'left out' | null;

type Meaning = 'time' | 'temperature' | 'mass' | 'heatflow' | 'left out' | 'other temperature';

/**
 * Words and phrases of headers; accents and case do not count, and stand here as `plain` leaves them (й as и). Common
 * practice in the trade and plain dictionary words. Whoever has another word writes `columns`.
 *
 * | signal | words |
 * |---|---|
 * | time | time, elapsed, Zeit, temps, tiempo, tempo, tijd, czas, čas, tid, aika, idő, zaman, время, 时间, 時間; `t` |
 * | temperature | temperature, temp, Temperatur, température, temperatura, teplota, … ; `T`, `Ts` |
 * | mass | mass, weight, TG, TGA, Masse, Gewicht, masa, massa, peso, poids, …; `m` |
 * | heatflow | heat flow (rate), heat flux, DSC, DTA, Wärmestrom, flux de chaleur, …; `Φ` |
 * | left out | rates and derivatives, errors, numbering, segments, comments, gas flows, pressures, other temperatures |
 */
const phrases: readonly [Meaning, readonly string[]][] = [
  [
    'heatflow',
    list(
      'heat flow rate|heat flow|heatflow|heat flux|heat flux rate|hf|dsc|dta|warmestrom|warmefluss|warmestromrate|' +
        'flux de chaleur|flux thermique|flujo de calor|flujo termico|flusso di calore|flusso termico|fluxo de calor|' +
        'warmtestroom|przepływ ciepła|strumien ciepła|tepelny tok|varmeflode|lampovirta|тепловои поток|дск|дта|' +
        '热流|熱流|热流率|熱流束',
    ),
  ],
  [
    'left out',
    list(
      'rate|dtg|dtga|ddsc|dtg a|derivative|deriv|derivat|ableitung|derivee|derivada|derivata|mlr|dm dt|dw dt|d m|dα dt|' +
        'mass loss rate|heating rate|heizrate|rate of mass loss|дтг|导数|' +
        'error|err|uncertainty|unsicherheit|std|stdev|std dev|sd|standard deviation|deviation|sigma|σ|±|incertitude|' +
        'index|idx|no|nr|n|number|point|row|id|#|sample no|segment|seg|event|comment|remark|flag|' +
        'gas flow|purge|purge flow|flow rate|pressure|vacuum|voltage|power|gas 1|gas 2|sensitivity|sens',
    ),
  ],
  [
    'other temperature',
    list(
      'program temperature|programme temperature|programmed temperature|set temperature|setpoint|set point|' +
        'furnace temperature|furnace temp|reference temperature|reference temp|ref temperature|ref temp|oven temperature|' +
        'program temp|set temp|temperature setpoint|temp setpoint|soll temperatur|solltemperatur|ofentemperatur|' +
        'temperature difference|delta t|δt|ambient temperature|room temperature|cold junction',
    ),
  ],
  [
    'temperature',
    list(
      'temperature|temp|temperatur|temperatura|temperatuur|teplota|hofok|homerseklet|sıcaklık|sicaklik|lampotila|' +
        'температура|温度|ts|probentemperatur|sample temperature',
    ),
  ],
  ['time', list('time|elapsed|elapsed time|zeit|temps|tiempo|tempo|tijd|czas|cas|tid|aika|ido|zaman|время|时间|時間')],
  [
    'mass',
    list(
      'mass|weight|wt|tg|tga|masse|gewicht|gew|probenmasse|masa|massa|peso|poids|hmotnost|massan|tomeg|kutle|масса|тг|' +
        '质量|重量|質量|mass fraction|weight fraction|residual mass|sample mass|massenanteil|restmasse|' +
        'masse residuelle|fraction massique',
    ),
  ],
];

/** A change of mass is not a mass: its sign and zero differ from file to file, so it is never taken unasked. */
const changes =
  /(?:^| )(?:loss|lost|change|gain|\p{L}*verlust|\p{L}*anderung|perte|perdida|perdita|perda|delta|δ\p{L}*|потеря)(?: |$)/u;

function list(text: string): readonly string[] {
  return text.split('|');
}

/** The longest first. */
export const headerPhrases: readonly { readonly meaning: Meaning; readonly words: readonly string[] }[] = phrases
  .flatMap(([meaning, words]) => words.map((word) => ({ meaning, words: word.split(' ') })))
  .sort((a, b) => b.words.length - a.words.length);

/** Lower case without accents; everything that is neither letter nor digit separates words. */
export function plain(text: string): string {
  // The same without the tables of all writing systems, which a program that starts would have to build.
  if (/^[ -~]*$/.test(text)) {
    return text
      .toLowerCase()
      .replace(/[^a-z0-9#]+/g, ' ')
      .trim();
  }
  return text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/([\p{sc=Han}]+)/gu, ' $1 ')
    .replace(/[^\p{L}\p{N}#±]+/gu, ' ')
    .trim();
}

/** The meanings that the words of a name carry, longest phrase first, each word used once. */
function meaningsOf(name: string): Set<Meaning> {
  const words: (string | null)[] = name.split(' ');
  // Chinese and Japanese write no blanks between words: there a part of the run of signs is enough.
  const isHan = /\p{sc=Han}/u.test(name);
  const found = new Set<Meaning>();
  for (const phrase of headerPhrases) {
    for (let at = 0; at + phrase.words.length <= words.length; at++) {
      if (!standsAt(phrase.words, words, at, isHan)) continue;
      found.add(phrase.meaning);
      words.fill(null, at, at + phrase.words.length);
    }
  }
  return found;
}

function standsAt(phrase: readonly string[], words: readonly (string | null)[], at: number, isHan: boolean): boolean {
  for (let k = 0; k < phrase.length; k++) {
    const found = words[at + k];
    if (found === phrase[k]) continue;
    if (!isHan || found === null || !/^\p{sc=Han}/u.test(phrase[k]) || !found.includes(phrase[k])) return false;
  }
  return true;
}

const symbols: Readonly<Record<string, SignalName>> = { T: 'temperature', m: 'mass', Φ: 'heatflow', φ: 'heatflow' };

/** What a header name (without its unit) means. `t` alone is decided by its unit, elsewhere. */
export function headerMeaning(name: string): HeaderMeaning {
  const trimmed = name.trim();
  if (Object.hasOwn(symbols, trimmed)) return symbols[trimmed];
  const numbered = numberedSignal(trimmed);
  if (numbered !== null) return numbered;
  const words = plain(trimmed);
  const found = meaningsOf(words);
  if (found.has('left out') || found.has('other temperature')) return 'left out';
  if (found.size !== 1) return null;
  const [only] = found;
  if (only === 'mass' && words !== 'mass' && changes.test(words)) return null;
  return only as SignalName;
}

/** `m/z 18`, `ion current 18`, `18 amu`; `absorbance 2349`, `2349 cm⁻¹`. */
function numberedSignal(name: string): SignalName | null {
  if (!/\d/.test(name)) return null;
  const number = '(\\d+(?:\\.\\d+)?)';
  const ion = new RegExp(
    `(?:^|[^a-z])(?:m\\s*/?\\s*z|ion(?:\\s*current)?|ionenstrom|amu)[^\\p{L}\\d]{0,4}${number}(?![\\d.])`,
    'iu',
  ).exec(name);
  if (ion !== null) return `ion(${Number(ion[1])})`;
  const amu = new RegExp(`^${number}\\s*(?:amu|u|m/z)$`, 'i').exec(name);
  if (amu !== null) return `ion(${Number(amu[1])})`;
  const band = new RegExp(`(?:absorbance|absorbanz|extinktion|abs)[^\\p{L}\\d]{0,4}${number}`, 'iu').exec(name);
  if (band !== null) return `absorbance(${Number(band[1])})`;
  const wavenumber = new RegExp(`${number}\\s*(?:cm[-⁻−^]*[1¹]|1/cm)`, 'iu').exec(name);
  return wavenumber === null ? null : `absorbance(${Number(wavenumber[1])})`;
}

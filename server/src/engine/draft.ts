import { never } from '../base/cancellation';
import { Counters } from '../base/counters';
import type { Host } from '../base/host';
import { failed, success, type Outcome } from '../base/outcome';
import { prepareRun } from '../evaluation/prepareRun';
import { proposeEvaluations, type Proposal } from '../evaluation/propose';
import { numberText } from '../findings/numberText';
import { format } from '../language/format';
import { parse } from '../language/syntax/parse';
import { resolveProgram } from '../language/meaning/resolveProgram';
import { writeText } from '../language/writing/writeText';
import { unitWord } from '../runs/reading/unitWords';
import type { Interpretation, RawRun, Segment } from '../runs/run';
import { BoundedMemo } from './boundedMemo';
import { choicesFor, Loader, type Read } from './load';

export interface Draft {
  /** The gloss, as `format` leaves it. */
  readonly text: string;
  /** What its reader must decide or be warned of, one line each. */
  readonly notes: readonly string[];
}

export interface DraftOptions {
  /** File of a method, relative to the run: the draft then only names it. */
  readonly method?: string;
}

/**
 * Drafts a gloss for a run file: how the file is read, the segments, and the steps, effects and glass transitions that
 * the curves show. It proposes; everything in it is there to be changed.
 */
export async function draftGloss(
  host: Host,
  runPath: string,
  options: DraftOptions = {},
): Promise<Outcome<Draft, { readonly message: string }>> {
  const file = runPath.split('/').pop() ?? runPath;
  const loader = new Loader(host, new Counters());
  const head = `run ${writeText(file)}`;
  const notes: string[] = [];
  let read = await loader.read(runPath, null, never);
  if (!read.ok && 'write' in read.failure && read.failure.write !== null) {
    // What cannot be decided is decided as the finding proposes it, in the text, where it can be seen and changed.
    notes.push(sentence(`${read.failure.message}: the draft decides it in a statement of its own; check it.`));
    read = await readWith(loader, runPath, `${head}\n${read.failure.write}\n`);
  }
  if (!read.ok) {
    const write = 'write' in read.failure && read.failure.write !== null ? ` Write:\n${read.failure.write}` : '';
    return failed({ message: `${read.failure.message}.${write}` });
  }
  const raw = read.value;
  const clauses: string[] = [];
  const rate = statedRate(raw);
  if (rate !== null) {
    clauses.push(`  rate ${rate.text}  # ${rate.why}`);
    notes.push(
      `The file has no time column; the draft takes ${rate.text} (${rate.why}). Check it: heats and rates depend on it.`,
    );
  }
  const direction = statedDirection(raw);
  if (direction !== null) {
    clauses.push(`  endothermic ${direction.way}  # ${direction.why}`);
    if (direction.assumed)
      notes.push(
        `The file does not say which way endothermic effects point; the draft assumes ${direction.way}. Check it before any heat is used.`,
      );
  }
  const start = [head, ...clauses, readingStatement(raw.interpretation)];
  const reading = start.filter((s) => s !== '').join('\n');
  const program = resolveProgram(parse(`${reading}\n`), null);
  const prepared = prepareRun(program, raw, [], [], new BoundedMemo(10), new Counters()).run;
  const proposals = options.method === undefined ? proposeEvaluations(prepared) : [];
  const body = options.method === undefined ? proposals.map(proposalText) : [`method ${writeText(options.method)}`];
  const text = [
    `# Drafted from ${file}: windows proposed from the curves, to be checked and changed.`,
    ...segmentComments(prepared.segments),
    '# To fill in under run: sample, mass, crucible, atmosphere, contains, hazard, measured.',
    reading,
    '',
    ...body,
    '',
  ].join('\n');
  notes.push(...cautions);
  return success({ text: format(text), notes });
}

async function readWith(loader: Loader, path: string, gloss: string): Promise<Read> {
  const program = resolveProgram(parse(gloss), null);
  return loader.read(path, choicesFor(program, null), never);
}

/** What is printed with every draft: nothing is known yet of the specimen. */
const cautions = [
  'Nothing is stated about the specimen, so neither its hazards nor its compatibility with crucible and gas were assessed.',
  'Before a run: treat an unknown specimen as energetic and its gases as toxic, start with a milligram or less, open or vented, with extraction running; local codes and licensed practice come first.',
];

function readingStatement(reading: Interpretation): string {
  const lines: string[] = [];
  const columns = reading.columns.filter((c) => c.signal !== null);
  lines.push('columns');
  for (const c of columns) {
    const unit = unitWord(c.unitText);
    lines.push(`  ${c.signal} column ${c.number}${unit === null ? '' : ` in ${unit.written}`}`);
  }
  lines.push('reading');
  if (reading.delimiter !== null) lines.push(`  delimiter ${writeText(reading.delimiter)}`);
  lines.push(`  decimal ${writeText(reading.decimal)}`);
  if (reading.skip > 0) lines.push(`  skip ${reading.skip} lines`);
  lines.push(`  header ${reading.header} lines`);
  if (reading.footer > 0) lines.push(`  footer ${reading.footer} lines`);
  if (reading.encoding !== 'utf-8') lines.push(`  encoding ${reading.encoding}`);
  if (reading.block !== null) lines.push(`  block ${reading.block}`);
  return lines.join('\n');
}

function segmentComments(segments: readonly Segment[]): string[] {
  return segments.map((s) => {
    const span = `${numberText(s.from, 1)} to ${numberText(s.to, 1)} °C`;
    const minutes = `${numberText(s.start / 60, 1)} to ${numberText(s.end / 60, 1)} min`;
    return s.rate === null
      ? `# ${s.name}: ${numberText((s.from + s.to) / 2, 1)} °C, ${minutes}`
      : `# ${s.name}: ${span}, ${numberText(Math.abs(s.rate), 2)} K/min, ${minutes}`;
  });
}

/** Where a file has no time: the rate its header or name gives, else one to be corrected. */
function statedRate(raw: RawRun): { readonly text: string; readonly why: string } | null {
  if (raw.columns.some((c) => c.signal === 'time')) return null;
  const places: [string, string][] = [
    ...raw.interpretation.columns.map((c): [string, string] => [c.header, 'as the header says']),
    [raw.path.split('/').pop() ?? '', 'as the file name says'],
  ];
  for (const [text, why] of places) {
    const match = /(\d+(?:[.-]\d+)?) ?K(?:\/?min)?(?![A-Za-z])/.exec(text);
    if (match !== null) return { text: `${match[1].replace('-', '.')} K/min`, why };
  }
  return { text: '10 K/min', why: 'assumed: the file has no time; write the rate of the programme' };
}

/** Which way endothermic effects point: as a header says, else assumed in plain sight. */
function statedDirection(
  raw: RawRun,
): { readonly way: 'up' | 'down'; readonly why: string; readonly assumed: boolean } | null {
  const heat = raw.columns.find((c) => c.signal === 'heatflow');
  if (heat === undefined) return null;
  const said = /\b(endo|exo)(?:therm\w*)?[ _-]*(up|down)\b/i.exec(heat.header.replace(/_/g, ' '));
  if (said !== null) {
    const up = (said[1].toLowerCase() === 'endo') === (said[2].toLowerCase() === 'up');
    return { way: up ? 'up' : 'down', why: 'as the header says', assumed: false };
  }
  return { way: 'up', why: 'assumed: the file does not say; confirm or turn round', assumed: true };
}

/** A proposal as a statement, with what it is behind it. */
export function proposalText(proposal: Proposal): string {
  const segment = ` in ${proposal.segment}`;
  const comment = `  # ${proposal.comment}`;
  if (proposal.kind === 'residue') return `residue ${proposal.name} at end of ${proposal.segment}${comment}`;
  const head = `${proposal.kind} ${proposal.name} ${proposal.from}..${proposal.to} ${proposal.unit}${segment}${comment}`;
  return [head, ...proposal.clauses.map((c) => `  ${c}`)].join('\n');
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

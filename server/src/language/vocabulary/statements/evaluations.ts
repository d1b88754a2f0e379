import { enclosesClause, perClause, smoothClause, spanClause } from '../clauses';
import type { OwnRecord, ParameterRecord } from '../record';
import { signalWords } from '../signals';

/** Choices as the model has them; the parser and the pages read them here. */
export const stepDefinitions = ['levels', 'tangents'] as const;
export const baselineKinds = ['linear', 'tangent left', 'tangent right', 'sigmoidal'] as const;
export const effectDirections = ['endothermic', 'exothermic'] as const;
export const glassDefinitions = ['half height', 'equal areas', 'inflection'] as const;

const name: ParameterRecord = { name: 'NAME', meaning: 'what its results are called in expressions' };
const place: ParameterRecord = {
  name: 'PLACE',
  meaning:
    'a window `640..800 °C` or `around 930 °C within 100 K`, then `in heating 2` where the segment is not the first heating that holds it; or a whole segment `in hold 1`',
  measures: ['temperature', 'time'],
};
const parts: ParameterRecord = {
  name: 'A + B',
  meaning:
    'the parts of a sum, written `= A + B` before the place: one effect over both; each part alone is then *sum only*',
};
const evaluated = signalWords((signal) => signal.evaluated);

export const stepRecord: OwnRecord = {
  keyword: 'step',
  kind: 'step',
  form: 'step NAME [= A + B] PLACE',
  parameters: [name, parts, place],
  prose: 'A loss or gain of mass between two levels of the mass curve.',
  roles: ['run', 'method'],
  repeatable: true,
  overridable: true,
  clauses: [
    {
      word: 'by',
      form: 'by levels|tangents',
      argument: { form: 'choice', of: stepDefinitions },
      prose:
        'Levels: means at the ends of the window. Tangents: lines fitted there and read at the midpoint of the step.',
      default: 'levels',
      example: 'by tangents',
      repeatable: false,
    },
    spanClause('10 K'),
    smoothClause,
    perClause,
    enclosesClause,
  ],
  example: `step First 640..800 °C
  by tangents
  span 15 K`,
};

export const peakRecord: OwnRecord = {
  keyword: 'peak',
  kind: 'peak',
  form: 'peak NAME [= A + B] PLACE',
  parameters: [name, parts, place],
  prose: 'A peak over a baseline, as a rule of the heat flow.',
  roles: ['run', 'method'],
  repeatable: true,
  overridable: true,
  clauses: [
    {
      word: 'of',
      form: 'of SIGNAL',
      argument: { form: 'signal', of: evaluated },
      prose: 'The signal evaluated. Only a heat flow gives an enthalpy; a heat flow in µV gives areas in µV·s.',
      default: 'heatflow',
      example: 'of ion(18)',
      repeatable: false,
    },
    {
      word: 'baseline',
      form: 'baseline linear|tangent left|tangent right|sigmoidal',
      argument: { form: 'choice', of: baselineKinds },
      prose:
        'Linear joins the ends of the window; a tangent continues the stretch on one side; sigmoidal blends the lines of both sides by the fraction of area passed.',
      default: 'linear',
      example: 'baseline sigmoidal',
      repeatable: false,
    },
    {
      word: 'expect',
      form: 'expect endothermic|exothermic',
      argument: { form: 'choice', of: effectDirections },
      prose: 'The sign the effect must have; another sign is a finding.',
      default: null,
      example: 'expect endothermic',
      repeatable: false,
    },
    spanClause('10 K'),
    smoothClause,
    perClause,
    enclosesClause,
  ],
  example: `peak FirstHeat 640..800 °C
  baseline sigmoidal
  expect   endothermic`,
};

export const glassRecord: OwnRecord = {
  keyword: 'glass',
  kind: 'glass',
  form: 'glass NAME PLACE',
  parameters: [name, place],
  prose: 'A glass transition: a step of the heat flow between two lines.',
  roles: ['run', 'method'],
  repeatable: true,
  overridable: true,
  clauses: [
    {
      word: 'by',
      form: 'by half height|equal areas|inflection',
      argument: { form: 'choice', of: glassDefinitions },
      prose: 'Which definition `midpoint` follows. They differ by kelvins where the specimen was annealed.',
      default: 'half height',
      example: 'by equal areas',
      repeatable: false,
    },
    spanClause('15 K'),
    smoothClause,
  ],
  example: 'glass Tg 60..95 °C in heating 2',
};

export const onsetRecord: OwnRecord = {
  keyword: 'onset',
  kind: 'onset',
  form: 'onset NAME PLACE',
  parameters: [name, place],
  prose: 'The extrapolated onset of a change of any signal.',
  roles: ['run', 'method'],
  repeatable: true,
  overridable: true,
  clauses: [
    {
      word: 'of',
      form: 'of SIGNAL',
      argument: { form: 'signal', of: evaluated },
      prose: 'The signal evaluated. It must be named: onsets of mass and of heat flow differ.',
      default: null,
      example: 'of mass',
      repeatable: false,
    },
    spanClause('10 K'),
    smoothClause,
  ],
  example: `onset Oxidation 180..240 °C
  of heatflow`,
};

export const crossingRecord: OwnRecord = {
  keyword: 'crossing',
  kind: 'crossing',
  form: 'crossing NAME SIGNAL = Q | N % of maximum|minimum [PLACE]',
  parameters: [
    name,
    { name: 'SIGNAL', meaning: 'the signal followed' },
    { name: 'Q', meaning: 'the level that is passed, or a share of the largest or smallest value' },
    { ...place, meaning: `${place.meaning}; without it the first heating` },
  ],
  prose: 'Where a signal passes a level, such as the temperature of 5 % loss.',
  roles: ['run', 'method'],
  repeatable: true,
  overridable: true,
  clauses: [
    ...(['rising', 'falling', 'either'] as const).map((word) => ({
      word,
      form: word,
      argument: { form: 'nothing' as const },
      prose: word === 'either' ? 'Passages in both directions count.' : `Only passages with the signal ${word} count.`,
      default: word === 'either' ? 'this' : null,
      example: word,
      repeatable: false,
      choice: 'way',
    })),
    ...(['first', 'last'] as const).map((word) => ({
      word,
      form: word,
      argument: { form: 'nothing' as const },
      prose: `The ${word} passage counts.`,
      default: word === 'first' ? 'this' : null,
      example: word,
      repeatable: false,
      choice: 'which',
    })),
    perClause,
  ],
  example: `crossing T95 mass = 95 %
  falling`,
};

export const residueRecord: OwnRecord = {
  keyword: 'residue',
  kind: 'residue',
  form: 'residue NAME at Q [in SEGMENT] | end of SEGMENT',
  parameters: [
    name,
    { name: 'Q', meaning: 'the temperature or time at which the mass is read', measures: ['temperature', 'time'] },
    { name: 'SEGMENT', meaning: '`heating 1`, `cooling 1`, `hold 1`' },
  ],
  prose: 'The mass that remains at a place.',
  roles: ['run', 'method'],
  repeatable: true,
  overridable: true,
  clauses: [
    {
      word: 'over',
      form: 'over Q',
      argument: { form: 'amount', measures: ['difference'], inHold: ['time'] },
      prose: 'The stretch over which the mass is averaged.',
      default: '2 K; in a hold 30 s',
      example: 'over 4 K',
      repeatable: false,
    },
    perClause,
  ],
  example: `residue Ash at 850 °C in heating 2
  over 4 K`,
};

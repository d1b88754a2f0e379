import type { OwnRecord } from '../record';

export const methodTitleRecord: OwnRecord = {
  keyword: 'method',
  kind: 'method',
  form: 'method "TITLE"',
  parameters: [{ name: 'TITLE', meaning: 'what reports call the method' }],
  prose: 'The first line of a method gloss: evaluations shared by many runs, without data.',
  roles: ['method'],
  repeatable: false,
  clauses: [],
  example: 'method "Carbonates in limestone under carbon dioxide"',
};

export const useMethodRecord: OwnRecord = {
  keyword: 'method',
  kind: 'use method',
  form: 'method "FILE"',
  parameters: [{ name: 'FILE', meaning: 'the method gloss, relative to this gloss' }],
  prose: 'Takes in the statements of one method gloss. `override` changes single ones, with a reason.',
  roles: ['run'],
  repeatable: false,
  clauses: [],
  example: 'method "limestone.gloss"',
};

export const givenRecord: OwnRecord = {
  keyword: 'given',
  kind: 'given',
  form: 'given NAME in UNIT',
  parameters: [
    { name: 'NAME', meaning: 'the value that the run must define with `let`' },
    { name: 'UNIT', meaning: 'the unit it is expected to fit; `1` for a plain number' },
  ],
  prose: 'A value the method needs and only the run knows. Each run writes `let NAME = …`.',
  roles: ['run', 'method'],
  repeatable: true,
  clauses: [],
  example: 'given filler in %',
};

export const programmeRecord: OwnRecord = {
  keyword: 'programme',
  kind: 'programme',
  form: 'programme',
  parameters: [],
  prose: 'The temperature programme that was meant, in order. It is compared with the data and changes no number.',
  roles: ['run', 'method'],
  repeatable: false,
  clauses: [
    {
      word: 'heat',
      form: 'heat [T] to T at RATE',
      argument: { form: 'ramp' },
      prose: 'A heating, from where the last part ended or from the temperature named.',
      default: null,
      example: 'heat 30 °C to 1000 °C at 10 K/min',
      repeatable: true,
    },
    {
      word: 'cool',
      form: 'cool [T] to T at RATE',
      argument: { form: 'ramp' },
      prose: 'A cooling; its rate is written without a sign.',
      default: null,
      example: 'cool to 30 °C at 20 K/min',
      repeatable: true,
    },
    {
      word: 'hold',
      form: 'hold TIME',
      argument: { form: 'hold' },
      prose: 'A stretch at constant temperature.',
      default: null,
      example: 'hold 20 min',
      repeatable: true,
    },
  ],
  example: `programme
  heat 30 °C to 1000 °C at 10 K/min
  hold 20 min
  cool to 30 °C at 20 K/min`,
};

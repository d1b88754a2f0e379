import type { Basis } from '../model';

export interface BasisRecord {
  readonly of: Basis['of'];
  /** The words behind `per`, before a name where one is due. */
  readonly words: string;
  /** Behind these words a statement of this kind is named. */
  readonly names: 'step' | 'residue' | null;
  readonly prose: string;
  readonly example: string;
}

export const bases: readonly BasisRecord[] = [
  {
    of: 'initial mass',
    words: 'initial mass',
    names: null,
    prose: 'The mass weighed in. Without `mass` under `run` it is the first reading, and results say so.',
    example: 'per initial mass',
  },
  {
    of: 'dried mass',
    words: 'dried mass after',
    names: 'step',
    prose: 'The mass that remains after the step named: results on the dried specimen.',
    example: 'per dried mass after Moisture',
  },
  {
    of: 'mass at start',
    words: 'mass at start',
    names: null,
    prose: 'The mass at the start of the effect itself.',
    example: 'per mass at start',
  },
  {
    of: 'mass lost',
    words: 'mass lost',
    names: null,
    prose: 'The mass lost in the window: heat per gram of what left.',
    example: 'per mass lost',
  },
  {
    of: 'ignited mass',
    words: 'ignited mass at',
    names: 'residue',
    prose: 'The mass of the residue named: results on the ignited specimen.',
    example: 'per ignited mass at Oxides',
  },
];

/**
 * The basis as results show it. `owner`: the statement it belongs to; masses of its own window make a basis of its own,
 * so that two steps `per mass at start` are not taken for one basis.
 */
export function basisKey(basis: Basis, owner: string): string {
  switch (basis.of) {
    case 'initial mass':
      return 'initial mass';
    case 'dried mass':
      return `dried, ${basis.step}`;
    case 'ignited mass':
      return `ignited, ${basis.residue}`;
    case 'mass at start':
      return `mass at start, ${owner}`;
    case 'mass lost':
      return `mass lost, ${owner}`;
  }
}

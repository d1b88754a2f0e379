import type { CheckContext, JoinedFile, UsedFile } from '../../../server/src/evaluation/checks/context';
import { checkFiles } from '../../../server/src/evaluation/checks/files';
import { fires, silent } from './checked';

function files(used: readonly UsedFile[], joins: readonly JoinedFile[] = []) {
  const context = { files: used, joins, limit: () => 2 } as unknown as CheckContext;
  return checkFiles(context);
}

const file = (statement: string, display: string, identity: string): UsedFile => ({
  statement,
  token: 'file',
  display,
  identity,
});

describe('checks of the files in use', () => {
  it('name two files with one content', () => {
    const found = files([file('run', 'a.csv', 'c0ffee1234567890'), file('blank "z.csv"', 'z.csv', 'c0ffee1234567890')]);
    fires(found, 'content-twice', /z\.csv holds the same data as a\.csv \(SHA-256 c0ffee123456…\)/);
  });

  it('say nothing of different contents, or of one file used twice', () => {
    silent(files([file('run', 'a.csv', 'c0ffee'), file('blank "z.csv"', 'z.csv', 'decaf')]), 'content-twice');
    silent(files([file('run', 'a.csv', 'c0ffee'), file('join "a.csv"', 'a.csv', 'c0ffee')]), 'content-twice');
  });

  it('name a joined file that is 2.4 K off at equal times, and not one at 1.6 K', () => {
    const join = (temperatureDifference: number | null) =>
      files([], [{ id: 'join "b.txt"', display: 'b.txt', temperatureDifference }]);
    fires(join(2.4), 'join-mismatch', /b\.txt differs from that of the run by up to 2\.4 K \(limit 2 K\)/);
    silent(join(1.6), 'join-mismatch');
    silent(join(null), 'join-mismatch');
  });
});

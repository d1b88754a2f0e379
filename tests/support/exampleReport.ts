import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { say } from '../cli/fakeTerminal';
import { TemporaryRepository } from '../revisions/support/repository';

const files = ['vq217-1.gloss', 'vq217-1.csv', 'limestone.gloss'];
const blanks = ['blank-co2-1', 'blank-co2-2'].flatMap((name) => [`${name}.gloss`, `${name}.csv`]);

/** The limestone example (invented data) in a repository of its own that gives the same commit everywhere. */
export function limestoneRepository(): TemporaryRepository {
  const made = TemporaryRepository.make();
  const read = (name: string): [string, string] => [name, readFileSync(join('examples', 'limestone', name), 'utf8')];
  made.commit('limestone', Object.fromEntries([...files, ...blanks].map(read)));
  return made;
}

/** Its report, as issued on an invented day. */
export async function limestoneReport(repository: TemporaryRepository, format: 'html' | 'markdown'): Promise<string> {
  const words = ['report', 'vq217-1.gloss', '--format', format, '--date', '2026-10-05'];
  const { code, out, error } = await say(words, { cwd: repository.path });
  if (code !== 0) throw new Error(error);
  return out;
}

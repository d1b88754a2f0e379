import { report } from './harness';
import { reading } from './reading';

void report({ 'Reading a run file': reading }).then((over) => {
  process.exitCode = over > 0 ? 1 : 0;
});

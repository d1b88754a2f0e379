import { run } from './run';
import { processTerminal } from './terminal';

// Ctrl-C is left to the system, which ends the process at once, also amid a long calculation: files are written whole or
// not at all, so nothing is left half done.
void run(process.argv.slice(2), processTerminal()).then((code) => {
  process.exitCode = code;
});

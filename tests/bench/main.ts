import { activation } from './activation';
import { bundles } from './bundles';
import { report } from './harness';
import { movedWindow } from './movedWindow';
import { startToEnd } from './program';
import { overStdio } from './overStdio';
import { reading } from './reading';
import { redraw } from './redraw';
import { revisions } from './revisions';

const benches = {
  'Reading a run file': reading,
  'Results from the start of the process': startToEnd,
  'A moved window': movedWindow,
  'The server over its standard streams': overStdio,
  'Waking up in the editor': activation,
  'Comparing with other revisions': revisions,
  'Drawing the curves': redraw,
  'What is delivered': bundles,
};

void report(benches).then((over) => {
  process.exitCode = over > 0 ? 1 : 0;
});

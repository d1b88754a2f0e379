import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { NodeOutside } from './nodeOutside';
import { serve } from './server';

/** The server over the channel its client opened (`--node-ipc`), else over standard input and output. */
function main(): void {
  const connection = process.argv.includes('--node-ipc')
    ? createConnection(ProposedFeatures.all)
    : createConnection(ProposedFeatures.all, process.stdin, process.stdout);
  serve(connection, new NodeOutside());
  connection.listen();
}

main();

import { spawn } from 'node:child_process';
import { copyExtension } from './extensionFolder';
import { serve } from './serve';
import { servedEditor } from './servedEditor';
import { workspace } from './workspaceFolder';

// npm run editor: the built extension in a served editor, on a copy of the examples; until it is interrupted.
async function main(): Promise<void> {
  const editor = await servedEditor((line) => console.log(line));
  // The server keeps this process alive; it ends with it.
  const serving = await serve(editor, { install: (folder) => copyExtension(folder, 'main') });
  const work = workspace('');
  const address = serving.address(work.folder);
  console.log(`The examples in an editor: ${address}\nCtrl+C ends it; the copy of the examples goes with it.`);
  openInBrowser(address);
}

/** Where there is a screen, its browser shows the page; elsewhere the address is enough. */
function openInBrowser(address: string): void {
  const screen = process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY ?? '';
  if (screen === '') return;
  const browser = spawn('xdg-open', [address], { stdio: 'ignore', detached: true });
  browser.on('error', () => console.log('No browser could be opened: open the address in one.'));
  browser.unref();
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});

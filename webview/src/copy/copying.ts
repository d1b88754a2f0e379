import type { ExportTheme } from '../../../server/src/protocol/messages';
import {
  ledgerCsv,
  ledgerHtml,
  ledgerMarkdown,
  ledgerTsv,
  type CopiedRows,
} from '../../../server/src/presentation/plot/ledgerTables';
import type { Look } from '../look';
import type { MenuEntry } from '../parts/menu';
import type { Calls } from '../state/calls';
import { ledgerOrder } from '../state/ledgerOrder';
import { say, type Word } from '../words';
import { blobBase64, textBase64, toClipboard } from './clipboard';
import { figure } from './figure';
import { rasterized } from './raster';

export interface Copying {
  entries(): readonly MenuEntry[];
  /** The editor's setting for the colours of a picture; a choice in the menu holds until it changes. */
  prefer(theme: ExportTheme): void;
}

export interface CopyingOutside {
  readonly calls: Calls;
  look(): Look | null;
  tell(text: string, kind?: 'done' | 'alert'): void;
}

/** A picture has twice the pixels of its size, so that it stays sharp in a document. */
const pixelsPerPixel = 2;

/** Copies and saves picture, drawing and table; each says in words that it is done, or why not. */
export function copying({ calls, look, tell }: CopyingOutside): Copying {
  let theme: ExportTheme = 'light';
  let transparent = false;
  const told =
    (done: string) =>
    (reason: string): void => {
      if (reason === '') tell(done);
      else tell(say('failed', reason), 'alert');
    };
  const drawing = async <T>(
    work: (svg: string, width: number, height: number, name: string) => Promise<T>,
  ): Promise<T | string> => {
    const now = look();
    if (now === null || now.frame.lanes.length === 0) return say('nothingToCopy');
    const made = figure(now, theme, transparent);
    try {
      return await work(made.svg, made.width, made.height, fileName(now));
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
  };
  const text = async (content: string): Promise<string> => {
    const items = { 'text/plain': new Blob([content], { type: 'text/plain' }) };
    // The host's clipboard takes text where the page's does not.
    return (await toClipboard(items, 'none')) === '' ? '' : saved(await calls.ask({ type: 'copyText', text: content }));
  };
  const save = async (name: string, mime: string, base64: string): Promise<string> =>
    saved(await calls.ask({ type: 'save', name, mime, base64 }));
  const table = (): CopiedRows | null => {
    const now = look();
    if (now === null || now.state.ledger.rows.length === 0) return null;
    const { shown } = ledgerOrder(now.state.ledger.rows, now.kept.sort, now.kept.allRows);
    return { columns: now.state.ledger.columns, rows: shown.map((s) => s.row) };
  };
  const rows = async (work: (rows: CopiedRows) => Promise<string>): Promise<void> => {
    const now = table();
    if (now === null) tell(say('failed', say('nothingToCopy')), 'alert');
    else told(say('tableCopied', now.rows.length))(await work(now));
  };

  const pictureCopy = (): Promise<string> =>
    drawing((svg, width, height) =>
      toClipboard({ 'image/png': rasterized(svg, width, height, pixelsPerPixel) }, say('noClipboard')),
    );
  const pictureSave = (): Promise<string> =>
    drawing(async (svg, width, height, name) =>
      save(`${name}.png`, 'image/png', await blobBase64(await rasterized(svg, width, height, pixelsPerPixel))),
    );
  const cells = (): Promise<void> =>
    rows(async (now) => {
      const both = {
        'text/plain': new Blob([ledgerTsv(now)], { type: 'text/plain' }),
        'text/html': new Blob([ledgerHtml(now)], { type: 'text/html' }),
      };
      return (await toClipboard(both, 'none')) === '' ? '' : text(ledgerTsv(now));
    });
  const entry = (word: Word, run: () => Promise<unknown>): MenuEntry => ({
    kind: 'do',
    text: say(word),
    run: () => void run(),
  });
  const themes: readonly (readonly [ExportTheme, Word])[] = [
    ['light', 'themeLight'],
    ['dark', 'themeDark'],
    ['print', 'themePrint'],
    ['current', 'themeCurrent'],
  ];
  return {
    prefer(next) {
      theme = next;
    },
    entries: () => [
      entry('pictureCopy', async () => told(say('pictureCopied'))(await pictureCopy())),
      entry('pictureSave', async () => told(say('saved', 'PNG'))(await pictureSave())),
      entry('vectorCopy', async () => told(say('vectorCopied'))(await drawing((svg) => text(svg)))),
      entry('vectorSave', async () =>
        told(say('saved', 'SVG'))(
          await drawing((svg, _w, _h, name) => save(`${name}.svg`, 'image/svg+xml', textBase64(svg))),
        ),
      ),
      { kind: 'title', text: say('themeTitle') },
      ...themes.map(([value, word]): MenuEntry => ({
        kind: 'one',
        text: say(word),
        on: theme === value,
        run: () => (theme = value),
      })),
      { kind: 'check', text: say('transparent'), on: transparent, run: () => (transparent = !transparent) },
      { kind: 'title', text: say('results') },
      entry('cellsCopy', cells),
      entry('csvCopy', () => rows((now) => text(ledgerCsv(now)))),
      entry('csvSave', async () => {
        const now = table();
        const drawn = look();
        const name = drawn === null ? 'curves' : fileName(drawn);
        told(say('saved', 'CSV'))(
          now === null ? say('nothingToCopy') : await save(`${name}.csv`, 'text/csv', textBase64(ledgerCsv(now))),
        );
      }),
      entry('markdownCopy', () => rows((now) => text(ledgerMarkdown(now)))),
    ],
  };
}

function saved(message: Awaited<ReturnType<Calls['ask']>>): string {
  if (message.type !== 'saved') return say('edgeOffline');
  return message.ok ? '' : message.reason;
}

/** The first word of the title, as far as a file can be named so. */
function fileName({ state }: Look): string {
  const name = state.title
    .split(' · ')[0]
    .replace(/[^\p{L}\p{N}._-]+/gu, '-')
    .replace(/^[-.]+|-+$/g, '');
  return name === '' ? 'curves' : name.slice(0, 60);
}

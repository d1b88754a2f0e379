import type { Span } from '../../base/span';
import { writeText } from '../../language/writing/writeText';
import { folderOf, inFolder } from '../files/paths';
import type { GlossText } from '../workspace';
import type { CompletionContext } from './context';
import type { Offer } from './offer';

/** What a file is named for. */
export type FileUse = 'data' | 'blank' | 'method';

/** More texts than a folder of runs holds are not opened for one list. */
const mostRead = 200;
const dataEndings = /\.(?:csv|txt|tsv|dat|asc|prn)$/i;
const noData = /\.(?:gloss|json|md|png|jpe?g|svg|pdf|zip|gz|html?|js|ts|exe|docx?|xlsx?)$/i;

/** The files a statement may name, beside the gloss and in folders around it, relative to the gloss. */
export async function fileOffers(context: CompletionContext, use: FileUse): Promise<Offer[]> {
  const { document, cursor } = context;
  const { host } = document.project;
  const typed = cursor.quoted === null ? '' : document.tree.text.slice(cursor.quoted.start, cursor.offset);
  const prefix = typed.slice(0, typed.lastIndexOf('/') + 1);
  const folder = prefix === '' ? folderOf(document.path) : host.resolve(document.path, prefix);
  const names = (await host.list(folder)).filter(
    (name) => !name.startsWith('.') && inFolder(folder, name) !== document.path,
  );
  const folders = await foldersAmong(context, folder, names);
  const files = names.filter((name) => !folders.has(name));
  const offers = use === 'data' ? dataFiles(files) : await glosses(context, folder, files, use);
  const replace = cursor.quoted ?? cursor.typed;
  const closed = cursor.quoted !== null && document.tree.text[cursor.quoted.end] === '"';
  const write = writer(cursor.quoted, replace, prefix, closed);
  return [
    ...offers.map((offer) => ({ ...offer, ...write(offer.label) })),
    ...[...folders].map((name): Offer => ({ label: `${name}/`, kind: 'folder', ...write(`${name}/`) })),
    // A way up is offered where the way is still empty.
    ...(/^(?:\.\.\/)*$/.test(prefix) ? [{ label: '../', kind: 'folder', ...write('../') } satisfies Offer] : []),
  ];
}

function writer(
  quoted: Span | null,
  replace: Span,
  prefix: string,
  closed: boolean,
): (name: string) => Pick<Offer, 'insert' | 'filter' | 'replace'> {
  return (name) => {
    const text = writeText(`${prefix}${name}`);
    if (quoted === null) return { insert: text, filter: name, replace };
    const mark = closed || name.endsWith('/') ? '' : '"';
    return { insert: `${text.slice(1, -1)}${mark}`, filter: `${prefix}${name}`, replace };
  };
}

/** Data files before those that only might be. */
function dataFiles(names: readonly string[]): Offer[] {
  const likely = names.filter((name) => dataEndings.test(name));
  const other = names.filter((name) => !dataEndings.test(name) && !noData.test(name));
  return [...likely, ...other].map((name) => ({ label: name, kind: 'file' }));
}

async function glosses(
  context: CompletionContext,
  folder: string,
  names: readonly string[],
  use: FileUse,
): Promise<Offer[]> {
  const named = names.filter((name) => name.endsWith('.gloss')).slice(0, mostRead);
  const texts = await Promise.all(
    named.map(async (name) => ({ name, text: await context.workspace.glossAt(inFolder(folder, name)) })),
  );
  const offers = texts.flatMap(({ name, text }): Offer[] => {
    const detail = text === null ? null : use === 'method' ? methodTitle(text) : emptyCrucible(text);
    return detail === null ? [] : [{ label: name, kind: 'file', detail }];
  });
  return use === 'blank' ? [...offers, ...dataFiles(names)] : offers;
}

function methodTitle({ tree }: GlossText): string | null {
  for (const { statement } of tree.statements) if (statement?.kind === 'method') return statement.title;
  return tree.role === 'method' ? '' : null;
}

function emptyCrucible({ tree }: GlossText): string | null {
  for (const { statement } of tree.statements) {
    if (statement?.kind === 'run') return statement.sampleIsNone ? 'empty crucible' : null;
  }
  return null;
}

/** A name without an ending whose folder lists something is a folder. */
async function foldersAmong(
  context: CompletionContext,
  folder: string,
  names: readonly string[],
): Promise<Set<string>> {
  const { host } = context.document.project;
  const asked = names.filter((name) => !name.includes('.')).slice(0, mostRead);
  const lists = await Promise.all(asked.map((name) => host.list(inFolder(folder, name))));
  return new Set(asked.filter((_, i) => lists[i]!.length > 0));
}

/** The data files the gloss names already, as `columns of` and `reading of` name them. */
export function namedFiles(context: CompletionContext): Offer[] {
  const { program } = context.document;
  const own = [...program.joins, ...program.blanks].map((e) => e.statement.file);
  const files = [...new Set(own)].filter((file) => !file.endsWith('.gloss'));
  const { quoted, typed } = context.cursor;
  return files.map((file) => {
    const text = writeText(file);
    return { label: file, kind: 'file', insert: quoted === null ? text : text.slice(1, -1), replace: quoted ?? typed };
  });
}

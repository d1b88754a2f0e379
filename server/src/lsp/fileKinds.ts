/** Patterns of the files that results rest on, for what a client watches and tells. */
export const glossFiles = '**/*.gloss';
/** What was approved. */
export const records = '**/*.gloss.approved.json';
export const dataFiles = '**/*.{csv,txt,tsv,dat,asc}';

/** Patterns of the files that results rest on, for what a client watches and tells. */
export const glossFiles = '**/*.gloss';
export const dataFiles = '**/*.{csv,txt,tsv,dat,asc}';

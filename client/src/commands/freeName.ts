/** The first of `b.gloss`, `b-2.gloss`, `b-3.gloss` … that is not taken. */
export async function freeName(path: string, taken: (path: string) => Promise<boolean>): Promise<string> {
  const [, stem, ending] = /^(.*?)(\.[^./]*)?$/.exec(path)!;
  for (let number = 1; ; number++) {
    const name = number === 1 ? path : `${stem}-${number}${ending ?? ''}`;
    if (!(await taken(name))) return name;
  }
}

import { HtmlValidate } from 'html-validate';

const validator = new HtmlValidate({ extends: ['html-validate:recommended', 'html-validate:document'] });

/** What html-validate says against a page; empty: nothing. */
export async function htmlProblems(page: string): Promise<string[]> {
  const { results } = await validator.validateString(page);
  return results.flatMap((r) => r.messages.map((m) => `${m.line}: ${m.ruleId}: ${m.message}`));
}

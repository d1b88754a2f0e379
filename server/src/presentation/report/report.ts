import { approvalSection } from './approval';
import { conditions } from './conditions';
import { cautionsSection, deviationsSection, findingsSection, notesSection } from './decisions';
import { definitionSections } from './definitions';
import { filesSection } from './files';
import { identification } from './identification';
import type { Fact, ReportInput, ReportOptions, ReportSection } from './model';
import { requirementsSection, resultsSection } from './resultsSection';

/** Everything one report says, in order. What a standard asks for and nothing states is listed by name. */
export function reportSections(input: ReportInput, options: ReportOptions): ReportSection[] {
  const { snapshot } = input;
  const stated = [identification(input, options), conditions(input)];
  return [
    ...stated,
    approvalSection(input),
    resultsSection(input),
    requirementsSection(snapshot),
    findingsSection(snapshot),
    deviationsSection(snapshot),
    ...definitionSections(input),
    ...notesSection(snapshot),
    cautionsSection(snapshot),
    filesSection(snapshot),
    missingSection(stated),
  ];
}

/** Facts that a standard asks for and that are not stated. */
export function missingFacts(sections: readonly ReportSection[]): Fact[] {
  return sections
    .flatMap((s) => s.blocks.flatMap((b) => (b.block === 'facts' ? b.facts : [])))
    .filter((f) => f.asked !== null && f.value === null);
}

function missingSection(sections: readonly ReportSection[]): ReportSection {
  const missing = missingFacts(sections);
  const title = 'What this report does not state';
  if (missing.length === 0) {
    return { title, blocks: [{ block: 'text', text: 'Nothing of what it was checked for is missing.' }] };
  }
  return {
    title,
    blocks: [
      {
        block: 'text',
        text: 'Asked for by the standards named (their lists from memory). What has no clause of its own is stated by a note, such as note "customer: …".',
      },
      { block: 'list', items: missing.map((f) => `not stated: ${f.label} (${f.asked})`) },
    ],
  };
}

/** `vq217-1.gloss`, the heading of one report among several. */
export function reportTitle({ snapshot }: ReportInput): string {
  return snapshot.gloss.display;
}

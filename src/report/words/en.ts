import { faults } from './en/faults.ts';
import { fits } from './en/fits.ts';
import { flags } from './en/flags.ts';
import { members } from './en/members.ts';
import { outsides } from './en/outsides.ts';
import { phrases } from './en/phrases.ts';
import { fileProblems } from './en/problems-files.ts';
import { recordProblems } from './en/problems-records.ts';
import { audit, statuses, usage } from './en/usage.ts';
import { against, whys } from './en/whys.ts';
import type { Language } from './language.ts';

/** English. */
export const en: Language = {
  tag: 'en',
  codes: {
    statuses,
    flags,
    members,
    whys,
    against,
    faults,
    fits,
    usage,
    problems: { ...fileProblems, ...recordProblems },
    audit,
    outsides,
  },
  phrases,
};

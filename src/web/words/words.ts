import { en, type Words } from './en.ts';

/** The words of the page. Another language is another file of the same type, chosen here. */
export const words: Words = en;

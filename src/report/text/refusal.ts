import type { Member, WayOut } from '../../plan/index.ts';
import { section, wrapped } from '../layout.ts';
import { type Scene, sourceWords } from '../scene.ts';
import { say } from '../words/say.ts';
import { wantList } from './wants.ts';

/** Why not: what cannot stand together, each fact with its place; then what can be had instead. */
export function refusalSections(scene: Scene): string[] {
  const { answer, page, language } = scene;
  const { refusal } = answer;
  if (refusal === null) return [];
  const { heading } = language.phrases;
  const { conflicts } = refusal;
  if (conflicts.every((conflict) => conflict.every(({ kind }) => kind === 'notice'))) {
    const notices = conflicts.flatMap((conflict) => conflict.flatMap((member) => memberLines(scene, member)));
    return section(page, heading.notices, notices);
  }
  return [
    ...conflicts.flatMap((conflict, at) =>
      section(
        page,
        conflicts.length === 1 ? heading.conflict : `${heading.conflict} (${at + 1} of ${conflicts.length})`,
        [...conflict.flatMap((member) => memberLines(scene, member)), ...closing(scene, conflict)],
      ),
    ),
    ...section(page, heading.waysOut, [
      ...refusal.instead.flatMap((way, at) => wayLines(scene, way, at + 1)),
      ...wrapped(page, completeness(scene), '  '),
    ]),
  ];
}

function memberLines(scene: Scene, member: Member): string[] {
  const { page, language } = scene;
  const who = language.phrases.speaker[member.kind];
  const first = `  ${page.paint('strong', who.padEnd(13))} `;
  const source = sourceWords(scene, member.source);
  return [
    ...wrapped(page, say(language, 'members', member), first),
    ...(source === '' ? [] : wrapped(page, page.paint('faint', source), ' '.repeat(16))),
  ];
}

function closing({ page, answer }: Scene, conflict: readonly Member[]): string[] {
  if (conflict.length < 2) return [];
  const text = answer.refusal?.smallest
    ? 'Take any one of these away and the rest can stand together. No smaller set says no.'
    : 'Take any one of these away and the rest can stand together.';
  return wrapped(page, text, '  ');
}

function wayLines(scene: Scene, way: WayOut, number: number): string[] {
  const { page, language, answer } = scene;
  const { phrases } = language;
  const currency = scene.catalog.currency;
  const added = addedWants(scene, way.wants);
  return [
    ...wrapped(page, added.length === 0 ? 'without that wish' : added.join(', '), `  ${number}. `),
    ...wrapped(page, `gives up: ${way.drop.map((member) => givenUp(scene, member)).join('; ')}`, '     ', '       '),
    ...wrapped(
      page,
      page.paint('strong', `${way.money} ${currency}, ${phrases.minutes(way.minutes)}, ${phrases.ready(way.days)}`),
      '     ',
    ),
    ...wrapped(page, page.paint('faint', scene.command(questionOf(answer, way))), '     ', '       '),
  ];
}

/** The question that a way out puts: without the bike where that is given up. */
function questionOf({ question }: Scene['answer'], { drop, wants }: WayOut): Scene['answer']['question'] {
  const { onto: _onto, ontoSize: _size, ...withoutBike } = question;
  return { ...(drop.some(({ code }) => code === 'want-onto') ? withoutBike : question), wants };
}

/** What is given up, short: a kept trait by its name, its value and what comes in its place. */
function givenUp({ language }: Scene, member: WayOut['drop'][number]): string {
  const { trait, value, becomes } = member.params;
  if (member.code === 'kept-trait')
    return `${language.phrases.trait(String(trait))}: ${[value, becomes ?? []].flat().join(' -> ')}`;
  return say(language, 'members', member);
}

function addedWants(scene: Scene, wants: WayOut['wants']): string[] {
  const before = new Set(wantList(scene, scene.answer.question.wants));
  return wantList(scene, wants).filter((want) => !before.has(want));
}

function completeness({ answer }: Scene): string {
  const { refusal, status } = answer;
  if (refusal === null) return '';
  if (refusal.instead.length === 0) {
    if (status !== 'not-obtainable') return 'There is no other wish to offer.';
    const unmet = refusal.conflicts.flat().some(({ params }) => Array.isArray(params.unmet) && params.unmet.length > 0);
    return unmet
      ? 'Add a supply that meets what the work asks for to the catalogue: `legwork catalog check` names the specification.'
      : 'Say what you have with --have, or ask the supplier.';
  }
  return refusal.complete
    ? 'Each was solved again, whole. These are all there are.'
    : 'Each was solved again, whole. There may be more.';
}

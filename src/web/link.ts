import type { QuestionInput } from '../plan/index.ts';

/** What the page shows of a question. */
export const VIEWS = ['answer', 'map', 'worksheet', 'pick-list', 'quote'] as const;
export type View = (typeof VIEWS)[number];

/** Where one is on the page: all of it stands in the address, so that a question is a link. */
export interface Place {
  readonly question: QuestionInput;
  readonly view: View;
  /** Which of the ways of a plan; 0 is the recommended one. */
  readonly way: number;
}

type Wants = NonNullable<QuestionInput['wants']>;

/** A place as an address, short where it can be: what has no parameter of its own stands as JSON in `more`. */
export function addressOf({ question, view, way }: Place): string {
  const { chassis, bike, size, travelNow, built, serial, onto, ontoSize, prefer, wants = {}, ...rest } = question;
  const { travel, wheel, keep = [], use = [], renew = [], service = [], ...further } = wants;
  const parameters = new URLSearchParams();
  const say = (name: string, value: string | number | undefined): void => {
    if (value !== undefined) parameters.append(name, String(value));
  };
  say('fork', chassis);
  say('bike', bike);
  say('size', size);
  say('now', travelNow);
  say('built', built);
  say('serial', serial);
  say('travel', travel);
  say('wheel', wheel);
  say('onto', onto);
  say('onto-size', ontoSize);
  for (const slot of keep) say('keep', slot);
  for (const sku of use) say('use', sku);
  for (const slot of renew) say('renew', slot);
  for (const id of service) say('service', id);
  say('prefer', prefer === 'money' ? undefined : prefer);
  const more = filled({ ...rest, wants: filled(further) });
  if (Object.keys(more).length > 0) say('more', JSON.stringify(more));
  if (way > 0) say('way', way + 1);
  if (view !== 'answer') say('view', view);
  const text = parameters.toString();
  return text === '' ? '/' : `/?${text}`;
}

/** A question without what it does not say, so that the same question has one address at the service. */
export const brief = ({ wants = {}, ...rest }: QuestionInput): object => filled({ ...rest, wants: filled(wants) });

/** Without what is not said, or says nothing. */
function filled(values: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    Object.entries(values).filter(
      ([, value]) =>
        value !== undefined && value !== false && !(typeof value === 'object' && value !== null && empty(value)),
    ),
  );
}
const empty = (value: object): boolean => (Array.isArray(value) ? value : Object.keys(value)).length === 0;

/** Reads an address. What it cannot read it leaves out; whether the rest makes sense, the service says. */
export function placeOf(search: string): Place {
  const parameters = new URLSearchParams(search);
  const text = (name: string): string | undefined => parameters.get(name) ?? undefined;
  const number = (name: string): number | undefined => {
    const found = parameters.get(name);
    const value = Number(found);
    return found === null || found.trim() === '' || !Number.isFinite(value) ? undefined : value;
  };
  const { wants: further, ...rest } = moreOf(text('more'));
  const prefer = text('prefer');
  const wants: Wants = {
    ...further,
    ...said({ travel: number('travel'), wheel: number('wheel') }),
    keep: parameters.getAll('keep'),
    use: parameters.getAll('use'),
    renew: parameters.getAll('renew'),
    service: parameters.getAll('service'),
  };
  const question: QuestionInput = {
    ...rest,
    ...said({
      chassis: text('fork'),
      bike: text('bike'),
      size: text('size'),
      travelNow: number('now'),
      built: text('built'),
      serial: text('serial'),
      onto: text('onto'),
      ontoSize: text('onto-size'),
    }),
    ...(prefer === 'time' || prefer === 'wait' ? { prefer } : {}),
    wants,
  };
  const view = VIEWS.find((one) => one === text('view')) ?? 'answer';
  return { question, view, way: Math.max(0, Math.round(number('way') ?? 1) - 1) };
}

/** Without what is undefined. */
const said = (values: Readonly<Record<string, unknown>>) =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));

function moreOf(text: string | undefined): QuestionInput {
  if (text === undefined) return {};
  try {
    const read = JSON.parse(text);
    return typeof read === 'object' && read !== null && !Array.isArray(read) ? read : {};
  } catch {
    return {};
  }
}

/** Whether a question wishes for anything: without a wish there is nothing to plan, and the map is the answer. */
export function wishes({ wants = {}, onto }: QuestionInput): boolean {
  return onto !== undefined || Object.keys(filled(wants)).length > 0;
}

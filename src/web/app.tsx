import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { AnswerDocument, QuestionInput, ReachDocument } from '../plan/index.ts';
import { AnswerView } from './answer.tsx';
import { addressOf, type Place, placeOf, VIEWS, type View, wishes } from './link.ts';
import { partsOf } from './parts.ts';
import { PickList } from './print/pick-list.tsx';
import { Quote } from './print/quote.tsx';
import type { Printed } from './print/sheet.tsx';
import { Worksheet } from './print/worksheet.tsx';
import { ReachMap } from './reach-map.tsx';
import type { CatalogRecord, DocumentRecord, ForkRecord, Known, Listing, PlanDocument } from './records.ts';
import { Sentence } from './sentence.tsx';
import { type Heard, questionPath, useAnswer } from './service.ts';
import { Documents } from './source.tsx';
import { TroubleView } from './trouble.tsx';
import { type Knowledge, useKnown } from './use-known.ts';
import { words } from './words/words.ts';

/** The page: the sentence above, what it comes to below. Where one is stands in the address. */
export function App() {
  const [place, go] = usePlace();
  const { question, view } = place;
  const knowledge = useKnown(question);
  const { known, loading } = knowledge;
  const catalog = useAnswer<CatalogRecord>('/v1/catalog');
  const onAsk = (next: QuestionInput): void => go({ question: next, view: 'answer', way: 0 });
  const named = question.chassis !== undefined || question.bike !== undefined;
  const documents = useAnswer<Listing<DocumentRecord>>('/v1/catalog/documents');
  const opened = useOnce(knowledge.named && isSettled(catalog) && isSettled(documents));
  const titles = useMemo(() => titlesOf(documents), [documents]);
  const shown: View = view === 'answer' && !wishes(question) ? 'map' : view;
  const title = named ? `${titleOf(question, known)} – ${words.views[shown]} – ${words.name}` : words.name;
  useEffect(() => {
    document.title = title;
  }, [title]);
  return (
    <Documents.Provider value={titles}>
      <a class="skip" href="#answer">
        {words.skip}
      </a>
      <header>
        <a class="mark" href="/">
          {words.name}
        </a>
        <span>{opened && catalog.kind === 'here' ? words.catalog(catalog.value.name) : ''}</span>
      </header>
      {opened ? null : <Waiting />}
      <div hidden={!opened}>
        <Sentence question={question} known={known} loading={loading} opened={opened} onAsk={onAsk} />
        {named ? <Views place={place} shown={shown} known={known} /> : null}
        <main id="answer" tabIndex={-1}>
          {named ? (
            <Below
              place={place}
              shown={shown}
              knowledge={knowledge}
              catalog={catalog.kind === 'here' ? catalog.value : null}
              onAsk={onAsk}
            />
          ) : (
            <Start />
          )}
        </main>
        <footer>{words.foot}</footer>
      </div>
    </Documents.Provider>
  );
}

/** True from the first time on: a link shows its sentence when all of it can be named, so that nothing moves that was shown. */
function useOnce(now: boolean): boolean {
  const once = useRef(false);
  once.current ||= now;
  return once.current;
}

/** The place in the address; links within the page, and back and forward, change it without another load. */
function usePlace(): readonly [Place, (next: Place) => void] {
  const [place, setPlace] = useState(() => placeOf(location.search));
  const go = (next: Place): void => {
    history.pushState(null, '', addressOf(next));
    setPlace(next);
  };
  useEffect(() => {
    const read = (): void => setPlace(placeOf(location.search));
    const press = (event: MouseEvent): void => {
      const link = event.target instanceof Element ? event.target.closest('a') : null;
      const plain = event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey;
      if (!link || !plain || link.origin !== location.origin || link.pathname !== '/' || link.hash !== '') return;
      event.preventDefault();
      history.pushState(null, '', link.href);
      read();
    };
    addEventListener('popstate', read);
    document.addEventListener('click', press);
    return () => {
      removeEventListener('popstate', read);
      document.removeEventListener('click', press);
    };
  }, []);
  return [place, go];
}

const isSettled = ({ kind }: Heard<unknown>): boolean => kind === 'here' || kind === 'trouble';

const titlesOf = (heard: Heard<Listing<DocumentRecord>>): ReadonlyMap<string, DocumentRecord> =>
  new Map(heard.kind === 'here' ? heard.value.records.map((one) => [one.id, one] as const) : []);

interface ViewsProps {
  readonly place: Place;
  readonly shown: View;
  readonly known: Known;
}

/** The views of a question. Where there is no plan nothing is to be printed: what would be a link stands there as a word. */
function Views({ place, shown, known }: ViewsProps) {
  const { question } = place;
  const settled = readyToAsk(question, known);
  const answer = useAnswer<AnswerDocument>(settled && shown !== 'map' ? questionPath('plan', settled) : null);
  const planless = answer.kind === 'here' && answer.value.plans.length === 0;
  const views: readonly View[] = wishes(question) ? VIEWS : ['map'];
  return (
    <nav aria-label={words.viewsName}>
      {views.map((view) =>
        planless && SHEETS.has(view) && view !== shown ? (
          <span key={view} class="quiet">
            {words.views[view]}
          </span>
        ) : (
          <a key={view} href={addressOf({ ...place, view })} aria-current={view === shown ? 'page' : undefined}>
            {words.views[view]}
          </a>
        ),
      )}
    </nav>
  );
}

const SHEETS: ReadonlySet<View> = new Set(['worksheet', 'pick-list', 'quote']);

function Start() {
  return (
    <section class="start">
      <h1>{words.start.title}</h1>
      <p>{words.start.text}</p>
    </section>
  );
}

interface BelowProps {
  readonly place: Place;
  readonly shown: View;
  readonly knowledge: Knowledge;
  readonly catalog: CatalogRecord | null;
  readonly onAsk: (next: QuestionInput) => void;
}

function Below({ place, shown, knowledge, catalog, onAsk }: BelowProps) {
  const { question, way } = place;
  const { known, loading, trouble } = knowledge;
  const settled = readyToAsk(question, known);
  const reach = useAnswer<ReachDocument>(settled && shown === 'map' ? questionPath('reach', settled) : null);
  const answer = useAnswer<AnswerDocument>(settled && shown !== 'map' ? questionPath('plan', settled) : null);
  // nothing can be asked before it is known which fork is meant
  if (settled === null && trouble !== null) return <TroubleView trouble={trouble} question={question} onAsk={onAsk} />;
  if (shown === 'map')
    return (
      <Await heard={reach} question={question} onAsk={onAsk}>
        {(value) => (
          <ReachMap
            key={`${value.chassis} ${value.travelNow}`}
            reach={value}
            fork={known.fork?.name ?? known.named?.name ?? value.chassis}
            question={question}
            onAsk={onAsk}
          />
        )}
      </Await>
    );
  return (
    <Await heard={answer} question={question} onAsk={onAsk}>
      {(value) => {
        const plan = value.plans[way] ?? value.plans[0];
        // a sheet bears names: not half of them
        if (shown !== 'answer' && plan && loading) return <Waiting />;
        if (shown !== 'answer' && plan) return sheetOf(shown, printedOf(value, plan, question, known, catalog));
        return (
          <AnswerView
            answer={value}
            question={question}
            asked={settled ?? question}
            known={known}
            currency={catalog?.currency ?? NO_CURRENCY}
            way={way}
            addressOfWay={(next) => addressOf({ ...place, way: next })}
            onAsk={onAsk}
          />
        );
      }}
    </Await>
  );
}

function sheetOf(view: Exclude<View, 'answer' | 'map'>, printed: Printed) {
  switch (view) {
    case 'worksheet':
      return <Worksheet printed={printed} />;
    case 'pick-list':
      return <PickList printed={printed} />;
    case 'quote':
      return <Quote printed={printed} />;
  }
}

/** The sentence in one line. */
const titleOf = (question: QuestionInput, known: Known): string =>
  partsOf(question, known)
    .map(({ text }) => text)
    .join(' ');

/** What a sheet says above: the fork, and the rest of the sentence. */
function printedOf(
  answer: AnswerDocument,
  plan: PlanDocument,
  question: QuestionInput,
  known: Known,
  catalog: CatalogRecord | null,
): Printed {
  const parts = partsOf(question, known);
  const fork = parts.find(({ kind }) => kind === 'fork')?.text ?? answer.now.chassis;
  const rest = parts.filter(({ kind, key }) => kind !== 'fork' && key !== 'manner why').map(({ text }) => text);
  return { answer, plan, fork, asked: rest.join(', ').replaceAll(', →', ' →'), catalog: catalog?.name ?? '' };
}

/** The code of ISO 4217 for none, until the catalogue has said which. */
const NO_CURRENCY = 'XXX';

/** A fork without its travel is asked with the one that it usually left the works with, once that is known. */
function readyToAsk(question: QuestionInput, { choices, fork }: Known): QuestionInput | null {
  if (question.travelNow !== undefined || question.bike !== undefined) return question;
  const travelNow = usualTravel(fork) ?? choices?.travelNow ?? null;
  return travelNow === null ? null : { ...question, travelNow };
}

/** What the record of a fork says, "150 mm", so that it need not be waited for what else can be asked. */
function usualTravel(fork: ForkRecord | null): number | null {
  const build = fork?.builds.find(({ usual }) => usual) ?? fork?.builds[0];
  const said = /^([0-9]+(?:\.[0-9]+)?) mm$/.exec(build?.travel ?? '')?.[1];
  return said === undefined ? null : Number(said);
}

interface AwaitProps<T> {
  readonly heard: Heard<T>;
  readonly question: QuestionInput;
  readonly onAsk: (next: QuestionInput) => void;
  readonly children: (value: T) => preact.ComponentChild;
}

/** What is heard so far: the answer, that it is worked out, or what is wrong with the question. */
function Await<T>({ heard, question, onAsk, children }: AwaitProps<T>) {
  switch (heard.kind) {
    case 'unasked':
    case 'waiting':
      return <Waiting />;
    case 'trouble':
      return <TroubleView trouble={heard.trouble} question={question} onAsk={onAsk} />;
    case 'here':
      return (
        <div class={heard.late ? 'late' : ''} aria-busy={heard.late}>
          {children(heard.value)}
        </div>
      );
  }
}

const Waiting = () => (
  <p class="quiet" role="status">
    {words.waiting}
  </p>
);

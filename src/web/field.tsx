import type { RefObject } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { QuestionInput } from '../plan/index.ts';
import { atHandSuggestions } from './at-hand.ts';
import type { PartKind } from './parts.ts';
import type { Hits, Known, Listing, NamedRecord } from './records.ts';
import { useAnswer } from './service.ts';
import { matching, type Suggestion } from './suggestion.ts';
import { forksFound, suggestionsFor } from './suggestions.ts';
import { typedSuggestions } from './typed.ts';
import { useShelf } from './use-shelf.ts';
import { words } from './words/words.ts';

interface Props {
  readonly question: QuestionInput;
  readonly known: Known;
  readonly loading: boolean;
  /** The one kind of part that may be said here; null: any. */
  readonly only: PartKind | null;
  readonly label: string;
  readonly placeholder: string;
  readonly field?: RefObject<HTMLInputElement | null>;
  readonly onTake: (next: QuestionInput) => void;
  readonly onLeave: () => void;
  /** Backspace in the empty field. */
  readonly onBack: () => void;
  /** Takes the part out that is said otherwise here. */
  readonly out?: () => void;
}

/** What was typed behind an Enter that still waits for its list, and whether an Enter followed. */
const NOTHING_AHEAD = { text: '', isHurried: false };

/** A field that offers what exists as one types (the combobox with a list of the ARIA Authoring Practices). */
export function Field({
  question,
  known,
  loading,
  only,
  label,
  placeholder,
  field,
  onTake,
  onLeave,
  onBack,
  out,
}: Props) {
  const [typed, setTyped] = useState('');
  const [open, setOpen] = useState(only !== null);
  const [at, setAt] = useState(0);
  const own = useRef<HTMLInputElement | null>(null);
  const input = field ?? own;
  const list = useRef<HTMLDivElement>(null);
  const id = useId();
  const { offered, settled } = useOffered(question, known, only, loading, typed, open);
  // Enter pressed before the list speaks of what is typed: the first is taken when it does. What is typed behind that Enter is the next part, with or without an Enter of its own
  const [hurried, setHurried] = useState(false);
  const [ahead, setAhead] = useState(NOTHING_AHEAD);
  const chosen = Math.min(at, offered.length - 1);
  useEffect(() => {
    if (only !== null) input.current?.focus();
  }, [only, input]);
  useEffect(() => {
    list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  }, [chosen, open]);
  const type = (text: string, isOpen: boolean, isHurried: boolean): void => {
    setTyped(text);
    setAt(0);
    setOpen(isOpen);
    setHurried(isHurried);
    setAhead(NOTHING_AHEAD);
  };
  const take = ({ next }: Suggestion): void => {
    type(ahead.text, ahead.text !== '', ahead.isHurried);
    onTake(next);
  };
  useEffect(() => {
    if (!hurried || !settled) return;
    if (offered[0]) take(offered[0]);
    else type(typed + ahead.text, true, false);
  });
  const move = (by: number): void => {
    setOpen(true);
    setAt(open && offered.length > 0 ? (chosen + by + offered.length) % offered.length : chosen);
  };
  const onKey = (event: KeyboardEvent): void => {
    const suggestion = offered[chosen];
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') move(event.key === 'ArrowDown' ? 1 : -1);
    else if (event.key === 'Enter' && hurried) setAhead({ ...ahead, isHurried: ahead.text !== '' });
    else if (event.key === 'Enter' && open && !settled) setHurried(true);
    else if (event.key === 'Enter' && open && suggestion) take(suggestion);
    else if (event.key === 'Enter') setOpen(true);
    else if (event.key === 'Escape' && (open || only !== null)) {
      type('', false, false);
      onLeave();
    } else if (event.key === 'Backspace' && typed === '') onBack();
    else return;
    event.preventDefault();
  };
  const shown = typed + ahead.text;
  const state =
    loading && offered.length === 0
      ? words.sentence.loading
      : offered.length === 0 && typed !== ''
        ? words.sentence.nothing
        : '';
  return (
    <span class="field">
      <input
        ref={input}
        type="text"
        role="combobox"
        aria-label={label}
        aria-describedby="sentence-hint"
        aria-autocomplete="list"
        aria-expanded={open && offered.length > 0}
        aria-controls={`${id}-list`}
        aria-activedescendant={open && offered[chosen] ? `${id}-${chosen}` : undefined}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        placeholder={placeholder}
        size={Math.max(placeholder.length, shown.length, 8)}
        value={shown}
        onInput={(event) => {
          const { value } = event.currentTarget;
          if (hurried && value.startsWith(typed)) setAhead({ text: value.slice(typed.length), isHurried: false });
          else type(value, true, false);
        }}
        onClick={() => setOpen(true)}
        onKeyDown={onKey}
        onBlur={() => {
          setOpen(false);
          onLeave();
        }}
      />
      <span class="visually-hidden" role="status">
        {open ? state || words.sentence.offered(offered.length) : ''}
      </span>
      <div class="offered" hidden={!open || (offered.length === 0 && state === '' && !out)}>
        <div role="listbox" id={`${id}-list`} aria-label={label} ref={list}>
          {offered.map((suggestion, index) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: keys go to the field, as the pattern has it
            // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field, as the pattern has it
            <div
              role="option"
              key={suggestion.key}
              id={`${id}-${index}`}
              aria-selected={index === chosen}
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => take(suggestion)}
            >
              {suggestion.text}
            </div>
          ))}
        </div>
        {state === '' ? null : <p>{state}</p>}
        {out ? (
          <button type="button" tabIndex={-1} onMouseDown={(event) => event.preventDefault()} onClick={out}>
            {words.sentence.out}
          </button>
        ) : null}
      </div>
    </span>
  );
}

/** So many can be walked through. */
const MOST_OFFERED = 60;

/** What is offered for what is typed. Forks are found by the service, which forgives typing mistakes. */
function useOffered(
  question: QuestionInput,
  known: Known,
  only: PartKind | null,
  loading: boolean,
  typed: string,
  open: boolean,
): { readonly offered: readonly Suggestion[]; readonly settled: boolean } {
  const forkless = question.chassis === undefined && question.bike === undefined;
  const asked = useSettled(typed.trim());
  const find = (kind: string, limit: number): string | null =>
    forkless
      ? asked === ''
        ? null
        : `/v1/search?q=${encodeURIComponent(asked.slice(0, 200))}&kind=${kind}&limit=${limit}`
      : null;
  const [forkPath, bikePath] = [find('chassis', 12), find('bikes', 8)];
  const forks = useAnswer<Hits>(forkPath);
  const bikes = useAnswer<Hits>(bikePath);
  const all = useAnswer<Listing<NamedRecord>>(forkless && open && typed.trim() === '' ? '/v1/catalog/chassis' : null);
  const shelf = useShelf(open && !forkless);
  if (!forkless) {
    const may = ({ kind }: Suggestion): boolean => only === null || kind === only;
    const offered = [
      ...typedSuggestions(question, typed, known).filter(may),
      ...matching(suggestionsFor(question, known, only), typed),
      ...atHandSuggestions(question, known, shelf, typed).filter(may),
    ];
    return { offered: offered.slice(0, MOST_OFFERED), settled: !loading };
  }
  if (typed.trim() === '') {
    const hits = all.kind === 'here' ? all.value.records.map(({ id, name }) => ({ kind: 'chassis', id, name })) : [];
    return { offered: forksFound(question, { hits }), settled: true };
  }
  const isHeard = (heard: typeof forks, path: string | null): boolean =>
    heard.kind === 'trouble' || (heard.kind === 'here' && !heard.late && heard.path === path);
  return {
    offered: [forks, bikes].flatMap((heard) => (heard.kind === 'here' ? forksFound(question, heard.value) : [])),
    // what was found for fewer letters may put another fork first
    settled: asked === typed.trim() && isHeard(forks, forkPath) && isHeard(bikes, bikePath),
  };
}

/** What stands still for a moment: not every key asks the service. */
function useSettled(value: string): string {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), 40);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}

import { useRef, useState } from 'preact/hooks';
import type { QuestionInput, ReachDocument } from '../plan/index.ts';
import { SourceNote } from './source.tsx';
import { words } from './words/words.ts';

type Cell = ReachDocument['rows'][number]['cells'][number];
interface Props {
  readonly reach: ReachDocument;
  readonly fork: string;
  readonly question: QuestionInput;
  readonly onAsk: (next: QuestionInput) => void;
}
interface At {
  readonly row: number;
  readonly column: number;
}

/** Wheels by travels: what each would take, or why it cannot be. A grid with one stop for Tab; arrow keys move in it, Enter asks. */
export function ReachMap({ reach, fork, question, onAsk }: Props) {
  const { map } = words;
  const { rows, travels } = reach;
  const table = useRef<HTMLTableElement>(null);
  const [at, setAt] = useState<At>(() => startOf(reach));
  const [row, cell] = [rows[at.row], rows[at.row]?.cells[at.column]];
  const go = (to: At): void => {
    const held = { row: between(to.row, rows.length), column: between(to.column, travels.length) };
    setAt(held);
    table.current?.querySelector<HTMLElement>(`[data-at="${held.row} ${held.column}"]`)?.focus();
  };
  const open = (wheel: number, { travel }: Cell): void =>
    onAsk({ ...question, wants: { ...question.wants, travel, wheel } });
  const onKey = (event: KeyboardEvent): void => {
    const to = moved(at, event, travels.length);
    if (to) go(to);
    else if (event.key === 'Enter' && row && cell) open(row.wheel, cell);
    else return;
    event.preventDefault();
  };
  return (
    <section class="reach" aria-labelledby="reach">
      <h1 id="reach">{map.title(fork, words.mm(reach.travelNow))}</h1>
      <p class="hint">{map.hint}</p>
      <div class="scroll">
        {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are walked with arrow keys is a grid */}
        <table role="grid" aria-labelledby="reach" ref={table} onKeyDown={onKey}>
          <thead>
            <tr>
              <th scope="col">{map.wheel}</th>
              {travels.map((travel) => (
                <th scope="col" key={travel}>
                  {words.mm(travel)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ wheel, cells }, rowAt) => (
              <tr key={wheel}>
                <th scope="row">{wheel}</th>
                {cells.map((one, column) => {
                  const here = rowAt === at.row && column === at.column;
                  return (
                    // biome-ignore lint/a11y/useKeyWithClickEvents: keys are heard by the grid
                    <td
                      key={one.travel}
                      class={one.status}
                      data-at={`${rowAt} ${column}`}
                      tabIndex={here ? 0 : -1}
                      data-chosen={here}
                      onFocus={() => setAt({ row: rowAt, column })}
                      onClick={() => go({ row: rowAt, column })}
                      onDblClick={() => open(wheel, one)}
                    >
                      <CellWords cell={one} currency={reach.currency} />
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {row && cell ? <About reach={reach} wheel={row.wheel} cell={cell} onOpen={() => open(row.wheel, cell)} /> : null}
    </section>
  );
}

const between = (at: number, length: number): number => Math.min(Math.max(at, 0), length - 1);

function startOf({ rows }: ReachDocument): At {
  const row = Math.max(
    0,
    rows.findIndex(({ cells }) => cells.some(({ status }) => status === 'now')),
  );
  return { row, column: Math.max(0, rows[row]?.cells.findIndex(({ status }) => status === 'now') ?? 0) };
}

function moved({ row, column }: At, { key }: KeyboardEvent, columns: number): At | null {
  switch (key) {
    case 'ArrowUp':
      return { row: row - 1, column };
    case 'ArrowDown':
      return { row: row + 1, column };
    case 'ArrowLeft':
      return { row, column: column - 1 };
    case 'ArrowRight':
      return { row, column: column + 1 };
    case 'Home':
      return { row, column: 0 };
    case 'End':
      return { row, column: columns - 1 };
    default:
      return null;
  }
}

function CellWords({ cell: { plan, status, why }, currency }: { readonly cell: Cell; readonly currency: string }) {
  const { map } = words;
  if (plan === null)
    return (
      <>
        <b>{map.status[status]}</b>
        {why[0] ? <small class="reason">{why[0].message}</small> : null}
      </>
    );
  const sum = words.money(plan.money, currency);
  return (
    <>
      <b>{plan.atLeast ? words.verdict.atLeast(sum) : sum}</b>
      <small>
        {words.minutes(plan.minutes)}, {map.day(plan.days)}
      </small>
    </>
  );
}

interface AboutProps {
  readonly reach: ReachDocument;
  readonly wheel: number;
  readonly cell: Cell;
  readonly onOpen: () => void;
}
/** All that is known of the chosen cell, below the map, where there is room for it. */
function About({ reach, wheel, cell, onOpen }: AboutProps) {
  const { map } = words;
  const { plan, status, why, travel } = cell;
  return (
    <section class="about" aria-label={map.about} aria-live="polite">
      <h2>
        {map.cell(wheel, words.mm(travel))}: {map.status[status]}
      </h2>
      {plan ? (
        <p>
          {words.money(plan.money, reach.currency)}, {words.minutes(plan.minutes)}, {words.days(plan.days)};{' '}
          {map.changes(plan.changes)}
        </p>
      ) : null}
      {why.length === 0 ? null : (
        <ul>
          {why.map(({ message, source }) => (
            <li key={message}>
              {message} <SourceNote source={source} />
            </li>
          ))}
        </ul>
      )}
      {status === 'now' ? null : (
        <button type="button" onClick={onOpen}>
          {map.ask}
        </button>
      )}
    </section>
  );
}

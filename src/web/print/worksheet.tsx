import type { PlanDocument } from '../records.ts';
import { SourceNote } from '../source.tsx';
import { words } from '../words/words.ts';
import { amountTexts, lookText, partTexts, ringTexts, toolText, torqueText } from '../work.tsx';
import { Blank, Box, type Printed, Sheet } from './sheet.tsx';

type Step = PlanDocument['steps'][number];

/** For the bench: boxes, oil and torque by leg, tools to lay out, looks with what each would add, blanks to fill in. */
export function Worksheet({ printed }: { readonly printed: Printed }) {
  const { answer, plan } = printed;
  const { print } = words;
  const flags = [...answer.flags, ...plan.flags].filter(({ severity }) => severity !== 'advice');
  return (
    <Sheet printed={printed} title={print.worksheet}>
      <div class="blanks">
        {print.blanks.map((name) => (
          <Blank key={name} name={name} />
        ))}
      </div>
      <h2>{words.cautionsTitle}</h2>
      <ul class="always">
        {words.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      {flags.length === 0 ? null : (
        <>
          <h2>{print.check}</h2>
          <ul class="boxes">
            {flags.map(({ message, source }) => (
              <li key={message}>
                <Box /> {message} <SourceNote source={source} />
              </li>
            ))}
          </ul>
        </>
      )}
      <Measured />
      <h2>{print.tools}</h2>
      <ul class="boxes many">
        {plan.tools.map(({ id }) => (
          <li key={id}>
            <Box /> {toolText(plan, id)}
          </li>
        ))}
      </ul>
      <PartsInHand plan={plan} />
      <Legs plan={plan} />
      <h2>{print.work}</h2>
      <ol class="bench">
        {plan.steps.map((step) => (
          <BenchStep key={step.id} plan={plan} step={step} />
        ))}
      </ol>
      <h2>{print.lookedAt}</h2>
      <div class="ruled">
        <p />
        <p />
        <p />
      </div>
    </Sheet>
  );
}

function Measured() {
  const { measured, measures } = words.print;
  return (
    <>
      <h2>{measured.title}</h2>
      <table class="grid">
        <thead>
          <tr>
            <th scope="col">{measured.what}</th>
            <th scope="col">{measured.before}</th>
            <th scope="col">{measured.after}</th>
          </tr>
        </thead>
        <tbody>
          {measures.map((name) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td />
              <td />
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function PartsInHand({ plan: { lines } }: { readonly plan: PlanDocument }) {
  const inHand = lines.filter(({ action }) => action === 'install' || action === 'renew' || action === 'use');
  if (inHand.length === 0) return null;
  return (
    <>
      <h2>{words.print.parts}</h2>
      <ul class="boxes many">
        {inHand.map(({ sku, name, quantity, unit }) => (
          <li key={`${sku} ${name} ${quantity}`}>
            <Box /> {words.amount(quantity, unit)} {name} {sku === null ? '' : `(${sku})`}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Oil and torque of each leg beside each other, so that they cannot be taken for one another. */
function Legs({ plan: { steps } }: { readonly plan: PlanDocument }) {
  const { legs } = words.print;
  const oils = steps
    .flatMap(({ amounts }) => amounts)
    .flatMap(({ action, side, unit, name, quantity }) =>
      action === 'use' && unit === 'mL' && side !== null ? [{ name, side, text: words.amount(quantity, unit) }] : [],
    );
  const torques = steps
    .flatMap(({ fasteners }) => fasteners)
    .flatMap(({ side, name, torque }) => (side === null ? [] : [{ name, side, text: words.newtonMetres(torque) }]));
  const rows = [...oils, ...torques];
  if (rows.length === 0) return null;
  const functions = new Map(
    steps.flatMap(({ fasteners }) =>
      fasteners.flatMap(({ side, function: holds }) => (side && holds ? [[side, holds] as const] : [])),
    ),
  );
  const cell = (name: string, side: 'left' | 'right'): string =>
    rows
      .filter((row) => row.name === name && row.side === side)
      .map(({ text }) => text)
      .join(' + ');
  const head = (side: 'left' | 'right'): string => words.work.leg(legs[side], functions.get(side) ?? null);
  return (
    <>
      <h2>{legs.title}</h2>
      <table class="grid legs">
        <thead>
          <tr>
            <th scope="col">{legs.what}</th>
            <th scope="col">{head('left')}</th>
            <th scope="col">{head('right')}</th>
          </tr>
        </thead>
        <tbody>
          {[...new Set(rows.map(({ name }) => name))].map((name) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{cell(name, 'left') || '–'}</td>
              <td>{cell(name, 'right') || '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function BenchStep({ plan, step }: { readonly plan: PlanDocument; readonly step: Step }) {
  const { work } = words;
  const boxes: readonly (readonly [string, string])[] = [
    ...partTexts(plan, step).map((text) => [work.parts, text] as const),
    ...ringTexts(step).map((text) => [work.ring, text] as const),
    ...amountTexts(step, 'drain').map((text) => [work.drain, text] as const),
    ...amountTexts(step, 'use').map((text) => [work.use, text] as const),
    ...step.looks.map((look) => [work.look, lookText(plan, look)] as const),
  ];
  return (
    <li>
      <h3>
        <Box /> {step.title}, {words.minutes(step.minutes)}
      </h3>
      {step.cautions.map((caution) => (
        <p key={caution} class="care">
          <strong>{work.care}:</strong> {caution}
        </p>
      ))}
      {step.text === '' ? null : <p>{step.text}</p>}
      {step.fasteners.map((fastener) => (
        <p key={torqueText(plan, fastener)} class="torque">
          <Box /> <strong>{torqueText(plan, fastener)}</strong> <SourceNote source={step.source} />
        </p>
      ))}
      {boxes.map(([name, text]) => (
        <p key={text}>
          <Box /> {name}: {text}
        </p>
      ))}
      {step.fasteners.length > 0 || step.source.document === null ? null : <SourceNote source={step.source} />}
    </li>
  );
}

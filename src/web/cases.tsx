import type { AnswerDocument } from '../plan/index.ts';
import { contentText } from './parts.ts';
import { words } from './words/words.ts';

type Found = NonNullable<AnswerDocument['cases']>;

/** Where it is not known what the fork holds: each case, what tells them apart, and what covers them all. */
export function Cases({ cases, currency }: { readonly cases: Found | null; readonly currency: string }) {
  if (cases === null) return null;
  const { cases: say } = words;
  return (
    <section aria-labelledby="cases">
      <h2 id="cases">{say.title}</h2>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">{say.holds}</th>
            <th scope="col">{say.measures}</th>
            <th scope="col">{say.plan}</th>
          </tr>
        </thead>
        <tbody>
          {cases.rows.map(({ contents, travelNow, axleToCrownNow, plan }) => (
            <tr key={JSON.stringify(contents)}>
              <th scope="row">
                {Object.entries(contents)
                  .map(([slot, content]) => words.ways.slot(slot, content && contentText(content)))
                  .join(', ')}
              </th>
              <td>
                {words.mm(travelNow)}, {axleToCrownNow === null ? words.effects.unknown : words.mm(axleToCrownNow)}
              </td>
              <td>
                {plan
                  ? `${words.money(plan.money, currency)}, ${words.minutes(plan.minutes)}, ${words.days(plan.days)}`
                  : say.none}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{cases.sameInAll ? say.same : say.differ}</p>
      {cases.sameInAll ? null : (
        <ul>
          {cases.decides.map(({ code, slot, values }) => (
            <li key={code + slot}>
              {say.decides[code]}
              {slot === null ? '' : ` ${words.role(slot)}`}: {values.join(', ')}
            </li>
          ))}
        </ul>
      )}
      {cases.covers.length === 0 ? null : (
        <p>{say.covers(cases.covers.map(({ sku, packs }) => contentText({ sku, quantity: packs })).join(', '))}</p>
      )}
    </section>
  );
}

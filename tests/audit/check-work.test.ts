import { describe, expect, it } from 'vitest';
import { swapped, withCopy, withMore, without } from './change.ts';
import { caught, codes, edited, P, right, service } from './input.ts';
import { shorterAnswer } from './tiny-answer.ts';

describe('the work', () => {
  it.each([
    caught('missing-step', [`${P}.steps`, without(1)]),
    caught('extra-step', [`${P}.steps`, withMore({ id: 'seals' })]),
    caught('extra-step', [`${P}.steps`, withCopy(0, {})]),
    caught('step-order', [`${P}.steps`, swapped(1, 2)]),
    caught('no-order', ['catalog.operations.air-out.requires', ['air-in']]),
    caught('no-operation', ['catalog.operations.spring-swap.changes', []]),
    caught('no-operation', ['catalog.operations.spring-swap.families', ['other']]),
    caught('nothing-to-do', [`${P}.lines`, []], [`${P}.build`, shorterAnswer.now.build]),
    caught('minutes', [`${P}.minutes`, 41]),
    caught('step-minutes', [`${P}.steps.3.minutes`, 11]),
    caught('step-fact', [`${P}.steps.3.text`, 'Do it somehow.']),
    caught('step-fact', [`${P}.steps.0.cautions`, []]),
    caught('step-fact', [`${P}.steps.3.looks`, []]),
    caught('step-tools', [`${P}.steps.2.tools`, ['hex-5']]),
    caught('step-slots', [`${P}.steps.3.slots`, ['damper']]),
    caught('step-fills', [`${P}.steps.3.fills`, []]),
    caught('step-fills', [`${P}.steps.1.fills`, ['volume-spacers', 'spring']]),
    caught('step-fills', [`${P}.steps.1.fills`, []], [`${P}.steps.0.fills`, ['volume-spacers']]),
    caught('step-fastener', [`${P}.steps.5.fasteners`, without(0)]),
    caught('step-fastener', [`${P}.steps.5.fasteners.0.side`, 'right']),
    caught('step-fastener', [`${P}.steps.5.fasteners.0.function`, 'damper']),
    caught('step-torque', [`${P}.steps.5.fasteners.0.torque`, '8 N·m']),
    caught('step-ring', ['catalog.operations.lowers-on.retaining-rings', [{ bore: '29.4 mm' }]]),
    caught('step-ring', [`${P}.steps.5.rings`, [{ bore: 29.4, tool: null, pliers: [] }]]),
    caught('step-amounts', [`${P}.steps.5.amounts.0.quantity`, 10]),
    caught('step-amounts', [`${P}.steps.2.amounts`, without(0)]),
    caught('tools', [`${P}.tools`, without(1)]),
    caught('tools', [`${P}.tools.0.atHand`, false]),
    caught('tools', [`${P}.tools.0.price`, null]),
  ])('work: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
  it('work: a renewed slot is done even where the SKU stays', () => {
    expect(codes(edited(service, [['answer.question.wants.renew', ['spring']]]))).toContain('missing-step');
  });
});

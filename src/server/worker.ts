import { deserialize } from 'node:v8';
import { workerData } from 'node:worker_threads';
import workerpool from 'workerpool';
import { asJson } from '../report/json.ts';
import { renderChoices, renderPicture, renderPlan, renderReach, renderSetUp, renderUses } from './answers.ts';
import type { Tasks } from './crew.ts';
import { fitBatch } from './fit-batch.ts';
import { worldOf } from './pack.ts';

/** What a thread of the service does: works out answers from one catalogue, or loads a catalogue from its files. */
if (workerData.kind === 'answer') {
  const world = worldOf(deserialize(Buffer.from(workerData.pack)));
  const tasks: Tasks = {
    plan: (question) => renderPlan(world, question),
    picture: (question) => renderPicture(world, question),
    reach: (question) => renderReach(world, question),
    setUp: (question) => renderSetUp(world, question),
    choices: (question) => renderChoices(world, question),
    uses: (part) => renderUses(world, part),
    fitBatch: (question) => ({ kind: 'text', text: asJson(fitBatch(world, question)) }),
  };
  workerpool.worker({ ...tasks });
} else {
  // what goes wrong here ends the thread with its reason, and whoever started it is told
  void import('./load-in-thread.ts').then(({ loadInThread }) => loadInThread(workerData));
}

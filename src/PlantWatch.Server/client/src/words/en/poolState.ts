// How a pool is run, and what has to be so before it opens.
import type { GateWord, OperatingState } from '../../contract.poolState';

export const poolState = {
  title: 'How it is run',
  states: { not_stated: 'Nobody has said', open: 'Open', closed: 'Closed', covered: 'Covered', drained: 'Drained' } as Record<OperatingState, string>,
  forCause: 'for cause', since: 'since', by: (name: string) => `said by ${name}`,
  acts: { open: 'Open', closed: 'Close', covered: 'Cover', drained: 'Drain' } as Record<Exclude<OperatingState, 'not_stated'>, string>,
  gate: 'Before it opens', gateHint: 'What PlantWatch can see. Look at the pool, the depths and the rescue kit as your own rules ask; they go before this list.',
  marks: { passed: 'met', not_passed: 'not met', not_known: 'not known' } as Record<GateWord, string>,
  signers: (names: string) => `It was closed for cause: it opens by the signature of ${names}, with a reason.`, noSigners: 'It was closed for cause, and the plant file names nobody who may sign that it opens: a duty manager, an engineer or an administrator.',
  history: 'Opened and closed before', historyTitle: 'Pools opened and closed', noHistory: 'Nobody has opened or closed a pool yet.', change: (before: string, now: string) => `${before} \u2192 ${now}`, byIncident: 'by an incident', newWater: 'new water',
  test: 'Test it', why: 'Why', cause: 'Something was wrong', refilled: 'It holds new water',
  refilledHint: 'Then every test made before is set aside.', needWhy: 'Say why.', cancel: 'Leave it', unreachable: 'The list could not be fetched.',
};

// Limit packs: what was picked, what is confirmed, what holds.
import type { Holds, LimitsWord, RowGrade, RowProvenance } from '../../contract.limits';

const rows = (n: number) => n === 1 ? '1 row' : `${n} rows`;

export const limits = {
  title: 'Limits', loading: 'Asking for the limits.',
  lead: 'A pack is a copy of what an authority asks for. A row of it limits nothing until a person has held it against the document itself. The local code comes first.',
  noPack: 'No limit pack is picked.',
  noPackMeans: 'Only the limits that the plant file itself gives its pools are watched, and nobody has held them against a code here. To go by an authority, name its pack in the plant file and read the file in again:',
  noPackKey: 'limit_pack: who-2006', noPackList: 'Packs that come with the server',
  superseded: 'superseded', supersededMeans: 'A newer edition has replaced it.',
  progress: (done: number, all: number) => `${done} of ${rows(all)} confirmed`,
  allDone: 'Every row that concerns these pools is confirmed.',
  filter: 'Only rows that concern my pools', shown: (n: number, all: number) => `${n} of ${all} shown`, noneShown: 'No row of this pack concerns these pools.',
  by: 'Who confirms', document: 'Document and clause in hand', documentHint: 'Such as the title, edition and section. Kept on this device for the next row.',
  may: (names: string) => `May confirm: ${names}.`, anybody: 'A plant file that lists no people lets anybody confirm; one that does lets an engineer or an administrator.',
  needDocument: 'Name the document and clause that lie in front of you.', needWhy: 'Say why it is taken back.',
  confirm: 'Confirm', notHere: 'Does not concern this plant', revoke: 'Take back', why: 'Why', cancel: 'Leave it', send: 'Take it back',
  confirmedBy: (by: string, at: string) => `Confirmed by ${by}, ${at}`, judgedAway: (by: string, at: string) => `Does not concern this plant, says ${by}, ${at}`,
  waits: 'Not confirmed', changed: 'This row has changed since it was confirmed and waits to be confirmed anew.',
  toJudge: 'For a person to judge', pools: 'Pools', source: 'Source', readOnly: 'To be read: it sets no figure that is watched.',
  raises: (by: string) => `raises the minimum by ${by}`, least: (v: string) => `\u2265 ${v}`, most: (v: string) => `\u2264 ${v}`, between: (a: string, b: string) => `${a} to ${b}`,
  holds: { yes: 'holds', unknown: 'not known', no: 'does not hold' } as Record<Holds, string>,
  grades: { operating: 'operating limit', closure: 'closes the pool', guide: 'guide, never an alarm' } as Record<RowGrade, string>,
  provenance: {
    from_memory: 'From memory: check it against the document', secondary: 'Seen second-hand: check it against the document', published: 'Seen in the document or on an official page',
  } as Record<RowProvenance, string>,
  stops: 'Stops that always hold', stopsMean: 'Outside them nobody should be in the water, whatever the limits say. Common practice; the local code comes first.',
  stopsEdit: 'The plant file may tighten one with a reason; loosening takes an administrator by name. None can be removed.',
  bottom: 'Bottom of the pool', bottomSeen: 'must be seen', usual: (range: string) => `usually ${range}`, stopBy: (by: string) => `${by} stands for it`,
  now: 'What holds now', own: 'the plant\u2019s own', noBounds: 'Nothing is watched.',
  byBalance: 'Held against the balance that a full set of tests gives (R-018): pH, alkalinity, calcium hardness and temperature.', byStop: 'Watched by the stop: each check asks whether the bottom can be seen.',
  undecided: 'Cannot be decided', notMeasured: 'Not measured here', notMeasuredMeans: 'The pool has no probe for it and the authority does not demand one. Nothing waits for these rows.',
  turned: (range: string, own: string) => `Watched as ${range} against ${own}, the electrode of the pool\u2019s probe.`,
  turnedFrom: (against: string) => `The row is against ${against}: turned with the potentials at 25 \u00b0C.`,
  turnedOpen: (against: string, spread: string) => `The row says ${against} without its filling, which leaves ${spread} mV open: the stricter end is taken.`,
  turnedUnnamed: (spread: string) => `The row names no electrode, which leaves ${spread} mV open between those that probes carry: the strictest end is taken.`, showRow: 'Show the row',
  words: { none: 'No limits', unconfirmed: 'No limits in force: rows are unconfirmed', own_only: 'The plant\u2019s own limits', in_force: 'Limits in force' } as Record<LimitsWord, string>,
  poolWaits: (n: number) => `No limits in force: ${rows(n)} unconfirmed`, poolNone: 'No limits: none are set for this pool', poolOwn: 'Watched are the plant\u2019s own limits',
};

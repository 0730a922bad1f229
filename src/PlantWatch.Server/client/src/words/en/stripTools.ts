// The tools over the strips of a pool: lines, another day, notes, marks, files.
import type { MarkKind } from '../../contract.notes';
import type { Compared } from '../../pool/ghost';
import type { Look } from '../../pool/look';

const times = (n: number, one: string, many: string) => (n === 1 ? `1 ${one}` : `${n} ${many}`);

export const stripTools = {
  lines: 'Lines', looks: { both: 'Both', corrected: 'Corrected', raw: 'Raw' } satisfies Record<Look, string>,
  compare: 'Compare with', nothing: 'no other day', compared: { yesterday: 'the day before', last_week: 'the week before' } satisfies Record<Compared, string>, tooLong: 'up to a month',
  ghost: (what: string, from: string, to: string) => `\u22ef ${what}: ${from} \u2013 ${to}`, ghostReads: (what: string, v: string) => `${what} ${v}`,
  files: 'Save as', csv: 'Table (CSV)', png: 'Picture (PNG)', svg: 'Drawing (SVG)',
  summary: {
    none: 'Nothing was read in the time shown.', flowed: 'It flowed all the time that was read.', stopped: (at: string) => `No flow at ${at}.`, last: (v: string, at: string) => `Last ${v} at ${at}.`, least: (v: string, at: string) => `Least ${v} at ${at}.`, most: (v: string, at: string) => `Most ${v} at ${at}.`,
    gaps: (n: number, longest: string) => n === 0 ? 'No gap.' : `${times(n, 'gap', 'gaps')}, the longest ${longest}.`,
    tests: (n: number) => `${times(n, 'test', 'tests')} in the time shown.`,
  },
  marks: {
    label: 'What happened', kinds: {
      unknown: '', test: 'Test', dose: 'Dose', calibration: 'Calibration', probe: 'Work on a probe', alarm: 'Alarm', wash: 'Filter washed', stock: 'Chemicals', job: 'Job', pool: 'Pool', laboratory: 'Laboratory', gap: 'Gap', plan: 'Plant file',
    } satisfies Record<MarkKind, string>,
    open: { dose: 'Doses', calibration: 'Probe', probe: 'Probe', alarm: 'Alarm', wash: 'Pumps and filters', stock: 'Chemicals', job: 'Jobs', pool: 'Record', laboratory: 'Laboratory', plan: 'Record', gap: 'Record' } as Partial<Record<MarkKind, string>>,
    one: (kind: string, subject: string, at: string) => `${kind}, ${subject}, ${at}`, several: (n: number, kinds: string, from: string, to: string) => `${n} marks, ${from} to ${to}: ${kinds}`,
    until: (at: string) => `until ${at}`, by: (name: string) => `by ${name}`, itself: 'by itself', close: 'Close', more: 'There is more in this time than is marked: the newest stand here. Zoom in to see the rest.', none: 'Nothing is marked in this time.', failed: 'What happened cannot be fetched.',
  },
  note: {
    lane: 'Notes', add: 'Write a note', title: 'A note about this time', correcting: 'Correct the note', retracting: 'Take the note back', lead: 'Drag over the strips to choose the time, or type it.', from: 'From', to: 'To', text: 'What was seen or done', why: 'Why it is changed', whyGone: 'Why it is taken back', by: 'Who writes it',
    save: 'Keep the note', correct: 'Correct it', retract: 'Take it back', cancel: 'Leave it', hint: 'on the site\u2019s clock', textHint: 'For example: school party, forty children; or: filter 2 opened.',
    needText: 'Say what was seen or done.', needBy: 'Say who writes it.', needWhy: 'Say why.', needTime: 'Give a date and a time.', endsFirst: 'Ends before it begins.', toCome: 'This lies in the future: a note speaks of what has been.', tooLong: 'At most a year.',
    retracted: 'taken back', corrected: 'corrected', waiting: 'waiting to be sent', refused: 'Refused', edit: 'Open in the form', drop: 'Discard', dropSure: 'Discard this note for good?', earlier: 'What it said before', saidAt: (who: string, at: string) => `${who}, ${at}`, span: (from: string, to: string) => (from === to ? from : `${from} \u2013 ${to}`), label: (text: string, span: string, state: string) => `Note, ${span}: ${text}${state && ` (${state})`}`, moreRows: (n: number) => `and ${n} more: zoom in`, failed: 'The notes cannot be fetched.', gone: 'A note that was taken back stays in the record.',
  },
  keys: 'N writes a note; dragging with Shift, or after a long press, chooses its time.',
};

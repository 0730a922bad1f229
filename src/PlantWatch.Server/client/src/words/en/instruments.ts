// Instruments: held against standards, and what that makes of the tests made with them.
import type { InstrumentKind, InstrumentWord, VerificationWord } from '../../contract.instrument';

export const instruments = {
  title: 'Instruments', none: 'The plant file names no instruments (docs/plant-file.md, instruments).',
  hint: 'A test made with an instrument that read its standard wrong, or that nobody has held against one for too long, is kept and is less sure; the check says so.',
  kinds: { photometer: 'photometer', comparator: 'comparator', meter: 'meter' } as Record<InstrumentKind, string>,
  words: { not_verified: 'not verified yet', in_order: 'in order', overdue: 'verification overdue', failed: 'read its standard wrong' } as Record<InstrumentWord, string>,
  verdicts: { none: '', within: 'within tolerance', outside: 'outside tolerance' } as Record<VerificationWord, string>,
  every: (days: string) => `every ${days} days`, until: (day: string) => `next by ${day}`, verify: 'Hold it against a standard', test: 'What for', standard: 'Standard', standardHint: 'its name or colour, and its number', nominal: 'It should read', tolerance: 'Tolerance, on either side', toleranceHint: 'as its certificate says', reading: 'It reads',
  preview: (off: string) => `off by ${off}`, save: 'Save it', cancel: 'Leave it', saved: (verdict: string) => `Saved: ${verdict}.`, waiting: 'Kept on this device until the server can be reached.', refused: 'The server refused it', dropSure: 'Discard this verification for good?', need: 'This is needed.', number: 'Not a number. Digits with one comma or point.', positive: 'More than nil.',
  line: (reading: string, nominal: string, tolerance: string) => `read ${reading}, should be ${nominal} \u00b1 ${tolerance}`, history: 'Verifications', by: (who: string) => `by ${who}`,
  checklist: 'The kit, before a round', list: [
    'Vials clear, unscratched, dry inside; lids that close; no stain of the last test.', 'Photometer: light cap, clean seat, fresh battery, its standards at hand.', 'Meters: sensor wet and clean, a buffer or check solution in date.',
    'Reagents in date and dry in their foil; the right kind for the instrument.', 'Crushing rods, syringe or pipette for dilution, water without chlorine demand.', 'Brush, cloth, bottle for the sample, gloves and goggles where chemicals are handled.',
  ],
  reagents: 'Reagents and their lots',
};

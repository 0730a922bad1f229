// Calibration at the bench: a tired person is led step by step.

export const calibrate = {
  title: (probe: string) => `Calibrate ${probe}`, open: 'Calibrate or clean', due: (day: string) => `Calibration due ${day}`, overdue: (day: string) => `Calibration was due ${day}`, every: (days: string) => `every ${days} days by the plant file`,
  stepOf: (n: number, all: number) => `Step ${n} of ${all}`, next: 'Next', back: 'Back', again: 'Begin anew', againAsk: 'Throw this sheet away and begin anew?', kept: 'What you enter is kept on this device until you sign.',
  limits: 'Limits of the plant file', slopeLimits: (low: string, high: string) => `slope ${low}\u2009\u2013\u2009${high} %`, offsetLimits: (mv: string) => `offset \u00b1${mv} mV`, orpLimits: (mv: string) => `\u00b1${mv} mV from the solution`,
  start: {
    ph: 'You need two fresh buffers at least 2 pH apart, a thermometer, rinsing water and a soft cloth. It takes about ten minutes.', orp: 'You need a fresh check solution with its value at your temperature, a thermometer and rinsing water. It takes about five minutes.',
    other: 'Note here what you did to the probe. Its readings do not count while you work.', panel: 'This number comes from the plant\u2019s panel: look at it in the buffers, calibrate on the panel by its own menu, and look again. Nothing is corrected here.',
    caution: 'Close the sample cell\u2019s valves before you open it, and put the dosing controller on hold by the plant\u2019s own practice: it must not dose by a probe that stands in a buffer. PlantWatch commands nothing.',
    go: 'Take it out and start', goOn: 'Go on where you were', marks: 'From now on its readings count as a function check, half an hour at most.', busy: (who: string) => `${who} is working on this probe.`,
  },
  working: (until: string) => `Readings count as a function check until ${until}.`, notWorking: 'The half hour is over: readings count as pool water again.', markAgain: 'Half an hour more', cannotMark: 'The server cannot be reached: its readings cannot be marked as a function check now. Go on, and type what you read.',
  found: { title: 'As found', lead: 'Before you clean or change anything: how far was it off? Rinse it and put it in as it is.', skip: 'It cannot be measured as it is', skipped: 'As found was not taken.' },
  points: { title: 'Calibrate', lead: 'Rinse it well and dab it dry, do not rub. Never carry one buffer into the next.' },
  place: (n: number, all: number) => (all > 1 ? `Solution ${n} of ${all}` : 'Solution'),
  which: 'Which bottle?', family: { technical: 'Technical buffers', reference: 'Reference buffers', unknown: '' }, other: 'Another bottle: its label', labelValue: (unit: string) => `Value on the label at this temperature${unit ? `, ${unit}` : ''}`,
  trap: 'Read the bottle: 7.00 and 6.86 are two different buffers.', quinhydrone: { phthalate: 'Quinhydrone in buffer pH 4', phosphate: 'Quinhydrone in buffer pH 7', unknown: '' },
  celsius: 'Temperature of the solution, \u00b0C', is: (value: string) => `It is ${value} at this temperature`, outOfTable: 'No value in the table for this temperature',
  bottle: 'Lot and expiry of the bottle', lot: 'Lot', expires: 'Expires', expired: 'This bottle is out of date: open a fresh one.',
  putIn: 'It stands in the solution now', wait: 'Wait until it has settled', settling: (span: string, most: string) => `moved by ${span} in this time; up to ${most} counts as settled`, collecting: (done: string, all: string) => `${done} of ${all} s of readings so far;`,
  settled: 'Settled', take: (value: string) => `Take ${value}`, taken: (value: string) => `Taken: ${value}`, takenTyped: 'typed', retake: 'Take it again', noReadings: 'No readings come in from this probe. Type what you read.', noServer: 'The server cannot be reached. Type what you read.',
  orType: 'or type what you read', typed: 'Reading', inMv: 'mV', inPh: 'pH', mvHint: 'mV judge the electrode; they change no correction.', leave: 'Leave out the second buffer', leaveHint: 'One buffer tells an offset and no slope.',
  need: { celsius: 'Say how warm the solution is', label: 'Say what the label says', reading: 'Wait until it settles, or type what you read', wrong: 'Expected a number' },
  work: {
    title: 'What was done', lead: 'Clean it now if it needs it. Then say what you did.', nothing: 'Nothing was touched: go on with what was found', onPanel: 'Calibrate it on the panel now, by the panel\u2019s own menu, then go on.', need: 'Say what was done, or that nothing was touched',
    kinds: { cleaned: 'Cleaned', electrode_replaced: 'New electrode', polished: 'Polished', membrane_replaced: 'New membrane', electrolyte_refilled: 'Fresh electrolyte' },
    starts: { cleaned: '', electrode_replaced: 'What was learned of the old electrode counts no more.', polished: 'The learned line of this pool starts anew.', membrane_replaced: 'What was learned of this probe starts anew.', electrolyte_refilled: 'What was learned of this probe starts anew.' },
  },
  result: {
    title: 'Result', computing: 'Working it out\u2026', slope: 'Slope', offset: 'Offset', foundBy: 'As found it was off by', leftBy: 'Now it is off by', verdict: { within: 'Within the limits', outside: 'Beyond the limits', unknown: 'Nothing measured' },
    what: { offset: 'Signing moves its value by an offset, from now on.', two_point: 'Signing puts slope and offset right, from now on.', verification: 'Signing changes no correction.', panel_adjustment: 'Signing logs what was turned on the panel.' },
    waits: 'Signing changes nothing yet: a second person has to approve it.', review: 'Somebody else reviews it afterwards.', noServer: 'The server cannot be reached. Your sheet is kept on this device: come back to sign it.', putBack: 'Put it back into its cell, open the valves, and take the dosing controller off hold when the value has come to rest.',
    sign: 'Sign', note: 'Remark', signLead: 'Put the probe back first.',
  },
  done: { title: 'Signed', held: 'It holds from now on.', waiting: 'It waits for a second person.', sheet: 'Show the sheet', probe: 'Back to the probe', check: 'Now take a check by hand: probe and test should agree.' },
  sheet: {
    title: 'Calibration sheet', by: 'Done by', from: 'Out of the cell', to: 'Back in the cell', work: 'Work', none: 'none', basis: 'Against', asFound: 'As found', measured: 'Calibrated by', asLeft: 'As left', solution: 'Solution', temperature: '\u00b0C', known: 'True', read: 'Read', error: 'Error', lot: 'Lot, expiry',
    verdict: 'Verdict', correction: 'Correction', held: 'before', holds: 'now', reviewer: 'Reviewed by', notReviewed: 'not reviewed yet', objected: 'Objected to by', print: 'Print', remark: 'Remark', settled: 'settled', typed: 'typed', id: 'Sheet', notMeasured: 'not measured', afterCorrection: 'worked out from the same readings under the new correction',
    basisOf: { unknown: 'nothing measured', checks: 'checks by hand', buffers: 'buffers', check_solution: 'check solution' }, common: 'Limits and interval of the plant file; where it says nothing they are common practice.',
  },
  review: { title: 'Waits for a second look', lead: (who: string) => `${who} did this. Somebody else looks it over: bottles, readings, verdict.`, accept: 'Reviewed, it stands', object: 'Object', why: 'What you saw, or what is wrong' },
  drift: { title: 'From calibration to calibration', perMonth: (v: string, u: string) => `${v} \u00b1 ${u} a month`, of: (n: number) => (n === 1 ? 'over 1 span' : `over ${n} spans`) },
};

// Boards as files, and the display on the wall.
import type { BoardReader, TileKind } from '../../contract.boards';

const kinds: Record<TileKind, string> = {
  pools: 'Pools', readout: 'Readings', strip: 'Trend', balance: 'Water balance', tests: 'Last tests', alarms: 'Alarms', due: 'Due', pumps: 'Pumps', probes: 'Probes', trust: 'Which to believe',
  jobs: 'Jobs', notes: 'Written down', clock: 'Time',
};
const readers: Record<BoardReader, string> = { engineer: 'the plant engineer', operator: 'the operator', maintenance: 'maintenance', manager: 'the duty manager' };

export const boards = {
  kinds, readers,
  title: 'Boards', choose: 'Which one', none: 'There is no board.', all: 'All boards', pool: 'Pool', toWall: 'Show on the wall', for: (who: string) => `for ${who}`, own: 'this plant\u2019s own',
  noSuch: 'There is no such board.', problems: (n: number) => (n === 1 ? '1 problem' : `${n} problems`),
  lastGood: 'The file of this board has errors. What you see is its last good version.', neverGood: 'The file of this board has errors, and there is no good version of it yet.',
  at: (file: string, line: number) => `${file}, line ${line}`, tileProblem: (what: string) => `Not shown: ${what}`,
  ownTitle: 'Boards of your own', ownHow: 'A board is a file. Put one into the folder \u201cboards\u201d beside the plant file; it appears here within seconds, and so does what is wrong with it. One of the same name stands in for a board that comes with PlantWatch. Before it is used it can be checked:',
  noPools: 'The plant has no such pool.', noProbes: 'The plant has no such probe.', noJobs: 'No open job.', noAlarm: 'No alarm stands.', noAlarmFrom: (priority: string) => `No alarm of priority ${priority} or above stands.`,
  coming: 'Next',
  deadSince: (at: string) => `since ${at}`, neverHeard: 'nothing heard yet', heard: 'heard', mayGoDark: 'This browser does not keep the screen lit.', pageOf: (n: number, of: number) => `Page ${n} of ${of}`,
  moreTiles: (n: number) => (n === 1 ? '1 part more' : `${n} parts more`), hold: 'Hold this page', heldUntil: (at: string) => `Held until ${at}, go on`, gone: 'The file of this board is gone; this is how it was last.', triesAgain: 'Trying again by itself.',
};

// Boards for looking at pages; the real ones are files of the server.

const tile = (show, more = {}) => ({
  show, title: null, of: [], measurands: [], room: 'wide', hours: show === 'notes' ? 48 : 24, limits: true, checks: true, raw: true, aheadHours: 0, atLeast: 'note', most: 12, about: 'all', problems: [], ...more,
});
const board = (id, title, reader, tiles, more = {}) => ({
  id, version: id, title, for: reader, note: 'A board of the mock.', own: false, onePool: false, wall: { pageSeconds: 20, darkFrom: null, darkUntil: null, size: 'usual' }, tiles, errors: [], ...more,
});

export const boards = [
  board('live-chemistry', 'Live chemistry', 'engineer', [
    tile('alarms', { room: 'full', atLeast: 'low' }), tile('readout', { room: 'full' }), tile('strip', { title: 'pH, a day', measurands: ['ph'] }), tile('strip', { title: 'ORP, a day', measurands: ['orp'] }),
    tile('strip', { title: 'pH, a month', measurands: ['ph'], hours: 744 }), tile('balance'), tile('pumps'),
  ]),
  board('wall-display', 'Plant room wall', 'operator', [
    tile('pools', { room: 'full' }), tile('alarms', { most: 4 }), tile('due', { aheadHours: 2 }), tile('pumps'), tile('strip', { title: 'pH, 12 hours', measurands: ['ph'], hours: 12 }),
    tile('strip', { title: 'ORP and chlorine, 12 hours', measurands: ['orp', 'free_chlorine'], hours: 12, room: 'full' }),
  ], { wall: { pageSeconds: 20, darkFrom: '22:00', darkUntil: '06:00', size: 'usual' } }),
  board('broken', 'Broken', 'manager', [tile('readout', { of: ['main-ph', 'main-hp'], problems: ['the plant file has no probe \u2018main-hp\u2019; did you mean \u2018main-ph\u2019?'] })], {
    own: true, errors: [{ file: 'broken.board.yaml', line: 5, key: 'tiles[1].show', message: 'expected one of pools, readout, strip, found \u2018gauge\u2019' }],
  }),
];

export const lines = boards.map(b => ({ id: b.id, version: b.version, title: b.title, for: b.for, note: b.note, own: b.own, problems: b.errors.length + b.tiles.reduce((n, t) => n + t.problems.length, 0) }));

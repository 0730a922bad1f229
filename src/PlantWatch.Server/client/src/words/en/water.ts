// The pages about a pool's water: what they share, and the balance.
import type { IndexKey } from '../../contract.balance';

const indices: Record<IndexKey, { name: string; what: string }> = {
  speciated: { name: 'Saturation index, speciated', what: 'Every ion and ion pair worked out, activity by temperature and salt. The one to go by.' },
  handbook: { name: 'Saturation index, handbook factors', what: 'The factor table of the handbooks, for comparison with a log sheet.' },
  closed_form: { name: 'Saturation index, closed form', what: 'One formula over temperature, solids, calcium and alkalinity.' },
  ionic_strength: { name: 'Saturation index, ionic strength', what: 'Constants and one activity coefficient, as standard laboratory methods do it.' },
  precipitation: { name: 'Calcium carbonate precipitation potential', what: 'Above 0: what can still fall out of a litre. Below 0: what a litre can still dissolve, as from grout. Some rules print it with the opposite sign.' },
  saturation_ph: { name: 'pH of saturation', what: 'At this pH the same calcium and alkalinity would neither dissolve nor deposit.' },
  ryznar: { name: 'Ryznar index', what: 'Made for cooling water; about 6 to 7 is near balance there (from memory).' },
  puckorius: { name: 'Puckorius index', what: 'Made for cooling towers, with a pH from alkalinity in place of the measured one (from memory).' },
  larson_skold: { name: 'Larson\u2013Skold ratio', what: 'Made for mild steel: chloride over bicarbonate, chloride being what fills up the dissolved solids; above 1.2 is corrosive there (from memory). Salted pools always exceed it.' },
};

export const water = {
  nav: {
    label: 'Water of this pool',
    pages: { pool: 'Pool', balance: 'Balance', 'what-if': 'What if', dose: 'Dose', plan: 'Plan', incident: 'Incident' },
  },
  titles: { pool: 'Pool', balance: 'Water balance', 'what-if': 'What if', dose: 'Dose', plan: 'Dosing plan', incident: 'Incident' },
  notYet: 'This page is still empty.',
  indices,
  verdict: 'Saturation index', none: 'No index',
  meaning: {
    corrosive: 'The water dissolves calcium carbonate: grout, render and concrete suffer.',
    balanced: 'The water neither dissolves nor deposits enough to matter.',
    scale_forming: 'The water deposits calcium carbonate: filters, heater and clarity suffer.',
  } as Record<string, string>,
  scale: { dissolves: 'dissolves', deposits: 'deposits', label: (v: string, u: string) => `Index ${v}, give or take ${u}, on a scale from \u22121.5 to +1.5; balanced is from \u22120.5 to +0.5` },
  plusMinus: (u: string) => `\u00b1\u00a0${u}`,
  noU: '\u00b1 not known', chlorineFrom: (origin: string) => `Free chlorine by ${origin}, `,
  both: (claim: string, u: string) => `\u00b1 ${claim} by the method, \u00b1 ${u} by the inputs`, claimOnly: (claim: string) => `\u00b1 ${claim} by the method`, inputsOnly: (u: string) => `\u00b1 ${u} by the inputs`,
  go: 'Indices', noIndices: 'None can be had yet: see what is missing.', shown: 'Made for other waters: shown, not acted on',
  inputs: 'Worked out from', input: 'Input', value: 'Value', origin: 'From', age: 'Age', live: 'probe', test: 'test', doubted: 'in doubt', onDoubtedPh: 'rest on a pH in doubt', enter: 'Enter a check', tryIt: 'Try a change', more: 'All indices and inputs',
  chlorine: 'Disinfecting chlorine', share: 'of free chlorine', hocl: 'Hypochlorous acid', withCyanurate: (v: string) => `With ${v} mg/L cyanuric acid`, without: 'As it would be without cyanuric acid', asItIs: 'As the water is',
  cadence: 'Worked out anew as probes move, every few seconds.',
};

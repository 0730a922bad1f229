// What the mock says of balance and what-if: shapes for looking at pages. Its numbers mean nothing, and no formula here is chemistry.

const said = (code, text) => ({ code, text });
const iso = t => new Date(t).toISOString();
const word = index => index < -0.5 ? 'corrosive' : index > 0.5 ? 'scale_forming' : 'balanced';

const input = (measurand, value, t, hours, more = {}) =>
  ({ measurand, value, at: iso(t - hours * 3_600_000), live: hours === 0, u: value / 20, suspect: false, probeId: hours === 0 ? 'main-' + measurand : null, ...more });

const inputs = t => [
  input('ph', 7.44, t, 0, { probeId: 'main-ph', u: 0.12, suspect: true }), input('temperature', 28.2, t, 0, { probeId: 'main-temp', u: 0.3 }),
  input('total_alkalinity', 110, t, 52), input('calcium_hardness', 240, t, 52), input('dissolved_solids', 1180, t, 52), input('free_chlorine', 1.28, t, 3.2),
];

const index = (key, value, claim = null, u = null, more = {}) => ({ key, value, claim, u, word: claim === null ? null : word(value), acted: key === 'speciated', sayings: [], ...more });

export const balance = (value, t) => ({
  index: value, claim: 0.18, word: word(value), inputs: inputs(t), missing: [], remarks: [said('r', 'The pH probe is in doubt, and so is this index')],
  indices: [index('speciated', value, 0.06, 0.17), index('handbook', value - 0.09, 0.3, 0.17), index('closed_form', value - 0.12, 0.3, 0.17), index('ionic_strength', value - 0.02, 0.1, 0.17),
    index('precipitation', 2.4), index('saturation_ph', 7.37), index('ryznar', 7.3), index('puckorius', 7.2), index('larson_skold', 6.6)],
  chlorine: { free: 1.28, share: 0.51, hocl: 0.65, u: 0.12, shareWithout: 0.51, hoclWithout: 0.65, cyanurate: null, sayings: [] },
});

export const noBalance = (...missing) => ({
  index: null, claim: 0.1, word: null, inputs: [], missing: missing.map((text, i) => said('m' + i, text)), remarks: [], indices: [],
  chlorine: { free: null, share: null, hocl: null, u: null, shareWithout: null, hoclWithout: null, cyanurate: null, sayings: [said('c', 'Without pH nothing can be said of hypochlorous acid')] },
});

const products = [['hypo', 'Sodium hypochlorite 12 %', 'sodium_hypochlorite', 1.2, 0], ['acid', 'Sulfuric acid 15 %', 'sulfuric_acid', 1.1, -0.02]];

function figures(w, shift = 0) {
  const ph = w.ph + shift, share = 1 / (1 + 10 ** (ph - 7.5));
  const saturationIndex = w.calciumHardness === null || w.dissolvedSolids === null ? null : ph - 7.4;
  return {
    figures: { ph, totalAlkalinity: w.totalAlkalinity, calciumHardness: w.calciumHardness, dissolvedSolids: w.dissolvedSolids, cyanurate: w.cyanuricAcid ?? 0, freeChlorine: w.freeChlorine, saturationIndex, hypochlorousAcid: w.freeChlorine === null ? null : w.freeChlorine * share, hypochlorousShare: share },
    word: saturationIndex === null ? null : word(saturationIndex),
  };
}

function curve(at, of) {
  const all = at.map(x => of(x).figures);
  return { at, ph: all.map(f => f.ph), saturation: all.map(f => f.saturationIndex), hocl: all.map(f => f.hypochlorousAcid), share: all.map(f => f.hypochlorousShare) };
}

const span = (from, to, n) => Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1));
const amount = (value, unit) => ({ value, unit, text: `${value.toFixed(2)} ${unit}`, inSi: `${value.toFixed(2)} ${unit}` });

export function whatIf(body) {
  const t = Date.now();
  const now = { ph: 7.44, temperature: 28.2, totalAlkalinity: 110, calciumHardness: 240, dissolvedSolids: 1180, cyanuricAcid: null, freeChlorine: 1.28 };
  const w = body.water ?? now;
  if (w.ph !== null && (w.ph < 4.5 || w.ph > 10.5)) return [400, { type: 'about:blank', title: 'Not possible', status: 400, errors: [{ field: 'water.ph', code: 'r', text: 'From 4.5 to 10.5' }] }];
  const shift = body.doses.reduce((sum, d) => sum + d.kilograms * (products.find(p => p[0] === d.product)?.[4] ?? 0), 0);
  const known = w.ph !== null && w.temperature !== null && w.totalAlkalinity !== null;
  const none = curve([], () => figures(now));
  return [200, {
    at: iso(t), inputs: inputs(t), now: figures(now), water: known ? figures(w) : null, after: known ? figures(w, shift) : null,
    againstPh: known ? curve(span(6.4, 8.8, 49), ph => figures({ ...w, ph })) : none, nowAgainstPh: curve(span(6.4, 8.8, 49), ph => figures({ ...now, ph })),
    againstDose: body.curve && known ? curve(span(0, 20, 41), kg => figures(w, kg * (products.find(p => p[0] === body.curve)?.[4] ?? 0))) : none,
    doses: body.doses.map(d => ({ product: d.product, mass: amount(d.kilograms, 'kg'), volume: amount(d.kilograms / 1.1, 'L') })), volumeM3: body.volumeM3 ?? 540, volume: amount(body.volumeM3 ?? 540, 'm3'),
    products: products.map(([id, name, kind, kilogramsPerLitre]) => ({ id, name, kind, atHand: true, strength: '12 % by weight', kilogramsPerLitre, scaleKilograms: 20 })),
    remarks: known ? [] : [said('m', 'Without it nothing can be worked out: type one to see')],
  }];
}

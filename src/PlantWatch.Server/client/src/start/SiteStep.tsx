import { useEffect, useMemo, useState } from 'preact/hooks';
import { recallJson, remember } from '../api/kept';
import type { PlantFileView } from '../contract.plantFile';
import { language, languages, speak, type Language } from '../format/language';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import type { SoFar } from './file';
import { missing, write } from './steps';

const w = words.start.site;
/** What was typed here before another language was chosen. */
interface Typed { name: string; zone: string; units: string }
const shelf = 'start-site';
const here = () => Intl.DateTimeFormat().resolvedOptions().timeZone;

function zones(own: string): string[] {
  const known = typeof Intl.supportedValuesOf === 'function' ? Intl.supportedValuesOf('timeZone') : [];
  return [...new Set([own, ...known, 'UTC'])].filter(Boolean);
}

export function SiteStep({ file, onDone }: { file: SoFar; onDone: (view: PlantFileView) => void }) {
  const said = (key: string) => (typeof file.site[key] === 'string' ? file.site[key] as string : '');
  const [before] = useState(() => recallJson<Typed>(shelf));
  useEffect(() => { remember(shelf, null); }, []);
  const [name, setName] = useState(before?.name ?? said('name'));
  const [zone, setZone] = useState(before?.zone ?? (said('time_zone') || here() || 'UTC'));
  const [units, setUnits] = useState(before?.units ?? (said('units') || 'metric'));
  // Another language begins the page anew.
  const change = (to: Language) => { remember(shelf, JSON.stringify({ name, zone, units } satisfies Typed)); speak(to); };
  const all = useMemo(() => zones(zone), []);
  const { busy, errors, run, setErrors } = useAction<PlantFileView>(onDone);
  const send = (e: Event) => {
    e.preventDefault();
    const wrong = missing(['name', !name.trim(), w.needName], ['name', name.trim().length > 100, w.long], ['zone', !zone, w.needZone], ['by', !who.value.trim(), words.needName]);
    if (Object.keys(wrong).length) return setErrors(wrong);
    void run(() => write(() => [
      { do: 'set', path: 'site', value: { name: name.trim(), time_zone: zone, ...(units === 'metric' ? {} : { units }), ...(language === 'en' ? {} : { language }) } },
    ].flatMap(whole => Object.keys(file.site).length === 0 ? [whole as never] : Object.entries(whole.value).map(([k, v]) => ({ do: 'set' as const, path: `site.${k}`, value: v }))), words.start.why.site));
  };
  const e = { name: errors['name'] ?? errors['site.name'], zone: errors['zone'] ?? errors['site.time_zone'], units: errors['site.units'], by: errors['by'] };
  return (<>
    <Field name="language" label={words.pageNames.habits.language}>
      <select class="tall" value={language} {...tie('language')} onChange={x => change(x.currentTarget.value as Language)}>{Object.entries(languages).map(([k, l]) => <option key={k} value={k} lang={k}>{l.name}</option>)}</select></Field>
    <form class="stack" onSubmit={send} noValidate>
      <Field name="name" label={w.name} error={e.name}><input type="text" class="tall" autocomplete="organization" value={name} {...tie('name', e.name)} onInput={x => setName(x.currentTarget.value)} /></Field>
      <Field name="zone" label={w.zone} error={e.zone} hint={w.zoneHint}>
        <select class="tall" value={zone} {...tie('zone', e.zone)} onChange={x => setZone(x.currentTarget.value)}>{all.map(z => <option key={z} value={z}>{z}</option>)}</select></Field>
      <Field name="units" label={w.units} error={e.units}>
        <select class="tall" value={units} {...tie('units', e.units)} onChange={x => setUnits(x.currentTarget.value)}>{(['metric', 'us', 'imperial'] as const).map(u => <option key={u} value={u}>{w.unitNames[u]}</option>)}</select></Field>
      <NameField name="by" error={e.by} />
      <OtherRemarks errors={errors} shown={['name', 'site.name', 'zone', 'site.time_zone', 'site.units', 'by']} />
      <button class="primary" type="submit" disabled={busy} data-testid="save-site">{busy ? words.start.saving : words.start.save}</button>
    </form>
  </>);
}

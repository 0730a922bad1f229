import type { JSX } from 'preact';
import { AlarmPage } from '../alarms/AlarmPage';
import { AlarmsPage } from '../alarms/AlarmsPage';
import { CalibratePage } from '../calibrate/CalibratePage';
import { SheetPage } from '../calibrate/SheetPage';
import { CheckPage } from '../check/CheckPage';
import { ChemicalsPage } from '../chemicals/ChemicalsPage';
import { ExceptionsPage } from '../exceptions/ExceptionsPage';
import { HandoverPage } from '../handover/HandoverPage';
import { AlarmHealthPage } from '../health/AlarmHealthPage';
import { JobsPage } from '../jobs/JobsPage';
import { LaboratoryPage } from '../laboratory/LaboratoryPage';
import { LimitsPage } from '../limits/LimitsPage';
import { Overview } from '../overview/Overview';
import { PoolPage } from '../pool/PoolPage';
import { ProbePage } from '../probe/ProbePage';
import { PumpPage } from '../pumps/PumpPage';
import { PumpsPage } from '../pumps/PumpsPage';
import { ReagentsPage } from '../reagents/ReagentsPage';
import { RecordPage } from '../record/RecordPage';
import { RulesPage } from '../rules/RulesPage';
import { TellingPage } from '../telling/TellingPage';
import { BalancePage } from '../water/BalancePage';
import { DosePage } from '../water/DosePage';
import { IncidentPage } from '../water/IncidentPage';
import { PlanPage } from '../water/PlanPage';
import { WhatIfPage } from '../water/WhatIfPage';
import { WhatIfLimitsPage } from '../whatIfLimits/WhatIfLimitsPage';
import { words } from '../words';
import { icons } from './icons';

export type Group = 'water' | 'alarms' | 'plant' | 'record';
export const groups: Group[] = ['water', 'alarms', 'plant', 'record'];

/** A destination. Those with a `tab` keep a place in the bottom bar of a phone, four at most; the others stand under More there. One that is asked for now and then is `seldom`: it stands under More on a desk too. */
export interface Entry { group: Group; name: string; tab?: JSX.Element; seldom?: true }

/** One page of the client: what follows `#/`, what it shows, and either its entry or the page it lies under. */
export interface Page { key: string; show: (id: string | null) => JSX.Element; entry?: Entry; under?: string }

/**
 * Every page, once; the router and the navigation are both made from this. A page is added by its import and one line here:
 * with `entry` it is a destination of its own, with `under` it marks another one as the current. Order within a group is the order here.
 */
export const pages: Page[] = [
  { key: '', show: () => <Overview />, entry: { group: 'water', name: words.nav.overview, tab: icons.water } },
  { key: 'check', show: id => <CheckPage poolId={id} />, entry: { group: 'water', name: words.nav.check, tab: icons.flask } },
  { key: 'laboratory', show: () => <LaboratoryPage />, entry: { group: 'water', name: words.pageNames.pages.laboratory } },
  { key: 'reagents', show: () => <ReagentsPage />, entry: { group: 'water', name: words.pageNames.pages.reagents, seldom: true } },
  { key: 'alarms', show: () => <AlarmsPage />, entry: { group: 'alarms', name: words.nav.alarms, tab: icons.bell } },
  { key: 'exceptions', show: id => <ExceptionsPage pool={id} />, entry: { group: 'alarms', name: words.pageNames.pages.exceptions } },
  { key: 'limits', show: () => <LimitsPage />, entry: { group: 'alarms', name: words.pageNames.pages.limits } },
  { key: 'rules', show: id => <RulesPage number={id} />, entry: { group: 'alarms', name: words.pageNames.pages.rules, seldom: true } },
  { key: 'alarm-health', show: () => <AlarmHealthPage />, entry: { group: 'alarms', name: words.pageNames.pages.alarmHealth, seldom: true } },
  { key: 'what-if-limits', show: id => <WhatIfLimitsPage id={id} />, entry: { group: 'alarms', name: words.pageNames.pages.whatIfLimits, seldom: true } },
  { key: 'telling', show: () => <TellingPage />, entry: { group: 'alarms', name: words.pageNames.pages.telling, seldom: true } },
  { key: 'pumps', show: id => <PumpsPage asset={id} />, entry: { group: 'plant', name: words.nav.pumps } },
  { key: 'jobs', show: id => <JobsPage asset={id} />, entry: { group: 'plant', name: words.pageNames.pages.jobs } },
  { key: 'chemicals', show: () => <ChemicalsPage />, entry: { group: 'plant', name: words.pageNames.pages.chemicals, seldom: true } },
  { key: 'handover', show: () => <HandoverPage />, entry: { group: 'record', name: words.pageNames.pages.handover } },
  { key: 'record', show: () => <RecordPage />, entry: { group: 'record', name: words.nav.record, tab: icons.sheet } },

  { key: 'alarm', show: id => <AlarmPage id={id ?? ''} />, under: 'alarms' },
  { key: 'pool', show: id => <PoolPage id={id ?? ''} />, under: '' },
  { key: 'balance', show: id => <BalancePage id={id ?? ''} />, under: '' },
  { key: 'what-if', show: id => <WhatIfPage id={id ?? ''} />, under: '' },
  { key: 'dose', show: id => <DosePage id={id ?? ''} />, under: '' },
  { key: 'plan', show: id => <PlanPage id={id ?? ''} />, under: '' },
  { key: 'incident', show: id => <IncidentPage id={id ?? ''} />, under: '' },
  { key: 'probe', show: id => <ProbePage id={id ?? ''} />, under: '' },
  { key: 'pump', show: id => <PumpPage id={id ?? ''} />, under: 'pumps' },
  { key: 'calibrate', show: id => <CalibratePage id={id ?? ''} />, under: '' },
  { key: 'sheet', show: id => <SheetPage id={id ?? ''} />, under: '' },
];

export type Destination = Page & { entry: Entry };
export const destinations = pages.filter((p): p is Destination => p.entry !== undefined);

/** The destination that an address lies under; null where there is none. */
export const homeOf = (key: string): string | null => pages.filter(p => p.key === key).map(p => p.under ?? p.key)[0] ?? null;

export const addressOf = (key: string) => key ? `#/${key}` : '#/';

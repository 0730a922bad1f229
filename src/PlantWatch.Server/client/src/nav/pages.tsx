import type { JSX } from 'preact';
import { Overview } from '../overview/Overview';
import { words } from '../words';
import { icons } from './icons';
import { lazyPage } from './lazyPage';

const AlarmPage = lazyPage(() => import('../alarms/AlarmPage'), m => m.AlarmPage);
const AlarmsPage = lazyPage(() => import('../alarms/AlarmsPage'), m => m.AlarmsPage);
const BoardPage = lazyPage(() => import('../boards/BoardPage'), m => m.BoardPage);
const BoardsPage = lazyPage(() => import('../boards/BoardsPage'), m => m.BoardsPage);
const CalibratePage = lazyPage(() => import('../calibrate/CalibratePage'), m => m.CalibratePage);
const SheetPage = lazyPage(() => import('../calibrate/SheetPage'), m => m.SheetPage);
const CheckPage = lazyPage(() => import('../check/CheckPage'), m => m.CheckPage);
const ChemicalsPage = lazyPage(() => import('../chemicals/ChemicalsPage'), m => m.ChemicalsPage);
const ExceptionsPage = lazyPage(() => import('../exceptions/ExceptionsPage'), m => m.ExceptionsPage);
const HandoverPage = lazyPage(() => import('../handover/HandoverPage'), m => m.HandoverPage);
const AlarmHealthPage = lazyPage(() => import('../health/AlarmHealthPage'), m => m.AlarmHealthPage);
const JobsPage = lazyPage(() => import('../jobs/JobsPage'), m => m.JobsPage);
const LaboratoryPage = lazyPage(() => import('../laboratory/LaboratoryPage'), m => m.LaboratoryPage);
const LimitsPage = lazyPage(() => import('../limits/LimitsPage'), m => m.LimitsPage);
const InspectPage = lazyPage(() => import('../paper/InspectPage'), m => m.InspectPage);
const PaperPage = lazyPage(() => import('../paper/PaperPage'), m => m.PaperPage);
const PlantFilePage = lazyPage(() => import('../plantFile/PlantFilePage'), m => m.PlantFilePage);
const PoolPage = lazyPage(() => import('../pool/PoolPage'), m => m.PoolPage);
const ProbePage = lazyPage(() => import('../probe/ProbePage'), m => m.ProbePage);
const PumpPage = lazyPage(() => import('../pumps/PumpPage'), m => m.PumpPage);
const PumpsPage = lazyPage(() => import('../pumps/PumpsPage'), m => m.PumpsPage);
const ReagentsPage = lazyPage(() => import('../reagents/ReagentsPage'), m => m.ReagentsPage);
const RecordPage = lazyPage(() => import('../record/RecordPage'), m => m.RecordPage);
const InstrumentsPage = lazyPage(() => import('../instruments/InstrumentsPage'), m => m.InstrumentsPage);
const PlantRoundPage = lazyPage(() => import('../plantRound/PlantRoundPage'), m => m.PlantRoundPage);
const RoundPage = lazyPage(() => import('../round/RoundPage'), m => m.RoundPage);
const RulesPage = lazyPage(() => import('../rules/RulesPage'), m => m.RulesPage);
const StartPage = lazyPage(() => import('../start/StartPage'), m => m.StartPage);
const TellingPage = lazyPage(() => import('../telling/TellingPage'), m => m.TellingPage);
const BalancePage = lazyPage(() => import('../water/BalancePage'), m => m.BalancePage);
const DosePage = lazyPage(() => import('../water/DosePage'), m => m.DosePage);
const IncidentPage = lazyPage(() => import('../water/IncidentPage'), m => m.IncidentPage);
const PlanPage = lazyPage(() => import('../water/PlanPage'), m => m.PlanPage);
const WhatIfPage = lazyPage(() => import('../water/WhatIfPage'), m => m.WhatIfPage);
const WhatIfLimitsPage = lazyPage(() => import('../whatIfLimits/WhatIfLimitsPage'), m => m.WhatIfLimitsPage);

export type Group = 'water' | 'alarms' | 'plant' | 'record';
export const groups: Group[] = ['water', 'alarms', 'plant', 'record'];

/** A destination. Those with a `tab` keep a place in the bottom bar of a phone, four at most; the others stand under More there. One that is asked for now and then is `seldom`: it stands under More on a desk too. */
export interface Entry { group: Group; name: string; tab?: JSX.Element; seldom?: true }

/** One page of the client: what follows `#/`, what it shows, and either its entry or the page it lies under. */
export interface Page { key: string; show: (id: string | null) => JSX.Element; entry?: Entry; under?: string }

/**
 * Every page, once; the router and the navigation are both made from this. A page is added by its line above, which loads it when it is wanted, and one here:
 * with `entry` it is a destination of its own, with `under` it marks another one as the current. Order within a group is the order here.
 */
export const pages: Page[] = [
  { key: '', show: () => <Overview />, entry: { group: 'water', name: words.nav.overview, tab: icons.water } },
  { key: 'check', show: id => <CheckPage poolId={id} />, entry: { group: 'water', name: words.nav.check, tab: icons.flask } },
  { key: 'round', show: () => <RoundPage />, entry: { group: 'water', name: words.pageNames.pages.round } },
  { key: 'laboratory', show: () => <LaboratoryPage />, entry: { group: 'water', name: words.pageNames.pages.laboratory } },
  { key: 'reagents', show: () => <ReagentsPage />, entry: { group: 'water', name: words.pageNames.pages.reagents, seldom: true } },
  { key: 'boards', show: () => <BoardsPage />, entry: { group: 'water', name: words.pageNames.pages.boards, seldom: true } },
  { key: 'instruments', show: () => <InstrumentsPage />, entry: { group: 'water', name: words.pageNames.pages.instruments, seldom: true } },
  { key: 'alarms', show: () => <AlarmsPage />, entry: { group: 'alarms', name: words.nav.alarms, tab: icons.bell } },
  { key: 'exceptions', show: id => <ExceptionsPage pool={id} />, entry: { group: 'alarms', name: words.pageNames.pages.exceptions } },
  { key: 'limits', show: () => <LimitsPage />, entry: { group: 'alarms', name: words.pageNames.pages.limits } },
  { key: 'rules', show: id => <RulesPage number={id} />, entry: { group: 'alarms', name: words.pageNames.pages.rules, seldom: true } },
  { key: 'alarm-health', show: () => <AlarmHealthPage />, entry: { group: 'alarms', name: words.pageNames.pages.alarmHealth, seldom: true } },
  { key: 'what-if-limits', show: id => <WhatIfLimitsPage id={id} />, entry: { group: 'alarms', name: words.pageNames.pages.whatIfLimits, seldom: true } },
  { key: 'telling', show: () => <TellingPage />, entry: { group: 'alarms', name: words.pageNames.pages.telling, seldom: true } },
  { key: 'pumps', show: id => <PumpsPage asset={id} />, entry: { group: 'plant', name: words.nav.pumps } },
  { key: 'jobs', show: id => <JobsPage asset={id} />, entry: { group: 'plant', name: words.pageNames.pages.jobs } },
  { key: 'plant-round', show: id => <PlantRoundPage circuit={id} />, entry: { group: 'plant', name: words.pageNames.pages.plantRound, seldom: true } },
  { key: 'chemicals', show: () => <ChemicalsPage />, entry: { group: 'plant', name: words.pageNames.pages.chemicals, seldom: true } },
  { key: 'plant-file', show: () => <PlantFilePage />, entry: { group: 'plant', name: words.pageNames.pages.plantFile, seldom: true } },
  { key: 'handover', show: () => <HandoverPage />, entry: { group: 'record', name: words.pageNames.pages.handover } },
  { key: 'paper', show: () => <PaperPage />, entry: { group: 'record', name: words.pageNames.pages.paper, seldom: true } },
  { key: 'record', show: () => <RecordPage />, entry: { group: 'record', name: words.nav.record, tab: icons.sheet } },

  { key: 'inspect', show: () => <InspectPage />, under: 'paper' },
  { key: 'start', show: () => <StartPage />, under: 'plant-file' },
  { key: 'alarm', show: id => <AlarmPage id={id ?? ''} />, under: 'alarms' },
  { key: 'board', show: id => <BoardPage key={id} id={id ?? ''} />, under: 'boards' },
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

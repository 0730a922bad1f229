import type { OtherWords } from '..';
import { alarmList, alarmPage, makeSafe } from './alarms';
import { boards } from './boards';
import { chemicals } from './chemicals';
import { circulation } from './circulation';
import { connection } from './connection';
import { dose } from './dose';
import { exceptions } from './exceptions';
import { filters } from './filters';
import { handover } from './handover';
import { incident } from './incident';
import { jobs } from './jobs';
import { alarmHealth, laboratory } from './laboratory';
import { methods } from './methods';
import { instruments } from './instruments';
import { plantRound } from './plantRound';
import { stripTools } from './stripTools';
import { orp } from './orp';
import { paper } from './paper';
import { plan } from './plan';
// In English until they are translated.
import { plantFile } from './plantFile';
import { start } from './start';
import { probePage } from './probePage';
import { pumpPage } from './pumpPage';
import { entries, storage } from './record';
import { rulesPage } from './rules';
import { telling } from './telling';
import { trust } from './trust';
import { volume } from './volume';
import { whatIf } from './whatIf';
import { whatIfLimits } from './whatIfLimits';

const words: OtherWords = {
  volume, connection, whatIf, dose, plan, incident, methods, orp, circulation, trust, probePage, alarmList, laboratory, alarmHealth, telling, filters, whatIfLimits, entries, storage, exceptions, jobs,
  handover, makeSafe, chemicals, alarmPage, rulesPage, pumpPage, plantRound, instruments, boards, stripTools, paper,
  plantFile, start,
};

export default words;

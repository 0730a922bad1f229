import { words } from '../words';
import { WaterFrame } from './WaterFrame';

export function WhatIfPage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="what-if">{() => <p class="empty">{words.water.notYet}</p>}</WaterFrame>;
}

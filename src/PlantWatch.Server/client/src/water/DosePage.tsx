import { words } from '../words';
import { WaterFrame } from './WaterFrame';

export function DosePage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="dose">{() => <p class="empty">{words.water.notYet}</p>}</WaterFrame>;
}

import { ManualTable } from '../../pool/ManualCard';
import { link } from '../../router';
import { OfPools } from './OfPools';
import type { TileProps } from './props';

/** The newest tests by hand of each pool, with their age. */
export const TestsTile = (p: TileProps) => <OfPools p={p} href={id => link('pool', id)}>{(pool, view) => <ManualTable pool={pool} view={view} />}</OfPools>;

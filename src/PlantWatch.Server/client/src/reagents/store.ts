import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { ReagentView } from '../contract.reagent';
import { usePolled } from '../parts/usePolled';

/** The reagents as last heard of; a form that is opened without signal goes by what was heard before. */
export const reagents = signal<ReagentView[]>([]);

/** Keeps them fresh while a page that asks is open. */
export function useReagents(): void {
  const { data } = usePolled<ReagentView[]>('/reagents', 300_000);
  useEffect(() => { if (data) reagents.value = data; }, [data]);
}

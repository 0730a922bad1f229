import type { Priority } from '../contract.words';

/** Every priority, the gravest first. */
export const priorities: Priority[] = ['critical', 'high', 'medium', 'low', 'note'];

export const rankOf = (a: { priority: Priority }) => priorities.indexOf(a.priority);
